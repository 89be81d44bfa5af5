"""Who says so, for safety; the country of each limit stands with it."""

from howto.model.reference import Grade, from_memory, source

# fmt: off
HSE = "Health and Safety Executive, United Kingdom"
# -- noise --
REL = source(
    Grade.B, "Noise: recommended exposure limit and exchange rate", "NIOSH, United States",
    place="85 dB(A) for 8 h, 3 dB; read in a copy of its topic page")
TIME_TABLE = source(
    Grade.B, "Criteria for a recommended standard: occupational noise exposure (98-126)", "NIOSH, United States",
    place="exposure table, as an engineering handbook reprints it")
AVERAGE = source(Grade.B, "Criteria document, revised draft: TWA = 10 log(D/100) + 85", "NIOSH, United States", "1996")
EU_NOISE = source(
    Grade.B, "Directive 2003/10/EC, article 3", "European Union",
    place="80 and 85 dB(A) action, 87 limit inside the protector; bilingual text")
EU_ENERGY = source(
    Grade.A, "Equal-energy levels for Directive 2003/10/EC, table 3", "European Commission, SCENIHR", "2008")
FIVE_DB = source(Grade.A, "WAC 296-307-63415, dose equations, 5 dB from 90", "State of Washington, United States")
GROUNDS_NOISE = source(
    Grade.A, "Assessment of occupational noise exposure among groundskeepers",
    "Environmental Health Insights 10, Balanay, Kearney and Mannarino", "2016",
    "76 to 109 dB(A), 82 % of tools above 85")
OPERATOR_NOISE = source(
    Grade.A, "Lawn-maintenance equipment noise at the operator's ear",
    "Acoustical Society of America, Lepley and Bruce", "1994", "82 to 102 dB(A), electric trimmers and blowers included")
CEILING_DB = from_memory("NIOSH 98-126: no noise at all over 140 dB(A) without protection")
MUFFS = from_memory("EN 458 and the Health and Safety Executive's L108: level less SNR, with 4 dB lost in real wear")
# -- vibration --
RECKONER = source(
    Grade.A, "Hand-arm vibration exposure ready-reckoner", HSE, "2009", "100 points action value, 400 limit value")
A8 = source(Grade.B, "OC 246/31: A(8) and how tools combine", HSE, place="read in a copy")
EU_VIBRATION = source(
    Grade.B, "Directive 2002/44/EC, article 3", "European Union", place="2.5 m/s² action, 5 m/s² limit, A(8)")
POINTS = source(Grade.C, "Points an hour = 2a²", "an acoustics consultancy on the HSE points system")
TRIMMER_VIBRATION = source(
    Grade.A, "RR894: Horticultural machinery, part 2, hedge trimmers", HSE, "2011",
    "three of four shook more in use than declared")
# -- lifting --
WORKSHEET = source(
    Grade.B, "Lifting analysis worksheet, multiplier tables 1 to 5", "NIOSH, United States",
    place="load constant 23 kg (51 lb); read in a copy")
CCOHS_LIFT = source(
    Grade.A, "NIOSH lifting equation: horizontal distance", "Canadian Centre for Occupational Health and Safety")
EQUATION = from_memory(
    "Applications manual for the revised NIOSH lifting equation, DHHS (NIOSH) 94-110, 1994: formulas, grip and lifting index")
GUIDELINES = from_memory("Health and Safety Executive, L23 and INDG143: guideline weights by height and reach")
WAIST = source(
    Grade.C, "Manual handling: 25 kg for a man at waist height, close to the body",
    "a safety page on the HSE guideline", "2012")
# -- height --
WA_LADDER = source(
    Grade.A, "Occupational Safety and Health Regulations 1996, reg. 3.26", "Western Australia",
    place="foot at a quarter of the working length, 900 mm past a landing")
NZ_LADDER = source(
    Grade.A, "Level: ladders", "BRANZ, New Zealand", "2022", "1 m out for 4 m of height, 1 m above the level reached")
ALBERTA_LADDER = source(
    Grade.A, "OHS Code 2009, s. 136", "Alberta, Canada",
    place="foot at most a quarter of the height out, rails 1 m past a landing")
US_LADDER = source(
    Grade.B, "Letter of 22 December 2005 on 29 CFR 1926.1053(b)(1)", "OSHA, United States", "2005",
    "0.9 m past a landing; read in a copy")
US_FOOT = from_memory("29 CFR 1926.1053(b)(5): foot out about a quarter of the working length")
DK_LADDER = source(
    Grade.A, "Advice on setting up ladders", "Danish construction safety body",
    place="75 degrees is always right, 1 m past the access point")
UK_LADDER = from_memory("Health and Safety Executive, INDG455: 75 degrees, one out for four up")
UK_LANDING = from_memory("Health and Safety Executive, INDG455: three rungs, about 1 m, past a landing")
UK_SHORT = from_memory("Health and Safety Executive, INDG455: up to 30 min at a time and 10 kg from a leaning ladder")
THREE_POINTS = source(
    Grade.B, "Safe use of ladders and stepladders (INDG402)", HSE,
    place="three points of contact, no over-reaching; read in a copy")
VICTORIA_FALLS = source(
    Grade.A, "Using portable ladders in the workplace", "WorkSafe Victoria, Australia",
    place="falls over 2 m: ground first, ladder last")
NZ_FALLS = source(
    Grade.A, "Working at height: best practice", "WorkSafe New Zealand",
    place="over half of falls are from under 3 m, most from ladders and roofs")
ANGLES = source(
    Grade.A, "One in four by height 75.96°, by length 75.5°, and 75° flat", "arithmetic of the three published rules",
    place="74 to 77° holds all three")
YARD_TOOLS = source(
    Grade.B, "Lawn care safety: yard-tool advice of the Consumer Product Safety Commission, United States",
    "Grayslake Fire District",
    place="both feet on the ground; unplug, or take off the spark-plug lead, before clearing a jam")
# -- power lines --
NZ_LINES = source(
    Grade.A, "Working near low-voltage overhead electric lines", "WorkSafe New Zealand",
    place="4 m, or 0.5 m with written consent")
QLD_LINES = source(
    Grade.A, "Exclusion zones and safety legislation", "Ergon Energy, Queensland, Australia",
    place="untrained: 3 m to 132 kV, 6 m to 330 kV")
QLD_PLANTS = source(
    Grade.A, "Clearing vegetation", "WorkSafe Queensland, Australia",
    place="no work where any part of the plant is in the zone, or could fall or blow in")
VIC_LINES = source(
    Grade.C, "No-go zone rules of Victoria, Australia", "a trainer's summary",
    place="poles 3 and 6.4 m, towers 8 and 10 m")
# -- heat, sun, drink --
HEAT_INDEX = source(Grade.A, "The heat index equation (SR 90-23)", "National Weather Service, United States")
HEAT_CHART = source(
    Grade.A, "Heat index chart and categories", "National Weather Service, Tulsa, United States",
    place="danger from 105 °F; the damp-heat addition left out")
HEAT_BANDS = source(
    Grade.C, "What is the heat index, quoting the National Weather Service", "a weather page", "2015",
    "danger from 103 °F; full sun adds up to 15 °F")
DRINK = source(
    Grade.B, "Hydrating in the heat: how much water, quoting NIOSH", "Occupational Health & Safety", "2023",
    "8 fl oz every 15 to 20 min")
DRINK_CEILING = source(Grade.C, "No more than 48 fl oz an hour, quoting NIOSH", "a general page")
CARRY = source(
    Grade.A, "Stopping for water keeps you going", "Customs and Border Protection, United States", "2024",
    "carry 1 to 1.5 L an hour")
HEAT_STRESS = source(
    Grade.A, "Technical Manual, section III, chapter 4: heat stress", "OSHA, United States", "2017",
    "heat can matter above 70 °F (21 °C) at moderate work")
WBGT = from_memory("ISO 7243: wet-bulb globe temperature")
UV = source(
    Grade.A, "Use the UV index to protect yourself from sun damage", "Sydney North Health Network, Australia",
    place="protect from 3 up")
UV_WORKERS = source(Grade.C, "Outdoor workers protect all year, citing Cancer Council Australia", "a skin clinic")
# -- chemicals and health --
LABEL = source(
    Grade.A, "Pesticide label: use against the label breaks federal law; nobody unprotected while it is applied",
    "City of South Bend, United States, public records")
LABEL_TRAINING = source(
    Grade.A, "Pesticide label review training, module 3", "Environmental Protection Agency, United States",
    place="category III: 12 h; long sleeves and trousers, socks and shoes")
ENTRY = source(Grade.A, "40 CFR 156.208, restricted-entry statements", "United States", "2007")
ENTRY_OTHERS = from_memory(
    "40 CFR 156.208: 48 h for category I, 24 h for II, 72 h for I in dry areas with a cholinesterase inhibitor")
CATEGORIES = source(
    Grade.A, "40 CFR 156.62, toxicity categories", "United States", "2014", "I is the most toxic of four")
LEGIONELLA = source(
    Grade.A, "Legionella and potting mix", "NSW Health, Australia", "2018",
    "mask and gloves before opening; open away from the face; wet down; wash hands")
LEGIONELLA_WORK = source(
    Grade.A, "Legionella risks from work with potting mix and compost", "WorkSafe Queensland, Australia")
LEGIONELLA_STEPS = source(
    Grade.A, "Legionnaires' disease: six steps", "Southern District Health Board and WellSouth, New Zealand")
TETANUS = source(
    Grade.A, "Tetanus vaccination after a wound", "Merck Manual",
    place="over 10 years for a clean wound, over 5 for a dirty one")
PRUNERS = source(
    Grade.A, "How do I sanitize my pruners to prevent the spread of disease?", "Iowa State University Extension",
    place="1 + 9 bleach, 10 min, used within 2 h; 70 % alcohol, not for fire blight")
PRUNERS_ARIZONA = source(
    Grade.A, "Sanitizing pruning tools", "University of Arizona Cooperative Extension", "2018",
    "2 to 5 min between trees")
PRUNERS_MINNESOTA = source(
    Grade.A, "Back to bleach to keep pruning tools clean", "University of Minnesota Extension", "2015",
    "alcohol kills some fire blight and not all")
# -- engines, saws, batteries --
ENGINES = source(
    Grade.A, "AEX-892.2.70: small engine safety", "Ohio State University Extension", "2018",
    "never fuel a hot engine; start in open air")
CHAINSAW = source(
    Grade.A, "Logging e-tool on 29 CFR 1910.266: chain-saw operation", "OSHA, United States",
    place="start 3 m (10 ft) from where it was fuelled; chain brake on; no drop start")
CHAINSAW_QUEBEC = source(
    Grade.A, "S-2.1, r. 4, s. 3.10.16, chain saws", "Québec, Canada",
    place="over 3 m from the filling point; two hands; not above the shoulder")
CHARGING = source(
    Grade.A, "Lithium-ion batteries", "Fire Administration, United States",
    place="charge from 0 to 40 °C (32 to 105 °F)")
# -- what to wear --
GLOVES = source(Grade.C, "EN 388:2016 + A1:2018, level tables", "a glove maker")
GLOVES_THORNS = from_memory("note to EN 388: a puncture level does not mean safe against needles or thorns")
EYES = source(
    Grade.C, "EN 166 marking guide", "a maker of protective equipment",
    place="S 12, F 45, B 120, A 190 m/s; B on goggles and shields, A on shields alone")
MESH = from_memory("EN 1731: mesh keeps off no splash and no dust")
EARS = source(
    Grade.C, "EN 352, parts 1 to 3", "a catalogue of protective equipment", place="muffs, plugs, muffs on helmets")
SAW_LEGS = source(Grade.C, "EN ISO 11393-2 classes", "a workwear maker", place="class 1: 20, 2: 24, 3: 28 m/s")
SAW_OTHERS = from_memory(
    "EN ISO 11393-4 gloves, -5 gaiters, -6 upper body; EN ISO 17249 boots; EN 397 and EN 12492 helmets; EN ISO 374 chemical gloves")
CLIPPING_EYES = from_memory("trade practice: EN 166 F with side cover for clipping, B for brush cutting")
DUST_MASK = from_memory("EN 149: FFP2 half mask against dust")
