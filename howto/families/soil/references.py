"""Who says so, for soil."""

from howto.model.reference import Grade, from_memory, source

VOLUME = source(Grade.A, "Fact sheet on mulch quantity", "Australian Broadcasting Corporation")
COMPOST_MULCH = source(Grade.A, "Why compost is good mulch", "WRAP")
COMPOST_BEDS = source(Grade.A, "Compost in new landscape beds (EM 9308)", "Oregon State University Extension")
COMPOST_DUG = source(Grade.B, "Using compost: in beds, on lawns and in made soil", "Michigan Recycling Coalition")
MULCH_TREES = source(
    Grade.B, "Tree planting, in the wording of the International Society of Arboriculture", "Trees Acadiana"
)
MULCH_TRUNKS = source(Grade.B, "Mulch round trees and shrubs, University of Florida column", "Orlando Sentinel")
MULCH_ROT = source(Grade.C, "Settled mulch over 150 mm risks root rot", "a mulch supplier")
WEIGHT = source(Grade.C, "Compost weighs 1,000 to 1,200 lb a cubic yard", "a composting works")
DILUTION = source(Grade.C, "One part compost to four of soil", "a compost maker")
LIME = source(Grade.A, "Gypsum and lime", "Iowa State University Extension", "2000")
PERCOLATION = source(Grade.A, "Percolation test, 300 mm hole", "University of California Statewide IPM Program")
DRAINAGE = source(Grade.A, "Drainage test, 450 mm hole", "University of Florida IFAS")
WET_SOIL = from_memory("soil worked wet or frozen loses its crumb")
