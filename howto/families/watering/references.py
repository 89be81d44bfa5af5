"""Who says so, for watering."""

from howto.model.reference import Grade, Reference, from_memory

FAO56 = Reference(
    title="Crop evapotranspiration (Irrigation and Drainage Paper 56)",
    publisher="FAO",
    year="1998",
    place="chapters 2 to 4; read in reprints of its worked examples",
    grade=Grade.B,
)
FAO56_SOIL = Reference(
    title="Crop evapotranspiration (Irrigation and Drainage Paper 56)",
    publisher="FAO",
    year="1998",
    place="chapter 8",
    grade=Grade.A,
)
FAO56_TABLES = Reference(
    title="Crop evapotranspiration (Irrigation and Drainage Paper 56)",
    publisher="FAO",
    year="1998",
    place="tables 12 and 22, as transcribed by USDA-ARS",
    grade=Grade.B,
)
HARGREAVES = from_memory("FAO Irrigation and Drainage Paper 56, 1998, equation 52")
LANDSCAPE = Reference(
    title="Salt management guide: KL = ks x kd x kmc",
    publisher="University of California authors",
    grade=Grade.A,
)
SPECIES_FACTORS = Reference(
    title="Species factors for garden plants",
    publisher="Sacramento-area stormwater partnership",
    grade=Grade.B,
)
DENSITY_FACTORS = from_memory(
    "A Guide to Estimating Irrigation Water Needs of Landscape Plantings, UCCE and DWR, 2000: density and microclimate"
)
EFFICIENCY = Reference(
    title="Water-efficient landscape worksheet, appendix B",
    publisher="City of Gridley",
    year="2015",
    place="0.75 spray, 0.81 drip",
    grade=Grade.A,
)
HAND_EFFICIENCY = from_memory("water from a hose or can at the stem reaches the roots to about 0.9")
LITRE_A_MM = Reference(
    title="Converting readily available water to litres for drip irrigation",
    publisher="DPIRD Western Australia",
    grade=Grade.A,
)
DRIP_TIME = Reference(
    title="Converting readily available water to litres for drip irrigation",
    publisher="DPIRD Western Australia",
    place="worked irrigation times",
    grade=Grade.A,
)
SOIL_WATER = Reference(
    title="Soil water characteristics by texture",
    publisher="Saxton and Rawls",
    year="2006",
    place="as reproduced",
    grade=Grade.B,
)
SOIL_WATER_CLAY = Reference(
    title="Soil moisture table after Israelsen, 1932",
    publisher="New Mexico State University",
    grade=Grade.A,
)
INTAKE = Reference(
    title="Training manual, annex on infiltration: steady intake by soil",
    publisher="FAO",
    place="as quoted; the lowest of three published tables",
    grade=Grade.B,
)
SOAK = Reference(
    title="How fast soil drinks: town practice on clay, two or three short cycles",
    publisher="a town water department and a university extension page",
    place="0.10 in/h, 6 min at a time; 30 to 60 min between starts",
    grade=Grade.B,
)
HUNG = Reference(
    title="How long can you irrigate without runoff?",
    publisher="a trade article by an author of Cal Poly Pomona",
    grade=Grade.B,
)
SPRINKLER_RATE = Reference(
    title="Sprinkler precipitation rate", publisher="Klickitat Public Utility District", grade=Grade.A
)
UNIFORMITY = Reference(
    title="Overhead sprinkler uniformity",
    publisher="University of Florida",
    grade=Grade.A,
)
QUARTER = Reference(
    title="Distribution uniformity reference page, after Keller and Bliesner 2000",
    publisher="NC State University",
    grade=Grade.A,
)
STRICT = from_memory("run time over DU, so that the dry quarter gets the whole depth")
SOFT = from_memory("Irrigation Association: run time over 0.4 + 0.6 DU")
NEW_TREES = Reference(
    title="How do I water my trees?",
    publisher="University of Minnesota Extension",
    grade=Grade.A,
)
NEW_TREES_WARM = Reference(
    title="Water",
    publisher="UF/IFAS Charlotte County",
    year="2024",
    grade=Grade.A,
)
BIG_TREES_WARM = Reference(
    title="Watering larger new trees",
    publisher="a nursery column",
    grade=Grade.B,
)
ESTABLISHED = Reference(
    title="Irrigating Landscape Plants (ENH857)",
    publisher="University of Florida IFAS",
    place="3 to 4 months per inch of calliper where it is warm",
    grade=Grade.A,
)
DEEP = Reference(
    title="Watering trees in a drought",
    publisher="Wisconsin DNR urban forestry",
    year="2021",
    place="at least 6 in deep",
    grade=Grade.A,
)
CHECK_FIRST = Reference(
    title="How much should I water my new tree?",
    publisher="US Cooperative Extension",
    place="check the soil first; too much drowns trees",
    grade=Grade.A,
)
WETTED_WIDTH = from_memory("a dripper of about 2 L/h wets sand some 0.3 m across, loam 0.6 m, clay 0.9 m")
BALL = Reference(title="Root ball ten times the calliper", publisher="a tree nursery", grade=Grade.C)
BALL_DEPTH = Reference(
    title="Root ball depth, after ANSI Z60.1",
    publisher="University of Florida IFAS",
    place="75 % of a width under 500 mm; larger balls are flatter",
    grade=Grade.A,
)
BACKFLOW = from_memory("a tap that feeds a garden line has a backflow preventer, as most water suppliers ask")
COOL_HOURS = from_memory("water given early in the day loses least to sun and wind, and leaves dry before night")
USUAL_DEPLETION = from_memory("FAO Irrigation and Drainage Paper 56, 1998: p of about 0.5 for many plants")
