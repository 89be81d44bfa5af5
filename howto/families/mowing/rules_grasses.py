"""The rules of mowing that turn on the grass, its range of heights, shade and drought."""

from collections.abc import Iterator
from math import ceil, floor

from howto.families.mowing.lawn import FORGIVEN_MM, grass_of, in_range, in_shade, inside, range_of, source_of
from howto.families.mowing.measures import MowingMeasures
from howto.families.mowing.references import SHADE, UC_GRASSES, UC_SPECIAL
from howto.findings import Severity
from howto.model.family import Breach, Edit, Rule, rule
from howto.model.reference import CEILING, PRACTICE
from howto.model.work import Work
from howto.quantities.amounts import bare, mm

T = Work[MowingMeasures]

BUFFALO = ("buffalo", "buffalo grass")
ONE_BUFFALO = ("australia", "new zealand")  # where the name means Stenotaphrum secundatum only


@rule(
    "mowing.height-for-the-grass",
    Severity.ERROR,
    UC_GRASSES,
    applies="grasses the plant book knows, in a climate it knows",
)
def height_for_the_grass(work: T) -> Iterator[Breach]:
    """The set height lies in the range of the grass and climate.

    Each grass has a range by climate; below it the lawn thins, above it it lies over. Less than 1 mm is
    forgiven, since most ranges were set in inches.
    """
    m = work.measures
    grass, row = grass_of(work), range_of(work)
    if grass is None or row is None or in_range(row, m.set_height_mm):
        return
    near = inside(row, m.set_height_mm)
    yield Breach(
        field="measures.set_height_mm",
        also="measures.grass",
        what=f"{mm(m.set_height_mm, 4)} is outside the range of {m.grass}",
        why=f"{bare(row.low_mm, 4)} to {mm(row.high_mm, 4)} in {row.climate}",
        mend=f"write `set height: {near} mm`, or name the climate that this lawn grows in",
        edit=Edit(key="set height", text=f"{near} mm"),
        severity=CEILING[row.grade],
        reference=source_of(grass, row),
    )


@rule("mowing.climate-named", Severity.WARNING, UC_GRASSES, applies="grasses with more than one range")
def climate_named(work: T) -> Iterator[Breach]:
    """A grass with several ranges names the climate meant, since ranges are never averaged.

    Ranges for one grass differ up to fourfold between climates and kinds, so none is averaged or guessed.
    """
    m = work.measures
    grass = grass_of(work)
    if grass is None or range_of(work) is not None:
        return
    rows = "; ".join(f"{row.climate} {bare(row.low_mm, 4)} to {mm(row.high_mm, 4)}" for row in grass.mowing)
    choice = next((row for row in grass.mowing if in_range(row, m.set_height_mm)), grass.mowing[0]).climate
    yield Breach(
        field="measures.climate" if m.climate else "measures.grass",
        what=f"no range is known for {m.grass} in {m.climate}" if m.climate else f"{m.grass} has more than one range",
        why=f"published ranges differ by climate and kind, and are never averaged: {rows}",
        mend=f"write `climate: {choice}`, or the one of these nearest to yours; or add your own range to grasses.yaml",
        edit=Edit(key="climate", text=choice),
    )


@rule("mowing.grass-known", Severity.ADVICE, PRACTICE, applies="lawns that name a grass")
def grass_known(work: T) -> Iterator[Breach]:
    """The grass is one the plant book knows.

    Only a known grass has a range to check against.
    """
    name = work.measures.grass
    if not name or grass_of(work) is not None:
        return
    near = work.book.nearest(name, "grass")
    others = f", or one of: {', '.join(near[1:])}" if near[1:] else ""
    yield Breach(
        field="measures.grass",
        what=f"`{name}` is not in the plant book",
        why="its range cannot be looked up, so the set height goes unchecked",
        mend=f"write `grass: {near[0]}`{others}" if near else "leave `grass` out, or add it to grasses.yaml",
        edit=Edit(key="grass", text=near[0]) if near else None,
    )


@rule(
    "mowing.which-buffalo",
    Severity.WARNING,
    UC_GRASSES,
    applies="lawns of a grass called buffalo, outside Australia and New Zealand",
)
def which_buffalo(work: T) -> Iterator[Breach]:
    """A grass called buffalo is named by its botanical name, for two grasses are called so.

    One guide lists both grasses under that name, with heights of their own: match by botanical name.
    """
    m = work.measures
    if (m.grass or "").casefold() not in BUFFALO or (m.climate or "").casefold().startswith(ONE_BUFFALO):
        return
    yield Breach(
        field="measures.grass",
        what=f"`{m.grass}` is the name of two grasses",
        why="in Australia and New Zealand it is Stenotaphrum secundatum (St Augustine), in the United States "
        "Bouteloua dactyloides; their ranges differ",
        mend="write `grass: Stenotaphrum secundatum`, or `grass: Bouteloua dactyloides` if that is what grows here",
        edit=Edit(key="grass", text="Stenotaphrum secundatum"),
    )


@rule("mowing.shade-raised", Severity.WARNING, SHADE, UC_SPECIAL, applies="shaded lawns whose range is known")
def shade_raised(work: T) -> Iterator[Breach]:
    """A lawn in shade is kept at its range for shade, or at least 13 mm above the bottom of its range.

    In shade a blade needs more length for the same light: raise by 13 to 25 mm.
    """
    m = work.measures
    grass, row, shade = grass_of(work), range_of(work), in_shade(work)
    if not m.shade or m.drought or grass is None or row is None or shade is None:
        return
    if shade.row is not None and shade.row != row:
        yield Breach(
            field="measures.climate",
            also="measures.shade",
            what=f"a shaded lawn is held to the range for {row.climate}",
            why=f"this grass has a range of its own in shade: {bare(shade.row.low_mm, 4)} to "
            f"{mm(shade.row.high_mm, 4)}",
            mend=f"write `climate: {shade.row.climate}`",
            edit=Edit(key="climate", text=shade.row.climate),
            reference=source_of(grass, shade.row),
        )
    elif in_range(row, m.set_height_mm) and m.set_height_mm <= shade.least_mm - FORGIVEN_MM:
        text = f"{min(ceil(shade.least_mm), inside(row, row.high_mm + FORGIVEN_MM))} mm"
        yield Breach(
            field="measures.set_height_mm",
            also="measures.shade",
            what=f"a shaded lawn is set at {mm(m.set_height_mm, 4)}",
            why=f"shade raises it by 13 to 25 mm: {shade.working} = {mm(shade.least_mm, 4)} at least",
            mend=f"write `set height: {text}`",
            edit=Edit(key="set height", text=text),
        )


@rule("mowing.drought-raised", Severity.WARNING, UC_SPECIAL, applies="lawns short of water whose range is known")
def drought_raised(work: T) -> Iterator[Breach]:
    """A lawn short of water is kept at the top of its range.

    Longer leaf shades the soil and roots deeper.
    """
    m = work.measures
    row = range_of(work)
    if not m.drought or row is None or not in_range(row, m.set_height_mm):
        return
    if m.set_height_mm > row.high_mm - FORGIVEN_MM:
        return
    text = f"{floor(row.high_mm)} mm"
    yield Breach(
        field="measures.set_height_mm",
        also="measures.drought",
        what=f"a lawn short of water is set at {mm(m.set_height_mm, 4)}",
        why=f"heat and drought call for the top of the range, {mm(row.high_mm, 4)}; stressed turf is watered and "
        "left to dry before it is mown",
        mend=f"write `set height: {text}` until it rains",
        edit=Edit(key="set height", text=text),
    )


GRASSES: tuple[Rule[MowingMeasures], ...] = (
    height_for_the_grass,
    climate_named,
    grass_known,
    which_buffalo,
    shade_raised,
    drought_raised,
)
