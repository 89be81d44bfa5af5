"""The rules of hedging: how much comes off and the taper, then those of site and season, and of young hedges."""

from collections.abc import Iterator
from math import ceil, floor, radians, tan

from howto.families.hedging import formulae
from howto.families.hedging import references as by
from howto.families.hedging.figures import section_share
from howto.families.hedging.growing import FORMATIVE_YEARS, cut_months, plant_of, side_growth
from howto.families.hedging.measures import HedgingMeasures
from howto.families.hedging.rules_site import SITE
from howto.families.hedging.rules_young import YOUNG
from howto.findings import Severity
from howto.model.family import SHARE, Breach, Edit, Limit, Rule, rule
from howto.model.reference import GEOMETRY, PRACTICE, Grade
from howto.model.work import Work
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, mm, percent, qty
from howto.seasons import month_name

T = Work[HedgingMeasures]

THIRD = Limit(high=1 / 3, unit=SHARE, of="of the height in one cut", reference=by.RENOVATION)
HALF = Limit(high=0.5, unit=SHARE, of="of the height in one cut", reference=by.RENOVATION_OTHER)
LEAF = Limit(high=1 / 3, unit=SHARE, of="of the leaf in a season", reference=by.THIRD_OF_LEAF)
UPRIGHT_MM = 1000.0  # up to about this height upright sides are fine: RHS, How to trim a hedge
TOP = Limit(high=600, unit="mm", of="of top", reference=by.REACH)
LEAN = Limit(high=18, unit="°", of="from upright", reference=by.STEEP)
INSIDE = Limit(low=150, unit="mm", of="inside the wanted face", reference=by.RENOVATION)
WIDEST_MM = 5000.0  # as wide as `base width` may be written
ROOM_MM = 300.0  # see references.ROOM


@rule("hedging.something-to-cut", Severity.ERROR, GEOMETRY, applies="hedges with a standing height")
def something_to_cut(work: T) -> Iterator[Breach]:
    """The line of the cut is not above the hedge.

    A line above the hedge takes nothing off.
    """
    m = work.measures
    stands = m.standing_height_mm
    if stands is None or stands >= m.cut_mm:
        return
    lower = f"{num(stands * 0.9, 5)} mm"
    yield Breach(
        field="measures.cut_height_mm" if m.cut_height_mm is not None else "measures.standing_height_mm",
        also="measures.standing_height_mm" if m.cut_height_mm is not None else "measures.finished_height_mm",
        what=f"the hedge stands {mm(stands, 5)} and would be cut at {mm(m.cut_mm, 5)}",
        why=f"{bare(m.cut_mm, 5)} - {bare(stands, 5)} = {mm(m.cut_mm - stands, 4)} of air above the hedge",
        mend=f"measure again, or write a cut height under {mm(stands, 5)}, such as `cut height: {lower}`",
        edit=Edit(key="cut height", text=lower),
    )


@rule(
    "hedging.third-of-height",
    Severity.ERROR,
    by.RENOVATION,
    by.RENOVATION_OTHER,
    PRACTICE,
    applies="hedges with a standing height, but for young hawthorn, privet and their like, which are cut harder",
)
def third_of_height(work: T) -> Iterator[Breach]:
    """No cut takes more than a third of the standing height; a lower hedge is reached in stages.

    A deep cut leaves bare wood that may not close. Two copies of one source differ on when to stage: over a
    third, and over 50 %. Up to half is only warned of in a renovation of beech, box, hawthorn, holly, hornbeam,
    Lonicera nitida or yew.
    """
    m = work.measures
    stands = m.standing_height_mm
    if stands is None or stands <= m.cut_mm or _cut_hard_while_young(work):
        return
    share = formulae.share_off(stands, m.cut_mm)
    if THIRD.allows(share):
        return
    least = ceil(formulae.lowest_cut_mm(stands) - 1e-9)
    down = ", ".join(num(height, 5) for height in formulae.staged_heights(stands, m.cut_mm))
    softer = m.job == "renovate" and takes_hard_cuts(work) and HALF.allows(share)
    both = (
        "; one copy of the source stages from a third on, another from a half on: the smaller is kept" if softer else ""
    )
    yield Breach(
        field="measures.cut_height_mm" if m.cut_height_mm is not None else "measures.finished_height_mm",
        also="measures.standing_height_mm",
        what=f"the cut takes {percent(share * 100)} of the height",
        why=f"({bare(stands, 5)} - {bare(m.cut_mm, 5)}) / {bare(stands, 5)}; the most is a third{both}. "
        f"In stages: {down} mm, one a year{_in_months(work)}",
        mend=f"write `cut height: {least} mm` for this year"
        + ("; the figure `staged cuts` gives heights and dates" if m.finished_height_mm < least else ""),
        edit=Edit(key="cut height", text=f"{least} mm"),
        severity=Severity.WARNING if softer else None,
    )


def _cut_hard_while_young(work: T) -> bool:
    """Tell whether the formative pruning of its group asks more than a third of this hedge."""
    m, plant = work.measures, plant_of(work)
    young = m.job == "thicken" and m.year is not None and m.year <= FORMATIVE_YEARS
    return young and plant is not None and plant.group == "upright deciduous"


def takes_hard_cuts(work: T) -> bool:
    """Tell whether a published source lets this plant lose half of its height and width."""
    plant = plant_of(work)
    return bool(
        plant and plant.regrows and plant.regrows.text == "old wood" and plant.regrows.grade in (Grade.A, Grade.B)
    )


def _in_months(work: T) -> str:
    months = cut_months(work)[0]
    return f", in {' or '.join(map(month_name, months))}" if months else ""


@rule(
    "hedging.one-face-a-year",
    Severity.ERROR,
    by.RENOVATION,
    by.RENOVATION_OTHER,
    applies="renovations with a base width before and after",
)
def one_face_a_year(work: T) -> Iterator[Breach]:
    """A renovation that takes more than a third of the width cuts one face hard this year, the other next.

    The uncut face feeds the roots while the cut one shoots again. Two copies of one source differ on when to
    stage: over a third, and over 50 %.
    """
    m = work.measures
    if m.job != "renovate" or m.base_width_mm is None or m.standing_base_width_mm is None or m.faces == 1:
        return
    share = formulae.share_off(m.standing_base_width_mm, m.base_width_mm)
    if THIRD.allows(share):
        return
    softer = takes_hard_cuts(work) and HALF.allows(share)
    yield Breach(
        field="measures.faces" if m.faces else "measures.base_width_mm",
        also="measures.standing_base_width_mm",
        what=f"{percent(share * 100)} of the width comes off both faces in one year",
        why=f"({bare(m.standing_base_width_mm, 5)} - {bare(m.base_width_mm, 5)}) / {bare(m.standing_base_width_mm, 5)}; "
        "one copy of the source stages over a third, another over a half: the smaller is kept",
        mend="write `faces: 1`, and cut the other face next year",
        edit=Edit(key="faces", text="1"),
        severity=Severity.WARNING if softer else None,
    )


@rule(
    "hedging.inside-the-face",
    Severity.ERROR,
    by.RENOVATION,
    applies="renovations that write how far inside the face they cut",
)
def inside_the_face(work: T) -> Iterator[Breach]:
    """A renovation cuts at least 150 mm inside the wanted face, so that new shoots fill up to it.

    Cut at the wanted face, the hedge is too wide again after one season.
    """
    m = work.measures
    if m.job != "renovate" or m.inside_face_mm is None or INSIDE.allows(m.inside_face_mm):
        return
    yield Breach(
        field="measures.inside_face_mm",
        what=f"the cut stops {mm(m.inside_face_mm, 4)} inside the wanted face",
        why=f"new shoots need 150 mm to fill; {mm(150 - m.inside_face_mm, 4)} is missing",
        mend="write `inside face: 150 mm`",
        edit=Edit(key="inside face", text="150 mm"),
    )


@rule(
    "hedging.room-to-regrow",
    Severity.WARNING,
    by.ROOM,
    applies="the last cut of a renovation, where a third of the height allows it",
)
def room_to_regrow(work: T) -> Iterator[Breach]:
    """The last cut of a renovation stops 300 mm below the wanted height, to leave room for new shoots.

    New shoots stand 300 mm proud of a hard cut before they can be trimmed thick.
    """
    m = work.measures
    stands, wanted = m.standing_height_mm, m.finished_height_mm - ROOM_MM
    if m.job != "renovate" or stands is None or wanted <= 0 or not wanted < m.cut_mm <= m.finished_height_mm:
        return
    if not THIRD.allows(formulae.share_off(stands, wanted)):
        return
    least = f"{ceil(formulae.lowest_cut_mm(stands) - 1e-9)} mm"
    text = f"{num(max(floor(wanted), ceil(formulae.lowest_cut_mm(stands) - 1e-9)), 6)} mm"
    yield Breach(
        field="measures.cut_height_mm" if m.cut_height_mm is not None else "measures.finished_height_mm",
        what=f"the cut leaves {mm(m.finished_height_mm - m.cut_mm, 4)} for new shoots",
        why=f"300 mm below {mm(m.finished_height_mm, 5)} is {mm(wanted, 5)}; a third allows down to {least}",
        mend=f"write `cut height: {text}`",
        edit=Edit(key="cut height", text=text),
    )


@rule(
    "hedging.past-the-green",
    Severity.ERROR,
    by.RENOVATION,
    by.CONIFERS,
    applies="plants that the plant book marks as shooting from green wood only",
)
def past_the_green(work: T) -> Iterator[Breach]:
    """A hedge that shoots only from green wood is never cut deeper than its green.

    Most conifers, yew apart, do not shoot from old wood: past the green the hole stays.
    """
    m = work.measures
    plant = next((p for p in work.plants if p.regrows and p.regrows.text == "green wood only"), None)
    if plant is None:
        return
    green = m.green_depth_mm if m.green_depth_mm is not None else side_growth(work)[0]
    known = "its green is" if m.green_depth_mm is not None else "a year's growth of a side is about"
    for key, stands, wanted in (
        ("base width", m.standing_base_width_mm, m.base_width_mm),
        ("top width", m.standing_top_width_mm, m.top_width_mm),
    ):
        if stands is None or wanted is None or (stands - wanted) / 2 <= green + 1e-9:
            continue
        text = f"{ceil(stands - 2 * green - 1e-9)} mm"
        yield Breach(
            field=f"measures.{key.replace(' ', '_')}_mm",
            also=f"measures.standing_{key.replace(' ', '_')}_mm",
            what=f"{mm((stands - wanted) / 2, 4)} comes off each side of {plant.botanical}",
            why=f"({bare(stands, 5)} - {bare(wanted, 5)}) / 2; {known} {mm(green, 4)} deep, and bare wood stays bare",
            mend=f"write `{key}: {text}` or more",
            edit=Edit(key=key, text=text),
            severity=None if m.green_depth_mm is not None else Severity.WARNING,
        )


@rule(
    "hedging.third-of-the-section",
    Severity.WARNING,
    by.THIRD_OF_LEAF,
    by.QUARTER_OF_LEAF,
    applies="trims with all four widths and a standing height",
)
def third_of_the_section(work: T) -> Iterator[Breach]:
    """A trim takes no more than a third of the hedge in section; more is a renovation.

    The leaf stands in the shell. Trade limits run from a quarter to a third of it in a season.
    """
    m = work.measures
    share = section_share(m)
    if m.job != "trim" or share is None or LEAF.allows(share):
        return
    stands = m.standing_height_mm
    if stands is not None and not THIRD.allows(formulae.share_off(stands, m.cut_mm)):
        return  # third_of_height says it
    base, top, was = m.base_width_mm or 0.0, m.top_width_mm or 0.0, m.standing_base_width_mm or 0.0
    before = formulae.section_mm2(was, m.standing_top_width_mm or 0.0, stands or 0.0)
    wider = ceil(2 * before * 2 / 3 / m.cut_mm - top)
    fits = base < wider <= min(was, WIDEST_MM)
    text = f"base width: {wider} mm" if fits else "job: renovate"
    yield Breach(
        field="measures.base_width_mm",
        also="measures.standing_base_width_mm",
        what=f"the trim takes {percent(share * 100)} of the hedge",
        why=f"section {qty(before / 1e6, 'm²', 3)} against {qty(before * (1 - share) / 1e6, 'm²', 3)} when cut; "
        "a season's trim takes at most a third",
        mend=f"write `{text}`" + (" this year, and less in later years" if fits else ", and take it in stages"),
        edit=Edit(key=text.partition(":")[0], text=text.partition(": ")[2]),
    )


@rule(
    "hedging.base-wider",
    Severity.ERROR,
    by.TRIMMING,
    by.HOW_TO_TRIM,
    by.RATIO,
    applies="hedges with a base and a top width",
)
def base_wider(work: T) -> Iterator[Breach]:
    """A formal hedge over 1 m is wider at its base than at its top, and none is ever narrower there.

    A base wider than the top lets light reach the foot; a low hedge under about 1 m may stand upright.
    """
    m = work.measures
    base, top = m.base_width_mm, m.top_width_mm
    if base is None or top is None or base > top or (base == top and m.cut_mm <= UPRIGHT_MM):
        return
    wider = ceil(formulae.base_for_mm(top) / 10 - 1e-9) * 10
    key, text = "base width", f"{wider} mm"
    if wider > WIDEST_MM:
        key, text = "top width", f"{mm(floor(base * 30 / 4) / 10, 7)}"
    yield Breach(
        field="measures.base_width_mm",
        also="measures.top_width_mm",
        what=f"the base is {mm(base, 5)} and the top {mm(top, 5)}",
        why="light no longer reaches the foot, which goes bare; upright sides do only up to about 1 m. "
        f"One third wider: {bare(top, 5)} x 4/3 = {mm(formulae.base_for_mm(top), 5)}",
        mend=f"write `{key}: {text}`",
        edit=Edit(key=key, text=text),
    )


@rule("hedging.lean", Severity.ADVICE, by.STEEP, applies="hedges with a base and a top width")
def lean(work: T) -> Iterator[Breach]:
    """The sides lean no more than 18° from upright.

    Steeper than 50 to 100 mm in 300 mm of height gives room away and no more light.
    """
    m = work.measures
    if m.base_width_mm is None or m.top_width_mm is None or m.base_width_mm <= m.top_width_mm:
        return
    angle = formulae.angle_deg(m.base_width_mm, m.top_width_mm, m.cut_mm)
    if LEAN.allows(angle):
        return
    text = f"{num(floor((m.top_width_mm + 2 * m.cut_mm * tan(radians(18))) * 10) / 10, 7)} mm"
    yield Breach(
        field="measures.base_width_mm",
        also="measures.top_width_mm",
        what=f"the sides lean {qty(angle, '°', 3)}",
        why=f"atan(({bare(m.base_width_mm, 5)} - {bare(m.top_width_mm, 5)}) / (2 x {bare(m.cut_mm, 5)})); the most is 18°",
        mend=f"write `base width: {text}` or less",
        edit=Edit(key="base width", text=text),
    )


@rule("hedging.top-within-reach", Severity.WARNING, by.REACH, applies="hedges with a top width")
def top_within_reach(work: T) -> Iterator[Breach]:
    """The top is at most 600 mm wide, so that it can be reached from one side.

    A top over 600 mm cannot be cut level from one side without leaning over a blade.
    """
    top = work.measures.top_width_mm
    if top is None or TOP.allows(top):
        return
    yield Breach(
        field="measures.top_width_mm",
        what=f"the top is {mm(top, 5)} wide",
        why=f"{bare(top, 5)} - 600 = {mm(top - 600, 4)} is out of reach from one side",
        mend="write `top width: 600 mm`, or less",
        edit=Edit(key="top width", text="600 mm"),
    )


CUTS: tuple[Rule[HedgingMeasures], ...] = (
    something_to_cut,
    third_of_height,
    one_face_a_year,
    inside_the_face,
    room_to_regrow,
    past_the_green,
    third_of_the_section,
    base_wider,
    lean,
    top_within_reach,
)

RULES: tuple[Rule[HedgingMeasures], ...] = (*CUTS, *YOUNG, *SITE)
