"""The rules of safety over its own measures, in reading order."""

from howto.families.safety.measures import SafetyMeasures
from howto.model.family import Rule

RULES: tuple[Rule[SafetyMeasures], ...] = ()
EVERY: tuple[Rule[SafetyMeasures], ...] = ()
