"""Who says so, for watering."""

from howto.model.reference import Grade, from_memory, source

PAPER = "Crop evapotranspiration (Irrigation and Drainage Paper 56)"
FAO56 = source(Grade.B, PAPER, "FAO", "1998", "chapters 2 to 4; read in reprints of its worked examples")
FAO56_SOIL = source(Grade.A, PAPER, "FAO", "1998", "chapter 8")
FAO56_TABLES = source(Grade.B, PAPER, "FAO", "1998", "tables 12 and 22, as transcribed by USDA-ARS")
HARGREAVES = from_memory("FAO Irrigation and Drainage Paper 56, 1998, equation 52")
USUAL_DEPLETION = from_memory("FAO Irrigation and Drainage Paper 56, 1998: p of about 0.5 for many plants")
LANDSCAPE = source(Grade.A, "Salt management guide: KL = ks x kd x kmc", "University of California authors")
SPECIES_FACTORS = source(Grade.B, "Species factors for garden plants", "Sacramento-area stormwater partnership")
DENSITY_FACTORS = from_memory(
    "A Guide to Estimating Irrigation Water Needs of Landscape Plantings, UCCE and DWR, 2000: density and microclimate"
)
EFFICIENCY = source(
    Grade.A, "Water-efficient landscape worksheet, appendix B", "City of Gridley", "2015", "0.75 spray, 0.81 drip"
)
HAND_EFFICIENCY = from_memory("water from a hose or can at the stem reaches the roots to about 0.9")
TO_LITRES = "Converting readily available water to litres for drip irrigation"
LITRE_A_MM = source(Grade.A, TO_LITRES, "DPIRD Western Australia")
DRIP_TIME = source(Grade.A, TO_LITRES, "DPIRD Western Australia", place="worked irrigation times")
SOIL_WATER = source(Grade.B, "Soil water characteristics by texture", "Saxton and Rawls", "2006", "as reproduced")
SOIL_WATER_CLAY = source(Grade.A, "Soil moisture table after Israelsen, 1932", "New Mexico State University")
INTAKE = source(
    Grade.B,
    "Training manual, annex on infiltration: steady intake by soil",
    "FAO",
    place="as quoted; the lowest of three published tables",
)
SOAK = source(
    Grade.B,
    "How fast soil drinks: town practice on clay, two or three short cycles",
    "a town water department and a university extension page",
    place="0.10 in/h, 6 min at a time; 30 to 60 min between starts",
)
HUNG = source(Grade.B, "How long can you irrigate without runoff?", "a trade article by an author of Cal Poly Pomona")
SPRINKLER_RATE = source(Grade.A, "Sprinkler precipitation rate", "Klickitat Public Utility District")
UNIFORMITY = source(Grade.A, "Overhead sprinkler uniformity", "University of Florida")
QUARTER = source(
    Grade.A, "Distribution uniformity reference page, after Keller and Bliesner 2000", "NC State University"
)
STRICT = from_memory("run time over DU, so that the dry quarter gets the whole depth")
SOFT = from_memory("Irrigation Association: run time over 0.4 + 0.6 DU")
NEW_TREES = source(Grade.A, "How do I water my trees?", "University of Minnesota Extension")
NEW_TREES_WARM = source(Grade.A, "Water", "UF/IFAS Charlotte County", "2024")
BIG_TREES_WARM = source(Grade.B, "Watering larger new trees", "a nursery column")
ESTABLISHED = source(
    Grade.A,
    "Irrigating Landscape Plants (ENH857)",
    "University of Florida IFAS",
    place="3 to 4 months per inch of calliper where it is warm",
)
DEEP = source(Grade.A, "Watering trees in a drought", "Wisconsin DNR urban forestry", "2021", "at least 6 in deep")
CHECK_FIRST = source(
    Grade.A,
    "How much should I water my new tree?",
    "US Cooperative Extension",
    place="check the soil first; too much drowns trees",
)
WETTED_WIDTH = from_memory("a dripper of about 2 L/h wets sand some 0.3 m across, loam 0.6 m, clay 0.9 m")
BALL = source(Grade.C, "Root ball ten times the calliper", "a tree nursery")
BALL_DEPTH = source(
    Grade.A,
    "Root ball depth, after ANSI Z60.1",
    "University of Florida IFAS",
    place="75 % of a width under 500 mm; larger balls are flatter",
)
BACKFLOW = from_memory("a tap that feeds a garden line has a backflow preventer, as most water suppliers ask")
COOL_HOURS = from_memory("water given early in the day loses least to sun and wind, and leaves dry before night")
