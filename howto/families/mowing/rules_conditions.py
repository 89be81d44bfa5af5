"""The rules of mowing that look at mower, weather, timing and clippings."""

from collections.abc import Iterator
from math import floor

from howto.families.mowing import formulae
from howto.families.mowing.figures import ROOTING_WEEKS, WAIT_DAYS, growth, standing
from howto.families.mowing.measures import MowingMeasures
from howto.families.mowing.references import ARIZONA, CAROLINA, GROWTH, NEW_TURF, SHARPEN, UC_AMOUNT, WAIT
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule
from howto.model.prose import plain
from howto.model.reference import GEOMETRY, PRACTICE
from howto.model.technique import Technique
from howto.quantities import show_number as num

T = Technique[MowingMeasures]

REEL = Limit(high=38.1, unit="mm", reference=ARIZONA)  # 1.5 in
BLADE = Limit(high=25, unit="hours", reference=SHARPEN)
STAGE_WAIT = Limit(low=2, unit="days", reference=WAIT)
SLOWEST, FASTEST = 0.2, 12.0  # mm a day; a tenth and twice of the usual 2 to 6, from memory


def dry_grass(technique: T) -> Iterator[Breach]:
    """Grass is mown dry."""
    if not technique.measures.wet:
        return
    yield Breach(
        field="measures.wet",
        what="the grass or ground is wet",
        why="wet grass tears and clogs, wheels smear the soil, and feet slip beside a turning blade",
        mend="wait until it is dry, and write `wet: no`",
        edit=Edit(key="wet", text="no"),
    )


def reel_or_rotary(technique: T) -> Iterator[Breach]:
    """A reel mower is for lawns kept at 38 mm or lower."""
    m = technique.measures
    if (m.mower or "").casefold() not in {"reel", "cylinder"} or REEL.allows(m.set_height_mm):
        return
    yield Breach(
        field="measures.mower",
        also="measures.set_height_mm",
        what=f"a reel mower at {num(m.set_height_mm, 4)} mm",
        why="reel mowers cut cleanly up to 38 mm (1.5 in); above that a rotary does",
        mend="write `mower: rotary`",
        edit=Edit(key="mower", text="rotary"),
    )


def sharp_blade(technique: T) -> Iterator[Breach]:
    """The blade is sharpened every 20 to 25 hours."""
    hours = technique.measures.blade_hours
    if hours is None or BLADE.allows(hours):
        return
    yield Breach(
        field="measures.blade_hours",
        what=f"the blade has cut for {num(hours)} hours",
        why="a blunt blade tears; the trade sharpens every 20 to 25 hours",
        mend="sharpen it, and write `blade: 0 h`",
        edit=Edit(key="blade", text="0 h"),
    )


def stages_apart(technique: T) -> Iterator[Breach]:
    """Two cuts on the way down stand at least two days apart."""
    wait = technique.measures.stage_wait_days
    if wait is None or STAGE_WAIT.allows(wait):
        return
    yield Breach(
        field="measures.stage_wait_days",
        what=f"{num(wait)} days between two cuts on the way down",
        why="trade advice runs from a couple of days to four, so that the leaf recovers",
        mend="write `stage wait: 3 days`",
        edit=Edit(key="stage wait", text="3 days"),
    )


def lawn_keeps_up(technique: T) -> Iterator[Breach]:
    """On the way down, less grows between two cuts than a cut takes off."""
    m = technique.measures
    wait = m.stage_wait_days if m.stage_wait_days is not None else WAIT_DAYS
    if len(formulae.heights_down_mm(standing(m), m.set_height_mm)) < 2:
        return
    a_day, _ = growth(technique)
    taken = m.set_height_mm / 2  # what the last full third takes, from 1.5 times the set height
    if a_day * wait < taken:
        return
    days = floor(taken / a_day * 0.9)
    text = f"{days} days"
    if days < 1:
        return
    yield Breach(
        field="measures.stage_wait_days" if m.stage_wait_days is not None else "measures",
        what=f"{num(a_day * wait)} mm grows back between two cuts",
        why=f"{num(a_day)} mm a day x {num(wait)} days, and a cut takes about {num(taken)} mm: it never comes down",
        mend=f"write `stage wait: {text}`",
        edit=Edit(key="stage wait", text=text),
    )


def growth_in_reason(technique: T) -> Iterator[Breach]:
    """Growth a day is within what lawns do."""
    a_day = technique.measures.growth_mm_per_day
    if a_day is None or SLOWEST <= a_day <= FASTEST:
        return
    yield Breach(
        field="measures.growth_mm_per_day",
        what=f"{num(a_day)} mm of growth a day",
        why="a fed summer lawn grows about 2 to 6 mm a day (from memory)",
        mend="measure it over a week, and write it as mm a day, such as `growth: 4 mm/day`",
        edit=Edit(key="growth", text="4 mm/day"),
    )


def turf_rooted(technique: T) -> Iterator[Breach]:
    """New turf has rooted before its first cut."""
    weeks = technique.measures.turf_age_weeks
    if weeks is None or weeks >= ROOTING_WEEKS:
        return
    yield Breach(
        field="measures.turf_age_weeks",
        what=f"the turf was laid {num(weeks)} weeks ago",
        why=f"turf is first cut when it no longer lifts, about {num(ROOTING_WEEKS)} weeks on (from memory)",
        mend=f"tug a corner first; write `turf age: {num(ROOTING_WEEKS)} weeks` once it holds",
        edit=Edit(key="turf age", text=f"{num(ROOTING_WEEKS)} weeks"),
    )


def clippings_said(technique: T) -> Iterator[Breach]:
    """The card says what happens to the clippings."""
    words = " ".join(
        [*(kit.name for kit in technique.tools), *(f"{step.title} {plain(step.text)}" for step in technique.steps)]
    )
    if "clipping" in words.casefold() or not technique.steps:
        return
    line = f"{len(technique.steps) + 1}. **Leave or lift the clippings.** Leave short ones; rake off rows."
    yield Breach(
        field=f"steps[{len(technique.steps) - 1}]",
        what="no step says what happens to the clippings",
        why="short clippings left on the lawn save 20 to 30 % of its feed; rows of long ones smother it",
        mend=f"add under Steps: `{line}`",
        edit=Edit(section="Steps", text=line),
    )


CONDITIONS: tuple[Rule[MowingMeasures], ...] = (
    Rule(
        name="mowing.dry-grass",
        severity=Severity.WARNING,
        why="Wet grass tears and clogs, and wheels smear the soil.",
        references=(PRACTICE,),
        applies="lawns that say whether they are wet",
        check=dry_grass,
    ),
    Rule(
        name="mowing.reel-or-rotary",
        severity=Severity.WARNING,
        why="Reel mowers cut cleanly up to 38 mm (1.5 in); rotary mowers from there up.",
        references=(ARIZONA,),
        applies="lawns that name a reel mower",
        check=reel_or_rotary,
    ),
    Rule(
        name="mowing.sharp-blade",
        severity=Severity.WARNING,
        why="A blunt blade tears leaf, which browns and lets disease in.",
        references=(SHARPEN,),
        applies="lawns that write the blade's hours",
        check=sharp_blade,
    ),
    Rule(
        name="mowing.stages-apart",
        severity=Severity.WARNING,
        why="The leaf needs a few days to recover between two cuts on the way down.",
        references=(WAIT,),
        applies="lawns that write the wait",
        check=stages_apart,
    ),
    Rule(
        name="mowing.lawn-keeps-up",
        severity=Severity.WARNING,
        why="If as much grows back as comes off, the staged cuts never end.",
        references=(GEOMETRY, UC_AMOUNT),
        applies="lawns brought down in stages",
        check=lawn_keeps_up,
    ),
    Rule(
        name="mowing.growth-in-reason",
        severity=Severity.ADVICE,
        why="A fed summer lawn grows about 2 to 6 mm a day; far from that the measure is likely a slip.",
        references=(GROWTH,),
        applies="lawns that write growth a day",
        check=growth_in_reason,
    ),
    Rule(
        name="mowing.turf-rooted",
        severity=Severity.ADVICE,
        why="Turf not yet rooted lifts under the mower.",
        references=(NEW_TURF,),
        applies="new turf",
        check=turf_rooted,
    ),
    Rule(
        name="mowing.clippings-said",
        severity=Severity.ADVICE,
        why="Clippings returned cut the need for feed by 20 to 30 % (NC Cooperative Extension).",
        references=(CAROLINA,),
        applies="every lawn",
        check=clippings_said,
    ),
)
