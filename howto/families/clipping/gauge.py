"""The gauge stick: a ring at each mark, with the width of the finished shape there."""

from typing import NamedTuple

from howto.families.clipping import formulae
from howto.families.clipping.measures import ClippingMeasures
from howto.model.crew import System
from howto.model.figure import Figure, Table
from howto.model.reference import GEOMETRY
from howto.quantities import convert
from howto.quantities.amounts import Words, bare, mm

MOST_STEPS = 8  # so that a stick made by rule has three to nine marks
SAME_MM = 1e-6  # two marks nearer than this are one
MILLIMETRES = "mm", (10, 20, 25, 50, 75, 100, 150, 200, 250, 500, 1000)
INCHES = "in", (0.5, 1, 2, 3, 4, 6, 8, 12, 18, 24, 36)
TAPES: dict[System, tuple[str, tuple[float, ...]]] = {"metric": MILLIMETRES, "us": INCHES, "uk": INCHES}


class GaugeStep(NamedTuple):
    """The height between two marks, and how an author types it."""

    mm: float
    text: str


def handy_step(height_mm: float, units: System = "metric") -> GaugeStep:
    """Return the smallest round step on the crew's tape that gives eight at most."""
    unit, sizes = TAPES[units]
    steps = [GaugeStep(convert(size, unit, "mm"), f"{size:g} {unit}") for size in sizes]
    return next((step for step in steps if height_mm / step.mm <= MOST_STEPS + 1e-9), steps[-1])


def marks(m: ClippingMeasures, units: System) -> tuple[float, ...]:
    """Return the heights of the marks in mm: every step, the top, and the widest ring of a ball."""
    every, height = _step_mm(m, units), m.height_mm
    ends = [height, height / 2] if m.shape == "ball" else [height]
    steps = (every * step for step in range(int(height / every) + 1))
    return tuple(sorted([*ends, *(up for up in steps if all(abs(up - end) > SAME_MM for end in ends))]))


def _step_mm(m: ClippingMeasures, units: System) -> float:
    return m.gauge_every_mm or handy_step(m.height_mm, units).mm


def gauge(m: ClippingMeasures, units: System) -> Figure:
    """Return the table of rings, with one of them worked."""
    ups = marks(m, units)
    widths = [formulae.width_at_mm(m.shape, m.finished_width_mm, m.height_mm, up) for up in ups]
    every = _step_mm(m, units)
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


def _ring(m: ClippingMeasures, up_mm: float) -> Words:
    """Return the sum of the width at a height."""
    width, height, up = bare(m.finished_width_mm, 5), bare(m.height_mm, 5), bare(up_mm, 5)
    narrower = {
        "ball": f" x √(1 - (2 x {up} / {height} - 1)²)",
        "dome": f" x √(1 - ({up} / {height})²)",
        "cone": f" x (1 - {up} / {height})",
    }
    return f"{width}{narrower.get(m.shape, '')}"
