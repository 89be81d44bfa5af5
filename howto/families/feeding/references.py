"""Who says so, for feeding."""

from howto.model.reference import Grade, from_memory, source

# -- arithmetic of labels and rates --
LABEL_NUMBERS = source(
    Grade.A,
    "Fertilizing fruit trees: 10 lb of 10-10-10 holds 1 lb of each",
    "University of Arizona Cooperative Extension, Yavapai County",
    "2002",
)
CONVERSIONS = source(
    Grade.A,
    "Conversion factors for fertilizer calculations (SPES-201NP)",
    "Virginia Tech",
    place="P2O5 and P, K2O and K",
)
PRODUCT_RATE = source(Grade.A, "Lawn fertilizer calculations", "University of Georgia", place="rate x 100 / percent")
PRODUCT_AREA = source(Grade.A, "Lawn fertilizer calculations", "University of Nebraska-Lincoln")
MIX_US = source(
    Grade.A,
    "Nutrition and fertility calculations",
    "Texas A&M University",
    place="75 ppm for an ounce in 100 US gal; stock is n times the feed",
)
MIX_METRIC = source(
    Grade.C, "Liquid feed: ppm = 10 x percent x g/L", "a growers' site", place="the same sum as Texas A&M"
)
CONSTANT_FEED = source(
    Grade.A, "Fertilizer calculations for greenhouse crops", "UMass Amherst", place="150 to 250 ppm N at each watering"
)
# -- trees --
TRUNK = source(
    Grade.A,
    "Apples: soil fertility",
    "University of Tennessee",
    place="0.1 lb N an inch of trunk, measured 1 ft up; not raised after 8 to 10 years",
)
TRUNK_STONE = source(
    Grade.A,
    "Fruit trees (PlantTalk 1216)",
    "Colorado State University Extension",
    place="0.1 lb N an inch for apple and pear, 1/8 lb for stone fruit; shoot growth",
)
TREE_CAP = source(
    Grade.C,
    "Feeding fruit trees: a pound of 10-10-10 an inch, 2.5 lb a tree at most; off the stem by 12 in",
    "a gardening site",
)
OLD_RATE = source(Grade.B, "Feeding fruit trees", "Washington Post", "1977", "pears go easy on N")
MATURE = source(
    Grade.B, "Feeding fruit trees: a pound of actual N a year, in 3 lots 6 weeks apart", "San Diego Master Gardeners"
)
PER_AREA = source(Grade.A, "Fruit trees: feeding and mulching", "Royal Horticultural Society")
PER_AGE = source(
    Grade.B,
    "Fruit tree fertilising schedule, after an Australian fruit handbook",
    "Local Food Connect",
    place="2 kg of 8:4:10 or 9:4:5, a tenth for each year",
)
SPUR_GROWTH = source(Grade.C, "Growth of bearing spur fruit trees", "National Gardening Association")
NO_HOLE = source(Grade.C, "No fertiliser in the planting hole", "an orchard and a gardening site")
TREE_CUT_OFF = source(Grade.C, "Last feed of fruit trees, about 21 June to 1 July in the north", "Almanac")
HALF = from_memory("espalier and other restricted trees: about half the dose of a free-standing one, split in 2 or 3")
GENERAL_FEED = from_memory("the general fertiliser of the per-area rates is of about 7-7-7")
# -- lawns --
SINGLE_DOSE = source(
    Grade.A, "How best to fertilize your lawn", "Cornell University", place="1 lb N per 1,000 sq ft at one time"
)
CENTIPEDE = source(Grade.A, "Centipede lawns: 0.5 lb N at one time", "University of Georgia Extension, Appling County")
GROWING_MONTH = source(
    Grade.A,
    "Tall fescue monograph: fertilization",
    "Oregon State University",
    place="0.4 to 1 lb N per 1,000 sq ft a growing month",
)
WARM_TURF = source(
    Grade.A,
    "Lawn fertilization of warm-season grasses",
    "University of Georgia Extension, Evans County",
    place="from 65 °F of soil at 4 in to mid-August, 6 to 8 weeks apart",
)
COOL_TURF = source(
    Grade.A, "Lawn fertilizer calculations", "University of Nebraska-Lincoln", place="spring dose 20 April to 10 May"
)
CLIPPINGS = source(
    Grade.A,
    "Lawn care essentials",
    "NC Cooperative Extension, Lee County",
    "2015",
    "returned clippings cut the need by 20 to 30 %",
)
# -- care --
LABEL_LAW = source(
    Grade.A,
    "Product label text: use against the label breaks federal law",
    "label held in the public records of South Bend",
    place="weed and feed products are pesticides",
)
OWN_WEIGHING = source(Grade.PRACTICE, "weighed by the crew")
USUAL_DATES = from_memory(
    "first dose: fruit trees and beds in early spring, cool lawns in April, warm lawns in May, pots in April, north"
)
WATER_IN = from_memory("granules are watered in with about 6 mm of water, and washed off leaves at once")
PETS = from_memory("children and pets stay off until granules are watered in and the leaf is dry")
AUTUMN_MONTH = from_memory("the autumn dose goes on in October in the north, April in the south")
JUST_PAST = from_memory("just past the canopy edge: 150 mm")
WEED_AND_FEED = from_memory("weed killers in lawn feed harm trees and beds through their roots")
