"""An invented technique, crew and visit to lay out and paint in tests; nothing in it exists anywhere."""

from collections.abc import Sequence
from datetime import date
from math import cos, pi, sin
from typing import Any, Literal

from howto.compute import ready as making
from howto.model.crew import Crew
from howto.model.family import AnyFamily, Family
from howto.model.figure import Figure, Table
from howto.model.measures import Measures
from howto.model.plants import PlantBook
from howto.model.prose import Prose, Run, prose
from howto.model.ready import Ready, ReadyVisit
from howto.model.reference import GEOMETRY, PRACTICE
from howto.model.sheet import Area, Art, Stroke, TextMark
from howto.model.shelf import Shelf
from howto.model.technique import Care, Hazard, Kit, Step, Technique, When
from howto.model.visit import Job, Visit
from howto.model.work import AnyWork, Work
from howto.quantities.amounts import mm, percent
from howto.shapes import Drawing

TODAY = date(2026, 10, 14)

CREW = Crew(
    name="Lantern Field crew",
    place="Nether Wold",
    latitude_deg=52.0,
    contact="Lantern Field crew, 01632 960 014, weekdays 8 to 5",
    web="https://lantern-field.example/t",
)


class BallMeasures(Measures):
    """The measures of a clipped shape, in millimetres."""

    shape: Literal["ball", "dome"] = "ball"
    finished_width_mm: float = 900.0
    standing_width_mm: float | None = 980.0
    passes: int | None = 2


MEASURES = BallMeasures(
    tolerances={"finished_width_mm": 20.0},
    written={"shape": "ball", "finished_width_mm": "900 mm ± 20 mm", "standing_width_mm": "980 mm", "passes": "2"},
)

STEPS = (
    Step(
        title="Find the circle from above.",
        text=prose("Stand over the plant and look straight down. Turn the ring until the gaps are even all round."),
        key_points=(prose("Start at the widest ring, never at the top."),),
        reasons=(prose("The widest ring is the one line every other cut is measured from."),),
        checks=(prose("The gap between ring and leaf is the same at four points."),),
    ),
    Step(
        title="Cut the belt.",
        text=prose("Clip a band one hand high round the widest part. Take {off each side} off each side."),
        key_points=(
            prose("Keep the blades level with the ground."),
            prose("Walk round the plant, do not reach across it."),
        ),
        reasons=(prose("A tilted belt gives an egg."),),
        checks=(prose("Gauge stick reads {finished width}, {finished width tolerance}, twice, at right angles."),),
    ),
    Step(
        title="Cut four ribs, pole to pole.",
        text=prose("From the belt up over the top, then from the belt down. One rib at each quarter."),
        key_points=(prose("Turn the shears over below the belt: curved back to the plant."),),
        reasons=(prose("The backs of the blades then follow the curve in place of digging into it."),),
        checks=(prose("Four ribs meet in one point on top."),),
    ),
    Step(
        title="Join the ribs.",
        text=prose("Clip each quarter down to its two ribs, in passes of a finger's depth."),
        key_points=(prose("Many light cuts; stop when you see bare stem."),),
        reasons=(prose("Leaf sits only in the outer shell; a deep cut leaves a hole for a season."),),
        checks=(prose("No stem thicker than a pencil is showing."),),
    ),
    Step(
        title="Ruffle and clip again.",
        text=prose("Brush the whole ball upwards with the flat of both hands, then clip what stands out."),
        key_points=(prose("Brush against the lie of the leaf."),),
        reasons=(prose("Folded shoots spring up in a week and spoil the line."),),
    ),
    Step(
        title="Step back and clear.",
        text=prose("Look from two sides at eye level. Shake the plant, lift the sheet by its corners."),
        key_points=(prose("Take every clipping out of the crown."),),
        reasons=(prose("Wet clippings rot the leaf under them."),),
        checks=(prose("Round from two sides; sheet lifted, path swept."),),
    ),
)

CAUTIONS = (
    Hazard(
        title="Blades.",
        text=prose("Keep the free hand behind the handles. Close and lock the shears before you move your feet."),
        wear=("cut-resistant gloves", "eye protection"),
    ),
    Hazard(
        title="Nests.", text=prose("Look inside the plant before the first cut. A nest in use means the job waits.")
    ),
)

AFTERCARE = (
    Care(when=When(text="Within 2 days", kind="within", days=2), text=prose("Water once, {aftercare water}.")),
    Care(
        when=When(text="After 6 weeks", kind="after", days=42),
        text=prose("Look for new growth; clip again by {next clip}."),
    ),
    Care(
        when=When(text="Always", kind="always"),
        text=prose("Do not clip in full sun above 25 °C: fresh cuts scorch."),
        never=True,
    ),
)


def technique(**changes: Any) -> Technique[BallMeasures]:
    """Return the sample technique, with some fields changed."""
    fields: dict[str, Any] = {
        "id": "clip-a-ball",
        "title": "Clip a ball",
        "family": "clipping",
        "level": 1,
        "minutes": 25.0,
        "plants": ("ilex crenata",),
        "season": "late spring to early autumn",
        "measures": MEASURES,
        "intro": (
            (
                Run(text="A ball that reads as "),
                Run(text="one round line", strong=True),
                Run(
                    text=" from the gate and from the window. Clipped little and often it closes up "
                    "and stays green to the ground."
                ),
            ),
        ),
        "tools": (
            Kit(name="Hand shears", note=prose("sharp, wiped clean")),
            Kit(name="Gauge ring", note=prose("{finished width} inside")),
            Kit(name="Gauge stick"),
            Kit(name="Spray of disinfectant"),
        ),
        "materials": (Kit(name="Drop sheet", note=prose("2")), Kit(name="Green-waste bag", note=prose("1"))),
        "steps": STEPS,
        "cautions": CAUTIONS,
        "finish": (
            prose("The outline is round from two sides, within {finished width tolerance}."),
            prose("No bare stem is showing."),
            prose("Belt level with the ground."),
            prose("Plant shaken out; sheet and path clear."),
        ),
        "aftercare": AFTERCARE,
        "version": "7f3a91c2",
        "path": "techniques/clipping/clip-a-ball.md",
    }
    return Technique[BallMeasures](**(fields | changes))


FIGURES = (
    Figure(
        name="off each side",
        label="Off each side",
        value=40.0,
        unit="mm",
        working=(f"({mm(980)} − {mm(900)}) ÷ 2 = {mm(40)}",),
        references=(GEOMETRY,),
        headline=True,
    ),
    Figure(
        name="share removed",
        label="Share of the ball taken off",
        value=22.55,
        unit="%",
        digits=2,
        working=(f"1 − (900 ÷ 980)³ = 0.2255 = {percent(22.55, 2)}",),
        references=(GEOMETRY,),
        headline=True,
    ),
    Figure(
        name="gauge rings",
        label="Gauge rings",
        value=5.0,
        working=("2 × √(450² − (450 − h)²)",),
        references=(GEOMETRY,),
        table=Table(
            columns=("Height", "Ring width"),
            units=("mm", "mm"),
            rows=((150.0, 671.0), (300.0, 849.0), (450.0, 900.0), (600.0, 849.0), (750.0, 671.0)),
        ),
    ),
    Figure(
        name="aftercare water",
        label="Water after the clip",
        value=9.0,
        unit="L",
        working=("one full can",),
        references=(PRACTICE,),
        client=True,
    ),
    Figure(
        name="next clip",
        label="Next clip due",
        value=date(2027, 6, 2),
        working=("40 mm of growth at 60 mm a month in growth",),
        references=(PRACTICE,),
        client=True,
    ),
)


def _trade(figures: Sequence[Figure], drawings: Sequence[Drawing] = ()) -> AnyFamily:
    """Return a trade that computes and draws just this."""
    return Family(
        name="clipping",
        title="Clipping",
        about="Shapes for tests.",
        measures=BallMeasures,
        figures=lambda _work, _today: iter(figures),
        rules=(),
        drawings=lambda _work, _today: tuple(drawings),
        starter=(),
    )


def ready(
    figures: Sequence[Figure] = FIGURES,
    drawings: Sequence[Drawing] = (),
    *,
    crew: Crew = CREW,
    book: PlantBook | None = None,
    measures: Measures = MEASURES,
    **changes: Any,
) -> Ready:
    """Return the sample technique, with some fields changed, ready to show with these figures and drawings."""
    work: AnyWork = Work(technique(**changes), crew, book or PlantBook())
    return making.ready(work.having(measures=measures), _trade(figures, drawings), TODAY)


def _ring(centre: tuple[float, float], radius: float) -> tuple[tuple[float, float], ...]:
    """Return points round a circle."""
    return tuple(
        (centre[0] + radius * cos(2 * pi * step / 48), centre[1] + radius * sin(2 * pi * step / 48))
        for step in range(48)
    )


def art() -> Art:
    """Return a ball in section at 1:20: 45 mm across for 900 mm, with its belt, ground and one dimension."""
    centre, ink, accent = (44.0, 29.0), "#1d2a26", "#a63d1f"
    return Art(
        width=88.0,
        height=60.0,
        marks=(
            Stroke(points=_ring(centre, 24.5), width=0.25, colour=ink, dash=(1.6, 1.0), closed=True),
            Area(points=_ring(centre, 22.5), colour="#dfe6d3"),
            Stroke(points=_ring(centre, 22.5), width=0.5, colour=ink, closed=True),
            Stroke(points=((21.5, 29.0), (66.5, 29.0)), width=0.35, colour=accent),
            Stroke(points=((4.0, 51.5), (84.0, 51.5)), width=0.5, colour=ink),
            Stroke(points=((21.5, 56.5), (66.5, 56.5)), width=0.18, colour=ink),
            Stroke(points=((20.7, 57.3), (22.3, 55.7)), width=0.35, colour=ink),
            Stroke(points=((65.7, 57.3), (67.3, 55.7)), width=0.35, colour=ink),
            TextMark(text="900 mm", at=(44.0, 55.6), size=3.4, face="head", colour=ink, align="middle"),
            TextMark(text="belt", at=(69.0, 30.0), size=3.2, colour=ink),
        ),
        caption="Belt first, then ribs from the belt to the poles",
        alt="Section of a ball 900 mm across standing on the ground, with the belt at half height; "
        "the dashed outline 40 mm outside is the plant before the cut.",
        scale="1:20",
    )


def visit(**changes: Any) -> Visit:
    """Return an invented visit on which two balls were clipped."""
    fields: dict[str, Any] = {
        "id": "2026-10-14-orchard-end",
        "site": "Orchard end",
        "date": TODAY,
        "next_visit": date(2026, 11, 25),
        "jobs": (Job(technique=technique(), what="the pair by the front step", count=2, plant="box-leaved holly"),),
        "words": (
            prose("The two balls have closed up well since spring. Thank you for keeping the hose off the leaves."),
        ),
        "version": "1b22c09e",
        "path": "techniques/visits/2026-10-14-orchard-end.md",
    }
    return Visit(**(fields | changes))


def ready_visit(made: Visit, figures: Sequence[Sequence[Figure]] | None = None, crew: Crew = CREW) -> ReadyVisit:
    """Return a visit ready for its leaflet, with the figures of each job; those of the sample where none are given."""
    each = iter(figures if figures is not None else [FIGURES] * len(made.jobs))
    shelf = Shelf(root="techniques", crew=crew)
    return making.ready_visit(made, shelf, lambda _name: _trade(()), lambda *_: tuple(next(each)))


def long_prose(words: int) -> Prose:
    """Return one run of so many words."""
    return prose(" ".join(["growing"] * words))
