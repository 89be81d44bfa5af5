"""Who says so, for safety; the country of each limit stands with it."""

from howto.model.reference import Grade, Reference, from_memory

HSE = "Health and Safety Executive, United Kingdom"
# -- noise --
REL = Reference(
    title="Noise: recommended exposure limit and exchange rate",
    publisher="NIOSH, United States",
    place="85 dB(A) for 8 h, 3 dB; read in a copy of its topic page",
    grade=Grade.B,
)
TIME_TABLE = Reference(
    title="Criteria for a recommended standard: occupational noise exposure (98-126)",
    publisher="NIOSH, United States",
    place="exposure table, as an engineering handbook reprints it",
    grade=Grade.B,
)
AVERAGE = Reference(
    title="Criteria document, revised draft: TWA = 10 log(D/100) + 85",
    publisher="NIOSH, United States",
    year="1996",
    grade=Grade.B,
)
EU_NOISE = Reference(
    title="Directive 2003/10/EC, article 3",
    publisher="European Union",
    place="80 and 85 dB(A) action, 87 limit inside the protector; bilingual text",
    grade=Grade.B,
)
EU_ENERGY = Reference(
    title="Equal-energy levels for Directive 2003/10/EC, table 3",
    publisher="European Commission, SCENIHR",
    year="2008",
    grade=Grade.A,
)
FIVE_DB = Reference(
    title="WAC 296-307-63415, dose equations, 5 dB from 90",
    publisher="State of Washington, United States",
    grade=Grade.A,
)
GROUNDS_NOISE = Reference(
    title="Assessment of occupational noise exposure among groundskeepers",
    publisher="Environmental Health Insights 10, Balanay, Kearney and Mannarino",
    year="2016",
    place="76 to 109 dB(A), 82 % of tools above 85",
    grade=Grade.A,
)
OPERATOR_NOISE = Reference(
    title="Lawn-maintenance equipment noise at the operator's ear",
    publisher="Acoustical Society of America, Lepley and Bruce",
    year="1994",
    place="82 to 102 dB(A), electric trimmers and blowers included",
    grade=Grade.A,
)
CEILING_DB = from_memory("NIOSH 98-126: no noise at all over 140 dB(A) without protection")
MUFFS = from_memory("EN 458 and the Health and Safety Executive's L108: level less SNR, with 4 dB lost in real wear")
# -- vibration --
RECKONER = Reference(
    title="Hand-arm vibration exposure ready-reckoner",
    publisher=HSE,
    year="2009",
    place="100 points action value, 400 limit value",
    grade=Grade.A,
)
A8 = Reference(title="OC 246/31: A(8) and how tools combine", publisher=HSE, place="read in a copy", grade=Grade.B)
EU_VIBRATION = Reference(
    title="Directive 2002/44/EC, article 3",
    publisher="European Union",
    place="2.5 m/s² action, 5 m/s² limit, A(8)",
    grade=Grade.B,
)
POINTS = Reference(
    title="Points an hour = 2a²", publisher="an acoustics consultancy on the HSE points system", grade=Grade.C
)
TRIMMER_VIBRATION = Reference(
    title="RR894: Horticultural machinery, part 2, hedge trimmers",
    publisher=HSE,
    year="2011",
    place="three of four shook more in use than declared",
    grade=Grade.A,
)
# -- lifting --
WORKSHEET = Reference(
    title="Lifting analysis worksheet, multiplier tables 1 to 5",
    publisher="NIOSH, United States",
    place="load constant 23 kg (51 lb); read in a copy",
    grade=Grade.B,
)
CCOHS_LIFT = Reference(
    title="NIOSH lifting equation: horizontal distance",
    publisher="Canadian Centre for Occupational Health and Safety",
    grade=Grade.A,
)
EQUATION = from_memory(
    "Applications manual for the revised NIOSH lifting equation, DHHS (NIOSH) 94-110, 1994: formulas, grip and lifting index"
)
GUIDELINES = from_memory("Health and Safety Executive, L23 and INDG143: guideline weights by height and reach")
WAIST = Reference(
    title="Manual handling: 25 kg for a man at waist height, close to the body",
    publisher="a safety page on the HSE guideline",
    year="2012",
    grade=Grade.C,
)
# -- height --
WA_LADDER = Reference(
    title="Occupational Safety and Health Regulations 1996, reg. 3.26",
    publisher="Western Australia",
    place="foot at a quarter of the working length, 900 mm past a landing",
    grade=Grade.A,
)
NZ_LADDER = Reference(
    title="Level: ladders",
    publisher="BRANZ, New Zealand",
    year="2022",
    place="1 m out for 4 m of height, 1 m above the level reached",
    grade=Grade.A,
)
ALBERTA_LADDER = Reference(
    title="OHS Code 2009, s. 136",
    publisher="Alberta, Canada",
    place="foot at most a quarter of the height out, rails 1 m past a landing",
    grade=Grade.A,
)
US_LADDER = Reference(
    title="Letter of 22 December 2005 on 29 CFR 1926.1053(b)(1)",
    publisher="OSHA, United States",
    year="2005",
    place="0.9 m past a landing; read in a copy",
    grade=Grade.B,
)
US_FOOT = from_memory("29 CFR 1926.1053(b)(5): foot out about a quarter of the working length")
DK_LADDER = Reference(
    title="Advice on setting up ladders",
    publisher="Danish construction safety body",
    place="75 degrees is always right, 1 m past the access point",
    grade=Grade.A,
)
UK_LADDER = from_memory("Health and Safety Executive, INDG455: 75 degrees, one out for four up")
UK_LANDING = from_memory("Health and Safety Executive, INDG455: three rungs, about 1 m, past a landing")
UK_SHORT = from_memory("Health and Safety Executive, INDG455: up to 30 min at a time and 10 kg from a leaning ladder")
THREE_POINTS = Reference(
    title="Safe use of ladders and stepladders (INDG402)",
    publisher=HSE,
    place="three points of contact, no over-reaching; read in a copy",
    grade=Grade.B,
)
VICTORIA_FALLS = Reference(
    title="Using portable ladders in the workplace",
    publisher="WorkSafe Victoria, Australia",
    place="falls over 2 m: ground first, ladder last",
    grade=Grade.A,
)
NZ_FALLS = Reference(
    title="Working at height: best practice",
    publisher="WorkSafe New Zealand",
    place="over half of falls are from under 3 m, most from ladders and roofs",
    grade=Grade.A,
)
ANGLES = Reference(
    title="One in four by height 75.96°, by length 75.5°, and 75° flat",
    publisher="arithmetic of the three published rules",
    place="74 to 77° holds all three",
    grade=Grade.A,
)
YARD_TOOLS = Reference(
    title="Lawn care safety: yard-tool advice of the Consumer Product Safety Commission, United States",
    publisher="Grayslake Fire District",
    place="both feet on the ground; unplug, or take off the spark-plug lead, before clearing a jam",
    grade=Grade.B,
)
# -- power lines --
NZ_LINES = Reference(
    title="Working near low-voltage overhead electric lines",
    publisher="WorkSafe New Zealand",
    place="4 m, or 0.5 m with written consent",
    grade=Grade.A,
)
QLD_LINES = Reference(
    title="Exclusion zones and safety legislation",
    publisher="Ergon Energy, Queensland, Australia",
    place="untrained: 3 m to 132 kV, 6 m to 330 kV",
    grade=Grade.A,
)
QLD_PLANTS = Reference(
    title="Clearing vegetation",
    publisher="WorkSafe Queensland, Australia",
    place="no work where any part of the plant is in the zone, or could fall or blow in",
    grade=Grade.A,
)
VIC_LINES = Reference(
    title="No-go zone rules of Victoria, Australia",
    publisher="a trainer's summary",
    place="poles 3 and 6.4 m, towers 8 and 10 m",
    grade=Grade.C,
)
# -- heat, sun, drink --
HEAT_INDEX = Reference(
    title="The heat index equation (SR 90-23)", publisher="National Weather Service, United States", grade=Grade.A
)
HEAT_CHART = Reference(
    title="Heat index chart and categories",
    publisher="National Weather Service, Tulsa, United States",
    place="danger from 105 °F; the damp-heat addition left out",
    grade=Grade.A,
)
HEAT_BANDS = Reference(
    title="What is the heat index, quoting the National Weather Service",
    publisher="a weather page",
    year="2015",
    place="danger from 103 °F; full sun adds up to 15 °F",
    grade=Grade.C,
)
DRINK = Reference(
    title="Hydrating in the heat: how much water, quoting NIOSH",
    publisher="Occupational Health & Safety",
    year="2023",
    place="8 fl oz every 15 to 20 min",
    grade=Grade.B,
)
DRINK_CEILING = Reference(
    title="No more than 48 fl oz an hour, quoting NIOSH", publisher="a general page", grade=Grade.C
)
CARRY = Reference(
    title="Stopping for water keeps you going",
    publisher="Customs and Border Protection, United States",
    year="2024",
    place="carry 1 to 1.5 L an hour",
    grade=Grade.A,
)
HEAT_STRESS = Reference(
    title="Technical Manual, section III, chapter 4: heat stress",
    publisher="OSHA, United States",
    year="2017",
    place="heat can matter above 70 °F (21 °C) at moderate work",
    grade=Grade.A,
)
WBGT = from_memory("ISO 7243: wet-bulb globe temperature")
UV = Reference(
    title="Use the UV index to protect yourself from sun damage",
    publisher="Sydney North Health Network, Australia",
    place="protect from 3 up",
    grade=Grade.A,
)
UV_WORKERS = Reference(
    title="Outdoor workers protect all year, citing Cancer Council Australia", publisher="a skin clinic", grade=Grade.C
)
# -- chemicals and health --
LABEL = Reference(
    title="Pesticide label: use against the label breaks federal law; nobody unprotected while it is applied",
    publisher="City of South Bend, United States, public records",
    grade=Grade.A,
)
LABEL_TRAINING = Reference(
    title="Pesticide label review training, module 3",
    publisher="Environmental Protection Agency, United States",
    place="category III: 12 h; long sleeves and trousers, socks and shoes",
    grade=Grade.A,
)
ENTRY = Reference(
    title="40 CFR 156.208, restricted-entry statements", publisher="United States", year="2007", grade=Grade.A
)
ENTRY_OTHERS = from_memory(
    "40 CFR 156.208: 48 h for category I, 24 h for II, 72 h for I in dry areas with a cholinesterase inhibitor"
)
CATEGORIES = Reference(
    title="40 CFR 156.62, toxicity categories",
    publisher="United States",
    year="2014",
    place="I is the most toxic of four",
    grade=Grade.A,
)
LEGIONELLA = Reference(
    title="Legionella and potting mix",
    publisher="NSW Health, Australia",
    year="2018",
    place="mask and gloves before opening; open away from the face; wet down; wash hands",
    grade=Grade.A,
)
LEGIONELLA_WORK = Reference(
    title="Legionella risks from work with potting mix and compost",
    publisher="WorkSafe Queensland, Australia",
    grade=Grade.A,
)
LEGIONELLA_STEPS = Reference(
    title="Legionnaires' disease: six steps",
    publisher="Southern District Health Board and WellSouth, New Zealand",
    grade=Grade.A,
)
TETANUS = Reference(
    title="Tetanus vaccination after a wound",
    publisher="Merck Manual",
    place="over 10 years for a clean wound, over 5 for a dirty one",
    grade=Grade.A,
)
PRUNERS = Reference(
    title="How do I sanitize my pruners to prevent the spread of disease?",
    publisher="Iowa State University Extension",
    place="1 + 9 bleach, 10 min, used within 2 h; 70 % alcohol, not for fire blight",
    grade=Grade.A,
)
PRUNERS_ARIZONA = Reference(
    title="Sanitizing pruning tools",
    publisher="University of Arizona Cooperative Extension",
    year="2018",
    place="2 to 5 min between trees",
    grade=Grade.A,
)
PRUNERS_MINNESOTA = Reference(
    title="Back to bleach to keep pruning tools clean",
    publisher="University of Minnesota Extension",
    year="2015",
    place="alcohol kills some fire blight and not all",
    grade=Grade.A,
)
# -- engines, saws, batteries --
ENGINES = Reference(
    title="AEX-892.2.70: small engine safety",
    publisher="Ohio State University Extension",
    year="2018",
    place="never fuel a hot engine; start in open air",
    grade=Grade.A,
)
CHAINSAW = Reference(
    title="Logging e-tool on 29 CFR 1910.266: chain-saw operation",
    publisher="OSHA, United States",
    place="start 3 m (10 ft) from where it was fuelled; chain brake on; no drop start",
    grade=Grade.A,
)
CHAINSAW_QUEBEC = Reference(
    title="S-2.1, r. 4, s. 3.10.16, chain saws",
    publisher="Québec, Canada",
    place="over 3 m from the filling point; two hands; not above the shoulder",
    grade=Grade.A,
)
CHARGING = Reference(
    title="Lithium-ion batteries",
    publisher="Fire Administration, United States",
    place="charge from 0 to 40 °C (32 to 105 °F)",
    grade=Grade.A,
)
# -- what to wear --
GLOVES = Reference(title="EN 388:2016 + A1:2018, level tables", publisher="a glove maker", grade=Grade.C)
GLOVES_THORNS = from_memory("note to EN 388: a puncture level does not mean safe against needles or thorns")
EYES = Reference(
    title="EN 166 marking guide",
    publisher="a maker of protective equipment",
    place="S 12, F 45, B 120, A 190 m/s; B on goggles and shields, A on shields alone",
    grade=Grade.C,
)
MESH = from_memory("EN 1731: mesh keeps off no splash and no dust")
EARS = Reference(
    title="EN 352, parts 1 to 3",
    publisher="a catalogue of protective equipment",
    place="muffs, plugs, muffs on helmets",
    grade=Grade.C,
)
SAW_LEGS = Reference(
    title="EN ISO 11393-2 classes", publisher="a workwear maker", place="class 1: 20, 2: 24, 3: 28 m/s", grade=Grade.C
)
SAW_OTHERS = from_memory(
    "EN ISO 11393-4 gloves, -5 gaiters, -6 upper body; EN ISO 17249 boots; EN 397 and EN 12492 helmets; EN ISO 374 chemical gloves"
)
CLIPPING_EYES = from_memory("trade practice: EN 166 F with side cover for clipping, B for brush cutting")
DUST_MASK = from_memory("EN 149: FFP2 half mask against dust")
