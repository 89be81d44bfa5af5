"""Who says so, for clipping."""

from howto.model.reference import Grade, from_memory, source

RENOVATION = source(Grade.A, "Hedges: renovation (profile 398)", "Royal Horticultural Society", "2012")
TRIMMING = source(Grade.A, "Hedge trimming (profile 353)", "Royal Horticultural Society")
CROWN = source(Grade.A, "Advice note for the description of tree work, on BS 3998:2010", "Ryedale District Council")
TREE_STANDARD = source(Grade.B, "ANSI A300-1995, 5.3", "American National Standards Institute", "1995", "reprint")
CONIFERS = source(Grade.B, "Pruning conifers: light cuts in new growth only", "Berkshire Eagle garden column")
BOX_SEASON = source(Grade.C, "Boxwood care", "a gardening site (20 %) and a general page (one third)")
SHEARING = source(Grade.C, "A shearing of no more than a quarter of the leaf", "a landscape trade page")
HEAT = source(Grade.C, "Leaf burn after four days over 32 °C", "a garden diary")
COLD = source(Grade.C, "No cutting below -4 °C", "a gardening site")
FROST = source(Grade.C, "Last shear six weeks before the first frost", "a general gardening page")
WET_BOX = source(Grade.C, "Buxus: clipping and blight", "a specialist grower's page")
TOOLS = source(
    Grade.A, "How do I sanitize my pruners to prevent the spread of disease?", "Iowa State University Extension"
)
RATE = from_memory("a person with hand shears clips about 4 m² of shaped surface an hour")
SEASON = from_memory("shoots grow from March to October in the north")
BOX_GROWTH = from_memory("a clipped evergreen puts on about 100 mm a side in a year")
