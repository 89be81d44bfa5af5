"""Who says so, for mowing."""

from howto.model.reference import Grade, Reference, from_memory

UC_AMOUNT = Reference(
    title="UC Guide to Healthy Lawns: how much, when and how often to mow",
    publisher="University of California Statewide IPM Program",
    year="2017",
    grade=Grade.A,
)
UC_SPECIAL = Reference(
    title="UC Guide to Healthy Lawns: special attention when mowing",
    publisher="University of California Statewide IPM Program",
    year="2017",
    grade=Grade.A,
)
UC_GRASSES = Reference(
    title="UC Guide to Healthy Lawns: mowing warm-season grasses",
    publisher="University of California Statewide IPM Program",
    year="2017",
    grade=Grade.A,
)
CORNELL = Reference(title="The one-third rule", publisher="Cornell University", grade=Grade.A)
ARIZONA = Reference(
    title="Mowing turfgrasses in the desert (az1681)",
    publisher="University of Arizona Cooperative Extension",
    year="2015",
    grade=Grade.A,
)
CAROLINA = Reference(
    title="Lawn care essentials", publisher="NC Cooperative Extension, Lee County", year="2015", grade=Grade.A
)
WAIT = Reference(
    title="Three to four days between stages of lowering", publisher="two general lawn pages", grade=Grade.C
)
SHADE = Reference(title="Raise the cut 13 to 25 mm in shade", publisher="a lawn care trader", grade=Grade.C)
SHARPEN = Reference(title="Sharpen the blade every 20 to 25 hours", publisher="a general garden page", grade=Grade.C)
GROWTH = from_memory("a fed summer lawn grows about 2 to 6 mm a day")
DENSITY = from_memory("clippings in the box fill about 3 % of the layer cut off")
WALK = from_memory("a mower is walked at about 4 km/h, a tenth of each pass overlapped")
NEW_TURF = from_memory("new turf is first cut when it has rooted, about three weeks on")
SEASON = from_memory("a lawn is mown in about eight months of the year")
