"""The gauge stick: a ring at each mark, with the width of the finished shape there."""

from howto.families.clipping import formulae
from howto.families.clipping.measures import ClippingMeasures
from howto.model.crew import System
from howto.model.figure import Figure, Table
from howto.model.reference import GEOMETRY
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, mm

MOST_STEPS = 8  # so that a stick made by rule has three to nine marks
SAME_MM = 1e-6  # two marks nearer than this are one
METRIC_STEPS = (10.0, 20.0, 25.0, 50.0, 75.0, 100.0, 150.0, 200.0, 250.0, 500.0, 1000.0)
INCH_STEPS = tuple(inches * 25.4 for inches in (0.5, 1, 2, 3, 4, 6, 8, 12, 18, 24, 36))


def step_of(m: ClippingMeasures, units: System) -> float:
    """Return the height in mm between two marks: the author's, or a round step in the crew's units."""
    return m.gauge_every_mm or handy_step(m.height_mm, units)


def handy_step(height_mm: float, units: System = "metric") -> float:
    """Return the smallest round step, in whole inches for a crew that works in them, that gives eight at most."""
    steps = METRIC_STEPS if units == "metric" else INCH_STEPS
    return next((step for step in steps if height_mm / step <= MOST_STEPS + 1e-9), steps[-1])


def marks(m: ClippingMeasures, units: System) -> tuple[float, ...]:
    """Return the heights of the marks in mm: every step, the top, and the widest ring of a ball."""
    every, height = step_of(m, units), m.height_mm
    ends = [height, height / 2] if m.shape == "ball" else [height]
    steps = (every * step for step in range(int(height / every) + 1))
    return tuple(sorted([*ends, *(up for up in steps if all(abs(up - end) > SAME_MM for end in ends))]))


def gauge(m: ClippingMeasures, units: System) -> Figure:
    """Return the table of rings, with one of them worked."""
    ups = marks(m, units)
    widths = [formulae.width_at_mm(m.shape, m.finished_width_mm, m.height_mm, up) for up in ups]
    every = step_of(m, units)
    worked = 1 if len(ups) > 2 else 0  # at the foot a ball's ring is nothing
    rings = [f"at {mm(ups[worked], 5)} up: {_ring(m, ups[worked])} = {mm(widths[worked], 3)}"]
    if m.shape == "ball":
        rings.append(f"widest at half the height, {mm(m.height_mm / 2, 5)} up: {mm(m.finished_width_mm, 5)}")
    return Figure(
        name="gauge rings",
        label="Gauge rings: width at each height",
        value=f"every {mm(every)} up the stick",
        working=(*rings, f"a ring each {mm(every, 4)} from the foot to {mm(m.height_mm, 5)}"),
        references=(GEOMETRY,),
        table=Table(
            columns=("Up from the foot", "Width", "Out from the stem"),
            units=("mm", "mm", "mm"),
            rows=tuple((up, width, width / 2) for up, width in zip(ups, widths, strict=True)),
        ),
    )


def _ring(m: ClippingMeasures, up: float) -> str:
    width, height = num(m.finished_width_mm, 5), num(m.height_mm, 5)
    if m.shape == "ball":
        return f"{width} x √(1 - (2 x {bare(up, 5)} / {height} - 1)²)"
    if m.shape == "dome":
        return f"{width} x √(1 - ({bare(up, 5)} / {height})²)"
    if m.shape == "cone":
        return f"{width} x (1 - {bare(up, 5)} / {height})"
    return width
