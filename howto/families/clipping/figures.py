"""The figures of a clip, in printing order, each with working a pencil can follow."""

from calendar import monthrange
from collections.abc import Iterable, Iterator
from datetime import date, timedelta
from math import ceil
from typing import Any

from howto.families.clipping import formulae
from howto.families.clipping import references as by
from howto.families.clipping.gauge import gauge
from howto.families.clipping.measures import ClippingMeasures
from howto.model.figure import Cell, Figure
from howto.model.reference import GEOMETRY, MEASURED, PRACTICE, Reference
from howto.model.work import Work
from howto.quantities.amounts import Count, Share, Words, bare, dated, mm, percent, qty
from howto.seasons import growing_days, growth_date, next_in_months

SEASON_SHARE = 1 / 3  # of the leaf in one season, at most; see references.BOX_SEASON
LIGHT_SHARE = 0.25  # of the leaf in one pass, at most; see references.SHEARING
RATE_M2_PER_H = 4.0  # see references.RATE
GROWTH_MM_PER_YEAR = 100.0  # see references.BOX_GROWTH


def figures(work: Work[ClippingMeasures], today: date) -> Iterator[Figure]:
    """Yield the figures of one clipped shape; `today` is the day of the clip."""
    m = work.measures
    line = f"({bare(m.standing_width_mm, 5)} - {bare(m.finished_width_mm, 5)}) / 2 = {mm(m.side_mm, 3)}"
    yield _figure("off each side", "Off each side", m.side_mm, "mm", [line], GEOMETRY, headline=True)
    if m.standing_height_mm is not None and m.top_mm is not None:
        line = f"{bare(m.standing_height_mm, 5)} - {bare(m.height_mm, 5)} = {mm(m.top_mm, 3)}"
        yield _figure("off the top", "Off the top", m.top_mm, "mm", [line], GEOMETRY)
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
    if (own := work.measures.growth_mm_per_year) is not None:
        return own, MEASURED
    return work.book_growth or (GROWTH_MM_PER_YEAR, by.BOX_GROWTH)


def _figure(
    name: str, label: str, value: Cell, unit: str, working: Iterable[Words], *who: Reference, **more: Any
) -> Figure:
    """Return a figure from its parts in the order they are printed."""
    return Figure(name=name, label=label, value=value, unit=unit, working=tuple(working), references=who, **more)


def _share(m: ClippingMeasures) -> Figure:
    before = formulae.volume_mm3(m.shape, m.standing_width_mm, m.standing_mm) / 1e6
    after = formulae.volume_mm3(m.shape, m.finished_width_mm, m.height_mm) / 1e6
    part = share(m)
    working = [
        f"stands: {_volume(m, m.standing_width_mm, m.standing_mm)} = {qty(before, 'L', 5)}",
        f"done: {_volume(m, m.finished_width_mm, m.height_mm)} = {qty(after, 'L', 5)}",
    ]
    if part > 0:
        shorter = percent(formulae.share_of_length(part) * 100)
        working += [
            f"shell: 1 - {bare(after, 5)} / {bare(before, 5)} = {percent(part * 100)} of the leafy volume",
            f"off the length of each shoot: 1 - (1 - {bare(part)})^(1/3) = {shorter}",
        ]
    else:
        working.append("it stands no larger than it should finish: nothing comes off")
    value = max(0.0, part) * 100
    return _figure("share removed", "Leaf taken off", value, "%", working, GEOMETRY, by.CROWN, headline=True)


def _volume(m: ClippingMeasures, width_mm: float, height_mm: float) -> Words:
    """Return the sum of a volume in metres, to be carried out from left to right."""
    wide, half, tall = _metres(width_mm, width_mm / 2, height_mm)
    if m.shape == "cube":
        return f"{wide} x {wide} x {tall} x 1000"
    part = {"ball": "2/3 x ", "dome": "2/3 x ", "cone": "1/3 x "}.get(m.shape, "")
    return f"{part}π x {half}² x {tall} x 1000"


def _metres(*values_mm: float) -> tuple[Words, ...]:
    """Return millimetres as plain numbers of metres."""
    return tuple(f"{bare(value / 1000, 5)}" for value in values_mm)


def _passes(m: ClippingMeasures) -> Figure:
    part = share(m)
    least = formulae.passes_for(part, LIGHT_SHARE)
    keep, left = bare(1 - LIGHT_SHARE), bare(1 - part)
    working = ["nothing comes off, so no pass is needed"]
    if part > 0:
        row = " x ".join([f"{keep}"] * least)
        said = f"= {bare((1 - LIGHT_SHARE) ** least)}, " if least > 1 else "is "
        each = percent(formulae.share_a_pass(part, m.passes) * 100)
        taking, apart = ("takes", "") if m.passes == 1 else ("take", " each")
        working = [
            f"left when done: 1 - {bare(part)} = {left}; a light pass leaves {keep} or more",
            f"{row} {said}no more than {left}: {Count(least, 'pass', 'passes')} at least",
            f"as planned, {Count(m.passes, 'pass', 'equal passes')} {taking} "
            f"1 - {left}^(1/{bare(m.passes)}) = {each}{apart}",
        ]
    return _figure(
        "passes needed", "Light passes, at least", float(least), "", working, by.SHEARING, PRACTICE, digits=2
    )


def _size_and_time(m: ClippingMeasures) -> Iterator[Figure]:
    area_m2 = formulae.surface_mm2(m.shape, m.finished_width_mm, m.height_mm) / 1e6
    area = qty(area_m2, "m²", 3)
    yield _figure("surface", "Surface to clip", area_m2, "m2", [f"{_surface(m)} = {area}"], GEOMETRY)
    rate = m.clipping_rate_m2_per_h or RATE_M2_PER_H
    minutes = formulae.minutes_for(area_m2 * m.passes, rate)
    line = (
        f"{area} x {Count(m.passes, 'pass', 'passes')} / {qty(rate, 'm²', 3)} an hour x 60 = {qty(minutes, 'min', 3)}"
    )
    who = by.RATE if m.clipping_rate_m2_per_h is None else MEASURED
    yield _figure("clipping time", "Time for one person", minutes, "min", [line], who, digits=2)


def _surface(m: ClippingMeasures) -> Words:
    """Return the sum of the clipped surface in metres; of a long or flat ball or dome, by the spheroid's."""
    wide, half, tall = _metres(m.finished_width_mm, m.finished_width_mm / 2, m.height_mm)
    if m.shape == "cube":
        return f"{wide}² + 4 x {wide} x {tall}"
    if m.shape == "cylinder":
        return f"π x {half}² + π x {wide} x {tall}"
    if m.shape == "cone":
        return f"π x {half} x √({half}² + {tall}²)"
    part, up = ("", m.height_mm / 2) if m.shape == "ball" else (" / 2", m.height_mm)
    across = m.finished_width_mm / 2
    if abs(across - up) <= 1e-6 * across:
        return f"4 x π x {half}²{part}"
    (reach,) = _metres(up)
    short, long = (half, reach) if up > across else (reach, half)
    e = bare((1 - (min(across, up) / max(across, up)) ** 2) ** 0.5, 4)
    start = f"with e = √(1 - ({short} / {long})²) = {e}"
    if up > across:
        return f"{start} and asin in radians: 2 x π x {half}² x (1 + {reach} / ({half} x {e}) x asin {e}){part}"
    return f"{start}: (2 x π x {half}² + π x {reach}² / {e} x ln((1 + {e}) / (1 - {e}))){part}"


def _next_clip(work: Work[ClippingMeasures], today: date) -> Iterator[Figure]:
    m, here = work.measures, work.crew.hemisphere
    a_year, source = growth(work)
    off = m.side_mm if m.side_mm > 0 else max(m.top_mm or 0.0, 0.0)
    due = growth_date(today, off, a_year, here) if off > 0 else None
    if due is None:
        return
    days = growing_days(here)
    working = [
        f"it grows {mm(a_year, 3)} a side in a year, in {Count(days, 'day', 'days')} from spring to autumn",
        f"{bare(off)} / {bare(a_year)} x {bare(days)} = {bare(off / a_year * days)} growing days from "
        f"{dated(today, 'plain')}: {dated(due, 'plain')}",
    ]
    who = [source, by.SEASON]
    if (soonest := _soonest(work, today)) and soonest[0] > due:
        due = soonest[0]
        working.append(soonest[1])
        who.append(soonest[2])
    months = next((plant.clip_months for plant in work.plants if plant.clip_months), None)
    if months is not None:
        kept = next_in_months(due, months.at(here))
        if kept != due:
            working.append(f"then wait for a clipping month of this plant: {dated(kept, 'plain')}")
        due = kept
        who.append(months.reference("clipping months"))
    yield _figure("next clip", "Next clip due", due, "", working, *who, headline=True, client=True)


def _soonest(work: Work[ClippingMeasures], today: date) -> tuple[date, Words, Reference] | None:
    """Return the first day on which a plant is clipped again however fast it grows, how that is found, and who says so.

    Several clips a year share out the months in which it is clipped; one a year comes a year on. A crew that
    measured its growth knows better.
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
    said = "once a year" if once else f"{bare(fact.high)} times in the {Count(season, 'day', 'days')} of its season"
    line = f"clipped {said} at most, so no sooner than {Count(days, 'day', 'days')} on: {dated(day, 'plain')}"
    return day, line, fact.reference(f"clips a year of {plant.botanical}")


def _clip_before(m: ClippingMeasures) -> Figure:
    widest = formulae.widest_standing_mm(m.finished_width_mm, SEASON_SHARE)
    times, width, most = 1 / (1 - SEASON_SHARE), bare(m.finished_width_mm, 5), Share(SEASON_SHARE)
    working = (
        f"grown alike all round, a clip takes 1 - (finished / standing)³ of the leaf, and {most} at most",
        f"{width} x {bare(times)}^(1/3) = {width} x {bare(times ** (1 / 3), 5)} = {mm(widest, 4)}",
    )
    return _figure("clip before", "Clip before it stands", widest, "mm", working, GEOMETRY, by.BOX_SEASON, client=True)
