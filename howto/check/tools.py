"""Checks that a tool a step takes up is on the list of tools, with few false alarms."""

import re
from collections.abc import Iterator
from typing import Final

from howto.findings import Severity
from howto.languages.tags import is_english
from howto.model.family import Breach, Edit, rule
from howto.model.prose import plain
from howto.model.reference import PRACTICE
from howto.model.work import AnyWork

# A tool's name in a step, and the stems by which the list of tools or materials may call it. Only words that
# mean nothing else in a garden: no `rake`, `saw`, `fork` or `level`, which are also things one does or sees.
TOOLS: Final = (
    (r"shears", ("shear",)),
    (r"secateurs", ("secateur", "pruner")),
    (r"loppers", ("lopper",)),
    (r"pruning saw", ("saw",)),
    (r"chain ?saw", ("chainsaw", "chain saw")),
    (r"hedge ?(?:trimmer|cutter)", ("trimmer", "cutter")),
    (r"(?:line|string) trimmer", ("trimmer", "brushcutter")),
    (r"(?:lawn ?)?mower", ("mower",)),
    (r"(?:step ?)?ladder", ("ladder", "steps")),
    (r"wheelbarrow", ("barrow",)),
    (r"trowel", ("trowel",)),
    (r"spade", ("spade", "shovel")),
    (r"(?:garden|digging) fork", ("fork",)),
    (r"watering can", ("can",)),
    (r"hose", ("hose",)),
    (r"sprayer", ("sprayer", "knapsack")),
    (r"spirit level", ("level",)),
    (r"tape measure", ("tape",)),
)
_NEGATED: Final = re.compile(
    r"\b(?:no|not|never|without|instead|rather|than|avoid|cannot|nor|neither|don't|isn't|unless)\b"
)
_AS_A_MEASURE: Final = re.compile(r"(?:['’]s)?[\s-]*(?:deep|depth|wide|width|length)\b")


@rule(
    "technique.tools",
    Severity.ADVICE,
    PRACTICE,
    applies="techniques in English; tools with a name of their own, such as shears or a spade",
)
def tools(work: AnyWork) -> Iterator[Breach]:
    """A tool that a step takes up is on the list of tools.

    the list is what is loaded; a tool that is missing from it costs a walk back to the van
    """
    if not is_english(work.technique.language):
        return
    kit = " ".join(
        f"{each.name} {plain(each.note)}" for each in (*work.technique.tools, *work.technique.materials)
    ).casefold()
    told: set[str] = set()
    for at, step in enumerate(work.technique.steps):
        parts = (step.title, plain(step.text), *map(plain, step.key_points))
        for tool, stems in TOOLS:
            if tool in told or any(stem in kit for stem in stems):
                continue
            name = next((found for part in parts if (found := _taken_up(tool, part))), "")
            if not name:
                continue
            told.add(tool)
            yield Breach(
                field=f"steps[{at}]",
                what=f"step {at + 1} takes up the {name}, and the list of tools does not have it",
                why="a list that is complete saves a walk back to the van",
                mend=f"add under `## Tools` the line `- {name.capitalize()}`",
                edit=Edit(section="Tools", text=f"- {name.capitalize()}"),
            )


def _taken_up(tool: str, text: str) -> str:
    """Return the tool as a text names it, where the text means that it is used."""
    for found in re.finditer(rf"\b{tool}\b", text, re.IGNORECASE):
        before = re.split(r"[.;:!?]", text[: found.start()])[-1].casefold()
        if not _NEGATED.search(before) and not _AS_A_MEASURE.match(text, found.end()):
            return found[0].casefold()
    return ""
