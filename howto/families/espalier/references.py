"""Who says so, for espaliers: their wires, their layout, and how they are trained and pruned."""

from howto.model.reference import Grade, from_memory, source

# fmt: off
# -- wire --
CABLES = source(Grade.C, "Cable loads", "Engineering ToolBox")
STRENGTH = source(
    Grade.C, "Strength of stainless rope from its wires, grade 1570; no more than half of it in use",
    "a rope and boat fittings supplier")
SUPPLIER_LOADS = source(Grade.C, "Guide to stainless cable: 1x19 breaking loads", "a stainless fittings supplier")
STRETCH = source(
    Grade.B, "Rigging guide 595-540-E: the folding rule, 1 mm in 2 m is 5 % of the breaking load of 1x19",
    "a mast maker", place="as quoted in a sailor's log")
BARRIERS = source(
    Grade.A, "National Construction Code, table D2.16a, wire barriers: tension for stainless horizontal wires",
    "Australian Building Codes Board", place="reprint")
ORCHARD_SPRING = source(
    Grade.B, "Tightening the wires: tight, with some spring left", "a regional fruit growing foundation")
STEEL_MASS = from_memory("stainless steel 316 weighs about 8,000 kg/m³")

# -- layout --
ESPALIERS = source(Grade.A, "Espaliers: pruning and training (profile 319)", "Royal Horticultural Society")
FIRST_WIRE = source(Grade.C, "First wire at 300 to 450 mm", "four fruit nurseries and garden pages")
WIRE_GAPS = source(Grade.C, "Wires 300 to 600 mm apart", "five fruit nurseries and growers, who disagree")
TIER_COUNT = source(Grade.C, "Espaliers: four or five wires are usually enough", "two fruit nurseries")
POSTS = source(
    Grade.C, "Posts 1.5 to 1.8 m out of the ground and 450 to 600 mm in, no more than 4 m apart",
    "a fruit nursery and a national newspaper, 2008")
WALL_EYES = source(
    Grade.C, "Supports for climbing plants: wall eyes no more than 1.8 m (6 ft) apart", "a practical gardening site")
OFF_WALL = source(Grade.C, "Wires and trellis 50 mm off the wall", "two gardening sites and a handbook")
STEM_OFF_WALL = source(Grade.C, "The stem 150 mm (6 in) off the wall", "three growers")
STOCK_SPACING = source(Grade.B, "Espaliers: M26 at 3.3 m (11 ft), MM106 at 4.5 m (15 ft)", "a gardening newspaper")
SEMI_VIGOROUS = source(Grade.C, "Espaliers on a semi-vigorous stock 4 m apart", "a fruit nursery")

# -- training --
TIER_A_YEAR = source(Grade.C, "Espaliers: a tier a year from a one-year tree", "a fruit nursery")
ARMS = source(Grade.C, "New arms on canes at 45 degrees, lowered to level after leaf fall", "two gardening sites")
LEADER = source(Grade.C, "The leader cut to a bud about 50 mm above the first wire", "a gardening site")
TIES = source(Grade.C, "Ties: soft, fixed to the wire first, looked at twice a year", "a gardener's diary")
EIGHT = from_memory("a tie crossed in a figure of eight keeps bark off the wire")

# -- pruning --
SUMMER = source(Grade.A, "Summer pruning of trained apples and pears", "Royal Horticultural Society")
STONE = source(Grade.A, "Summer pruning of trained stone fruit", "Royal Horticultural Society")
LEAVES = source(
    Grade.B, "Summer pruning: three leaves above the cluster, one from a spur; nothing under 200 mm",
    "Westmorland Gazette garden column")
STUBS = source(
    Grade.B, "Summer pruning of espaliers: stubs of 75 mm and 25 mm (3 in and 1 in)", "Toronto Master Gardeners")
BLADES = source(
    Grade.A, "How do I sanitize my pruners to prevent the spread of disease?", "Iowa State University Extension")
SEASONS = source(Grade.B, "Meteorological seasons", "Met Office (UK)", place="as quoted")
