"""The rules of hedging: how much comes off and the taper, then those of site and season, and of young hedges."""

from collections.abc import Iterator
from math import ceil, radians, tan

from howto.families.hedging import formulae
from howto.families.hedging import references as by
from howto.families.hedging.figures import sections_mm2
from howto.families.hedging.formulae import MOST, WIDER, share_off
from howto.families.hedging.growing import cut_months, in_formative_years, plant_of, side_growth
from howto.families.hedging.measures import INSIDE_MM, WIDEST_MM, HedgingMeasures
from howto.families.hedging.parts import to_cut, to_write, whole_mm
from howto.families.hedging.rules_site import SITE
from howto.families.hedging.rules_young import YOUNG
from howto.findings import Severity
from howto.model.family import SHARE, Breach, Edit, Limit, Rule, outside, rule, typed
from howto.model.reference import GEOMETRY, PRACTICE, Grade
from howto.model.work import Work
from howto.quantities import round_up
from howto.quantities.amounts import Name, Share, bare, mm, months_named, percent, qty

T = Work[HedgingMeasures]

THIRD = Limit(high=float(MOST), unit=SHARE, of="of the height in one cut", reference=by.RENOVATION)
HALF = Limit(high=0.5, unit=SHARE, of="of the height in one cut", reference=by.RENOVATION_OTHER)
COPIES = f"one copy of the source stages over {THIRD.most}, another over {HALF.most}: the smaller is kept"
LEAF = Limit(high=1 / 3, unit=SHARE, of="of the leaf in a season", reference=by.THIRD_OF_LEAF)
TOP = Limit(high=600, unit="mm", of="of top", reference=by.REACH)
LEAN_DEG = 18.0
LEAN = Limit(high=LEAN_DEG, unit="°", of="from upright", reference=by.STEEP)
INSIDE = Limit(low=INSIDE_MM, unit="mm", of="inside the wanted face", reference=by.RENOVATION)
UPRIGHT_MM = 1000.0  # up to about this height upright sides are fine: references.HOW_TO_TRIM
ROOM_MM = 300.0  # see references.ROOM
LOWER_SHARE = 0.9  # ours: of what stands, in the example of a cut height


@rule("hedging.something-to-cut", Severity.ERROR, GEOMETRY, applies="hedges with a standing height")
def something_to_cut(work: T) -> Iterator[Breach]:
    """The line of the cut is not above the hedge.

    A line above the hedge takes nothing off.
    """
    m, stands = work.measures, work.measures.standing_height_mm
    if stands is None or stands >= m.cut_mm:
        return
    fields, lower = ("measures.standing_height_mm", "measures.finished_height_mm"), typed(stands * LOWER_SHARE, "mm")
    if m.cut_height_mm is not None:
        fields = ("measures.cut_height_mm", "measures.standing_height_mm")
    yield Breach(
        field=fields[0],
        also=fields[1],
        what=f"the hedge stands {mm(stands, 5)} and would be cut at {mm(m.cut_mm, 5)}",
        why=f"{bare(m.cut_mm, 5)} - {bare(stands, 5)} = {mm(m.cut_mm - stands, 4)} of air above the hedge",
        mend=f"measure again, or write a cut height under {mm(stands, 5)}, such as `cut height: {lower}`",
        edit=Edit(lower, "cut height"),
    )


@rule(
    "hedging.third-of-height",
    Severity.ERROR,
    by.RENOVATION,
    by.RENOVATION_OTHER,
    PRACTICE,
    applies="hedges with a standing height, but for young hawthorn, privet and their like, which are cut harder",
    smaller=THIRD,
    larger=HALF,
)
def third_of_height(work: T) -> Iterator[Breach]:
    """No cut takes more than {smaller.most} of the standing height; a lower hedge is reached in stages.

    A deep cut leaves bare wood that may not close. Two copies of one source differ on when to stage: over
    {smaller.most}, and over {larger.most}. Up to {larger.most} is only warned of in a renovation of beech, box,
    hawthorn, holly, hornbeam, Lonicera nitida or yew.
    """
    m, stands = work.measures, work.measures.standing_height_mm
    if stands is None or stands <= m.cut_mm or _cut_hard_while_young(work):
        return
    share = share_off(stands, m.cut_mm)
    if THIRD.allows(share):
        return
    softer = m.job == "renovate" and _takes_hard_cuts(work) and HALF.allows(share)
    down = ", ".join(f"{mm(height, 5)}" for height in formulae.staged_heights(stands, m.cut_mm))
    months = cut_months(work)[0]
    why = f"({bare(stands, 5)} - {bare(m.cut_mm, 5)}) / {bare(stands, 5)}; the most is {THIRD.most}"
    why += f"; {COPIES}" if softer else ""
    why += f". In stages: {down}, one a year"
    why += f", in {months_named(months, 'or')}" if months else ""
    least = round_up(formulae.lowest_cut_mm(stands), 1)
    then = "; the figure `staged cuts` gives heights and dates" if m.finished_height_mm < least else ""
    yield to_cut(
        m,
        whole_mm(least),
        f"the cut takes {percent(share * 100)} of the height",
        why,
        then=f" for this year{then}",
        also="measures.standing_height_mm",
        severity=Severity.WARNING if softer else None,
    )


def _cut_hard_while_young(work: T) -> bool:
    """Tell whether the formative pruning of its group asks for more than other cuts may take."""
    m, plant = work.measures, plant_of(work)
    return m.job == "thicken" and in_formative_years(m) and plant is not None and plant.group == "upright deciduous"


def _takes_hard_cuts(work: T) -> bool:
    """Tell whether a published source lets this plant lose half of its height and width."""
    plant = plant_of(work)
    fact = plant.regrows if plant else None
    return fact is not None and fact.text == "old wood" and fact.grade in {Grade.A, Grade.B}


@rule(
    "hedging.one-face-a-year",
    Severity.ERROR,
    by.RENOVATION,
    by.RENOVATION_OTHER,
    applies="renovations with a base width before and after",
    smaller=THIRD,
    larger=HALF,
)
def one_face_a_year(work: T) -> Iterator[Breach]:
    """A renovation that takes more than {smaller.most} of the width cuts one face hard this year, the other next.

    The uncut face feeds the roots while the cut one shoots again. Two copies of one source differ on when to
    stage: over {smaller.most}, and over {larger.most}.
    """
    m, stands, wanted = work.measures, work.measures.standing_base_width_mm, work.measures.base_width_mm
    if m.job != "renovate" or wanted is None or stands is None or m.faces == 1:
        return
    share = share_off(stands, wanted)
    if not THIRD.allows(share):
        yield to_write(
            "faces" if m.faces else "base_width_mm",
            "1",
            f"{percent(share * 100)} of the width comes off both faces in one year",
            f"({bare(stands, 5)} - {bare(wanted, 5)}) / {bare(stands, 5)}; {COPIES}",
            key="faces",
            then=", and cut the other face next year",
            also="measures.standing_base_width_mm",
            severity=Severity.WARNING if _takes_hard_cuts(work) and HALF.allows(share) else None,
        )


@rule(
    "hedging.inside-the-face",
    Severity.ERROR,
    by.RENOVATION,
    applies="renovations that write how far inside the face they cut",
    limit=INSIDE,
)
def inside_the_face(work: T) -> Iterator[Breach]:
    """A renovation cuts at least {limit.least} inside the wanted face, so that new shoots fill up to it.

    Cut at the wanted face, the hedge is too wide again after one season.
    """
    if work.measures.job == "renovate":
        what, why = "the cut stops {found} inside the wanted face", "new shoots need {least} to fill"
        yield from outside(INSIDE, work, "inside_face_mm", what=what, why=why)


@rule(
    "hedging.room-to-regrow",
    Severity.WARNING,
    by.ROOM,
    applies="the last cut of a renovation, where one cut may go so low",
    room=f"{mm(ROOM_MM)}",
)
def room_to_regrow(work: T) -> Iterator[Breach]:
    """The last cut of a renovation stops {room} below the wanted height, to leave room for new shoots.

    New shoots stand {room} proud of a hard cut before they can be trimmed thick.
    """
    m, stands = work.measures, work.measures.standing_height_mm
    finished, wanted = m.finished_height_mm, m.finished_height_mm - ROOM_MM
    if m.job != "renovate" or stands is None or wanted <= 0 or not wanted < m.cut_mm <= finished:
        return
    if THIRD.allows(share_off(stands, wanted)):
        least = round_up(formulae.lowest_cut_mm(stands), 1)
        what = f"the cut leaves {mm(finished - m.cut_mm, 4)} for new shoots"
        why = f"{mm(ROOM_MM)} below {mm(finished, 5)} is {mm(wanted, 5)}; {THIRD.most} allows down to {mm(least, 5)}"
        yield to_cut(m, whole_mm(max(wanted, least), down=True), what, why)


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
    green, known, severity = m.green_depth_mm, "its green is", None
    if green is None:
        green, known, severity = side_growth(work)[0], "a year's growth of a side is about", Severity.WARNING
    for field, stands, wanted in (
        ("base_width_mm", m.standing_base_width_mm, m.base_width_mm),
        ("top_width_mm", m.standing_top_width_mm, m.top_width_mm),
    ):
        if stands is None or wanted is None or (stands - wanted) / 2 <= green + formulae.DUST:
            continue
        yield to_write(
            field,
            whole_mm(stands - 2 * green),
            f"{mm((stands - wanted) / 2, 4)} comes off each side of {Name(plant.botanical)}",
            f"({bare(stands, 5)} - {bare(wanted, 5)}) / 2; {known} {mm(green, 4)} deep, and bare wood stays bare",
            then=" or more",
            also=f"measures.standing_{field}",
            severity=severity,
        )


@rule(
    "hedging.third-of-the-section",
    Severity.WARNING,
    by.THIRD_OF_LEAF,
    by.QUARTER_OF_LEAF,
    applies="trims with all four widths and a standing height",
    limit=LEAF,
)
def third_of_the_section(work: T) -> Iterator[Breach]:
    """A trim takes no more than {limit.most} of the hedge in section; more is a renovation.

    The leaf stands in the shell. Trade limits run from a quarter to {limit.most} of it in a season.
    """
    m, sections = work.measures, sections_mm2(work.measures)
    if m.job != "trim" or sections is None or LEAF.allows(share_off(*sections)):
        return
    before, after = sections
    base, top, was = m.base_width_mm or 0.0, m.top_width_mm or 0.0, m.standing_base_width_mm or 0.0
    if not THIRD.allows(share_off(m.standing_height_mm or 0.0, m.cut_mm)):
        return  # third_of_height says it
    wider = ceil(2 * before * (1 - MOST) / m.cut_mm - top)
    fits = base < wider <= min(was, WIDEST_MM)
    yield to_write(
        "base_width_mm",
        whole_mm(wider) if fits else "renovate",
        f"the trim takes {percent(share_off(before, after) * 100)} of the hedge",
        f"section {qty(before / 1e6, 'm²', 3)} against {qty(after / 1e6, 'm²', 3)} when cut; a trim takes {LEAF}",
        key="base width" if fits else "job",
        then=" this year, and less in later years" if fits else ", and take it in stages",
        also="measures.standing_base_width_mm",
    )


@rule(
    "hedging.base-wider",
    Severity.ERROR,
    by.TRIMMING,
    by.HOW_TO_TRIM,
    by.RATIO,
    applies="hedges with a base and a top width",
    upright=f"{mm(UPRIGHT_MM)}",
)
def base_wider(work: T) -> Iterator[Breach]:
    """A formal hedge over {upright} is wider at its base than at its top, and none is ever narrower there.

    A base wider than the top lets light reach the foot; a low hedge under about {upright} may stand upright.
    """
    m, base, top = work.measures, work.measures.base_width_mm, work.measures.top_width_mm
    if base is None or top is None or base > top or (base == top and m.cut_mm <= UPRIGHT_MM):
        return
    advised = formulae.base_for_mm(top)
    wider = round_up(advised, 10)
    key, text = "base width", whole_mm(wider)
    if wider > WIDEST_MM:
        key, text = "top width", typed(base / (1 + WIDER), "mm", down=True)
    yield to_write(
        "base_width_mm",
        text,
        f"the base is {mm(base, 5)} and the top {mm(top, 5)}",
        f"light no longer reaches the foot, which goes bare; upright sides do only up to about {mm(UPRIGHT_MM)}. "
        f"Wider by {Share(float(WIDER))}: {bare(top, 5)} x {1 + WIDER} = {mm(advised, 5)}",
        key=key,
        also="measures.top_width_mm",
    )


@rule("hedging.lean", Severity.ADVICE, by.STEEP, applies="hedges with a base and a top width", limit=LEAN)
def lean(work: T) -> Iterator[Breach]:
    """The sides lean no more than {limit.most} from upright.

    A side that leans more gives room away and gains no more light.
    """
    m, base, top = work.measures, work.measures.base_width_mm, work.measures.top_width_mm
    if base is None or top is None or base <= top:
        return
    angle = formulae.angle_deg(base, top, m.cut_mm)
    if not LEAN.allows(angle):
        yield to_write(
            "base_width_mm",
            whole_mm(top + 2 * m.cut_mm * tan(radians(LEAN_DEG)), down=True),
            f"the sides lean {qty(angle, '°', 3)}",
            f"atan(({bare(base, 5)} - {bare(top, 5)}) / (2 x {bare(m.cut_mm, 5)})); the most is {LEAN.most}",
            then=" or less",
            also="measures.top_width_mm",
        )


@rule("hedging.top-within-reach", Severity.WARNING, by.REACH, applies="hedges with a top width", limit=TOP)
def top_within_reach(work: T) -> Iterator[Breach]:
    """The top is at most {limit.most} wide, so that it can be reached from one side.

    A wider top than {limit.most} cannot be cut level from one side without leaning over a blade.
    """
    yield from outside(TOP, work, "top_width_mm", what="the top is {found} wide", why="")


RULES: tuple[Rule[HedgingMeasures], ...] = (
    something_to_cut, third_of_height, one_face_a_year, inside_the_face, room_to_regrow, past_the_green,
    third_of_the_section, base_wider, lean, top_within_reach, *YOUNG, *SITE,
)  # fmt: skip
