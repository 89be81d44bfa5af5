"""The rules of mowing: heights and cuts, then the conditions of rules_conditions.py."""

from collections.abc import Iterator
from math import ceil, floor

from howto.families.mowing import formulae
from howto.families.mowing.figures import first_cut, grass_of, range_of, standing
from howto.families.mowing.measures import MowingMeasures
from howto.families.mowing.references import (
    CORNELL,
    SHADE,
    UC_AMOUNT,
    UC_SPECIAL,
)
from howto.families.mowing.rules_conditions import CONDITIONS
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule
from howto.model.reference import GEOMETRY, PRACTICE, Grade
from howto.model.technique import Technique
from howto.quantities import show_number as num

T = Technique[MowingMeasures]

THIRD = Limit(high=1 / 3, unit="of the height in one cut", reference=UC_AMOUNT)


def one_third(technique: T) -> Iterator[Breach]:
    """A cut takes no more than a third of the standing height."""
    m = technique.measures
    if m.cut_height_mm is None:
        return
    stands, cut = standing(m), m.cut_height_mm
    share = formulae.share_removed(stands, cut)
    if THIRD.allows(share):
        return
    least = ceil(formulae.lowest_cut_mm(stands) - 1e-9)
    down = formulae.heights_down_mm(stands, min(cut, m.set_height_mm))
    stages = ", ".join(num(height) for height in down)
    yield Breach(
        field="measures.cut_height_mm",
        also="measures.standing_height_mm",
        what=f"the cut takes {num(share * 100)} % of the height",
        why=f"({num(stands, 4)} - {num(cut, 4)}) / {num(stands, 4)}; the most is a third. Bared soil dries, washes and "
        f"lets weeds in. Come down in {len(down)} cuts: {stages} mm",
        mend=f"write `cut height: {least} mm` today, and lower the rest in the later cuts",
        edit=Edit(key="cut height", text=f"{least} mm"),
    )


def lower_than_it_stands(technique: T) -> Iterator[Breach]:
    """The grass stands higher than the cut."""
    m = technique.measures
    stands, cut = standing(m), first_cut(m)
    if stands > cut or m.standing_height_mm is None:
        return
    field, key = ("cut_height_mm", "cut height") if m.cut_height_mm is not None else ("set_height_mm", "set height")
    lower = max(1, floor(stands * 0.9))
    yield Breach(
        field=f"measures.{field}",
        also="measures.standing_height_mm",
        what=f"the grass stands {num(stands, 4)} mm and would be cut to {num(cut, 4)} mm",
        why="a mower set above the grass takes nothing off",
        mend=f"measure the grass again, or write `{key}: {lower} mm`",
        edit=Edit(key=key, text=f"{lower} mm"),
    )


def not_below_set_height(technique: T) -> Iterator[Breach]:
    """A cut is not lower than the height the lawn is kept at."""
    m = technique.measures
    if m.cut_height_mm is None or m.cut_height_mm >= m.set_height_mm - 1e-9:
        return
    text = f"{num(m.set_height_mm, 5)} mm"
    yield Breach(
        field="measures.cut_height_mm",
        also="measures.set_height_mm",
        what=f"the cut at {num(m.cut_height_mm, 4)} mm is below the set height of {num(m.set_height_mm, 4)} mm",
        why="the set height is the lowest this lawn is kept at",
        mend=f"write `cut height: {text}` or more",
        edit=Edit(key="cut height", text=text),
    )


def height_for_the_grass(technique: T) -> Iterator[Breach]:
    """The set height lies in the range of the grass and climate."""
    m = technique.measures
    row = range_of(technique)
    if row is None or row.low_mm - 0.5 <= m.set_height_mm <= row.high_mm + 0.5:
        return
    near = ceil(row.low_mm) if m.set_height_mm < row.low_mm else floor(row.high_mm)
    weight = {Grade.A: None, Grade.B: None, Grade.C: Severity.WARNING}.get(row.grade, Severity.ADVICE)
    yield Breach(
        field="measures.set_height_mm",
        what=f"{num(m.set_height_mm, 4)} mm is outside the range of {m.grass}",
        why=f"{num(row.low_mm, 4)} to {num(row.high_mm, 4)} mm in {row.climate} ({row.source})",
        mend=f"write `set height: {near} mm`, or name the climate that this lawn grows in",
        edit=Edit(key="set height", text=f"{near} mm"),
        severity=weight,
    )


def climate_named(technique: T) -> Iterator[Breach]:
    """A grass with several ranges names the climate meant, since ranges are never averaged."""
    m = technique.measures
    grass = grass_of(technique)
    if grass is None or range_of(technique) is not None:
        return
    known = [row.climate for row in grass.mowing]
    rows = "; ".join(f"{row.climate} {num(row.low_mm, 4)} to {num(row.high_mm, 4)} mm" for row in grass.mowing)
    inside = [row.climate for row in grass.mowing if row.low_mm <= m.set_height_mm <= row.high_mm]
    choice = (inside or known)[0]
    yield Breach(
        field="measures.climate" if m.climate else "measures.grass",
        what=f"no range is known for {m.grass} in {m.climate}" if m.climate else f"{m.grass} has more than one range",
        why=f"the published ranges differ by climate and kind: {rows}",
        mend=f"write `climate: {choice}`",
        edit=Edit(key="climate", text=choice),
    )


def grass_known(technique: T) -> Iterator[Breach]:
    """The grass is one the plant book knows."""
    name = technique.measures.grass
    if not name or grass_of(technique) is not None:
        return
    near = technique.book.nearest(name, "grass")
    yield Breach(
        field="measures.grass",
        what=f"`{name}` is not in the plant book",
        why="its range cannot be looked up, so the set height goes unchecked",
        mend=f"write one of: {', '.join(near)}"
        if near
        else "leave `grass` out, or add it to grasses.yaml on the shelf",
        edit=Edit(key="grass", text=near[0]) if near else None,
    )


def shade_raised(technique: T) -> Iterator[Breach]:
    """A lawn in shade is kept at least 13 mm above the bottom of its range."""
    m = technique.measures
    row = range_of(technique)
    if not m.shade or row is None:
        return
    least = min(row.low_mm + 13, row.high_mm)
    if m.set_height_mm >= least - 1e-9:
        return
    text = f"{ceil(least)} mm"
    yield Breach(
        field="measures.set_height_mm",
        also="measures.shade",
        what=f"a shaded lawn is set at {num(m.set_height_mm, 4)} mm",
        why=f"the range starts at {num(row.low_mm, 4)} mm in sun; shade raises it by 13 to 25 mm",
        mend=f"write `set height: {text}`",
        edit=Edit(key="set height", text=text),
    )


def drought_raised(technique: T) -> Iterator[Breach]:
    """A lawn short of water is kept at the top of its range."""
    m = technique.measures
    row = range_of(technique)
    if not m.drought or row is None or m.set_height_mm >= floor(row.high_mm) - 1e-9:
        return
    text = f"{floor(row.high_mm)} mm"
    yield Breach(
        field="measures.set_height_mm",
        also="measures.drought",
        what=f"a lawn short of water is set at {num(m.set_height_mm, 4)} mm",
        why=f"heat and drought call for the top of the range, {num(row.high_mm, 4)} mm; stressed turf is watered and "
        "left to dry before it is mown",
        mend=f"write `set height: {text}` until it rains",
        edit=Edit(key="set height", text=text),
    )


RULES: tuple[Rule[MowingMeasures], ...] = (
    Rule(
        name="mowing.one-third",
        severity=Severity.ERROR,
        why="A lawn feeds by its leaf; a deeper cut bares the soil. An overgrown lawn comes down in steps.",
        references=(UC_AMOUNT, CORNELL),
        applies="lawns that write today's cut",
        check=one_third,
    ),
    Rule(
        name="mowing.lower-than-it-stands",
        severity=Severity.ERROR,
        why="A mower set above the grass takes nothing off.",
        references=(GEOMETRY,),
        applies="lawns that write how high they stand",
        check=lower_than_it_stands,
    ),
    Rule(
        name="mowing.not-below-set-height",
        severity=Severity.ERROR,
        why="The set height is the lowest the lawn is kept at, so the cut and it cannot disagree.",
        references=(GEOMETRY,),
        applies="lawns that write today's cut",
        check=not_below_set_height,
    ),
    Rule(
        name="mowing.height-for-the-grass",
        severity=Severity.ERROR,
        why="Each grass has a range by climate; below it the lawn thins, above it it lies over.",
        references=(UC_AMOUNT,),
        applies="grasses the plant book knows, in a climate it knows",
        check=height_for_the_grass,
    ),
    Rule(
        name="mowing.climate-named",
        severity=Severity.WARNING,
        why="Ranges for one grass differ up to fourfold between climates and kinds, so none is averaged or guessed.",
        references=(UC_AMOUNT,),
        applies="grasses with more than one range",
        check=climate_named,
    ),
    Rule(
        name="mowing.grass-known",
        severity=Severity.ADVICE,
        why="Only a known grass has a range to check against.",
        references=(PRACTICE,),
        applies="lawns that name a grass",
        check=grass_known,
    ),
    Rule(
        name="mowing.shade-raised",
        severity=Severity.WARNING,
        why="In shade a blade needs more length for the same light: raise by 13 to 25 mm.",
        references=(SHADE, UC_SPECIAL),
        applies="shaded lawns whose range is known",
        check=shade_raised,
    ),
    Rule(
        name="mowing.drought-raised",
        severity=Severity.WARNING,
        why="Longer leaf shades the soil and roots deeper.",
        references=(UC_SPECIAL,),
        applies="lawns short of water whose range is known",
        check=drought_raised,
    ),
    *CONDITIONS,
)
