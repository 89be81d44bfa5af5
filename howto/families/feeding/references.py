"""Who says so, for feeding."""

from howto.model.reference import Grade, Reference, from_memory

# -- arithmetic of labels and rates --
LABEL_NUMBERS = Reference(
    title="Fertilizing fruit trees: 10 lb of 10-10-10 holds 1 lb of each",
    publisher="University of Arizona Cooperative Extension, Yavapai County",
    year="2002",
    grade=Grade.A,
)
CONVERSIONS = Reference(
    title="Conversion factors for fertilizer calculations (SPES-201NP)",
    publisher="Virginia Tech",
    place="P2O5 and P, K2O and K",
    grade=Grade.A,
)
PRODUCT_RATE = Reference(
    title="Lawn fertilizer calculations",
    publisher="University of Georgia",
    place="rate x 100 / percent",
    grade=Grade.A,
)
PRODUCT_AREA = Reference(
    title="Lawn fertilizer calculations", publisher="University of Nebraska-Lincoln", grade=Grade.A
)
MIX_US = Reference(
    title="Nutrition and fertility calculations",
    publisher="Texas A&M University",
    place="75 ppm for an ounce in 100 US gal; stock is n times the feed",
    grade=Grade.A,
)
MIX_METRIC = Reference(
    title="Liquid feed: ppm = 10 x percent x g/L",
    publisher="a growers' site",
    place="the same sum as Texas A&M",
    grade=Grade.C,
)
CONSTANT_FEED = Reference(
    title="Fertilizer calculations for greenhouse crops",
    publisher="UMass Amherst",
    place="150 to 250 ppm N at each watering",
    grade=Grade.A,
)
# -- trees --
TRUNK = Reference(
    title="Apples: soil fertility",
    publisher="University of Tennessee",
    place="0.1 lb N an inch of trunk, measured 1 ft up; not raised after 8 to 10 years",
    grade=Grade.A,
)
TRUNK_STONE = Reference(
    title="Fruit trees (PlantTalk 1216)",
    publisher="Colorado State University Extension",
    place="0.1 lb N an inch for apple and pear, 1/8 lb for stone fruit; shoot growth",
    grade=Grade.A,
)
TREE_CAP = Reference(
    title="Feeding fruit trees: a pound of 10-10-10 an inch, 2.5 lb a tree at most; off the stem by 12 in",
    publisher="a gardening site",
    grade=Grade.C,
)
OLD_RATE = Reference(
    title="Feeding fruit trees", publisher="Washington Post", year="1977", place="pears go easy on N", grade=Grade.B
)
MATURE = Reference(
    title="Feeding fruit trees: a pound of actual N a year, in 3 lots 6 weeks apart",
    publisher="San Diego Master Gardeners",
    grade=Grade.B,
)
PER_AREA = Reference(title="Fruit trees: feeding and mulching", publisher="Royal Horticultural Society", grade=Grade.A)
PER_AGE = Reference(
    title="Fruit tree fertilising schedule, after an Australian fruit handbook",
    publisher="Local Food Connect",
    place="2 kg of 8:4:10 or 9:4:5, a tenth for each year",
    grade=Grade.B,
)
SPUR_GROWTH = Reference(
    title="Growth of bearing spur fruit trees", publisher="National Gardening Association", grade=Grade.C
)
NO_HOLE = Reference(
    title="No fertiliser in the planting hole", publisher="an orchard and a gardening site", grade=Grade.C
)
TREE_CUT_OFF = Reference(
    title="Last feed of fruit trees, about 21 June to 1 July in the north", publisher="Almanac", grade=Grade.C
)
HALF = from_memory("espalier and other restricted trees: about half the dose of a free-standing one, split in 2 or 3")
GENERAL_FEED = from_memory("the general fertiliser of the per-area rates is of about 7-7-7")
# -- lawns --
SINGLE_DOSE = Reference(
    title="How best to fertilize your lawn",
    publisher="Cornell University",
    place="1 lb N per 1,000 sq ft at one time",
    grade=Grade.A,
)
CENTIPEDE = Reference(
    title="Centipede lawns: 0.5 lb N at one time",
    publisher="University of Georgia Extension, Appling County",
    grade=Grade.A,
)
GROWING_MONTH = Reference(
    title="Tall fescue monograph: fertilization",
    publisher="Oregon State University",
    place="0.4 to 1 lb N per 1,000 sq ft a growing month",
    grade=Grade.A,
)
WARM_TURF = Reference(
    title="Lawn fertilization of warm-season grasses",
    publisher="University of Georgia Extension, Evans County",
    place="from 65 °F of soil at 4 in to mid-August, 6 to 8 weeks apart",
    grade=Grade.A,
)
COOL_TURF = Reference(
    title="Lawn fertilizer calculations",
    publisher="University of Nebraska-Lincoln",
    place="spring dose 20 April to 10 May",
    grade=Grade.A,
)
CLIPPINGS = Reference(
    title="Lawn care essentials",
    publisher="NC Cooperative Extension, Lee County",
    year="2015",
    place="returned clippings cut the need by 20 to 30 %",
    grade=Grade.A,
)
# -- care --
LABEL_LAW = Reference(
    title="Product label text: use against the label breaks federal law",
    publisher="label held in the public records of South Bend",
    place="weed and feed products are pesticides",
    grade=Grade.A,
)
OWN_WEIGHING = Reference(title="weighed by the crew", grade=Grade.PRACTICE)
USUAL_DATES = from_memory(
    "first dose: fruit trees and beds in early spring, cool lawns in April, warm lawns in May, pots in April, north"
)
WATER_IN = from_memory("granules are watered in with about 6 mm of water, and washed off leaves at once")
PETS = from_memory("children and pets stay off until granules are watered in and the leaf is dry")
AUTUMN_MONTH = from_memory("the autumn dose goes on in October in the north, April in the south")
JUST_PAST = from_memory("just past the canopy edge: 150 mm")
