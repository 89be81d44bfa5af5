"""The figures of a hedge, in printing order, each with working a pencil can follow."""

from collections.abc import Iterator
from datetime import date

from howto.families.hedging import formulae
from howto.families.hedging import references as by
from howto.families.hedging.figures_growth import growing_figures
from howto.families.hedging.formulae import MOST, WIDER
from howto.families.hedging.growing import stages
from howto.families.hedging.measures import HedgingMeasures
from howto.families.hedging.parts import figure
from howto.model.figure import Figure, Table
from howto.model.reference import GEOMETRY, PRACTICE
from howto.model.work import Work
from howto.quantities.amounts import Share, bare, mm, percent, qty

RATE_M2_PER_H = 40.0  # see references.RATE
BELOW_MM = 10.0  # the level line stands this far below the finished height; see references.LEVEL_LINE
STEPS_MM = (100.0, 200.0, 250.0, 300.0, 500.0, 1000.0)  # of the widths up a hedge: the first that makes few
MOST_STEPS = 8


def figures(work: Work[HedgingMeasures], today: date) -> Iterator[Figure]:
    """Yield the figures of one hedge; `today` is the day of the cut."""
    m = work.measures
    yield from _top_off(m)
    yield from _staged(work, today)
    yield from _taper(m)
    yield from _section(m)
    if m.cut_mm > BELOW_MM:
        line = f"{bare(m.cut_mm, 5)} - {bare(BELOW_MM)} = {mm(string_line_mm(m), 5)}, so that the blade rides over"
        yield figure("string line", "Height of the string line", string_line_mm(m), "mm", [line], by.LEVEL_LINE)
    yield from _renovation(m)
    yield from growing_figures(work, today)
    yield from _face(m)


def sections_mm2(m: HedgingMeasures) -> tuple[float, float] | None:
    """Return the section that stands and the one this cut leaves, or None where a width is not written."""
    base, top, new_base, new_top = (
        m.standing_base_width_mm, m.standing_top_width_mm, m.base_width_mm, m.top_width_mm,
    )  # fmt: skip
    if base is None or top is None or new_base is None or new_top is None or m.standing_height_mm is None:
        return None
    return formulae.section_mm2(base, top, m.standing_height_mm), formulae.section_mm2(new_base, new_top, m.cut_mm)


def string_line_mm(m: HedgingMeasures) -> float:
    """Return the height of the stretched line: a little under the cut, so that the blade rides over it."""
    return m.cut_mm - BELOW_MM


def _top_off(m: HedgingMeasures) -> Iterator[Figure]:
    stands, cut = m.standing_height_mm, m.cut_mm
    if stands is None or stands <= cut:
        return
    off, share = stands - cut, percent(formulae.share_off(stands, cut) * 100)
    lines = (
        f"{bare(stands, 5)} - {bare(cut, 5)} = {mm(off, 4)}",
        f"{bare(off, 4)} / {bare(stands, 5)} = {share} of the standing height",
        f"{Share(float(MOST))} would leave {bare(stands, 5)} x {1 - MOST} = {mm(formulae.lowest_cut_mm(stands), 5)}",
    )
    yield figure("off the top", "Off the top", off, "mm", lines, PRACTICE, by.RENOVATION, headline=m.job != "trim")
    line = f"1 - {bare(cut, 5)} / {bare(stands, 5)} = {share}"
    who = (by.RENOVATION, by.RENOVATION_OTHER)
    yield figure("share of the height", "Share of the height taken", share.value, "%", [line], *who)


def _staged(work: Work[HedgingMeasures], today: date) -> Iterator[Figure]:
    found, stands = stages(work, today), work.measures.standing_height_mm
    if len(found) < 2 or stands is None:
        return
    lines, rows = [], []
    for at, stage in enumerate(found, 1):
        lowest = formulae.lowest_cut_mm(stands)
        end = "" if stage.cut_mm <= lowest + 1e-6 else f", not lower than {mm(stage.cut_mm, 5)} wanted"
        lines.append(f"cut {bare(at)}: {bare(stands, 5)} x {1 - MOST} = {mm(lowest, 5)}{end}")
        rows.append((stage.day, stage.cut_mm, formulae.share_off(stands, stage.cut_mm) * 100))
        stands = stage.cut_mm
    lines.append("what grows back between two cuts is trimmed to the last line")
    yield figure(
        "staged cuts",
        f"Cuts down to the finished height, none over {Share(float(MOST))}",
        float(len(found)),
        "",
        lines,
        by.RENOVATION,
        by.RENOVATION_OTHER,
        PRACTICE,
        digits=2,
        table=Table(columns=("Cut on", "Down to", "Takes"), units=("", "mm", "%"), rows=tuple(rows)),
    )


def _taper(m: HedgingMeasures) -> Iterator[Figure]:
    base, top, height = m.base_width_mm, m.top_width_mm, m.cut_mm
    if top is None:
        return
    advised, label = formulae.base_for_mm(top), f"Base wider than the top by {Share(float(WIDER))}"
    line = f"{bare(top, 5)} x {1 + WIDER} = {mm(advised, 5)}"
    yield figure("advised base", label, advised, "mm", [line], by.RATIO, by.TRIMMING)
    if base is None:
        return
    side, angle = formulae.in_each_side_mm(base, top), formulae.angle_deg(base, top, height)
    line = f"({bare(base, 5)} - {bare(top, 5)}) / 2 = {mm(side, 4)}"
    label = "In each side, foot to top"
    yield figure("in each side", label, side, "mm", [line], GEOMETRY, headline=m.job == "trim")
    lines = (
        f"({bare(base, 5)} - {bare(top, 5)}) / (2 x {bare(height, 5)}) = {bare(side / height)}",
        f"atan {bare(side / height)} = {qty(angle, '°', 3)}",
    )
    label = "Lean of each side from upright"
    yield figure("side angle", label, angle, "deg", lines, GEOMETRY, by.TRIMMING, digits=2)
    yield _gauge(base, top, height)


def _gauge(base: float, top: float, height: float) -> Figure:
    every = next((step for step in STEPS_MM if height / step <= MOST_STEPS), STEPS_MM[-1])
    ups = [every * step for step in range(int(height / every + 1e-9) + 1)]
    if ups[-1] < height - 1e-6:
        ups.append(height)
    widths = [formulae.width_at_mm(base, top, height, up) for up in ups]
    at = len(ups) // 2
    line = (
        f"at {mm(ups[at], 5)} up: {bare(base, 5)} - ({bare(base, 5)} - {bare(top, 5)}) x {bare(ups[at], 5)} / "
        f"{bare(height, 5)} = {mm(widths[at], 4)}"
    )
    table = Table(
        columns=("Up from the foot", "Width", "In from the foot"),
        units=("mm", "mm", "mm"),
        rows=tuple((up, width, (base - width) / 2) for up, width in zip(ups, widths, strict=True)),
    )
    value = f"every {mm(every, 3)} up"
    return figure("width at each height", "Width at each height", value, "", [line], GEOMETRY, table=table)


def _section(m: HedgingMeasures) -> Iterator[Figure]:
    if (sections := sections_mm2(m)) is None:
        return
    before, after = sections
    share = formulae.share_off(before, after)
    base, top, height = m.standing_base_width_mm or 0, m.standing_top_width_mm or 0, m.standing_height_mm or 0
    lines = [
        f"stands: {_trapezium(base, top, height, before)}",
        f"cut: {_trapezium(m.base_width_mm or 0, m.top_width_mm or 0, m.cut_mm, after)}",
        f"1 - {bare(after / 1e6)} / {bare(before / 1e6)} = {percent(share * 100)} of the section",
    ]
    if share > 0:
        length = percent(formulae.share_of_length(share) * 100)
        lines.append(f"off the length of each shoot, crown and all: 1 - (1 - {bare(share)})^(1/3) = {length}")
    label, first = "Share of the hedge taken off", m.job == "trim"
    yield figure("canopy removed", label, share * 100, "%", lines, GEOMETRY, by.CROWN, headline=first)


def _trapezium(base: float, top: float, height: float, section_mm2: float) -> str:
    return f"({bare(base, 5)} + {bare(top, 5)}) / 2 x {bare(height, 5)} = {qty(section_mm2 / 1e6, 'm²', 3)}"


def _renovation(m: HedgingMeasures) -> Iterator[Figure]:
    stands, wanted = m.standing_base_width_mm, m.base_width_mm
    if m.job != "renovate" or wanted is None or stands is None:
        return
    lose, first = stands - wanted, (stands - wanted) / 2 + m.inside_mm
    lines: tuple[str, ...] = (
        f"{bare(stands, 5)} - {bare(wanted, 5)} = {mm(lose, 4)}",
        f"{bare(lose, 4)} / {bare(stands, 5)} = {percent(formulae.share_off(stands, wanted) * 100)} of the width",
    )
    who = (by.RENOVATION, by.RENOVATION_OTHER)
    yield figure("width to lose", "Width to lose in all", lose, "mm", lines, *who)
    lines = (
        f"half of what goes: {bare(lose, 4)} / 2 = {mm(lose / 2, 4)}",
        f"and {mm(m.inside_mm, 3)} inside the wanted face, to leave room for new shoots: {mm(first, 4)}",
        "the other face is trimmed as usual this year, and cut the same way next year",
    )
    yield figure("first face", "First face: cut in this far", first, "mm", lines, by.RENOVATION, headline=True)


def _face(m: HedgingMeasures) -> Iterator[Figure]:
    base, top, long = m.base_width_mm, m.top_width_mm, m.hedge_length_m
    if long is None or base is None or top is None:
        return
    around = formulae.face_mm2_per_mm(base, top, m.cut_mm) / 1000
    area = around * long
    minutes = formulae.minutes_for(area, RATE_M2_PER_H)
    side = f"√({bare(m.cut_mm, 5)}² + {bare(formulae.in_each_side_mm(base, top), 4)}²)"
    lines = (
        f"side: {side}; twice that and {mm(top, 5)} of top = {qty(around, 'm', 3)} around",
        f"{qty(around, 'm', 3)} x {qty(long, 'm', 3)} = {qty(area, 'm²', 3)}",
    )
    yield figure("face to trim", "Face to trim", area, "m2", lines, GEOMETRY, by.HOW_TO_TRIM)
    line = f"{qty(area, 'm²', 3)} / {qty(RATE_M2_PER_H, 'm²', 3)} an hour x 60 = {qty(minutes, 'min', 3)}"
    yield figure("trimming time", "Time for one person", minutes, "min", [line], by.RATE, digits=2)
