"""The rules of safety: over its own measures, and over techniques of every family."""

from typing import Any

from howto.families.safety.measures import SafetyMeasures
from howto.families.safety.rules_chemicals import CHEMICALS
from howto.families.safety.rules_exposure import EXPOSURE
from howto.families.safety.rules_height import HEIGHTS
from howto.families.safety.rules_lifting import LIFTS
from howto.families.safety.rules_machines import MACHINES
from howto.families.safety.rules_places import PLACES
from howto.families.safety.rules_plants import PLANTS
from howto.families.safety.rules_said import SAID
from howto.families.safety.rules_substances import SUBSTANCES
from howto.families.safety.rules_wear import WEARING
from howto.families.safety.rules_weather import WEATHER
from howto.model.family import Rule

RULES: tuple[Rule[SafetyMeasures], ...] = (*EXPOSURE, *LIFTS, *HEIGHTS, *WEATHER, *CHEMICALS, *WEARING)
EVERY: tuple[Rule[Any], ...] = (*MACHINES, *PLACES, *SUBSTANCES, *PLANTS, *SAID)
