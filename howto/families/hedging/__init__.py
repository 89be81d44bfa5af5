"""Hedging: young hedges thickened, hedges trimmed to a taper, old ones renovated."""

from howto.families.hedging.diagram import drawings
from howto.families.hedging.figures import figures
from howto.families.hedging.measures import HedgingMeasures
from howto.families.hedging.rules import RULES
from howto.model.family import BLADED_CAUTION, BLADED_TOOLS, Family

FAMILY = Family(
    name="hedging",
    title="Hedging",
    about="Hedges from planting to line: shoots doubled, height gained, taper, staged cuts, nests and the next cut.",
    measures=HedgingMeasures,
    figures=figures,
    rules=RULES,
    drawings=drawings,
    starter=(
        ("job", "trim"),
        ("finished height", "1.6 m"),
        ("standing height", "1.75 m"),
        ("base width", "700 mm"),
        ("top width", "500 mm"),
        ("standing base width", "800 mm"),
        ("standing top width", "600 mm"),
    ),
    tags=("hedge", "hedging"),
    tools=BLADED_TOOLS,
    caution=BLADED_CAUTION,
)
