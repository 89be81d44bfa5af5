"""Who says so, for hedging."""

from howto.model.reference import Grade, Reference, from_memory

RHS = "Royal Horticultural Society"
TRIMMING = Reference(title="Hedge trimming (profile 353)", publisher=RHS, grade=Grade.A)
HOW_TO_TRIM = Reference(title="How to trim a hedge", publisher=RHS, grade=Grade.A)
RENOVATION = Reference(
    title="Hedges: renovation (profile 398)", publisher=RHS, year="2012", place="stages over one third", grade=Grade.A
)
RENOVATION_OTHER = Reference(
    title="Hedges: renovation (profile 398)", publisher=RHS, place="other copy, stages over a half", grade=Grade.A
)
BLEEDING = Reference(title="Bleeding from pruning cuts", publisher=RHS, grade=Grade.A)
ARIZONA = Reference(title="Master Gardener Manual, chapter 8: hedges", publisher="University of Arizona", grade=Grade.A)
GRANT = Reference(title="Planting new hedges (BN11)", publisher="UK Government, Countryside Stewardship", grade=Grade.A)
RATIO = Reference(
    title="Shaping hedges: a base one third wider than the top", publisher="a gardening site", grade=Grade.C
)
REACH = Reference(
    title="A hedge top of 600 mm at most", publisher="a consumer association and a hedge contractor", grade=Grade.C
)
LEVEL_LINE = Reference(
    title="A level line 10 mm below the finished height", publisher="a consumer association", grade=Grade.C
)
ROOM = Reference(
    title="300 mm left for regrowth below the wanted size", publisher="two hedge contractors", grade=Grade.C
)
THIRD_OF_LEAF = Reference(
    title="A third of the leaf at most in a season", publisher="a general gardening page", grade=Grade.C
)
QUARTER_OF_LEAF = Reference(
    title="No more than a quarter of the leaf of a trained hedge", publisher="a landscape trade page", grade=Grade.C
)
CROWN = Reference(
    title="Advice note for the description of tree work, on BS 3998:2010",
    publisher="Ryedale District Council",
    grade=Grade.A,
)
CONIFERS = Reference(
    title="Pruning conifers: light cuts in new growth only", publisher="Berkshire Eagle garden column", grade=Grade.B
)
SPACING = Reference(title="Hedge planting guides", publisher="four hedge nurseries", grade=Grade.C)
END_PLANTS = Reference(
    title="End plants stand half a spacing in", publisher="a hedge nursery's planting guide", grade=Grade.C
)
GROWTH = Reference(title="Most hedge plants grow 300 to 450 mm a year", publisher="two hedge nurseries", grade=Grade.C)
NESTS_UK = Reference(
    title="Hedges: renovation; a nest in use or being built is protected (Wildlife and Countryside Act 1981)",
    publisher=RHS,
    grade=Grade.A,
)
NESTS_FARM = Reference(
    title="No cutting of farm hedges from 1 March to 31 August (Management of Hedgerows Regulations 2024)",
    publisher="National Farmers' Union",
    year="2024",
    grade=Grade.B,
)
NESTS_IRELAND = Reference(
    title="No cutting from 1 March to 31 August (Wildlife Act 1976, section 40, as amended 2000)",
    publisher="Kilkenny Public Participation Network",
    grade=Grade.B,
)
NESTS_ELSEWHERE = from_memory("birds nest mainly from March to August in the north and August to January in the south")
SIDE_GROWTH = from_memory("the sides of an upright hedge plant grow about half as much as its top")
STEEP = from_memory("hedge sides lean at most 50 to 100 mm in 300 mm of height, 9 to 18 degrees")
RATE = from_memory("one person trims about 40 m² of hedge face an hour with a power trimmer")
