"""Rules true of every technique, whatever its trade."""

from collections.abc import Iterator
from typing import Any, Final

from howto.check import header
from howto.check.place import WAIVER
from howto.check.to_write import to_write
from howto.check.tools import tools
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule
from howto.model.prose import plain
from howto.model.reference import FORMAT, PRACTICE, Grade, source
from howto.model.technique import AnyTechnique

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
MOST_STEPS: Final = Limit(unit="steps", reference=JOB_INSTRUCTION_RESTATED, high=7)
MOST_KEY_POINTS: Final = Limit(unit="key points", reference=JOB_INSTRUCTION_RESTATED, high=5)
MOST_FINISH: Final = Limit(unit="items", reference=CHECKLISTS, high=9)  # fewer than ten at one pause point


def _cautions(technique: AnyTechnique) -> Iterator[Breach]:
    """Every technique says what can hurt.

    A file without cautions is reported while it is read; this looks at techniques that came another way.
    """
    if technique.cautions or "cautions" in technique.spans:
        return
    tool = technique.tools[0].name if technique.tools else technique.title
    line = f"- **{tool}.** Keep hands, feet and other people clear. → gloves"
    yield Breach(
        field="cautions",
        what="no cautions are written",
        why="a caution reaches everyone who could do this work, on the card, in the pictures and on the leaflet",
        mend=f"add under `## Cautions` a line for each thing that can hurt, such as `{line}`",
        edit=Edit(section="Cautions", text=line),
    )


def _caution_words(technique: AnyTechnique) -> Iterator[Breach]:
    """A caution says how to keep from harm, or what to wear."""
    for at, caution in enumerate(technique.cautions):
        if not plain(caution.text).strip() and not caution.wear:
            yield Breach(
                field=f"cautions[{at}]",
                what=f"the caution `{caution.title}` names a danger and stops there",
                why="it does not say how to keep from it, nor what to wear",
                mend="write after it what to do, or an arrow and what to wear, such as `→ gloves`",
            )


def _steps(technique: AnyTechnique) -> Iterator[Breach]:
    """A card holds at most seven steps."""
    count = len(technique.steps)
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
            f"{min(first * 2, count)} into a new file with `needs: [{technique.id}]`"
            + (", and so on" if cards > 2 else "")
        ),
    )


def _key_points(technique: AnyTechnique) -> Iterator[Breach]:
    """A step has at most five key points."""
    for at, step in enumerate(technique.steps):
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


def _reasons(technique: AnyTechnique) -> Iterator[Breach]:
    """A step with key points says why."""
    for at, step in enumerate(technique.steps):
        if step.key_points and not step.reasons:
            yield Breach(
                field=f"steps[{at}].key_points[0]",
                what=f"step {at + 1} has a key point and no reason",
                why="a learner keeps to a key point when they know why it holds",
                mend="add a line `- Reason: …` below the key point that says why it holds",
            )


def _finish(technique: AnyTechnique) -> Iterator[Breach]:
    """The finish list is short enough to be gone through."""
    count = len(technique.finish)
    if not MOST_FINISH.allows(count):
        yield Breach(
            field="finish[9]",
            what=f"{count} items to tick at the finish",
            why="a list gone through at one stop has fewer than ten items, or corners are cut",
            mend=f"take out {count - 9}: keep what is most easily missed and would not be caught later",
        )


COMMON_RULES: Final[tuple[Rule[Any], ...]] = (
    Rule(
        name="technique.title",
        severity=Severity.WARNING,
        statement="The title has at most 60 characters.",
        why="it is printed in large letters on the card and the cover of the pictures, two lines at most",
        references=(FORMAT,),
        applies="every technique",
        check=header.title,
    ),
    Rule(
        name="technique.to-write",
        severity=Severity.WARNING,
        statement="Nothing still says what a new file says in its place.",
        why="words that are there to be written over would reach the crew, followers and clients",
        references=(FORMAT,),
        applies="every technique",
        check=to_write,
    ),
    Rule(
        name="technique.needs",
        severity=Severity.ERROR,
        statement="A technique does not need itself.",
        why="`needs` are the techniques to know first; nobody could start one that needs itself",
        references=(FORMAT,),
        applies="techniques with `needs:`",
        check=header.needs,
    ),
    Rule(
        name="technique.pace",
        severity=Severity.ADVICE,
        statement="The minutes are at least one a step and at most a working day of 480.",
        why="less than a minute a step leaves no time to look; more than 480 minutes is not one job",
        references=(PRACTICE,),
        applies="techniques with `minutes:`",
        check=header.pace,
    ),
    Rule(
        name="technique.season",
        severity=Severity.WARNING,
        statement="The season is written in seasons and months, and names at least one where the crew works.",
        why="a season copied from the other half of the world is six months out",
        references=(FORMAT,),
        applies="techniques in English with `season:`",
        check=header.season,
    ),
    Rule(
        name="technique.plants",
        severity=Severity.ADVICE,
        statement="The plants are ones that the plant book knows.",
        why="growth, clipping months and cautions of a plant are taken from the book; without them nothing is checked",
        references=(FORMAT,),
        applies="techniques with `plants:`",
        check=header.plants,
    ),
    Rule(
        name="technique.cautions",
        severity=Severity.ERROR,
        statement="Every technique carries at least one caution.",
        why="what could injure the worker or others is a key point of the job, and must reach whoever does it",
        references=(JOB_INSTRUCTION, JOB_INSTRUCTION_RESTATED),
        applies="every technique",
        check=_cautions,
    ),
    Rule(
        name="technique.caution-words",
        severity=Severity.WARNING,
        statement="A caution says how to keep from harm, or what to wear.",
        why="the name of a danger alone tells nobody what to do",
        references=(FORMAT,),
        applies="techniques with cautions",
        check=_caution_words,
    ),
    Rule(
        name="technique.tools",
        severity=Severity.ADVICE,
        statement="A tool that a step takes up is on the list of tools.",
        why="the list is what is loaded; a tool that is missing from it costs a walk back to the van",
        references=(PRACTICE,),
        applies="techniques in English; tools with a name of their own, such as shears or a spade",
        check=tools,
    ),
    Rule(
        name="technique.steps",
        severity=Severity.WARNING,
        statement="A card has at most 7 steps.",
        why="five to seven steps can be taught and kept at one go; longer work is split over cards",
        references=(JOB_INSTRUCTION_RESTATED, JOB_INSTRUCTION),
        applies="every technique",
        check=_steps,
    ),
    Rule(
        name="technique.key-points",
        severity=Severity.WARNING,
        statement="A step has at most 5 key points.",
        why="three to five key points are the most that one step can carry; a step with more is two steps",
        references=(JOB_INSTRUCTION_RESTATED, JOB_INSTRUCTION),
        applies="steps with key points",
        check=_key_points,
    ),
    Rule(
        name="technique.reason",
        severity=Severity.ADVICE,
        statement="A step with key points gives a reason.",
        why="the reason says why the key point holds; without it a learner drops the point when it is in the way",
        references=(JOB_INSTRUCTION_RESTATED, JOB_INSTRUCTION),
        applies="steps with key points",
        check=_reasons,
    ),
    Rule(
        name="technique.finish",
        severity=Severity.WARNING,
        statement="The finish list has at most 9 items.",
        why="fewer than ten items, better five to nine, are gone through at one stop before corners are cut",
        references=(CHECKLISTS,),
        applies="every technique",
        check=_finish,
    ),
    WAIVER,
)
