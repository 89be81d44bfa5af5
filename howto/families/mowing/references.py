"""Who says so, for mowing."""

from howto.model.reference import Grade, from_memory, source

UC = "University of California Statewide IPM Program"
UC_AMOUNT = source(Grade.A, "UC Guide to Healthy Lawns: how much, when and how often to mow", UC, "2017")
UC_SPECIAL = source(Grade.A, "UC Guide to Healthy Lawns: special attention when mowing", UC, "2017")
UC_GRASSES = source(Grade.A, "UC Guide to Healthy Lawns: mowing warm-season grasses", UC, "2017")
CORNELL = source(Grade.A, "The one-third rule", "Cornell University")
ARIZONA = source(
    Grade.A, "Mowing turfgrasses in the desert (az1681)", "University of Arizona Cooperative Extension", "2015"
)
CAROLINA = source(Grade.A, "Lawn care essentials", "NC Cooperative Extension, Lee County", "2015")
WAIT = source(Grade.C, "Three to four days between stages of lowering", "two general lawn pages")
SHADE = source(Grade.C, "Raise the cut 13 to 25 mm in shade", "a lawn care trader")
SHARPEN = source(Grade.C, "Sharpen the blade every 20 to 25 hours", "a general garden page")
GROWTH = from_memory("a fed summer lawn grows about 2 to 6 mm a day")
DENSITY = from_memory("clippings in the box fill about 3 % of the layer cut off")
WALK = from_memory("a mower is walked at about 4 km/h, a tenth of each pass overlapped")
NEW_TURF = from_memory("new turf is first cut when it has rooted, about three weeks on")
SEASON = from_memory("a lawn is mown in about eight months of the year")
