"""The figures of planting: hole, ball, mulch and stakes; figures_water.py and figures_counts.py have the others."""

from collections.abc import Iterator
from datetime import date, timedelta

from howto.families.planting import formulae, hole
from howto.families.planting import references as by
from howto.families.planting.figures_counts import count_figures
from howto.families.planting.figures_water import planted_on, season_figures, water_figures
from howto.families.planting.measures import PlantingMeasures
from howto.model.figure import Figure, Table
from howto.model.reference import GEOMETRY, PRACTICE
from howto.model.work import Work
from howto.quantities import convert
from howto.quantities.amounts import bare, dated, mm, percent, qty

T = Work[PlantingMeasures]

BALLS_MM = ((25.4, 406.4), (38.1, 508.0), (50.8, 609.6), (63.5, 711.2), (76.2, 812.8), (101.6, 1066.8))
YEAR = timedelta(days=365)


def figures(work: T, today: date) -> Iterator[Figure]:
    """Yield the figures of one planting that its measures allow."""
    m = work.measures
    yield from count_figures(work)
    yield from _depth(m)
    yield from _width(m)
    yield from _soil_out(m)
    yield from _ball(m)
    yield from _weight(m)
    yield from _calliper(work)
    yield from _mulch(m)
    yield from _stakes(work, today)
    yield from water_figures(work, today)
    yield from season_figures(work)


def _depth(m: PlantingMeasures) -> Iterator[Figure]:
    roots, deep = m.root_to_base_mm, hole.advised_depth_mm(m)
    if roots is None or deep is None:
        return
    lines = []
    if m.first_root_mm is not None:
        lines.append(
            f"topmost root to base: {bare(m.ball_depth_mm or 0, 4)} - {bare(m.first_root_mm, 4)} = {mm(roots, 4)}"
        )
    if not m.has_ball:
        lines.append(f"bare roots stand level with the ground: {mm(deep, 4)}")
    elif m.drainage == "poor":
        tenth = hole.raised_mm(m, roots)
        lines.append(f"poor drainage: {bare(roots, 4)} - a tenth of the ball, {bare(tenth, 4)} = {mm(deep, 4)}")
    else:
        lines.append(f"{bare(roots, 4)} × (1 - 0.1) = {mm(deep, 4)}, never deeper than the ball")
    yield Figure(
        name="dig to",
        label="Dig the hole to",
        value=deep,
        unit="mm",
        working=tuple(lines),
        references=(by.SPECIFICATION, by.NOT_DEEPER),
        headline=True,
    )
    above = roots - deep if m.hole_depth_mm is None else roots - m.hole_depth_mm
    if not m.has_ball or above < 0:
        return
    low, high = hole.proud_range(m, roots)
    said = f"at least {bare(low)}" if high is None else f"{bare(low)} to {bare(high)}"
    yield Figure(
        name="root above ground",
        label="Topmost root above the ground",
        value=above,
        unit="mm",
        working=(f"{bare(roots, 4)} - {bare(roots - above, 4)} = {mm(above, 3)}; {said} mm is right",),
        references=(by.PROPER, by.SPECIFICATION),
        headline=True,
    )


def _width(m: PlantingMeasures) -> Iterator[Figure]:
    ball = hole.ball_mm(m)
    if ball is None:
        return
    least, wide = formulae.hole_widths_mm(ball)
    yield Figure(
        name="least hole",
        label="Hole at least this wide",
        value=least,
        unit="mm",
        working=(f"1.5 × {bare(ball, 4)} = {mm(least, 4)}",),
        references=(by.SPECIFICATION,),
    )
    yield Figure(
        name="wide hole",
        label="Hole this wide where there is room",
        value=wide,
        unit="mm",
        working=(f"3 × {bare(ball, 4)} = {mm(wide, 4)} at the top, sloped like a saucer to the ball's own width",),
        references=(by.SAUCER, by.COUNCIL),
        headline=True,
    )


def _soil_out(m: PlantingMeasures) -> Iterator[Figure]:
    ball, wide, deep = hole.ball_mm(m), hole.width_mm(m), hole.depth_mm(m)
    if ball is None or wide is None or deep is None or wide < ball:
        return
    out = formulae.saucer_l(wide, ball, deep)
    top, foot = wide / 100, ball / 100
    yield Figure(
        name="soil out",
        label="Soil out of the hole",
        value=out,
        unit="L",
        working=(
            "a saucer: π × depth / 12 × (top² + top × foot + foot²), in dm",
            f"3.14 × {bare(deep / 100)} / 12 × ({bare(top)}² + {bare(top)} × {bare(foot)} + {bare(foot)}²) = {qty(out, 'L', 3)}",
        ),
        references=(GEOMETRY,),
    )


def _ball(m: PlantingMeasures) -> Iterator[Figure]:
    if m.calliper_mm is not None and m.stock == "balled":
        wide = formulae.ball_width_mm(m.calliper_mm)
        yield Figure(
            name="ball for this trunk",
            label="Ball that this trunk asks for",
            value=wide,
            unit="mm",
            working=(
                f"10 × {bare(m.calliper_mm, 4)} = {mm(wide, 4)}",
                "small trees take more: one city asks for 405 mm at 25 to 38 mm, and 610 mm at 50 to 64 mm",
            ),
            references=(by.BALL_TEN, by.BALL_CITY, by.BALL_TABLE),
            table=Table(
                columns=("Calliper", "Ten times", "Nursery standard, from memory"),
                units=("mm", "mm", "mm"),
                rows=tuple((calliper, formulae.ball_width_mm(calliper), ball) for calliper, ball in BALLS_MM),
            ),
        )
    wide_now = hole.ball_mm(m)
    if wide_now is None or m.stock != "balled":
        return
    share, deep = formulae.ball_depth_share(wide_now), formulae.ball_depth_mm(wide_now)
    yield Figure(
        name="ball depth at least",
        label="Ball at least this deep",
        value=deep,
        unit="mm",
        working=(f"{percent(share * 100)} of {bare(wide_now, 4)} = {mm(deep, 4)}",),
        references=(by.BALL_DEPTH,),
    )


def _weight(m: PlantingMeasures) -> Iterator[Figure]:
    mass, wide = hole.weight_kg(m), hole.ball_mm(m)
    if mass is None:
        return
    lines: tuple[str, ...] = (f"{qty(mass, 'kg', 3)} as written",)
    if m.ball_weight_kg is None and wide is not None:
        deep = m.ball_depth_mm or formulae.ball_depth_mm(wide)
        volume = formulae.ball_volume_m3(wide, deep)
        lines = (
            f"π × ({bare(wide, 4)} / 2000)² × {bare(deep, 4)} / 1000 = {qty(volume, 'm³', 3)}",
            f"{qty(volume, 'm³', 3)} × {qty(formulae.BALL_KG_PER_M3, 'kg/m³', 4)} = {qty(mass, 'kg', 3)}",
        )
    yield Figure(
        name="weight of the ball",
        label="The ball weighs about",
        value=mass,
        unit="kg",
        working=lines,
        references=(by.BALL_WEIGHT,) if m.ball_weight_kg is None else (PRACTICE,),
        digits=2,
    )


def _calliper(work: T) -> Iterator[Figure]:
    m, metric = work.measures, work.crew.units == "metric"
    if m.calliper_mm is None:
        return
    up = formulae.calliper_height_mm(m.calliper_mm)
    thick = "over" if m.calliper_mm > formulae.THICK_TRUNK_MM else "not over"
    yield Figure(
        name="calliper height",
        label="Measure the trunk this far up",
        value=up if metric else convert(up / 25, "in", "mm"),
        unit="mm",
        working=(f"{mm(m.calliper_mm, 4)} is {thick} 4 in (102 mm), so {bare(up / 25)} in ({mm(up, 3)}) up",),
        references=(by.CALLIPER,),
    )


def _mulch(m: PlantingMeasures) -> Iterator[Figure]:
    if m.work == "bed":
        return
    ring, deep = m.mulch_width_mm or hole.RING_MM, m.mulch_depth_mm or 75.0
    inner = 2 * hole.clear_mm(m) + (m.calliper_mm or 0.0)
    litres = formulae.ring_l(ring, deep, inner)
    if litres <= 0:
        return
    yield Figure(
        name="mulch",
        label="Mulch for the ring",
        value=litres,
        unit="L",
        working=(
            f"bare middle: 2 × {bare(hole.clear_mm(m))} + {bare(m.calliper_mm or 0)} = {mm(inner, 3)}",
            f"3.14 / 4 × ({bare(ring / 1000)}² - {bare(inner / 1000)}²) m² × {mm(deep, 3)} = {qty(litres, 'L', 3)}",
        ),
        references=(by.MULCH_CIRCLE, by.MULCH_TREES, by.RING),
    )


def _stakes(work: T, today: date) -> Iterator[Figure]:
    m = work.measures
    if m.work != "tree":
        return
    if m.stands_alone is not None:
        yield Figure(
            name="stakes needed",
            label="Stakes",
            value="none" if m.stands_alone else "low, for one growing season",
            working=("it stands alone" if m.stands_alone else "it does not stand up by itself",),
            references=(by.ONE_SEASON,),
        )
    if m.stands_alone or m.stakes == 0 or (m.stakes is None and m.stands_alone is None):
        return
    if m.height_mm is not None:
        tie = formulae.tie_height_mm(m.height_mm)
        yield Figure(
            name="tie at",
            label="Tie it no higher than",
            value=tie,
            unit="mm",
            working=(f"{bare(m.height_mm, 4)} / 3 = {mm(tie, 4)}, so that its head can move",),
            references=(by.LOW_STAKE,),
        )
    planted = planted_on(work, today)
    yield Figure(
        name="stakes off",
        label="Stakes off by",
        value=planted + YEAR,
        working=(
            f"planted {dated(planted, 'plain')}; one growing season lies in any 365 days",
            f"stakes off by {(planted + YEAR).isoformat()}; none stays past {(planted + 2 * YEAR).isoformat()}",
        ),
        references=(by.ONE_SEASON, by.TWO_YEARS),
        client=True,
    )
