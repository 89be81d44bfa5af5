"""Rules true of every technique, whatever its trade."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any, Final

from howto.check import header
from howto.check.place import WAIVER
from howto.check.to_write import to_write
from howto.check.tools import tools
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, rule
from howto.model.prose import plain
from howto.model.reference import FORMAT, Grade, source
from howto.model.work import AnyWork

JOB_INSTRUCTION: Final = source(
    Grade.A, "Job Instruction: Sessions Outline and Reference Material", "War Manpower Commission", "1944"
)
JOB_INSTRUCTION_RESTATED: Final = source(
    Grade.B,
    "The TWI Workbook: Essential Skills for Supervisors, 2nd edition, on the Job Instruction breakdown",
    "CRC Press",
    "2016",
    "pp. 58 and 67",
)
CHECKLISTS: Final = source(Grade.B, "A Checklist for Checklists", "Project Check", "2010")
MOST_STEPS: Final = Limit(unit="", of="steps", reference=JOB_INSTRUCTION_RESTATED, high=7)
MOST_KEY_POINTS: Final = Limit(unit="", of="key points", reference=JOB_INSTRUCTION_RESTATED, high=5)
MOST_FINISH: Final = Limit(unit="", of="items", reference=CHECKLISTS, high=9)  # fewer than ten at one pause point


@rule("technique.cautions", Severity.ERROR, JOB_INSTRUCTION, JOB_INSTRUCTION_RESTATED, applies="every technique")
def cautions(work: AnyWork) -> Iterator[Breach]:
    """Every technique carries at least one caution.

    what could injure the worker or others is a key point of the job, and must reach whoever does it
    """
    if work.technique.cautions or "cautions" in work.technique.spans:
        return
    tool = work.technique.tools[0].name if work.technique.tools else work.technique.title
    line = f"- **{tool}.** Keep hands, feet and other people clear. → gloves"
    yield Breach(
        field="cautions",
        what="no cautions are written",
        why="a caution reaches everyone who could do this work, on the card, in the pictures and on the leaflet",
        mend=f"add under `## Cautions` a line for each thing that can hurt, such as `{line}`",
        edit=Edit(section="Cautions", text=line),
    )


@rule("technique.caution-words", Severity.WARNING, FORMAT, applies="techniques with cautions")
def caution_words(work: AnyWork) -> Iterator[Breach]:
    """A caution says how to keep from harm, or what to wear.

    the name of a danger alone tells nobody what to do
    """
    for at, caution in enumerate(work.technique.cautions):
        if not plain(caution.text).strip() and not caution.wear:
            yield Breach(
                field=f"cautions[{at}]",
                what=f"the caution `{caution.title}` names a danger and stops there",
                why="it does not say how to keep from it, nor what to wear",
                mend="write after it what to do, or an arrow and what to wear, such as `→ gloves`",
            )


@rule("technique.steps", Severity.WARNING, JOB_INSTRUCTION_RESTATED, JOB_INSTRUCTION, applies="every technique")
def steps(work: AnyWork) -> Iterator[Breach]:
    """A card has at most 7 steps.

    five to seven steps can be taught and kept at one go; longer work is split over cards
    """
    count = len(work.technique.steps)
    if MOST_STEPS.allows(count):
        return
    cards = -(-count // 7)
    first = -(-count // cards)
    yield Breach(
        field="steps[7]",
        what=f"{count} steps on one card",
        why=f"a breakdown that can be taught at one go has {MOST_STEPS}",
        mend=(
            f"split the card: keep steps 1 to {first} here and move steps {first + 1} to "
            f"{min(first * 2, count)} into a new file with `needs: [{work.technique.id}]`"
            + (", and so on" if cards > 2 else "")
        ),
    )


@rule(
    "technique.key-points", Severity.WARNING, JOB_INSTRUCTION_RESTATED, JOB_INSTRUCTION, applies="steps with key points"
)
def key_points(work: AnyWork) -> Iterator[Breach]:
    """A step has at most 5 key points.

    three to five key points are the most that one step can carry; a step with more is two steps
    """
    for at, step in enumerate(work.technique.steps):
        count = len(step.key_points)
        if not MOST_KEY_POINTS.allows(count):
            yield Breach(
                field=f"steps[{at}].key_points[5]",
                what=f"{count} key points in step {at + 1}",
                why=f"a learner keeps {MOST_KEY_POINTS} to a step",
                mend=f"split the step: {_split(count)}",
            )


def _split(count: int) -> str:
    """Return how so many key points go into steps of at most five."""
    steps = -(-count // 5)
    each = -(-count // steps)
    if steps == 2:
        return f"move key points {each + 1} to {count} into a step after it"
    return f"keep key points 1 to {each}, and move the others into {steps - 1} steps after it, at most {each} in each"


@rule("technique.reason", Severity.ADVICE, JOB_INSTRUCTION_RESTATED, JOB_INSTRUCTION, applies="steps with key points")
def reasons(work: AnyWork) -> Iterator[Breach]:
    """A step with key points gives a reason.

    the reason says why the key point holds; without it a learner drops the point when it is in the way
    """
    for at, step in enumerate(work.technique.steps):
        if step.key_points and not step.reasons:
            yield Breach(
                field=f"steps[{at}].key_points[0]",
                what=f"step {at + 1} has a key point and no reason",
                why="a learner keeps to a key point when they know why it holds",
                mend="add a line `- Reason: …` below the key point that says why it holds",
            )


@rule("technique.finish", Severity.WARNING, CHECKLISTS, applies="every technique")
def finish(work: AnyWork) -> Iterator[Breach]:
    """The finish list has at most 9 items.

    fewer than ten items, better five to nine, are gone through at one stop before corners are cut
    """
    count = len(work.technique.finish)
    if not MOST_FINISH.allows(count):
        yield Breach(
            field="finish[9]",
            what=f"{count} items to tick at the finish",
            why="a list gone through at one stop has fewer than ten items, or corners are cut",
            mend=f"take out {count - 9}: keep what is most easily missed and would not be caught later",
        )


COMMON_RULES: Final[tuple[Rule[Any], ...]] = (
    header.title,
    to_write,
    header.needs,
    header.pace,
    header.season,
    header.plants,
    replace(cautions, harm=True),
    replace(caution_words, harm=True),
    tools,
    steps,
    key_points,
    reasons,
    finish,
    WAIVER,
)
