"""Who says so, for hedging."""

from howto.model.reference import Grade, from_memory, source

RHS = "Royal Horticultural Society"
TRIMMING = source(Grade.A, "Hedge trimming (profile 353)", RHS)
HOW_TO_TRIM = source(Grade.A, "How to trim a hedge", RHS)
RENOVATION = source(Grade.A, "Hedges: renovation (profile 398)", RHS, "2012", "stages over one third")
RENOVATION_OTHER = source(Grade.A, "Hedges: renovation (profile 398)", RHS, place="other copy, stages over a half")
BLEEDING = source(Grade.A, "Bleeding from pruning cuts", RHS)
ARIZONA = source(Grade.A, "Master Gardener Manual, chapter 8: hedges", "University of Arizona")
GRANT = source(Grade.A, "Planting new hedges (BN11)", "UK Government, Countryside Stewardship")
RATIO = source(Grade.C, "Shaping hedges: a base one third wider than the top", "a gardening site")
REACH = source(Grade.C, "A hedge top of 600 mm at most", "a consumer association and a hedge contractor")
LEVEL_LINE = source(Grade.C, "A level line 10 mm below the finished height", "a consumer association")
ROOM = source(Grade.C, "300 mm left for regrowth below the wanted size", "two hedge contractors")
THIRD_OF_LEAF = source(Grade.C, "A third of the leaf at most in a season", "a general gardening page")
QUARTER_OF_LEAF = source(Grade.C, "No more than a quarter of the leaf of a trained hedge", "a landscape trade page")
CROWN = source(Grade.A, "Advice note for the description of tree work, on BS 3998:2010", "Ryedale District Council")
CONIFERS = source(Grade.B, "Pruning conifers: light cuts in new growth only", "Berkshire Eagle garden column")
SPACING = source(Grade.C, "Hedge planting guides", "four hedge nurseries")
END_PLANTS = source(Grade.C, "End plants stand half a spacing in", "a hedge nursery's planting guide")
GROWTH = source(Grade.C, "Most hedge plants grow 300 to 450 mm a year", "two hedge nurseries")
NESTS_UK = source(
    Grade.A, "Hedges: renovation; a nest in use or being built is protected (Wildlife and Countryside Act 1981)", RHS
)
NESTS_FARM = source(
    Grade.B,
    "No cutting of farm hedges from 1 March to 31 August (Management of Hedgerows Regulations 2024)",
    "National Farmers' Union",
    "2024",
)
NESTS_IRELAND = source(
    Grade.B,
    "No cutting from 1 March to 31 August (Wildlife Act 1976, section 40, as amended 2000)",
    "Kilkenny Public Participation Network",
)
SHOOTS = from_memory("shoots grow from March to October in the north")
NESTS_ELSEWHERE = from_memory("birds nest mainly from March to August in the north and August to January in the south")
SIDE_GROWTH = from_memory("the sides of an upright hedge plant grow about half as much as its top")
STEEP = from_memory("hedge sides lean at most 50 to 100 mm in 300 mm of height, 9 to 18 degrees")
RATE = from_memory("one person trims about 40 m² of hedge face an hour with a power trimmer")
