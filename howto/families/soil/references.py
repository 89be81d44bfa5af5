"""Who says so, for soil."""

from howto.model.reference import Grade, Reference, from_memory

VOLUME = Reference(title="Fact sheet on mulch quantity", publisher="Australian Broadcasting Corporation", grade=Grade.A)
COMPOST_MULCH = Reference(title="Why compost is good mulch", publisher="WRAP", grade=Grade.A)
COMPOST_BEDS = Reference(
    title="Compost in new landscape beds (EM 9308)",
    publisher="Oregon State University Extension",
    grade=Grade.A,
)
COMPOST_DUG = Reference(
    title="Using compost: in beds, on lawns and in made soil",
    publisher="Michigan Recycling Coalition",
    grade=Grade.B,
)
MULCH_TREES = Reference(
    title="Tree planting, in the wording of the International Society of Arboriculture",
    publisher="Trees Acadiana",
    grade=Grade.B,
)
MULCH_TRUNKS = Reference(
    title="Mulch round trees and shrubs, University of Florida column",
    publisher="Orlando Sentinel",
    grade=Grade.B,
)
MULCH_ROT = Reference(title="Settled mulch over 150 mm risks root rot", publisher="a mulch supplier", grade=Grade.C)
WEIGHT = Reference(title="Compost weighs 1,000 to 1,200 lb a cubic yard", publisher="a composting works", grade=Grade.C)
DILUTION = Reference(title="One part compost to four of soil", publisher="a compost maker", grade=Grade.C)
LIME = Reference(title="Gypsum and lime", publisher="Iowa State University Extension", year="2000", grade=Grade.A)
PERCOLATION = Reference(
    title="Percolation test, 300 mm hole",
    publisher="University of California Statewide IPM Program",
    grade=Grade.A,
)
DRAINAGE = Reference(
    title="Drainage test, 450 mm hole",
    publisher="University of Florida IFAS",
    grade=Grade.A,
)
WET_SOIL = from_memory("soil worked wet or frozen loses its crumb")
