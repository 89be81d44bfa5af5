"""Who says so, for clipping."""

from howto.model.reference import Grade, Reference, from_memory

RENOVATION = Reference(
    title="Hedges: renovation (profile 398)",
    publisher="Royal Horticultural Society",
    year="2012",
    grade=Grade.A,
)
TRIMMING = Reference(title="Hedge trimming (profile 353)", publisher="Royal Horticultural Society", grade=Grade.A)
CROWN = Reference(
    title="Advice note for the description of tree work, on BS 3998:2010",
    publisher="Ryedale District Council",
    grade=Grade.A,
)
TREE_STANDARD = Reference(
    title="ANSI A300-1995, 5.3",
    publisher="American National Standards Institute",
    year="1995",
    place="reprint",
    grade=Grade.B,
)
CONIFERS = Reference(
    title="Pruning conifers: light cuts in new growth only",
    publisher="Berkshire Eagle garden column",
    grade=Grade.B,
)
BOX_SEASON = Reference(
    title="Boxwood care", publisher="a gardening site (20 %) and a general page (one third)", grade=Grade.C
)
SHEARING = Reference(
    title="A shearing of no more than a quarter of the leaf",
    publisher="a landscape trade page",
    grade=Grade.C,
)
HEAT = Reference(title="Leaf burn after four days over 32 °C", publisher="a garden diary", grade=Grade.C)
COLD = Reference(title="No cutting below -4 °C", publisher="a gardening site", grade=Grade.C)
FROST = Reference(
    title="Last shear six weeks before the first frost", publisher="a general gardening page", grade=Grade.C
)
WET_BOX = Reference(title="Buxus: clipping and blight", publisher="a specialist grower's page", grade=Grade.C)
TOOLS = Reference(
    title="How do I sanitize my pruners to prevent the spread of disease?",
    publisher="Iowa State University Extension",
    grade=Grade.A,
)
RATE = from_memory("a person with hand shears clips about 4 m² of shaped surface an hour")
SEASON = from_memory("shoots grow from March to October in the north")
BOX_GROWTH = from_memory("a clipped evergreen puts on about 100 mm a side in a year")
