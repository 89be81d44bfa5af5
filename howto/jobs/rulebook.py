"""Every rule there is, and the one that a name means."""

from dataclasses import dataclass
from difflib import get_close_matches
from typing import Any

from howto.check.claims import CLAIM_RULES
from howto.check.colours import COLOUR_RULES
from howto.check.common import COMMON_RULES
from howto.check.place import AUTHOR, WAIVER
from howto.check.shelf import SHELF_RULES
from howto.check.visit_words import VISIT_WORDS
from howto.check.visits import VISIT_RULES
from howto.compute.aftercare import TASK_RULES
from howto.families import FAMILIES
from howto.jobs.outputs import FIT_RULES
from howto.model.family import Rule
from howto.read.photo_rules import PHOTO_RULES
from howto.read.rulebook import FILE_RULES


@dataclass(frozen=True)
class RulesNamed:
    """The rules a name means; where there is none, a sentence that says so and names the nearest."""

    found: tuple[Rule[Any], ...] = ()
    sentence: str = ""


def rulebook() -> tuple[Rule[Any], ...]:
    """Return every rule, families in their order, then those of techniques, the shelf, visits, files and fit."""
    rules = [rule for each in FAMILIES for rule in (*each.rules, *each.every)]
    rules += [*COMMON_RULES, *CLAIM_RULES, WAIVER, *SHELF_RULES, *COLOUR_RULES, *VISIT_RULES, VISIT_WORDS, *TASK_RULES]
    rules += [*FILE_RULES, *PHOTO_RULES, *FIT_RULES]
    return tuple({rule.name: rule for rule in rules}.values())


def rules_named(name: str) -> RulesNamed:
    """Return the rule of that name, or every rule of that family, or what is nearest."""
    rules = rulebook()
    wanted = name.strip().casefold()
    found = tuple(rule for rule in rules if rule.name == wanted or rule.name.split(".")[0] == wanted)
    if found:
        return RulesNamed(found)
    names = [rule.name for rule in rules]
    near = [each for each in names if wanted in each][:3] or get_close_matches(wanted, names, n=3, cutoff=0.6)
    near = (
        near or [rule.name for rule in rules if wanted in AUTHOR.plain(f"{rule.statement} {rule.why}").casefold()][:3]
    )
    return RulesNamed(sentence=f"No rule is called `{name}`. Nearest: {', '.join(near) or 'none'}. All: howto why")
