"""Who says so, for espaliers: their wires, their layout, and how they are trained and pruned."""

from howto.model.reference import Grade, Reference, from_memory

# -- wire --
CABLES = Reference(title="Cable loads", publisher="Engineering ToolBox", grade=Grade.C)
STRENGTH = Reference(
    title="Strength of stainless rope from its wires, grade 1570; no more than half of it in use",
    publisher="a rope and boat fittings supplier",
    grade=Grade.C,
)
SUPPLIER_LOADS = Reference(
    title="Guide to stainless cable: 1x19 breaking loads", publisher="a stainless fittings supplier", grade=Grade.C
)
STRETCH = Reference(
    title="Rigging guide 595-540-E: the folding rule, 1 mm in 2 m is 5 % of the breaking load of 1x19",
    publisher="a mast maker",
    place="as quoted in a sailor's log",
    grade=Grade.B,
)
BARRIERS = Reference(
    title="National Construction Code, table D2.16a, wire barriers: tension for stainless horizontal wires",
    publisher="Australian Building Codes Board",
    place="reprint",
    grade=Grade.A,
)
ORCHARD_SPRING = Reference(
    title="Tightening the wires: tight, with some spring left",
    publisher="a regional fruit growing foundation",
    grade=Grade.B,
)
STEEL_MASS = from_memory("stainless steel 316 weighs about 8,000 kg/m³")

# -- layout --
ESPALIERS = Reference(
    title="Espaliers: pruning and training (profile 319)", publisher="Royal Horticultural Society", grade=Grade.A
)
FIRST_WIRE = Reference(
    title="First wire at 300 to 450 mm", publisher="four fruit nurseries and garden pages", grade=Grade.C
)
WIRE_GAPS = Reference(
    title="Wires 300 to 600 mm apart", publisher="five fruit nurseries and growers, who disagree", grade=Grade.C
)
TIER_COUNT = Reference(
    title="Espaliers: four or five wires are usually enough", publisher="two fruit nurseries", grade=Grade.C
)
POSTS = Reference(
    title="Posts 1.5 to 1.8 m out of the ground and 450 to 600 mm in, no more than 4 m apart",
    publisher="a fruit nursery and a national newspaper, 2008",
    grade=Grade.C,
)
WALL_EYES = Reference(
    title="Supports for climbing plants: wall eyes no more than 1.8 m (6 ft) apart",
    publisher="a practical gardening site",
    grade=Grade.C,
)
OFF_WALL = Reference(
    title="Wires and trellis 50 mm off the wall", publisher="two gardening sites and a handbook", grade=Grade.C
)
STEM_OFF_WALL = Reference(title="The stem 150 mm (6 in) off the wall", publisher="three growers", grade=Grade.C)
STOCK_SPACING = Reference(
    title="Espaliers: M26 at 3.3 m (11 ft), MM106 at 4.5 m (15 ft)",
    publisher="a gardening newspaper",
    grade=Grade.B,
)
SEMI_VIGOROUS = Reference(
    title="Espaliers on a semi-vigorous stock 4 m apart", publisher="a fruit nursery", grade=Grade.C
)

# -- training --
TIER_A_YEAR = Reference(
    title="Espaliers: a tier a year from a one-year tree", publisher="a fruit nursery", grade=Grade.C
)
ARMS = Reference(
    title="New arms on canes at 45 degrees, lowered to level after leaf fall",
    publisher="two gardening sites",
    grade=Grade.C,
)
LEADER = Reference(
    title="The leader cut to a bud about 50 mm above the first wire", publisher="a gardening site", grade=Grade.C
)
TIES = Reference(
    title="Ties: soft, fixed to the wire first, looked at twice a year", publisher="a gardener's diary", grade=Grade.C
)
EIGHT = from_memory("a tie crossed in a figure of eight keeps bark off the wire")

# -- pruning --
SUMMER = Reference(
    title="Summer pruning of trained apples and pears", publisher="Royal Horticultural Society", grade=Grade.A
)
STONE = Reference(title="Summer pruning of trained stone fruit", publisher="Royal Horticultural Society", grade=Grade.A)
LEAVES = Reference(
    title="Summer pruning: three leaves above the cluster, one from a spur; nothing under 200 mm",
    publisher="Westmorland Gazette garden column",
    grade=Grade.B,
)
STUBS = Reference(
    title="Summer pruning of espaliers: stubs of 75 mm and 25 mm (3 in and 1 in)",
    publisher="Toronto Master Gardeners",
    grade=Grade.B,
)
BLADES = Reference(
    title="How do I sanitize my pruners to prevent the spread of disease?",
    publisher="Iowa State University Extension",
    grade=Grade.A,
)
SEASONS = Reference(title="Meteorological seasons", publisher="Met Office (UK)", place="as quoted", grade=Grade.B)
