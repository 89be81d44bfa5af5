"""The figures of a hedge, in printing order, each with working a pencil can follow."""

from collections.abc import Iterator
from datetime import date

from howto.families.hedging import formulae
from howto.families.hedging import references as by
from howto.families.hedging.figures_growth import growing_figures
from howto.families.hedging.growing import stages
from howto.families.hedging.measures import HedgingMeasures
from howto.model.figure import Figure, Table
from howto.model.reference import GEOMETRY, PRACTICE
from howto.model.work import Work
from howto.quantities.amounts import bare, mm, percent, qty

RATE_M2_PER_H = 40.0  # see references.RATE
BELOW_MM = 10.0  # the level line stands this far below the finished height; see references.LEVEL_LINE


def figures(work: Work[HedgingMeasures], today: date) -> Iterator[Figure]:
    """Yield the figures of one hedge; `today` is the day of the cut."""
    m = work.measures
    yield from _top_off(m)
    yield from _staged(work, today)
    yield from _taper(m)
    yield from _section(m)
    if m.cut_mm > BELOW_MM:
        yield _line(m)
    yield from _renovation(m)
    yield from growing_figures(work, today)
    yield from _face(m)


def section_share(m: HedgingMeasures) -> float | None:
    """Return the part of the section (0 to 1) this cut takes, or None where a width is not written."""
    widths = (m.standing_base_width_mm, m.standing_top_width_mm, m.base_width_mm, m.top_width_mm)
    base, top, new_base, new_top = widths
    if base is None or top is None or new_base is None or new_top is None or m.standing_height_mm is None:
        return None
    before = formulae.section_mm2(base, top, m.standing_height_mm)
    return formulae.share_off(before, formulae.section_mm2(new_base, new_top, m.cut_mm))


def _top_off(m: HedgingMeasures) -> Iterator[Figure]:
    stands, cut = m.standing_height_mm, m.cut_mm
    if stands is None or stands <= cut:
        return
    share = formulae.share_off(stands, cut)
    yield Figure(
        name="off the top",
        label="Off the top",
        value=stands - cut,
        unit="mm",
        working=(
            f"{bare(stands, 5)} - {bare(cut, 5)} = {mm(stands - cut, 4)}",
            f"{bare(stands - cut, 4)} / {bare(stands, 5)} = {percent(share * 100)} of the standing height",
            f"a third would leave {bare(stands, 5)} x 2/3 = {mm(formulae.lowest_cut_mm(stands), 5)}",
        ),
        references=(PRACTICE, by.RENOVATION),
        headline=m.job != "trim",
    )
    yield Figure(
        name="share of the height",
        label="Share of the height taken",
        value=share * 100,
        unit="%",
        working=(f"1 - {bare(cut, 5)} / {bare(stands, 5)} = {percent(share * 100)}",),
        references=(by.RENOVATION, by.RENOVATION_OTHER),
    )


def _staged(work: Work[HedgingMeasures], today: date) -> Iterator[Figure]:
    m = work.measures
    found = stages(work, today)
    if len(found) < 2 or m.standing_height_mm is None:
        return
    stands = m.standing_height_mm
    working = []
    for at, stage in enumerate(found, 1):
        third = formulae.lowest_cut_mm(stands)
        end = "" if stage.cut_mm <= third + 1e-6 else f", not lower than {mm(stage.cut_mm, 5)} wanted"
        working.append(f"cut {at}: {bare(stands, 5)} x 2/3 = {mm(third, 5)}{end}")
        stands = stage.cut_mm
    working.append("what grows back between two cuts is trimmed to the last line")
    rows = []
    stands = m.standing_height_mm
    for stage in found:
        rows.append((stage.day, stage.cut_mm, formulae.share_off(stands, stage.cut_mm) * 100))
        stands = stage.cut_mm
    yield Figure(
        name="staged cuts",
        label="Cuts down to the finished height, none over a third",
        value=float(len(found)),
        working=tuple(working),
        references=(by.RENOVATION, by.RENOVATION_OTHER, PRACTICE),
        digits=2,
        table=Table(columns=("Cut on", "Down to", "Takes"), units=("", "mm", "%"), rows=tuple(rows)),
    )


def _taper(m: HedgingMeasures) -> Iterator[Figure]:
    top = m.top_width_mm
    if top is None:
        return
    advised = formulae.base_for_mm(top)
    yield Figure(
        name="advised base",
        label="Base one third wider than the top",
        value=advised,
        unit="mm",
        working=(f"{bare(top, 5)} x 4/3 = {mm(advised, 5)}",),
        references=(by.RATIO, by.TRIMMING),
    )
    base = m.base_width_mm
    if base is None:
        return
    height, side = m.cut_mm, formulae.in_each_side_mm(base, top)
    angle = formulae.angle_deg(base, top, height)
    yield Figure(
        name="in each side",
        label="In each side, foot to top",
        value=side,
        unit="mm",
        working=(f"({bare(base, 5)} - {bare(top, 5)}) / 2 = {mm(side, 4)}",),
        references=(GEOMETRY,),
        headline=m.job == "trim",
    )
    yield Figure(
        name="side angle",
        label="Lean of each side from upright",
        value=angle,
        unit="deg",
        working=(
            f"({bare(base, 5)} - {bare(top, 5)}) / (2 x {bare(height, 5)}) = {bare(side / height)}",
            f"atan {bare(side / height)} = {qty(angle, '°', 3)}",
        ),
        references=(GEOMETRY, by.TRIMMING),
        digits=2,
    )
    yield _gauge(base, top, height)


def _gauge(base: float, top: float, height: float) -> Figure:
    every = next((step for step in (100, 200, 250, 300, 500) if height / step <= 8), 1000.0)
    ups = [every * step for step in range(int(height / every + 1e-9) + 1)]
    if ups[-1] < height - 1e-6:
        ups.append(height)
    widths = [formulae.width_at_mm(base, top, height, up) for up in ups]
    at = len(ups) // 2
    return Figure(
        name="width at each height",
        label="Width at each height",
        value=f"every {mm(every, 3)} up",
        working=(
            f"at {mm(ups[at], 5)} up: {bare(base, 5)} - ({bare(base, 5)} - {bare(top, 5)}) x {bare(ups[at], 5)} / "
            f"{bare(height, 5)} = {mm(widths[at], 4)}",
        ),
        references=(GEOMETRY,),
        table=Table(
            columns=("Up from the foot", "Width", "In from the foot"),
            units=("mm", "mm", "mm"),
            rows=tuple((up, width, (base - width) / 2) for up, width in zip(ups, widths, strict=True)),
        ),
    )


def _section(m: HedgingMeasures) -> Iterator[Figure]:
    share = section_share(m)
    base, top, new_base, new_top = (
        m.standing_base_width_mm, m.standing_top_width_mm, m.base_width_mm, m.top_width_mm,
    )  # fmt: skip
    if share is None or m.standing_height_mm is None or not (base and top and new_base and new_top):
        return
    before = formulae.section_mm2(base, top, m.standing_height_mm) / 1e6
    after = formulae.section_mm2(new_base, new_top, m.cut_mm) / 1e6
    yield Figure(
        name="canopy removed",
        label="Share of the hedge taken off",
        value=share * 100,
        unit="%",
        working=(
            f"stands: ({bare(base, 5)} + {bare(top, 5)}) / 2 x {bare(m.standing_height_mm, 5)} = {qty(before, 'm²', 3)}",
            f"cut: ({bare(new_base, 5)} + {bare(new_top, 5)}) / 2 x {bare(m.cut_mm, 5)} = {qty(after, 'm²', 3)}",
            f"1 - {bare(after)} / {bare(before)} = {percent(share * 100)} of the section",
            *(
                (
                    f"off the length of each shoot, crown and all: 1 - (1 - {bare(share)})^(1/3) = "
                    f"{percent(formulae.share_of_length(share) * 100)}",
                )
                if share > 0
                else ()
            ),
        ),
        references=(GEOMETRY, by.CROWN),
        headline=m.job == "trim",
    )


def string_line_mm(m: HedgingMeasures) -> float:
    """Return the height of the stretched line: 10 mm under the cut, so that the blade rides over it."""
    return m.cut_mm - BELOW_MM


def _line(m: HedgingMeasures) -> Figure:
    return Figure(
        name="string line",
        label="Height of the string line",
        value=string_line_mm(m),
        unit="mm",
        working=(
            f"{bare(m.cut_mm, 5)} - {bare(BELOW_MM)} = {mm(m.cut_mm - BELOW_MM, 5)}, so that the blade rides over",
        ),
        references=(by.LEVEL_LINE,),
    )


def _renovation(m: HedgingMeasures) -> Iterator[Figure]:
    if m.job != "renovate" or m.base_width_mm is None or m.standing_base_width_mm is None:
        return
    stands, wanted = m.standing_base_width_mm, m.base_width_mm
    share = formulae.share_off(stands, wanted)
    inside = m.inside_face_mm if m.inside_face_mm is not None else 150.0
    yield Figure(
        name="width to lose",
        label="Width to lose in all",
        value=stands - wanted,
        unit="mm",
        working=(
            f"{bare(stands, 5)} - {bare(wanted, 5)} = {mm(stands - wanted, 4)}",
            f"{bare(stands - wanted, 4)} / {bare(stands, 5)} = {percent(share * 100)} of the width",
        ),
        references=(by.RENOVATION, by.RENOVATION_OTHER),
    )
    yield Figure(
        name="first face",
        label="First face: cut in this far",
        value=(stands - wanted) / 2 + inside,
        unit="mm",
        working=(
            f"half of what goes: {bare(stands - wanted, 4)} / 2 = {mm((stands - wanted) / 2, 4)}",
            f"and {mm(inside, 3)} inside the wanted face, to leave room for new shoots: "
            f"{mm((stands - wanted) / 2 + inside, 4)}",
            "the other face is trimmed as usual this year, and cut the same way next year",
        ),
        references=(by.RENOVATION,),
        headline=True,
    )


def _face(m: HedgingMeasures) -> Iterator[Figure]:
    if m.hedge_length_m is None or m.base_width_mm is None or m.top_width_mm is None:
        return
    around = formulae.face_mm2_per_mm(m.base_width_mm, m.top_width_mm, m.cut_mm) / 1000
    area = around * m.hedge_length_m
    side = formulae.in_each_side_mm(m.base_width_mm, m.top_width_mm)
    minutes = formulae.minutes_for(area, RATE_M2_PER_H)
    yield Figure(
        name="face to trim",
        label="Face to trim",
        value=area,
        unit="m2",
        working=(
            f"side: √({bare(m.cut_mm, 5)}² + {bare(side, 4)}²); twice that and {mm(m.top_width_mm, 5)} of top = "
            f"{qty(around, 'm', 3)} around",
            f"{qty(around, 'm', 3)} x {qty(m.hedge_length_m, 'm', 3)} = {qty(area, 'm²', 3)}",
        ),
        references=(GEOMETRY, by.HOW_TO_TRIM),
    )
    yield Figure(
        name="trimming time",
        label="Time for one person",
        value=minutes,
        unit="min",
        working=(f"{qty(area, 'm²', 3)} / {qty(RATE_M2_PER_H, 'm²', 3)} an hour x 60 = {qty(minutes, 'min', 3)}",),
        references=(by.RATE,),
        digits=2,
    )
