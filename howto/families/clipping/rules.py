"""The rules of clipping: sizes and passes, then plants and weather, then what the card must say."""

from collections.abc import Iterator
from math import ceil

from howto.families.clipping import formulae
from howto.families.clipping import references as by
from howto.families.clipping.figures import LIGHT_SHARE, SEASON_SHARE, share
from howto.families.clipping.gauge import handy_step
from howto.families.clipping.measures import LARGEST_MM, ClippingMeasures
from howto.families.clipping.rules_plants import PLANTS
from howto.families.clipping.rules_said import SAID
from howto.findings import Severity
from howto.model.family import SHARE, Breach, Edit, Limit, Rule, rule
from howto.model.reference import GEOMETRY, PRACTICE
from howto.model.work import Work
from howto.quantities import round_down, show
from howto.quantities.amounts import bare, mm, percent

T = Work[ClippingMeasures]

HALF = Limit(high=0.5, unit=SHARE, of="of height or width", reference=by.RENOVATION)
THIRD = Limit(high=SEASON_SHARE, unit=SHARE, of="of the leaf", reference=by.BOX_SEASON)
LIGHT = Limit(high=LIGHT_SHARE, unit=SHARE, of="of the leaf in a pass", reference=by.SHEARING)
RINGS = Limit(low=2, high=16, unit="", of="steps up the gauge", reference=PRACTICE)


@rule("clipping.something-to-clip", Severity.ERROR, GEOMETRY, applies="every clipped shape")
def something_to_clip(work: T) -> Iterator[Breach]:
    """The shape stands larger than it should finish, and nowhere smaller.

    A clip takes off what stands outside the finished line; with nothing outside there is no clip.
    """
    m = work.measures
    if m.top_mm is not None and m.top_mm < 0:
        yield _too_small("height", "high", m.standing_mm, m.height_mm)
    if m.side_mm < 0 or (m.side_mm == 0 and not m.top_mm):
        yield _too_small("width", "wide", m.standing_width_mm, m.finished_width_mm)


def _too_small(side: str, word: str, stands: float, finished: float) -> Breach:
    grown = f"{min(ceil(finished * 1.06 / 10) * 10, LARGEST_MM)} mm"
    return Breach(
        field=f"measures.standing_{side}_mm",
        also=f"measures.finished_{side}_mm",
        what=f"it stands {mm(stands, 5)} {word} and should finish {mm(finished, 5)} {word}",
        why=f"{bare(stands, 5)} - {bare(finished, 5)} leaves nothing to clip; shears add no leaf",
        mend=f"measure it again, and write what it stands over what it should finish, such as "
        f"`standing {side}: {grown}`",
        edit=Edit(key=f"standing {side}", text=grown),
    )


@rule("clipping.half-at-most", Severity.ERROR, by.RENOVATION, applies="every clipped shape")
def half_at_most(work: T) -> Iterator[Breach]:
    """No more than half of the width or height comes off in one clip, even from plants that take hard cutting.

    Box, yew, holly and the like may lose up to 50 % of height and width in one cut; more is staged over years.
    """
    for side, stands, finished in _sides(work.measures):
        off = 1 - finished / stands
        if HALF.allows(off):
            continue
        least = ceil(stands / 2)
        yield Breach(
            field=f"measures.finished_{side}_mm",
            also=f"measures.standing_{side}_mm",
            what=f"{percent(off * 100)} of the {side} comes off in one clip",
            why=f"1 - {bare(finished, 5)} / {bare(stands, 5)}; the most is half, "
            "and that only from plants that shoot from old wood",
            mend=f"write `finished {side}: {least} mm` or more this year, and clip to the smaller size next year",
            edit=Edit(key=f"finished {side}", text=f"{least} mm"),
        )


def _sides(m: ClippingMeasures) -> Iterator[tuple[str, float, float]]:
    """Yield each side that is clipped by itself: its name, what it stands and what it should finish."""
    yield "width", m.standing_width_mm, m.finished_width_mm
    if m.standing_height_mm is not None:
        yield "height", m.standing_height_mm, m.height_mm


def _sound(m: ClippingMeasures) -> bool:
    """Tell whether no side grows or loses more than half: else that is the mistake to speak of."""
    return all(finished <= stands and HALF.allows(1 - finished / stands) for _, stands, finished in _sides(m))


@rule(
    "clipping.third-of-the-leaf",
    Severity.WARNING,
    by.BOX_SEASON,
    by.TREE_STANDARD,
    by.CROWN,
    applies="every clipped shape",
)
def third_of_the_leaf(work: T) -> Iterator[Breach]:
    """A clip takes at most a third of the leafy volume, since the leaf is all in the shell.

    The leaf stands in the shell: 8 % off a ball's width is 22 % of its volume. Trade limits run from 20 % to a
    third, and a standard for mature trees stops at a quarter.
    """
    m = work.measures
    off = share(m)
    if off <= 0 or THIRD.allows(off) or not _sound(m):
        return
    for side, least in _third_left(m).items():
        yield Breach(
            field=f"measures.finished_{side}_mm",
            also=f"measures.standing_{side}_mm",
            what=f"the clip takes {percent(off * 100)} of the leaf",
            why=f"the leaf stands in the shell between {bare(m.standing_width_mm, 5)} x {bare(m.standing_mm, 5)} and "
            f"{bare(m.finished_width_mm, 5)} x {mm(m.height_mm, 5)}; a season's clip takes at most a third of it",
            mend=f"write `finished {side}: {least} mm` or more, and reach the smaller size in later clips",
            edit=Edit(key=f"finished {side}", text=f"{least} mm"),
        )


def _third_left(m: ClippingMeasures) -> dict[str, str]:
    """Return the finished sizes that leave two thirds of the leaf: a wider shape, a higher one, or both."""
    standing = wide, high = m.standing_width_mm, m.standing_mm
    scale = (1 - SEASON_SHARE) ** (1 / 3)
    alike = ceil((wide**2 * high) ** (1 / 3) * scale)  # where the height follows the width
    if m.standing_height_mm is None or (m.finished_height_mm is None and alike < wide and alike <= high):
        return {"width": str(alike if m.standing_height_mm else ceil(wide * scale))}
    width = ceil(formulae.width_leaving_mm(standing, m.height_mm, SEASON_SHARE))
    if m.finished_height_mm is not None and width < wide:
        return {"width": str(width)}
    height = ceil(formulae.height_leaving_mm(standing, m.finished_width_mm, SEASON_SHARE))
    if height <= high:
        return {"height": str(height)}
    if width < wide:
        return {"width": str(width), "height": f"{m.height_mm:.12g}"}
    return {"width": str(ceil(wide * scale)), "height": str(ceil(high * scale))}


@rule("clipping.light-passes", Severity.WARNING, by.SHEARING, PRACTICE, applies="every clipped shape")
def light_passes(work: T) -> Iterator[Breach]:
    """Many light passes beat a few deep ones: none takes more than a quarter of what stands.

    A deep pass cannot be put back; a light one shows the line before it is passed.
    """
    m = work.measures
    off = share(m)
    if off <= 0 or LIGHT.allows(formulae.share_a_pass(off, m.passes)) or not _sound(m):
        return
    least = formulae.passes_for(off, LIGHT_SHARE)
    each = "one pass" if m.passes == 1 else f"each of {m.passes} passes"
    yield Breach(
        field="measures.passes",
        what=f"{each} takes {percent(formulae.share_a_pass(off, m.passes) * 100)} of what stands",
        why=f"{percent(off * 100)} in all; a light pass takes at most a quarter",
        mend=f"write `passes: {least}` or more",
        edit=Edit(key="passes", text=str(least)),
    )


@rule("clipping.round-ball", Severity.ERROR, GEOMETRY, applies="balls with a finished height")
def round_ball(work: T) -> Iterator[Breach]:
    """A ball is as high as it is wide, within its tolerance.

    The gauge rings are cut for a sphere; a taller one is another shape.
    """
    m = work.measures
    if m.shape != "ball" or m.finished_height_mm is None:
        return
    slack = m.tolerance("finished_width_mm") or 0.05 * m.finished_width_mm
    if abs(m.finished_height_mm - m.finished_width_mm) <= slack + 1e-6:
        return
    width = f"{m.finished_width_mm:.12g} mm"
    yield Breach(
        field="measures.finished_height_mm",
        also="measures.finished_width_mm",
        what=f"a ball {mm(m.finished_height_mm, 5)} high and {mm(m.finished_width_mm, 5)} wide is not round",
        why=f"the two differ by more than {mm(slack, 3)}",
        mend=f"write `finished height: {width}`, or call the shape a dome",
        edit=Edit(key="finished height", text=width),
    )


@rule(
    "clipping.tolerance-within-cut", Severity.WARNING, GEOMETRY, applies="shapes whose finished width has a tolerance"
)
def tolerance_within_cut(work: T) -> Iterator[Breach]:
    """The tolerance is smaller than the cut, or finished cannot be told from not started.

    Else a plant not yet touched would pass the finish standard.
    """
    m = work.measures
    slack = m.tolerance("finished_width_mm")
    off = 2 * m.side_mm
    if slack is None or off <= 0 or slack < off:
        return
    finer = round_down(off / 2, 1) or round_down(off / 2, 0.001)
    text = f"{m.finished_width_mm:.12g} mm ± {mm(finer, 3)}"
    yield Breach(
        field="measures.finished_width_mm",
        what=f"± {mm(slack, 3)} is as wide as the whole cut",
        why=f"the clip takes {mm(off, 3)} off the width, so a plant not yet touched would pass",
        mend=f"write `finished width: {text}`",
        edit=Edit(key="finished width", text=text),
    )


@rule("clipping.rings-to-read", Severity.WARNING, PRACTICE, applies="shapes that write the height between two rings")
def rings_to_read(work: T) -> Iterator[Breach]:
    """The gauge has two to sixteen steps, so that it can be read at a glance and still holds the shape.

    Two steps are the least that tell a curve from a slope; more than sixteen cannot be read at a glance.
    """
    m = work.measures
    if m.gauge_every_mm is None or RINGS.allows(m.height_mm / m.gauge_every_mm):
        return
    units = work.crew.units
    handy = show(handy_step(m.height_mm, units), "mm", units).replace("\u00a0", " ").replace("½", "0.5")
    yield Breach(
        field="measures.gauge_every_mm",
        also=f"measures.finished_{'width' if m.finished_height_mm is None else 'height'}_mm",
        what=f"{bare(m.height_mm / m.gauge_every_mm, 2)} steps of {mm(m.gauge_every_mm, 4)} up the gauge",
        why=f"{bare(m.height_mm, 5)} / {bare(m.gauge_every_mm, 4)}; {RINGS}: fewer leave the shape to the eye, more "
        "crowd the stick and the card",
        mend=f"write `gauge every: {handy}`",
        edit=Edit(key="gauge every", text=handy),
    )


RULES: tuple[Rule[ClippingMeasures], ...] = (
    something_to_clip,
    half_at_most,
    third_of_the_leaf,
    light_passes,
    round_ball,
    tolerance_within_cut,
    rings_to_read,
    *PLANTS,
    *SAID,
)
