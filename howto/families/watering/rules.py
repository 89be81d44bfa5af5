"""The rules of watering, in reading order: weather, plants and soil here, then running water, then new plants."""

from collections.abc import Iterator

from howto.families.watering import needs, plan, soil_water, tables
from howto.families.watering import references as by
from howto.families.watering.formulae import Span
from howto.families.watering.measures import WateringMeasures
from howto.families.watering.rules_running import RUNNING_RULES
from howto.families.watering.rules_young import YOUNG_RULES
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, rule
from howto.model.reference import GEOMETRY
from howto.model.work import Work
from howto.quantities import round_down, round_up
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, mm, percent, qty

T = Work[WateringMeasures]

DUST_C = 1e-6  # what rounding may leave between two temperatures that are the same
SPECIES = Limit(low=0.0, high=0.9, unit="", of="of grass's use", reference=by.SPECIES_FACTORS)
DEPLETION = Limit(low=0.1, high=0.8, unit="", of="of the soil's water", reference=by.FAO56_TABLES)
WETTED = Limit(low=0.15, unit="m", reference=by.DEEP)


@rule("watering.weather-in-order", Severity.ERROR, by.FAO56, applies="techniques that write a day's temperatures")
def weather_in_order(work: T) -> Iterator[Breach]:
    """The day's highest temperature is not below its lowest.

    The spread of temperature stands for the sun that came through; it cannot be below 0.
    """
    m = work.measures
    if m.day_max_c is None or m.day_min_c is None or m.day_max_c >= m.day_min_c - DUST_C:
        return
    least = f"{qty(round_up(m.day_min_c, 0.1), '°C', 4)}".replace("−", "-")
    yield Breach(
        field="measures.day_max_c",
        also="measures.day_min_c",
        what=f"the day's highest temperature, {qty(m.day_max_c, '°C', 3)}, is below its lowest, {qty(m.day_min_c, '°C', 3)}",
        why="water use is worked out from the spread between the two, which would be below 0",
        mend=f"look at the two again, and write `day max: {least}` or more",
        edit=Edit(key="day max", text=least),
    )


@rule("watering.species-factor", Severity.WARNING, by.SPECIES_FACTORS, applies="techniques that write a species factor")
def species_factor(work: T) -> Iterator[Breach]:
    """The species factor stands in the range of the plant's water use.

    Against grass, plants of low water use take 0.1 to 0.3, moderate 0.4 to 0.6, high 0.7 to 0.9.
    """
    m = work.measures
    if m.species_factor is None:
        return
    span = tables.SPECIES[m.plant_water][1] if m.plant_water else Span(SPECIES.low or 0.0, SPECIES.high or 0.9)
    yield from _outside("species factor", "species_factor", m.species_factor, span, m.plant_water)


@rule(
    "watering.place-factors",
    Severity.ADVICE,
    by.DENSITY_FACTORS,
    applies="techniques that write a density or microclimate factor",
)
def place_factors(work: T) -> Iterator[Breach]:
    """Density and microclimate factors stand in their published ranges.

    Planting density runs from 0.5 to 1.3 and exposure from 0.5 to 1.4; both are 1 for an average place.
    """
    m = work.measures
    if m.density_factor is not None:
        span = tables.DENSITY[m.density] if m.density else Span(0.5, 1.3)
        yield from _outside("density factor", "density_factor", m.density_factor, span, m.density)
    if m.microclimate_factor is not None:
        span = tables.MICROCLIMATE[m.microclimate] if m.microclimate else Span(0.5, 1.4)
        name = "microclimate_factor"
        yield from _outside("microclimate factor", name, m.microclimate_factor, span, m.microclimate)


def _outside(key: str, field: str, value: float, span: Span, degree: str | None) -> Iterator[Breach]:
    if Limit(low=span.low, high=span.high, unit="", reference=by.SPECIES_FACTORS).allows(value):
        return
    bound = num(span.low if value < span.low else span.high)
    yield Breach(
        field=f"measures.{field}",
        what=f"a {key} of {bare(value)} is outside {bare(span.low)} to {bare(span.high)}",
        why=f"the published range{f' for {degree}' if degree else ''} is {bare(span.low)} to {bare(span.high)}; the "
        "three factors are multiplied, so one that is off throws the litres off as far",
        mend=f"write `{key}: {bound}`, or one nearer the middle of the range",
        edit=Edit(key=key, text=bound),
    )


@rule(
    "watering.wilting-below-capacity",
    Severity.ERROR,
    by.FAO56_SOIL,
    GEOMETRY,
    applies="techniques that write a field capacity or a wilting point",
)
def wilting_below_capacity(work: T) -> Iterator[Breach]:
    """Soil holds at least 2 % more at field capacity than at wilting point.

    Plants live on the water between the two.
    """
    if needs.ground(work) is not None:
        return
    m, soil = work.measures, tables.SOILS[needs.soil_name(work)]
    capacity = soil.field_capacity * 100 if m.field_capacity_percent is None else m.field_capacity_percent
    wilting = soil.wilting_point * 100 if m.wilting_point_percent is None else m.wilting_point_percent
    half = f"{num(round_down(capacity / 2, 0.1))} %"
    yield Breach(
        field="measures.field_capacity_percent"
        if m.wilting_point_percent is None
        else "measures.wilting_point_percent",
        also="" if m.wilting_point_percent is None else "measures.field_capacity_percent",
        what=f"wilting point, {percent(wilting)}, is not {needs.LEAST_TAKEN.least} below field "
        f"capacity, {percent(capacity)}",
        why=f"what plants can take is {bare(capacity)} - {bare(wilting)} = {percent(capacity - wilting)} of the soil",
        mend=f"look at the two again; about half of field capacity is usual: write `wilting point: {half}`",
        edit=Edit(key="wilting point", text=half),
    )


@rule("watering.depletion-range", Severity.ERROR, by.FAO56_TABLES, applies="techniques that write a depletion")
def depletion_range(work: T) -> Iterator[Breach]:
    """The part of the soil's water used before watering again stands within 0.1 to 0.8.

    Below 0.1 the soil never drains; over 0.8 every plant of the table has slowed.
    """
    p = work.measures.depletion_fraction
    if p is None or DEPLETION.allows(p):
        return
    bound = "0.1" if p < 0.1 else "0.8"
    yield Breach(
        field="measures.depletion_fraction",
        what=f"{percent(p * 100)} of the soil's water is used before the next watering",
        why=f"the published range is {DEPLETION}; tender crops stand near 0.2, lawns near 0.4",
        mend=f"write `depletion: {bound}`",
        edit=Edit(key="depletion", text=bound),
    )


@rule("watering.root-depth", Severity.WARNING, by.FAO56_TABLES, applies="techniques that write a crop and a root depth")
def root_depth(work: T) -> Iterator[Breach]:
    """Roots are reckoned no deeper than the crop's table says they grow.

    Lawns root to 0.5 to 1.0 m, fruit trees to 1 to 2 m, strawberries to 0.2 to 0.3 m; often less.
    """
    m = work.measures
    if m.root_depth_mm is None or m.crop is None:
        return
    most = tables.CROPS[m.crop].root_high_m * 1000
    if Limit(high=most, unit="mm", reference=by.FAO56_TABLES).allows(m.root_depth_mm):
        return
    yield Breach(
        field="measures.root_depth_mm",
        also="measures.crop",
        what=f"roots of {m.crop} are written {mm(m.root_depth_mm, 5)} deep",
        why=f"the table's deepest is {mm(most, 5)}; water below the roots is lost",
        mend=f"dig and look, and write `root depth: {num(most, 5)} mm` or less",
        edit=Edit(key="root depth", text=f"{mm(most, 5)}"),
    )


@rule(
    "watering.dried-too-far",
    Severity.WARNING,
    by.FAO56_SOIL,
    applies="techniques that write how far the soil has dried",
)
def dried_too_far(work: T) -> Iterator[Breach]:
    """Water comes before the soil has dried past what plants take easily.

    Past the easily taken water a plant shuts its leaves and slows, down to nothing at wilting point.
    """
    dried, soil = work.measures.dried_mm, needs.ground(work)
    if dried is None or soil is None or dried <= soil.easy_mm * (1 + 1e-9):
        return
    ks = soil_water.stress_factor(soil.total_mm, soil.depletion, dried)
    most = f"{num(round_down(soil.easy_mm, 0.1), 6)} mm"
    yield Breach(
        field="measures.dried_mm",
        what=f"{mm(dried, 3)} has gone from the root zone before it is watered",
        why=f"it holds {mm(soil.total_mm, 3)}, of which {mm(soil.easy_mm, 3)} is easily taken; at {mm(dried, 3)} "
        f"the plant has slowed to {percent(ks * 100)} (Ks {bare(ks)})",
        mend=f"water when {most} has gone at the latest, and write `dried: {most}`",
        edit=Edit(key="dried", text=most),
    )


@rule("watering.interval", Severity.WARNING, by.FAO56_SOIL, applies="established plantings that write an interval")
def interval(work: T) -> Iterator[Breach]:
    """The days between waterings are no more than the soil's easy water lasts.

    The easily taken water over the daily use is the days it lasts: 16.8 mm at 4.75 mm a day is 3.5 days, 3 in
    practice.
    """
    own, days = work.measures.interval_days, needs.days_between(work)
    if own is None or days is None or work.measures.is_new:
        return
    most, soil, use = min(365, soil_water.whole_days(days)), needs.ground(work), needs.plant_use(work)
    if own <= most or soil is None or use is None:
        return
    yield Breach(
        field="measures.interval_days",
        what=f"{bare(own)} days between waterings",
        why=f"{mm(soil.easy_mm, 3)} easily taken / {mm(use.value, 3)} a day = {bare(days)} days, rounded down {most}",
        mend=f"write `interval: {most} days` or less",
        edit=Edit(key="interval", text=f"{most} days"),
    )


@rule("watering.root-zone-holds", Severity.ERROR, by.FAO56_SOIL, applies="techniques that write a wanted depth")
def root_zone_holds(work: T) -> Iterator[Breach]:
    """One watering is no more than the root zone can hold.

    Water past the roots is paid for, and takes the feed down with it.
    """
    depth, soil = work.measures.wanted_depth_mm, needs.ground(work)
    if depth is None or soil is None or depth <= soil.total_mm * (1 + 1e-9):
        return
    most = f"{num(round_down(soil.total_mm, 0.1), 6)} mm"
    yield Breach(
        field="measures.wanted_depth_mm",
        what=f"{mm(depth, 3)} is put on at once",
        why=f"{soil.name} holds 1000 x {bare(soil.available)} x {qty(soil.root_m, 'm', 3)} = {mm(soil.total_mm, 3)} down to "
        "the roots' depth; the rest drains away below them",
        mend=f"write `wanted depth: {most}` or less, and water more often",
        edit=Edit(key="wanted depth", text=most),
    )


@rule(
    "watering.deep-enough",
    Severity.WARNING,
    by.DEEP,
    applies="areas watered by sprinkler, hose or can, where a depth or an interval is written",
)
def deep_enough(work: T) -> Iterator[Breach]:
    """A watering over an area wets the soil at least 150 mm deep, or to the roots where they are shallower.

    A sprinkle that wets 50 mm keeps roots at the top, where they dry first; 6 in is the least.
    """
    m, depth, soil = work.measures, plan.net_depth(work), needs.ground(work)
    if m.is_new or m.method == "drip" or depth is None or soil is None:
        return
    if m.wanted_depth_mm is None and m.interval_days is None:
        return
    reach = soil_water.wetted_m(depth.value, soil.available, soil.depletion)
    target = min(WETTED.low or 0.0, soil.root_m)
    if reach >= target * (1 - 1e-9):
        return
    least = f"{num(round_up(1000 * soil.available * soil.depletion * target, 0.1), 6)} mm"
    yield Breach(
        field="measures.wanted_depth_mm" if m.wanted_depth_mm is not None else "measures.interval_days",
        what=f"{mm(depth.value, 3)} wets {soil.name} only {mm(reach * 1000, 3)} deep",
        why=f"{bare(depth.value)} / (1000 x {bare(soil.available)} x {bare(soil.depletion)}) = {qty(reach, 'm', 3)}; the least "
        f"is {mm(target * 1000, 3)}, since roots follow the water",
        mend=f"write `wanted depth: {least}` or more, and water less often",
        edit=Edit(key="wanted depth", text=least),
    )


RULES: tuple[Rule[WateringMeasures], ...] = (
    weather_in_order,
    species_factor,
    place_factors,
    wilting_below_capacity,
    depletion_range,
    root_depth,
    dried_too_far,
    interval,
    root_zone_holds,
    deep_enough,
    *RUNNING_RULES,
    *YOUNG_RULES,
)
