"""Who says so, for planting."""

from howto.model.reference import Grade, Reference, from_memory

IFAS = "University of Florida IFAS"
SPECIFICATION = Reference(title="Planting specification (ENH856)", publisher=IFAS, grade=Grade.A)
PROPER = Reference(title="Proper Tree Planting", publisher="UF/IFAS Okeechobee County", year="2006", grade=Grade.A)
NOT_DEEPER = Reference(title="Do not dig deeper than the ball", publisher=IFAS, grade=Grade.A)
SAUCER = Reference(
    title="GardenNotes 633: planting, the saucer-shaped hole", publisher="Colorado State University", grade=Grade.A
)
COUNCIL = Reference(title="Planting trees: up to three times the ball", publisher="Mid Ulster Council", grade=Grade.A)
BALL_DEPTH = Reference(title="Root ball depth, after ANSI Z60.1", publisher=IFAS, grade=Grade.A)
BALL_TEN = Reference(title="Root ball ten times the calliper", publisher="a tree nursery", grade=Grade.C)
BALL_CITY = Reference(
    title="Specification 02481: least root balls", publisher="City of Sunny Isles Beach", grade=Grade.A
)
BALL_TABLE = from_memory("ANSI Z60.1: a shade tree of 1 in calliper has a ball of 16 in, of 2 in 24, 3 in 32, 4 in 42")
BALL_WEIGHT = Reference(title="What root balls weigh", publisher="a tree nursery", grade=Grade.C)
LIFT = Reference(
    title="Lifting analysis worksheet: a load constant of 23 kg", publisher="NIOSH, United States", grade=Grade.B
)
CALLIPER = Reference(
    title="Water (where calliper is measured, citing ANSI Z60.1)",
    publisher="UF/IFAS Charlotte County",
    year="2024",
    grade=Grade.A,
)
ONE_SEASON = Reference(
    title="Stakes only if needed, and off after one growing season", publisher="Beatrice Daily Sun", grade=Grade.B
)
TWO_YEARS = Reference(title="Stakes no longer than two years", publisher="a nursery", grade=Grade.C)
LOW_STAKE = from_memory("a low stake holds a tree at about a third of its height")
FIRST_WATER = Reference(
    title="Proper Tree Planting: 10 to 20 US gal to settle and soak",
    publisher="UF/IFAS Okeechobee County",
    year="2006",
    grade=Grade.A,
)
WATER_COOL = Reference(title="How do I water my trees?", publisher="University of Minnesota Extension", grade=Grade.A)
WATER_WARM = Reference(title="Water", publisher="UF/IFAS Charlotte County", year="2024", grade=Grade.A)
WATER_BIG = Reference(title="Watering larger new trees", publisher="a nursery column", grade=Grade.B)
WATER_WEEK = Reference(
    title="Caring for your trees: proper watering", publisher="Georgia Forestry Commission", grade=Grade.A
)
WATER_DRY = Reference(
    title="How much should I water my new tree?", publisher="US Cooperative Extension (eXtension)", grade=Grade.A
)
ESTABLISHED = Reference(title="Irrigating Landscape Plants (ENH857)", publisher=IFAS, grade=Grade.A)
MULCH_TREES = Reference(
    title="Tree planting, in the wording of the International Society of Arboriculture",
    publisher="Trees Acadiana",
    grade=Grade.B,
)
MULCH_CIRCLE = Reference(
    title="Why compost is good mulch: 20 to 60 L a tree in a circle of 1 m", publisher="WRAP", grade=Grade.A
)
RING = Reference(
    title="Feeding and mulching fruit: a bare ring of 1 m in grass",
    publisher="Royal Horticultural Society",
    grade=Grade.A,
)
NO_FEED = Reference(title="No fertiliser in the planting hole", publisher="two fruit nurseries", grade=Grade.C)
GRANT = Reference(
    title="Planting new hedges (BN11): 1 November to 31 March",
    publisher="UK Government, Countryside Stewardship",
    grade=Grade.A,
)
SEASON = from_memory("container stock roots best when planted in autumn or spring")
COUNTS = Reference(title="Plants a square foot by spacing", publisher="three plant nurseries' charts", grade=Grade.C)
HALF_IN = Reference(
    title="End plants stand half a spacing in", publisher="a hedge nursery's planting guide", grade=Grade.C
)
SLOPES = Reference(
    title="Landscape handbook, chapter on planting densities: measure the sloped face",
    publisher="Taylor & Francis",
    grade=Grade.A,
)
BOOK = Reference(title="Spacing by plant", publisher="nurseries' planting guides", grade=Grade.C)
