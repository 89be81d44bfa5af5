"""Who says so, for planting."""

from howto.model.reference import Grade, from_memory, source

IFAS = "University of Florida IFAS"
SPECIFICATION = source(Grade.A, "Planting specification (ENH856)", IFAS)
PROPER = source(Grade.A, "Proper Tree Planting", "UF/IFAS Okeechobee County", "2006")
NOT_DEEPER = source(Grade.A, "Do not dig deeper than the ball", IFAS)
SAUCER = source(Grade.A, "GardenNotes 633: planting, the saucer-shaped hole", "Colorado State University")
COUNCIL = source(Grade.A, "Planting trees: up to three times the ball", "Mid Ulster Council")
BALL_DEPTH = source(Grade.A, "Root ball depth, after ANSI Z60.1", IFAS)
BALL_TEN = source(Grade.C, "Root ball ten times the calliper", "a tree nursery")
BALL_CITY = source(Grade.A, "Specification 02481: least root balls", "City of Sunny Isles Beach")
BALL_TABLE = from_memory("ANSI Z60.1: a shade tree of 1 in calliper has a ball of 16 in, of 2 in 24, 3 in 32, 4 in 42")
BALL_WEIGHT = source(Grade.C, "What root balls weigh", "a tree nursery")
LIFT = source(Grade.B, "Lifting analysis worksheet: a load constant of 23 kg", "NIOSH, United States")
CALLIPER = source(Grade.A, "Water (where calliper is measured, citing ANSI Z60.1)", "UF/IFAS Charlotte County", "2024")
ONE_SEASON = source(Grade.B, "Stakes only if needed, and off after one growing season", "Beatrice Daily Sun")
TWO_YEARS = source(Grade.C, "Stakes no longer than two years", "a nursery")
LOW_STAKE = from_memory("a low stake holds a tree at about a third of its height")
FIRST_WATER = source(
    Grade.A, "Proper Tree Planting: 10 to 20 US gal to settle and soak", "UF/IFAS Okeechobee County", "2006"
)
WATER_COOL = source(Grade.A, "How do I water my trees?", "University of Minnesota Extension")
WATER_WARM = source(Grade.A, "Water", "UF/IFAS Charlotte County", "2024")
WATER_BIG = source(Grade.B, "Watering larger new trees", "a nursery column")
WATER_WEEK = source(Grade.A, "Caring for your trees: proper watering", "Georgia Forestry Commission")
WATER_DRY = source(Grade.A, "How much should I water my new tree?", "US Cooperative Extension (eXtension)")
ESTABLISHED = source(Grade.A, "Irrigating Landscape Plants (ENH857)", IFAS)
MULCH_TREES = source(
    Grade.B, "Tree planting, in the wording of the International Society of Arboriculture", "Trees Acadiana"
)
MULCH_CIRCLE = source(Grade.A, "Why compost is good mulch: 20 to 60 L a tree in a circle of 1 m", "WRAP")
RING = source(Grade.A, "Feeding and mulching fruit: a bare ring of 1 m in grass", "Royal Horticultural Society")
NO_FEED = source(Grade.C, "No fertiliser in the planting hole", "two fruit nurseries")
GRANT = source(Grade.A, "Planting new hedges (BN11): 1 November to 31 March", "UK Government, Countryside Stewardship")
SEASON = from_memory("container stock roots best when planted in autumn or spring")
COUNTS = source(Grade.C, "Plants a square foot by spacing", "three plant nurseries' charts")
HALF_IN = source(Grade.C, "End plants stand half a spacing in", "a hedge nursery's planting guide")
SLOPES = source(
    Grade.A, "Landscape handbook, chapter on planting densities: measure the sloped face", "Taylor & Francis"
)
BOOK = source(Grade.C, "Spacing by plant", "nurseries' planting guides")
