"""The figures of a clip, in printing order, each with working a pencil can follow."""

from collections.abc import Iterator
from datetime import date

from howto.families.clipping import formulae
from howto.families.clipping.measures import ClippingMeasures
from howto.families.clipping.references import BOX_GROWTH, CROWN, RATE, RENOVATION
from howto.model.figure import Figure, Table
from howto.model.reference import GEOMETRY, PRACTICE, Reference, from_memory
from howto.model.technique import Technique
from howto.quantities import show_number as num
from howto.seasons import growth_date, next_in_months

LIGHT_SHARE = 0.25  # of the leaf in one pass; the trade's light clip, see rules.LIGHT
RATE_M2_PER_H = 4.0  # see references.RATE
GROWTH_MM_PER_YEAR = 100.0  # see references.BOX_GROWTH


def figures(technique: Technique[ClippingMeasures], today: date) -> Iterator[Figure]:
    """Yield the figures of one clipped shape; `today` is the day of the clip."""
    m = technique.measures
    yield _off_each_side(m)
    yield _share(m)
    yield _passes(m)
    yield _gauge(m)
    yield from _size_and_time(m)
    yield from _next_clip(technique, today)


def share(m: ClippingMeasures) -> float:
    """Return the part of the leafy volume the clip takes, 0 to 1."""
    return formulae.share_removed(m.shape, (m.standing_width_mm, m.standing_mm), (m.finished_width_mm, m.height_mm))


def growth(technique: Technique[ClippingMeasures]) -> tuple[float, Reference]:
    """Return growth a side in mm a year, and who says so: the author, the plant book, or memory."""
    m = technique.measures
    if m.growth_mm_per_year is not None:
        return m.growth_mm_per_year, Reference(title="growth as measured by the crew", grade=PRACTICE.grade)
    for plant in technique.known_plants:
        if (fact := plant.growth_mm_per_year) is not None:
            source = Reference(title=f"growth of {plant.botanical}", publisher=fact.source, grade=fact.grade)
            return fact.middle, source
    return GROWTH_MM_PER_YEAR, BOX_GROWTH


def _off_each_side(m: ClippingMeasures) -> Figure:
    off = (m.standing_width_mm - m.finished_width_mm) / 2
    return Figure(
        name="off each side",
        label="Off each side",
        value=off,
        unit="mm",
        working=(f"({num(m.standing_width_mm, 5)} - {num(m.finished_width_mm, 5)}) / 2 = {num(off)} mm",),
        references=(GEOMETRY,),
        headline=True,
    )


def _share(m: ClippingMeasures) -> Figure:
    before = formulae.volume_mm3(m.shape, m.standing_width_mm, m.standing_mm) / 1e6
    after = formulae.volume_mm3(m.shape, m.finished_width_mm, m.height_mm) / 1e6
    part = share(m)
    return Figure(
        name="share removed",
        label="Leaf taken off",
        value=part * 100,
        unit="%",
        working=(
            f"stands: {_size(m, m.standing_width_mm, m.standing_mm)} = {num(before)} L",
            f"done: {_size(m, m.finished_width_mm, m.height_mm)} = {num(after)} L",
            f"shell = 1 - {num(after)} / {num(before)} = {num(part * 100)} % of the leafy volume",
            f"off the length of each shoot: 1 - (1 - {num(part)})^(1/3) = "
            f"{num(formulae.share_of_length(part) * 100)} %",
        ),
        references=(GEOMETRY, CROWN),
        headline=True,
    )


def _size(m: ClippingMeasures, width: float, height: float) -> str:
    form = {
        "ball": "2/3 x π x r² x height",
        "dome": "2/3 x π x r² x height",
        "cone": "1/3 x π x r² x height",
        "cylinder": "π x r² x height",
    }.get(m.shape, "width² x height")
    return f"{m.shape} {num(width, 5)} wide, {num(height, 5)} mm high, {form}"


def _passes(m: ClippingMeasures) -> Figure:
    part = share(m)
    least = formulae.passes_for(part, LIGHT_SHARE)
    each = formulae.share_a_pass(max(part, 0.0), m.passes)
    return Figure(
        name="passes needed",
        label="Light passes",
        value=float(max(least, m.passes)),
        working=(
            f"{m.passes} equal passes: 1 - (1 - {num(part)})^(1/{m.passes}) = {num(each * 100)} % each",
            f"fewest at {num(LIGHT_SHARE * 100)} % a pass: "
            f"ln(1 - {num(part)}) / ln(1 - {LIGHT_SHARE}) rounded up = {least}",
        ),
        references=(PRACTICE, RENOVATION),
        digits=2,
    )


def _gauge(m: ClippingMeasures) -> Figure:
    height = m.height_mm
    every = m.gauge_every_mm or handy_step(height)
    ups = [every * step for step in range(int(height / every + 1e-9) + 1)]
    if ups[-1] < height - 1e-6:
        ups.append(height)
    widths = [formulae.width_at_mm(m.shape, m.finished_width_mm, height, up) for up in ups]
    widest = max(range(len(ups)), key=lambda at: widths[at])
    return Figure(
        name="gauge rings",
        label="Gauge rings: width at each height",
        value=f"every {num(every)} mm up the stick",
        working=(
            f"at {num(ups[widest], 5)} mm up: {_width_form(m, ups[widest])} = {num(widths[widest], 5)} mm",
            f"ring each {num(every)} mm from the foot to {num(height, 5)} mm",
        ),
        references=(GEOMETRY,),
        table=Table(
            columns=("Up from the foot", "Width", "Out from the stem"),
            units=("mm", "mm", "mm"),
            rows=tuple((up, width, width / 2) for up, width in zip(ups, widths, strict=True)),
        ),
    )


def handy_step(height_mm: float) -> float:
    """Return a round step that gives five to ten rings."""
    return next((step for step in (25, 50, 75, 100, 150, 200, 250, 500) if height_mm / step <= 8), 1000.0)


def _width_form(m: ClippingMeasures, up: float) -> str:
    width, height = num(m.finished_width_mm, 5), num(m.height_mm, 5)
    if m.shape == "ball":
        return f"{width} x √(1 - (2 x {num(up, 5)} / {height} - 1)²)"
    if m.shape == "dome":
        return f"{width} x √(1 - ({num(up, 5)} / {height})²)"
    if m.shape == "cone":
        return f"{width} x (1 - {num(up, 5)} / {height})"
    return width


def _size_and_time(m: ClippingMeasures) -> Iterator[Figure]:
    area = formulae.surface_mm2(m.shape, m.finished_width_mm, m.height_mm) / 1e6
    form = {
        "ball": "π x width x height, by the spheroid formula where it is not round",
        "dome": "half a spheroid, without its foot",
        "cone": "π x r x √(r² + height²)",
        "cylinder": "π x r² + 2 x π x r x height",
    }.get(m.shape, "width² + 4 x width x height")
    yield Figure(
        name="surface",
        label="Surface to clip",
        value=area,
        unit="m2",
        working=(f"{form} = {num(area)} m²",),
        references=(GEOMETRY,),
    )
    rate = m.clipping_rate_m2_per_h or RATE_M2_PER_H
    minutes = formulae.minutes_for(area * m.passes, rate)
    source = RATE if m.clipping_rate_m2_per_h is None else PRACTICE
    yield Figure(
        name="clipping time",
        label="Time for one person",
        value=minutes,
        unit="min",
        working=(f"{num(area)} m² x {m.passes} passes / {num(rate)} m² an hour x 60 = {num(minutes)} min",),
        references=(source,),
        digits=2,
    )


def _next_clip(technique: Technique[ClippingMeasures], today: date) -> Iterator[Figure]:
    m = technique.measures
    a_year, source = growth(technique)
    off = (m.standing_width_mm - m.finished_width_mm) / 2
    due = growth_date(today, max(off, 1.0), a_year, technique.crew.hemisphere)
    if due is None:
        return
    working = [
        f"it grows {num(a_year)} mm a side in a year, from spring to autumn",
        f"{num(off)} mm a side has grown again by {due.isoformat()}",
    ]
    references = [source, from_memory("shoots grow from March to October in the north")]
    months = next((p.clip_months for p in technique.known_plants if p.clip_months), None)
    if months is not None:
        kept = next_in_months(due, months.at(technique.crew.hemisphere))
        if kept != due:
            working.append(f"then wait for a clipping month of this plant: {kept.isoformat()}")
        due = kept
        references.append(Reference(title="clipping months", publisher=months.source, grade=months.grade))
    yield Figure(
        name="next clip",
        label="Next clip due",
        value=due,
        working=tuple(working),
        references=tuple(references),
        headline=True,
        client=True,
    )
