"""The rules of clipping: sizes and seasons, then what the card must say (rules_said.py)."""

from collections.abc import Iterator
from math import ceil, floor

from howto.families.clipping import formulae
from howto.families.clipping.figures import growth, share
from howto.families.clipping.measures import ClippingMeasures
from howto.families.clipping.references import (
    BOX_SEASON,
    COLD,
    CONIFERS,
    CROWN,
    FROST,
    HEAT,
    RENOVATION,
    SHEARING,
    TREE_STANDARD,
)
from howto.families.clipping.rules_said import SAID
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule
from howto.model.reference import GEOMETRY, PRACTICE
from howto.model.technique import Technique
from howto.quantities import show_number as num
from howto.seasons import MONTHS, months_of

T = Technique[ClippingMeasures]

HALF = Limit(high=0.5, unit="of height or width", reference=RENOVATION)
THIRD = Limit(high=1 / 3, unit="of the leaf", reference=BOX_SEASON)
LIGHT = Limit(high=0.25, unit="of the leaf in a pass", reference=SHEARING)
DAY = Limit(low=-4, high=32, unit="°C", reference=HEAT)
FROST_WEEKS = Limit(low=6, unit="weeks", reference=FROST)


def something_to_clip(technique: T) -> Iterator[Breach]:
    """The shape stands wider than it should finish."""
    m = technique.measures
    if m.standing_width_mm > m.finished_width_mm:
        return
    grown = f"{num(ceil(m.finished_width_mm * 1.06 / 10) * 10, 6)} mm"
    yield Breach(
        field="measures.standing_width_mm",
        also="measures.finished_width_mm",
        what="it stands no wider than it should finish",
        why=f"{num(m.standing_width_mm, 5)} mm standing against {num(m.finished_width_mm, 5)} mm finished "
        "leaves nothing to clip",
        mend=f"measure the widest part again, and write a standing width over the finished one, such as {grown}",
        edit=Edit(key="standing width", text=grown),
    )


def half_at_most(technique: T) -> Iterator[Breach]:
    """No more than half of the width comes off in one clip, even from plants that take hard cutting."""
    m = technique.measures
    off = 1 - m.finished_width_mm / m.standing_width_mm
    if HALF.allows(off):
        return
    least = ceil(m.standing_width_mm / 2)
    yield Breach(
        field="measures.finished_width_mm",
        also="measures.standing_width_mm",
        what=f"{num(off * 100)} % of the width comes off in one clip",
        why=f"1 - {num(m.finished_width_mm, 5)} / {num(m.standing_width_mm, 5)}; the most is half, "
        "and that only from plants that shoot from old wood",
        mend=f"write a finished width from {least} mm this year, and clip to the smaller size next year",
        edit=Edit(key="finished width", text=f"{least} mm"),
    )


def third_of_the_leaf(technique: T) -> Iterator[Breach]:
    """A clip takes at most a third of the leafy volume, since the leaf is all in the shell."""
    m = technique.measures
    off = share(m)
    if off <= 0 or THIRD.allows(off) or not HALF.allows(1 - m.finished_width_mm / m.standing_width_mm):
        return
    low, high = m.finished_width_mm, m.standing_width_mm
    for _ in range(60):  # the width that leaves two thirds of the leaf, height kept
        middle = (low + high) / 2
        kept = formulae.share_removed(m.shape, (m.standing_width_mm, m.standing_mm), (middle, _height(m, middle)))
        low, high = (middle, high) if kept > 1 / 3 else (low, middle)
    width = ceil(high)
    if m.finished_height_mm is not None and not THIRD.allows(
        formulae.share_removed(m.shape, (m.standing_width_mm, m.standing_mm), (width, m.height_mm))
    ):
        return
    yield Breach(
        field="measures.finished_width_mm",
        also="measures.standing_width_mm",
        what=f"the clip takes {num(off * 100)} % of the leaf",
        why=f"the leaf stands in the shell between {num(m.standing_width_mm, 5)} and "
        f"{num(m.finished_width_mm, 5)} mm; a season's clip takes at most a third of it",
        mend=f"write a finished width from {width} mm, and reach the smaller size in later clips",
        edit=Edit(key="finished width", text=f"{width} mm"),
    )


def _height(m: ClippingMeasures, width: float) -> float:
    """Return the finished height that goes with another finished width."""
    return m.finished_height_mm if m.finished_height_mm is not None else width


def light_passes(technique: T) -> Iterator[Breach]:
    """Many light passes beat a few deep ones: none takes more than a quarter of what stands."""
    m = technique.measures
    off = share(m)
    if off <= 0 or LIGHT.allows(formulae.share_a_pass(off, m.passes)):
        return
    least = formulae.passes_for(off, 0.25)
    yield Breach(
        field="measures.passes",
        what=f"each of {m.passes} passes takes {num(formulae.share_a_pass(off, m.passes) * 100)} % of what stands",
        why=f"{num(off * 100)} % in all; a light pass takes at most a quarter",
        mend=f"write `passes: {least}` or more",
        edit=Edit(key="passes", text=str(least)),
    )


def past_the_green(technique: T) -> Iterator[Breach]:
    """A plant that shoots only from green wood is never clipped deeper than a year's growth."""
    m = technique.measures
    plant = next((p for p in technique.known_plants if p.regrows and p.regrows.text == "green wood only"), None)
    if plant is None:
        return
    off = (m.standing_width_mm - m.finished_width_mm) / 2
    a_year, source = growth(technique)
    if off <= a_year:
        return
    width = ceil(m.standing_width_mm - 2 * a_year)
    yield Breach(
        field="measures.finished_width_mm",
        also="measures.standing_width_mm",
        what=f"{num(off)} mm comes off each side of {plant.botanical}",
        why=f"it shoots only from green wood and grows about {num(a_year)} mm a side in a year ({source}): "
        "bare wood stays bare",
        mend=f"write a finished width from {width} mm, so the cut stays in green",
        edit=Edit(key="finished width", text=f"{width} mm"),
    )


def round_ball(technique: T) -> Iterator[Breach]:
    """A ball is as high as it is wide, within its tolerance."""
    m = technique.measures
    if m.shape != "ball" or m.finished_height_mm is None:
        return
    slack = m.tolerance("finished_width_mm") or 0.05 * m.finished_width_mm
    if abs(m.finished_height_mm - m.finished_width_mm) <= slack:
        return
    width = f"{num(m.finished_width_mm, 6)} mm"
    yield Breach(
        field="measures.finished_height_mm",
        also="measures.finished_width_mm",
        what=f"a ball {num(m.finished_height_mm, 5)} mm high and {num(m.finished_width_mm, 5)} mm wide is not round",
        why=f"the two differ by more than {num(slack)} mm",
        mend=f"write `finished height: {width}`, or call the shape a dome",
        edit=Edit(key="finished height", text=width),
    )


def tolerance_within_cut(technique: T) -> Iterator[Breach]:
    """The tolerance is smaller than the cut, or finished cannot be told from not started."""
    m = technique.measures
    slack = m.tolerance("finished_width_mm")
    off = m.standing_width_mm - m.finished_width_mm
    if slack is None or off <= 0 or slack < off:
        return
    finer = max(1, floor(off / 2))
    text = f"{num(m.finished_width_mm, 6)} mm ± {finer} mm"
    yield Breach(
        field="measures.finished_width_mm",
        what=f"± {num(slack)} mm is as wide as the whole cut",
        why=f"the clip takes {num(off)} mm off the width, so a plant not yet touched would pass",
        mend=f"write `finished width: {text}`",
        edit=Edit(key="finished width", text=text),
    )


def clip_months(technique: T) -> Iterator[Breach]:
    """The season falls in months in which the plant is clipped."""
    written = months_of(technique.season, technique.crew.hemisphere) if technique.season else None
    if not written:
        return
    for plant in technique.known_plants:
        if plant.clip_months is None:
            continue
        good = plant.clip_months.at(technique.crew.hemisphere)
        if set(written) & set(good):
            continue
        names = ", ".join(MONTHS[month - 1].capitalize() for month in good)
        yield Breach(
            field="season",
            what=f"{plant.botanical} is not clipped in {technique.season}",
            why=f"here its months are {names} ({plant.clip_months.source})",
            mend=f"write `season: {names}`",
            edit=Edit(key="season", text=names, top=True),
            severity=Severity.WARNING if plant.clip_months.grade in "ABC" else Severity.ADVICE,
        )


def day_temperature(technique: T) -> Iterator[Breach]:
    """Clip on a mild day: fresh cuts scorch in hot sun, and frozen wood breaks."""
    day = technique.measures.day_temperature_c
    if day is None or DAY.allows(day):
        return
    hot = day > 0
    bound = 32 if hot else -4
    yield Breach(
        field="measures.day_temperature_c",
        what=f"the day reaches {num(day)} °C",
        why="cut leaf burned after days over 32 °C" if hot else "wood is brittle below -4 °C",
        mend=f"wait for a {'cooler' if hot else 'milder'} day, and write `day temperature: {bound} °C`",
        edit=Edit(key="day temperature", text=f"{bound} °C"),
    )


def before_frost(technique: T) -> Iterator[Breach]:
    """The last clip falls at least six weeks before frost, so that new shoots harden."""
    weeks = technique.measures.first_frost_weeks
    if weeks is None or FROST_WEEKS.allows(weeks):
        return
    yield Breach(
        field="measures.first_frost_weeks",
        what=f"frost is {num(weeks)} weeks away",
        why="soft shoots after a clip need at least 6 weeks to harden",
        mend="leave the clip until spring, and write `first frost: 6 weeks` or more",
        edit=Edit(key="first frost", text="6 weeks"),
    )


RULES: tuple[Rule[ClippingMeasures], ...] = (
    Rule(
        name="clipping.something-to-clip",
        severity=Severity.ERROR,
        why="A clip takes off what stands outside the finished line; with nothing outside there is no clip.",
        references=(GEOMETRY,),
        applies="every clipped shape",
        check=something_to_clip,
    ),
    Rule(
        name="clipping.half-at-most",
        severity=Severity.ERROR,
        why="Box, yew, holly and the like may lose up to 50 % of height and width in one cut; more is staged "
        "over years.",
        references=(RENOVATION,),
        applies="every clipped shape",
        check=half_at_most,
    ),
    Rule(
        name="clipping.third-of-the-leaf",
        severity=Severity.WARNING,
        why="The leaf stands in the shell: 8 % off a ball's width is 23 % of its volume. Trade limits run from "
        "20 % to a third, and a standard for mature trees stops at a quarter.",
        references=(BOX_SEASON, TREE_STANDARD, CROWN),
        applies="every clipped shape",
        check=third_of_the_leaf,
    ),
    Rule(
        name="clipping.light-passes",
        severity=Severity.WARNING,
        why="A deep pass cannot be put back; a light one shows the line before it is passed.",
        references=(PRACTICE, SHEARING),
        applies="every clipped shape",
        check=light_passes,
    ),
    Rule(
        name="clipping.past-the-green",
        severity=Severity.ERROR,
        why="Most conifers, yew apart, do not shoot from old wood: past the green the hole stays.",
        references=(RENOVATION, CONIFERS),
        applies="plants that the plant book marks as shooting from green wood only",
        check=past_the_green,
    ),
    Rule(
        name="clipping.round-ball",
        severity=Severity.ERROR,
        why="The gauge rings are cut for a sphere; a taller one is another shape.",
        references=(GEOMETRY,),
        applies="balls with a finished height",
        check=round_ball,
    ),
    Rule(
        name="clipping.tolerance-within-cut",
        severity=Severity.WARNING,
        why="Else a plant not yet touched would pass the finish standard.",
        references=(GEOMETRY,),
        applies="shapes whose finished width has a tolerance",
        check=tolerance_within_cut,
    ),
    Rule(
        name="clipping.clip-months",
        severity=Severity.WARNING,
        why="Shoots cut too late do not harden, and shoots cut too early grow out at once.",
        references=(RENOVATION,),
        applies="plants whose clipping months the plant book knows",
        check=clip_months,
    ),
    Rule(
        name="clipping.day-temperature",
        severity=Severity.WARNING,
        why="Fresh cuts scorch in hot sun, and frozen wood breaks.",
        references=(HEAT, COLD),
        applies="techniques that write a day temperature",
        check=day_temperature,
    ),
    Rule(
        name="clipping.before-frost",
        severity=Severity.WARNING,
        why="New shoots need the time to harden.",
        references=(FROST,),
        applies="techniques that write the weeks to the first frost",
        check=before_frost,
    ),
    *SAID,
)
