"""The rules of clipping: sizes and passes, then plants and weather, then what the card must say."""

from collections.abc import Iterator
from math import ceil

from howto.families.clipping import formulae
from howto.families.clipping import references as by
from howto.families.clipping.figures import LIGHT_SHARE, SEASON_SHARE, share
from howto.families.clipping.gauge import handy_step
from howto.families.clipping.measures import LARGEST_MM, ClippingMeasures
from howto.families.clipping.rules_plants import PLANTS, T, left_larger, to_write
from howto.families.clipping.rules_said import SAID
from howto.findings import Severity
from howto.model.family import SHARE, Breach, Edit, Limit, Rule, rule, typed
from howto.model.reference import GEOMETRY, PRACTICE
from howto.quantities import round_down
from howto.quantities.amounts import Count, Word, bare, mm, percent

ONE_CUT_SHARE = 0.5  # of width or height, at most
HALF = Limit(high=ONE_CUT_SHARE, unit=SHARE, of="of height or width", reference=by.RENOVATION)
THIRD = Limit(high=SEASON_SHARE, unit=SHARE, of="of the leaf", reference=by.BOX_SEASON)
LIGHT = Limit(high=LIGHT_SHARE, unit=SHARE, of="of the leaf in a pass", reference=by.SHEARING)
RINGS = Limit(low=2, high=16, unit="", of="steps up the gauge", reference=PRACTICE)
SLACK_SHARE = 0.05  # ours: of its width, how far a ball without a tolerance may be off round
GROWN_SHARE = 0.06  # ours: over what it should finish, in the example of what it may stand


@rule("clipping.something-to-clip", Severity.ERROR, GEOMETRY, applies="every clipped shape")
def something_to_clip(work: T) -> Iterator[Breach]:
    """The shape stands larger than it should finish, and nowhere smaller.

    a clip takes off what stands outside the finished line; with nothing outside there is no clip
    """
    m = work.measures
    if m.top_mm is not None and m.top_mm < 0:
        yield _too_small("height", "high", m.standing_mm, m.height_mm)
    if m.side_mm < 0 or (m.side_mm == 0 and not m.top_mm):
        yield _too_small("width", "wide", m.standing_width_mm, m.finished_width_mm)


def _too_small(side: str, word: str, stands: float, finished: float) -> Breach:
    key = f"standing {side}"
    text = f"{min(ceil(finished * (1 + GROWN_SHARE) / 10) * 10, LARGEST_MM)} mm"
    return Breach(
        field=f"measures.standing_{side}_mm",
        also=f"measures.finished_{side}_mm",
        what=f"it stands {mm(stands, 5)} {Word(word)} and should finish {mm(finished, 5)} {Word(word)}",
        why=f"{bare(stands, 5)} - {bare(finished, 5)} leaves nothing to clip; shears add no leaf",
        mend=f"measure it again, and write what it stands over what it should finish, such as `{key}: {text}`",
        edit=Edit(key=key, text=text),
    )


@rule("clipping.half-at-most", Severity.ERROR, by.RENOVATION, applies="every clipped shape", limit=HALF)
def half_at_most(work: T) -> Iterator[Breach]:
    """No more than {limit.most} of the width or height comes off in one clip, even from plants that take hard cutting.

    box, yew, holly and the like may lose up to {limit.most} of height and width in one cut; more is staged over years
    """
    for side, stands, finished in _sides(work.measures):
        off = 1 - finished / stands
        if HALF.allows(off):
            continue
        yield left_larger(
            side,
            stands * (1 - ONE_CUT_SHARE),
            f"{percent(off * 100)} of the {Word(side)} comes off in one clip",
            f"1 - {bare(finished, 5)} / {bare(stands, 5)}; the most is {HALF.most}, "
            "and that only from plants that shoot from old wood",
            " this year, and clip to the smaller size next year",
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
    limit=THIRD,
)
def third_of_the_leaf(work: T) -> Iterator[Breach]:
    """A clip takes at most {limit.most} of the leafy volume, since the leaf is all in the shell.

    the leaf stands in the shell: 8 % off a ball's width is 22 % of its volume; trade limits run from 20 % to
    {limit.most}, and a standard for mature trees stops at a quarter
    """
    m = work.measures
    off = share(m)
    if off <= 0 or THIRD.allows(off) or not _sound(m):
        return
    for side, least in _third_left(m).items():
        yield left_larger(
            side,
            least,
            f"the clip takes {percent(off * 100)} of the leaf",
            f"the leaf stands in the shell between {bare(m.standing_width_mm, 5)} x {bare(m.standing_mm, 5)} and "
            f"{bare(m.finished_width_mm, 5)} x {mm(m.height_mm, 5)}; a season's clip takes at most {THIRD.most} of it",
            ", and reach the smaller size in later clips",
        )


def _third_left(m: ClippingMeasures) -> dict[str, float]:
    """Return the finished sizes that leave two thirds of the leaf: a wider shape, a higher one, or both."""
    standing = wide, high = m.standing_width_mm, m.standing_mm
    scale = (1 - SEASON_SHARE) ** (1 / 3)
    alike = (wide**2 * high) ** (1 / 3) * scale  # where the height follows the width
    if m.standing_height_mm is None or (m.finished_height_mm is None and ceil(alike) < wide and ceil(alike) <= high):
        return {"width": alike if m.standing_height_mm else wide * scale}
    width = formulae.width_leaving_mm(standing, m.height_mm, SEASON_SHARE)
    if m.finished_height_mm is not None and ceil(width) < wide:
        return {"width": width}
    height = formulae.height_leaving_mm(standing, m.finished_width_mm, SEASON_SHARE)
    if ceil(height) <= high:
        return {"height": height}
    return (
        {"width": width, "height": m.height_mm}
        if ceil(width) < wide
        else {"width": wide * scale, "height": high * scale}
    )


@rule("clipping.light-passes", Severity.WARNING, by.SHEARING, PRACTICE, applies="every clipped shape", limit=LIGHT)
def light_passes(work: T) -> Iterator[Breach]:
    """Many light passes beat a few deep ones: none takes more than {limit.most} of what stands.

    a deep pass cannot be put back; a light one shows the line before it is passed
    """
    m = work.measures
    off = share(m)
    if off <= 0 or LIGHT.allows(formulae.share_a_pass(off, m.passes)) or not _sound(m):
        return
    least = formulae.passes_for(off, LIGHT_SHARE)
    each = "one pass" if m.passes == 1 else f"each of {Count(m.passes, 'pass', 'passes')}"
    yield to_write(
        "passes",
        str(least),
        f"{each} takes {percent(formulae.share_a_pass(off, m.passes) * 100)} of what stands",
        f"{percent(off * 100)} in all; a light pass takes at most {LIGHT.most}",
        " or more",
    )


@rule("clipping.round-ball", Severity.ERROR, GEOMETRY, applies="balls with a finished height")
def round_ball(work: T) -> Iterator[Breach]:
    """A ball is as high as it is wide, within its tolerance.

    the gauge rings are cut for a sphere; a taller one is another shape
    """
    m = work.measures
    if m.shape != "ball" or m.finished_height_mm is None:
        return
    slack = m.tolerance("finished_width_mm") or SLACK_SHARE * m.finished_width_mm
    if abs(m.finished_height_mm - m.finished_width_mm) <= slack + 1e-6:
        return
    yield to_write(
        "finished_height_mm",
        typed(m.finished_width_mm, "mm"),
        f"a ball {mm(m.finished_height_mm, 5)} high and {mm(m.finished_width_mm, 5)} wide is not round",
        f"the two differ by more than {mm(slack, 3)}",
        ", or call the shape a dome",
        also="measures.finished_width_mm",
    )


@rule(
    "clipping.tolerance-within-cut", Severity.WARNING, GEOMETRY, applies="shapes whose finished width has a tolerance"
)
def tolerance_within_cut(work: T) -> Iterator[Breach]:
    """The tolerance is smaller than the cut, or finished cannot be told from not started.

    else a plant not yet touched would pass the finish standard
    """
    m = work.measures
    slack = m.tolerance("finished_width_mm")
    off = 2 * m.side_mm
    if slack is None or off <= 0 or slack < off:
        return
    finer = round_down(off / 2, 1) or round_down(off / 2, 0.001)
    text = f"{typed(m.finished_width_mm, 'mm')} ± {typed(finer, 'mm', down=True)}"
    what = f"± {mm(slack, 3)} is as wide as the whole cut"
    why = f"the clip takes {mm(off, 3)} off the width, so a plant not yet touched would pass"
    yield to_write("finished_width_mm", text, what, why)


@rule(
    "clipping.rings-to-read",
    Severity.WARNING,
    PRACTICE,
    applies="shapes that write the height between two rings",
    limit=RINGS,
)
def rings_to_read(work: T) -> Iterator[Breach]:
    """The gauge has {limit.least} to {limit.most} steps, so that it can be read at a glance and still holds the shape.

    {limit.least} steps are the least that tell a curve from a slope; more than {limit.most} cannot be read at a glance
    """
    m = work.measures
    if m.gauge_every_mm is None or RINGS.allows(steps := m.height_mm / m.gauge_every_mm):
        return
    yield to_write(
        "gauge_every_mm",
        handy_step(m.height_mm, work.crew.units).text,
        f"{bare(steps, 2)} steps of {mm(m.gauge_every_mm, 4)} up the gauge",
        f"{bare(m.height_mm, 5)} / {bare(m.gauge_every_mm, 4)}; {RINGS}: fewer leave the shape to the eye, more "
        "crowd the stick and the card",
        also=f"measures.finished_{'width' if m.finished_height_mm is None else 'height'}_mm",
    )


RULES: tuple[Rule[ClippingMeasures], ...] = (
    something_to_clip, half_at_most, third_of_the_leaf, light_passes, round_ball, tolerance_within_cut, rings_to_read,
    *PLANTS, *SAID,
)  # fmt: skip
