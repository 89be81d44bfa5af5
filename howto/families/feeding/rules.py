"""The rules of feeding, in reading order: the label, the tree, lawns and dates, and what the card says."""

from howto.families.feeding.measures import FeedingMeasures
from howto.families.feeding.rules_label import LABEL_RULES
from howto.families.feeding.rules_text import TEXT_RULES
from howto.families.feeding.rules_tree import TREE_RULES
from howto.families.feeding.rules_when import WHEN_RULES
from howto.model.family import Rule

RULES: tuple[Rule[FeedingMeasures], ...] = (*LABEL_RULES, *TREE_RULES, *WHEN_RULES, *TEXT_RULES)
