"""The figures of a clip, in printing order, each with working a pencil can follow."""

from calendar import monthrange
from collections.abc import Iterator
from datetime import date, timedelta
from math import ceil
from typing import NamedTuple

from howto.families.clipping import formulae
from howto.families.clipping import references as by
from howto.families.clipping.gauge import gauge
from howto.families.clipping.measures import ClippingMeasures
from howto.model.figure import Figure
from howto.model.reference import GEOMETRY, MEASURED, PRACTICE, Reference
from howto.model.work import Work
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, dated, mm, percent, qty
from howto.seasons import growing_days, growth_date, next_in_months

SEASON_SHARE = 1 / 3  # of the leaf in one season, at most; see references.BOX_SEASON
LIGHT_SHARE = 0.25  # of the leaf in one pass, at most; see references.SHEARING
RATE_M2_PER_H = 4.0  # see references.RATE
GROWTH_MM_PER_YEAR = 100.0  # see references.BOX_GROWTH


def figures(work: Work[ClippingMeasures], today: date) -> Iterator[Figure]:
    """Yield the figures of one clipped shape; `today` is the day of the clip."""
    m = work.measures
    yield _off_each_side(m)
    yield from _off_the_top(m)
    yield _share(m)
    yield _passes(m)
    yield gauge(m, work.crew.units)
    yield from _size_and_time(m)
    yield from _next_clip(work, today)
    yield _clip_before(m)


def share(m: ClippingMeasures) -> float:
    """Return the part of the leafy volume the clip takes, 0 to 1; below 0 where the finished shape is larger."""
    return formulae.share_removed(m.shape, (m.standing_width_mm, m.standing_mm), (m.finished_width_mm, m.height_mm))


def growth(work: Work[ClippingMeasures]) -> tuple[float, Reference]:
    """Return growth a side in mm a year, and who says so: the author, the plant book, or memory."""
    m = work.measures
    if m.growth_mm_per_year is not None:
        return m.growth_mm_per_year, MEASURED
    return work.book_growth or (GROWTH_MM_PER_YEAR, by.BOX_GROWTH)


def _off_each_side(m: ClippingMeasures) -> Figure:
    return Figure(
        name="off each side",
        label="Off each side",
        value=m.side_mm,
        unit="mm",
        working=(f"({bare(m.standing_width_mm, 5)} - {bare(m.finished_width_mm, 5)}) / 2 = {mm(m.side_mm, 3)}",),
        references=(GEOMETRY,),
        headline=True,
    )


def _off_the_top(m: ClippingMeasures) -> Iterator[Figure]:
    if m.standing_height_mm is None or m.top_mm is None:
        return
    yield Figure(
        name="off the top",
        label="Off the top",
        value=m.top_mm,
        unit="mm",
        working=(f"{bare(m.standing_height_mm, 5)} - {bare(m.height_mm, 5)} = {mm(m.top_mm, 3)}",),
        references=(GEOMETRY,),
    )


def _share(m: ClippingMeasures) -> Figure:
    before = formulae.volume_mm3(m.shape, m.standing_width_mm, m.standing_mm) / 1e6
    after = formulae.volume_mm3(m.shape, m.finished_width_mm, m.height_mm) / 1e6
    part = share(m)
    working = [
        f"stands: {_volume(m, m.standing_width_mm, m.standing_mm)} = {qty(before, 'L', 5)}",
        f"done: {_volume(m, m.finished_width_mm, m.height_mm)} = {qty(after, 'L', 5)}",
    ]
    if part > 0:
        working += [
            f"shell: 1 - {bare(after, 5)} / {bare(before, 5)} = {percent(part * 100)} of the leafy volume",
            f"off the length of each shoot: 1 - (1 - {bare(part)})^(1/3) = "
            f"{percent(formulae.share_of_length(part) * 100)}",
        ]
    else:
        working.append("it stands no larger than it should finish: nothing comes off")
    return Figure(
        name="share removed",
        label="Leaf taken off",
        value=max(0.0, part) * 100,
        unit="%",
        working=tuple(working),
        references=(GEOMETRY, by.CROWN),
        headline=True,
    )


def _volume(m: ClippingMeasures, width: float, height: float) -> str:
    """Return the sum of a volume in metres, to be carried out from left to right."""
    wide, half, tall = metres(width), metres(width / 2), metres(height)
    if m.shape == "cube":
        return f"{wide} x {wide} x {tall} x 1000"
    part = {"ball": "2/3 x ", "dome": "2/3 x ", "cone": "1/3 x "}.get(m.shape, "")
    return f"{part}π x {half}² x {tall} x 1000"


def metres(value_mm: float) -> str:
    """Return millimetres as a number of metres, without the unit."""
    return num(value_mm / 1000, 5)


def _passes(m: ClippingMeasures) -> Figure:
    part = share(m)
    least = formulae.passes_for(part, LIGHT_SHARE)
    keep = 1 - LIGHT_SHARE
    working = ["nothing comes off, so no pass is needed"]
    if part > 0:
        each = formulae.share_a_pass(part, m.passes)
        working = [
            f"left when done: 1 - {bare(part)} = {bare(1 - part)}; a light pass leaves {bare(keep)} or more",
            f"{' x '.join([num(keep)] * least)} {f'= {bare(keep**least)}, ' if least > 1 else 'is '}"
            f"no more than {bare(1 - part)}: {least} {'pass' if least == 1 else 'passes'} at least",
            f"as planned, {m.passes} {'pass takes' if m.passes == 1 else 'equal passes take'} "
            f"1 - {bare(1 - part)}^(1/{m.passes}) = {percent(each * 100)}{'' if m.passes == 1 else ' each'}",
        ]
    return Figure(
        name="passes needed",
        label="Light passes, at least",
        value=float(least),
        working=tuple(working),
        references=(by.SHEARING, PRACTICE),
        digits=2,
    )


def _size_and_time(m: ClippingMeasures) -> Iterator[Figure]:
    area = formulae.surface_mm2(m.shape, m.finished_width_mm, m.height_mm) / 1e6
    yield Figure(
        name="surface",
        label="Surface to clip",
        value=area,
        unit="m2",
        working=(f"{_surface(m)} = {qty(area, 'm²', 3)}",),
        references=(GEOMETRY,),
    )
    rate = m.clipping_rate_m2_per_h or RATE_M2_PER_H
    minutes = formulae.minutes_for(area * m.passes, rate)
    yield Figure(
        name="clipping time",
        label="Time for one person",
        value=minutes,
        unit="min",
        working=(
            f"{qty(area, 'm²', 3)} x {m.passes} {'pass' if m.passes == 1 else 'passes'} / {qty(rate, 'm²', 3)} an hour x 60 = "
            f"{qty(minutes, 'min', 3)}",
        ),
        references=(by.RATE if m.clipping_rate_m2_per_h is None else MEASURED,),
        digits=2,
    )


def _surface(m: ClippingMeasures) -> str:
    """Return the sum of the clipped surface in metres; of a long or flat ball or dome, by the spheroid's."""
    wide, half, tall = metres(m.finished_width_mm), metres(m.finished_width_mm / 2), metres(m.height_mm)
    if m.shape == "cube":
        return f"{wide}² + 4 x {wide} x {tall}"
    if m.shape == "cylinder":
        return f"π x {half}² + π x {wide} x {tall}"
    if m.shape == "cone":
        return f"π x {half} x √({half}² + {tall}²)"
    part = "" if m.shape == "ball" else " / 2"
    up = m.height_mm / 2 if m.shape == "ball" else m.height_mm
    across = m.finished_width_mm / 2
    if abs(across - up) <= 1e-6 * across:
        return f"4 x π x {half}²{part}"
    reach = metres(up)
    if up > across:
        bend = (1 - (across / up) ** 2) ** 0.5
        return (
            f"with e = √(1 - ({half} / {reach})²) = {bare(bend, 4)} and asin in radians: 2 x π x {half}² x "
            f"(1 + {reach} / ({half} x {bare(bend, 4)}) x asin {bare(bend, 4)}){part}"
        )
    bend = (1 - (up / across) ** 2) ** 0.5
    return (
        f"with e = √(1 - ({reach} / {half})²) = {bare(bend, 4)}: (2 x π x {half}² + π x {reach}² / {bare(bend, 4)} x "
        f"ln((1 + {bare(bend, 4)}) / (1 - {bare(bend, 4)}))){part}"
    )


def _next_clip(work: Work[ClippingMeasures], today: date) -> Iterator[Figure]:
    m = work.measures
    a_year, source = growth(work)
    off = m.side_mm if m.side_mm > 0 else max(m.top_mm or 0.0, 0.0)
    due = growth_date(today, off, a_year, work.crew.hemisphere) if off > 0 else None
    if due is None:
        return
    days = growing_days(work.crew.hemisphere)
    working = [
        f"it grows {mm(a_year, 3)} a side in a year, in {days} days from spring to autumn",
        f"{bare(off)} / {bare(a_year)} x {days} = {bare(off / a_year * days)} growing days from "
        f"{dated(today, 'plain')}: {dated(due, 'plain')}",
    ]
    references = [source, by.SEASON]
    if (soonest := _soonest(work, today)) and soonest.day > due:
        due = soonest.day
        working.append(soonest.working)
        references.append(soonest.source)
    months = next((plant.clip_months for plant in work.plants if plant.clip_months), None)
    if months is not None:
        kept = next_in_months(due, months.at(work.crew.hemisphere))
        if kept != due:
            working.append(f"then wait for a clipping month of this plant: {dated(kept, 'plain')}")
        due = kept
        references.append(months.reference("clipping months"))
    yield Figure(
        name="next clip",
        label="Next clip due",
        value=due,
        working=tuple(working),
        references=tuple(references),
        headline=True,
        client=True,
    )


class _Soonest(NamedTuple):
    """The first day on which a plant is clipped again, however fast it grows."""

    day: date
    working: str
    source: Reference


def _soonest(work: Work[ClippingMeasures], today: date) -> _Soonest | None:
    """Return when a plant's clips of a year come round again; a crew that measured its growth knows better.

    Several clips a year share out the months in which it is clipped; one a year comes a year on.
    """
    plant = next((plant for plant in work.plants if plant.clips_a_year), None)
    if plant is None or plant.clips_a_year is None or work.measures.growth_mm_per_year is not None:
        return None
    fact = plant.clips_a_year
    season = growing_days(work.crew.hemisphere)
    if plant.clip_months is not None:
        season = sum(monthrange(2023, month)[1] for month in plant.clip_months.months)
    once = fact.high <= 1
    days = 365 if once else ceil(season / fact.high)
    day = today + timedelta(days=days)
    said = "once a year" if once else f"{bare(fact.high)} times in the {season} days of its season"
    return _Soonest(
        day,
        f"clipped {said} at most, so no sooner than {days} days on: {dated(day, 'plain')}",
        fact.reference(f"clips a year of {plant.botanical}"),
    )


def _clip_before(m: ClippingMeasures) -> Figure:
    widest = formulae.widest_standing_mm(m.finished_width_mm, SEASON_SHARE)
    return Figure(
        name="clip before",
        label="Clip before it stands",
        value=widest,
        unit="mm",
        working=(
            "grown alike all round, a clip takes 1 - (finished / standing)³ of the leaf, and a third at most",
            f"{bare(m.finished_width_mm, 5)} x 1.5^(1/3) = {bare(m.finished_width_mm, 5)} x 1.1447 = {mm(widest, 4)}",
        ),
        references=(GEOMETRY, by.BOX_SEASON),
        client=True,
    )
