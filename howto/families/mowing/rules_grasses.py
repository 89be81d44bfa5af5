"""The rules of mowing that turn on the grass, its range of heights, shade and drought."""

from collections.abc import Iterator
from math import ceil, floor

from howto.families.mowing import lawn
from howto.families.mowing import references as by
from howto.families.mowing.lawn import FORGIVEN_MM, RAISE, T, ends
from howto.families.mowing.measures import MowingMeasures
from howto.families.mowing.mends import rewritten
from howto.findings import Severity
from howto.model.family import Breach, Edit, Rule, rule
from howto.model.reference import CEILING, PRACTICE
from howto.quantities.amounts import Name, mm

BUFFALO = ("buffalo", "buffalo grass")
ONE_BUFFALO = ("australia", "new zealand")  # where the name means Stenotaphrum secundatum only


@rule(
    "mowing.height-for-the-grass",
    Severity.ERROR,
    by.UC_GRASSES,
    applies="grasses the plant book knows, in a climate it knows",
    forgiven=f"{mm(FORGIVEN_MM)}",
)
def height_for_the_grass(work: T) -> Iterator[Breach]:
    """The set height lies in the range of the grass and climate.

    Each grass has a range by climate; below it the lawn thins, above it it lies over. Less than {forgiven} is
    forgiven, since most ranges were set in inches.
    """
    m = work.measures
    grass, row = lawn.grass_of(work), lawn.range_of(work)
    if grass is None or row is None or lawn.in_range(row, m.set_height_mm):
        return
    near, then = f"{lawn.inside(row, m.set_height_mm)} mm", ", or name the climate that this lawn grows in"
    what = f"{mm(m.set_height_mm, 4)} is outside the range of {Name(str(m.grass))}"
    who, weight = lawn.source_of(grass, row), CEILING[row.grade]
    why, also = f"{ends(row)} in {Name(row.climate)}", "measures.grass"
    yield rewritten("set_height_mm", near, what, why, then=then, also=also, reference=who, severity=weight)


@rule("mowing.climate-named", Severity.WARNING, by.UC_GRASSES, applies="grasses with more than one range")
def climate_named(work: T) -> Iterator[Breach]:
    """A grass with several ranges names the climate meant, since ranges are never averaged.

    Ranges for one grass differ up to fourfold between climates and kinds, so none is averaged or guessed.
    """
    m = work.measures
    grass = lawn.grass_of(work)
    if grass is None or lawn.range_of(work) is not None:
        return
    rows = "; ".join(f"{Name(row.climate)} {ends(row)}" for row in grass.mowing)
    choice = next((row for row in grass.mowing if lawn.in_range(row, m.set_height_mm)), grass.mowing[0]).climate
    field, what = "measures.grass", f"{Name(str(m.grass))} has more than one range"
    if m.climate:
        field, what = "measures.climate", f"no range is known for {Name(str(m.grass))} in {Name(m.climate)}"
    why = f"published ranges differ by climate and kind, and are never averaged: {rows}"
    mend = f"write `climate: {choice}`, or the one of these nearest to yours; or add your own range to grasses.yaml"
    yield Breach(field, what, why, mend, Edit(choice, "climate"))


@rule("mowing.grass-known", Severity.ADVICE, PRACTICE, applies="lawns that name a grass")
def grass_known(work: T) -> Iterator[Breach]:
    """The grass is one the plant book knows.

    The range of any other cannot be looked up, so its set height goes unchecked.
    """
    name = work.measures.grass
    if not name or lawn.grass_of(work) is not None:
        return
    what = f"`{Name(name)}` is not in the plant book"
    first, *others = work.book.nearest(name, "grass") or ("",)
    if first:
        yield rewritten("grass", first, what, then=f", or one of: {', '.join(others)}" if others else "")
    else:
        yield Breach("measures.grass", what, "", "leave `grass` out, or add it to grasses.yaml")


@rule(
    "mowing.which-buffalo",
    Severity.WARNING,
    by.UC_GRASSES,
    applies="lawns of a grass called buffalo, outside Australia and New Zealand",
)
def which_buffalo(work: T) -> Iterator[Breach]:
    """A grass called buffalo is named by its botanical name, for two grasses are called so.

    In Australia and New Zealand it is Stenotaphrum secundatum (St Augustine), in the United States Bouteloua
    dactyloides; their ranges differ.
    """
    m = work.measures
    if (m.grass or "").casefold() in BUFFALO and not (m.climate or "").casefold().startswith(ONE_BUFFALO):
        what = f"`{Name(str(m.grass))}` is the name of two grasses"
        then = ", or `grass: Bouteloua dactyloides` if that is what grows here"
        yield rewritten("grass", "Stenotaphrum secundatum", what, then=then)


@rule(
    "mowing.shade-raised",
    Severity.WARNING,
    by.SHADE,
    by.UC_SPECIAL,
    applies="shaded lawns whose range is known",
    least=f"{mm(RAISE.low)}",
    by_so_much=f"{RAISE}",
)
def shade_raised(work: T) -> Iterator[Breach]:
    """A lawn in shade is kept at its range for shade, or at least {least} above the bottom of its range.

    In shade a blade needs more length for the same light: raise by {by_so_much}.
    """
    m = work.measures
    row, shade, also = lawn.range_of(work), lawn.in_shade(work), "measures.shade"
    if not m.shade or m.drought or row is None or shade is None:
        return
    if shade.row is not None and shade.row != row:
        what = f"a shaded lawn is held to the range for {Name(row.climate)}"
        why = f"this grass has a range of its own in shade: {ends(shade.row)}"
        yield rewritten("climate", shade.row.climate, what, why, also=also, reference=shade.source)
    elif lawn.in_range(row, m.set_height_mm) and m.set_height_mm <= shade.least_mm - FORGIVEN_MM:
        least = f"{min(ceil(shade.least_mm), lawn.inside(row, row.high_mm + FORGIVEN_MM))} mm"
        what = f"a shaded lawn is set at {mm(m.set_height_mm, 4)}"
        why = f"shade raises it by {RAISE}: {shade.working} = {mm(shade.least_mm, 4)} at least"
        yield rewritten("set_height_mm", least, what, why, also=also)


@rule("mowing.drought-raised", Severity.WARNING, by.UC_SPECIAL, applies="lawns short of water whose range is known")
def drought_raised(work: T) -> Iterator[Breach]:
    """A lawn short of water is kept at the top of its range.

    Longer leaf shades the soil and roots deeper.
    """
    m = work.measures
    row = lawn.range_of(work)
    if not m.drought or row is None or not lawn.in_range(row, m.set_height_mm):
        return
    if m.set_height_mm <= row.high_mm - FORGIVEN_MM:
        what, top = f"a lawn short of water is set at {mm(m.set_height_mm, 4)}", f"{floor(row.high_mm)} mm"
        call = f"heat and drought call for the top of the range, {mm(row.high_mm, 4)}"
        why = f"{call}; stressed turf is watered and left to dry before it is mown"
        yield rewritten("set_height_mm", top, what, why, then=" until it rains", also="measures.drought")


GRASSES: tuple[Rule[MowingMeasures], ...] = (
    height_for_the_grass,
    climate_named,
    grass_known,
    which_buffalo,
    shade_raised,
    drought_raised,
)
