"""The figures of planting: hole, ball, mulch and stakes; figures_water.py and figures_counts.py have the others."""

from collections.abc import Iterator
from datetime import date, timedelta

from howto.families.planting import hole
from howto.families.planting import references as by
from howto.families.planting.figures_counts import count_figures
from howto.families.planting.figures_water import season_figure, water_figures
from howto.families.planting.measures import PlantingMeasures
from howto.families.planting.parts import worked
from howto.families.planting.watering_in import planted_on
from howto.model.figure import Figure, Table
from howto.model.reference import GEOMETRY, PRACTICE
from howto.model.work import Work
from howto.quantities import convert
from howto.quantities.amounts import Range, Share, Word, bare, dated, mm, percent, qty

T = Work[PlantingMeasures]

BALLS_MM = ((25.4, 406.4), (38.1, 508.0), (50.8, 609.6), (63.5, 711.2), (76.2, 812.8), (101.6, 1066.8))
CITY_BALLS_MM = ((405, 25, 38), (610, 50, 64))  # a ball and the callipers that take it, see references.BALL_CITY
YEAR = timedelta(days=365)
ONE_SEASON = "low, for one growing season"


def figures(work: T, today: date) -> Iterator[Figure]:
    """Yield the figures of one planting that its measures allow."""
    m = work.measures
    yield from count_figures(work)
    yield from _depth(m)
    yield from _width(m)
    yield from _ball(m)
    yield from _weight(m)
    yield from _calliper(work)
    yield from _mulch(m)
    yield from _stakes(work, today)
    yield from water_figures(work, today)
    yield season_figure(work)


def _depth(m: PlantingMeasures) -> Iterator[Figure]:
    roots, deep = m.root_to_base_mm, hole.advised_depth_mm(m)
    if roots is None or deep is None:
        return
    lines = []
    if m.first_root_mm is not None:
        whole = bare(m.ball_depth_mm or 0, 4)
        lines.append(f"topmost root to base: {whole} - {bare(m.first_root_mm, 4)} = {mm(roots, 4)}")
    if not m.has_ball:
        lines.append(f"bare roots stand level with the ground: {mm(deep, 4)}")
    elif m.drainage == "poor":
        raised = f"{Share(hole.PROUD_SHARE)} of the ball, {bare(hole.raised_mm(m, roots), 4)}"
        lines.append(f"poor drainage: {bare(roots, 4)} - {raised} = {mm(deep, 4)}")
    else:
        lines.append(f"{bare(roots, 4)} × (1 - {bare(hole.PROUD_SHARE)}) = {mm(deep, 4)}, never deeper than the ball")
    yield worked("dig to", "Dig the hole to", deep, "mm", lines, by.SPECIFICATION, by.NOT_DEEPER, headline=True)
    above = roots - (deep if m.hole_depth_mm is None else m.hole_depth_mm)
    if m.has_ball and above >= 0:
        line = f"{bare(roots, 4)} - {bare(roots - above, 4)} = {mm(above, 3)}; {hole.proud(m, roots)} is right"
        name, label = "root above ground", "Topmost root above the ground"
        yield worked(name, label, above, "mm", [line], by.PROPER, by.SPECIFICATION, headline=True)


def _width(m: PlantingMeasures) -> Iterator[Figure]:
    ball, wide, deep = hole.ball_mm(m), hole.width_mm(m), hole.depth_mm(m)
    if ball is None or wide is None:
        return
    least, most = ball * hole.LEAST_HOLE, ball * hole.WIDE_HOLE
    line = f"{bare(hole.LEAST_HOLE)} × {bare(ball, 4)} = {mm(least, 4)}"
    yield worked("least hole", "Hole at least this wide", least, "mm", [line], by.SPECIFICATION)
    line = f"{bare(hole.WIDE_HOLE)} × {bare(ball, 4)} = {mm(most, 4)} at the top"
    line, label = f"{line}, sloped like a saucer to the ball's own width", "Hole this wide where there is room"
    yield worked("wide hole", label, most, "mm", [line], by.SAUCER, by.COUNCIL, headline=True)
    if deep is None or wide < ball:
        return
    out, top, foot = hole.saucer_l(wide, ball, deep), bare(wide / 100), bare(ball / 100)
    lines = (
        "a saucer: π × depth / 12 × (top² + top × foot + foot²), in dm",
        f"3.14 × {bare(deep / 100)} / 12 × ({top}² + {top} × {foot} + {foot}²) = {qty(out, 'L', 3)}",
    )
    yield worked("soil out", "Soil out of the hole", out, "L", lines, GEOMETRY)


def _ball(m: PlantingMeasures) -> Iterator[Figure]:
    wide = hole.ball_mm(m)
    if m.stock != "balled" or wide is None:
        return
    if m.calliper_mm is not None:
        asked = m.calliper_mm * hole.BALL_PER_CALLIPER
        city = ", and ".join(f"{mm(ball)} at {Range(low, high, 'mm')}" for ball, low, high in CITY_BALLS_MM)
        lines = (
            f"{bare(hole.BALL_PER_CALLIPER)} × {bare(m.calliper_mm, 4)} = {mm(asked, 4)}",
            f"small trees take more: one city asks for {city}",
        )
        table = Table(
            columns=("Calliper", "Ten times", "Nursery standard, from memory"),
            units=("mm", "mm", "mm"),
            rows=tuple((calliper, calliper * hole.BALL_PER_CALLIPER, ball) for calliper, ball in BALLS_MM),
        )
        who = (by.BALL_TEN, by.BALL_CITY, by.BALL_TABLE)
        yield worked("ball for this trunk", "Ball that this trunk asks for", asked, "mm", lines, *who, table=table)
    deep = hole.ball_depth_mm(wide)
    line = f"{percent(hole.ball_depth_share(wide) * 100)} of {bare(wide, 4)} = {mm(deep, 4)}"
    yield worked("ball depth at least", "Ball at least this deep", deep, "mm", [line], by.BALL_DEPTH)


def _weight(m: PlantingMeasures) -> Iterator[Figure]:
    mass, wide = hole.weight_kg(m), hole.ball_mm(m)
    if mass is None:
        return
    lines, who = [f"{qty(mass, 'kg', 3)} as written"], PRACTICE
    if m.ball_weight_kg is None and wide is not None:
        deep = m.ball_depth_mm or hole.ball_depth_mm(wide)
        volume = qty(hole.ball_volume_m3(wide, deep), "m³", 3)
        lines, who = (
            [
                f"π × ({bare(wide, 4)} / 2000)² × {bare(deep, 4)} / 1000 = {volume}",
                f"{volume} × {qty(hole.BALL_KG_PER_M3, 'kg/m³', 4)} = {qty(mass, 'kg', 3)}",
            ],
            by.BALL_WEIGHT,
        )
    yield worked("weight of the ball", "The ball weighs about", mass, "kg", lines, who, digits=2)


def _calliper(work: T) -> Iterator[Figure]:
    thick = work.measures.calliper_mm
    if thick is None:
        return
    up = hole.calliper_at_mm(thick, work.crew.units)
    over = Word("over" if thick > hole.THICK_TRUNK_MM else "not over")
    limit = f"{qty(convert(hole.THICK_TRUNK_MM, 'mm', 'in'), 'in', 3)} ({mm(hole.THICK_TRUNK_MM, 3)})"
    line = f"{mm(thick, 4)} is {over} {limit}, so {qty(round(convert(up, 'mm', 'in')), 'in', 3)} ({mm(up, 3)}) up"
    yield worked("calliper height", "Measure the trunk this far up", up, "mm", [line], by.CALLIPER)


def _mulch(m: PlantingMeasures) -> Iterator[Figure]:
    ring, deep = m.mulch_width_mm or hole.RING_MM, m.mulch_depth_mm or hole.MULCH_MM
    clear, trunk = hole.clear_mm(m), m.calliper_mm or 0.0
    inner = 2 * clear + trunk
    litres = hole.ring_l(ring, deep, inner)
    if m.work == "bed" or litres <= 0:
        return
    lines = (
        f"bare middle: 2 × {bare(clear)} + {bare(trunk)} = {mm(inner, 3)}",
        f"3.14 / 4 × ({bare(ring / 1000)}² - {bare(inner / 1000)}²) m² × {mm(deep, 3)} = {qty(litres, 'L', 3)}",
    )
    yield worked("mulch", "Mulch for the ring", litres, "L", lines, by.MULCH_CIRCLE, by.MULCH_TREES, by.RING)


def _stakes(work: T, today: date) -> Iterator[Figure]:
    m = work.measures
    if m.work != "tree":
        return
    if m.stands_alone is not None:
        stakes, why = ("none", "it stands alone") if m.stands_alone else (ONE_SEASON, "it does not stand up by itself")
        yield worked("stakes needed", "Stakes", stakes, "", [why], by.ONE_SEASON)
    if m.stands_alone or m.stakes == 0 or (m.stakes is None and m.stands_alone is None):
        return
    if m.height_mm is not None:
        tie = m.height_mm * hole.LOW_TIE
        line = f"{bare(m.height_mm, 4)} / {bare(1 / hole.LOW_TIE)} = {mm(tie, 4)}, so that its head can move"
        yield worked("tie at", "Tie it no higher than", tie, "mm", [line], by.LOW_STAKE)
    planted = planted_on(work, today)
    off, last = planted + YEAR, planted + 2 * YEAR
    lines = (
        f"planted {dated(planted, 'plain')}; one growing season lies in any {qty(YEAR.days, 'day')}",
        f"stakes off by {dated(off, 'plain')}; none stays past {dated(last, 'plain')}",
    )
    yield worked("stakes off", "Stakes off by", off, "", lines, by.ONE_SEASON, by.TWO_YEARS, client=True)
