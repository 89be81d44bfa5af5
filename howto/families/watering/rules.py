"""The rules of watering, in reading order: weather, plants and soil here, then running water, then new plants."""

from collections.abc import Iterator

from howto.families.watering import needs, plan, soil_water, tables
from howto.families.watering.formulae import Span
from howto.families.watering.measures import WateringMeasures
from howto.families.watering.references import (
    DEEP,
    DENSITY_FACTORS,
    FAO56,
    FAO56_SOIL,
    FAO56_TABLES,
    SPECIES_FACTORS,
)
from howto.families.watering.rules_running import RUNNING_RULES
from howto.families.watering.rules_young import YOUNG_RULES
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule
from howto.model.reference import GEOMETRY
from howto.model.technique import Technique
from howto.quantities import round_down, round_up
from howto.quantities import show_number as num

T = Technique[WateringMeasures]

DUST_C = 1e-6  # what rounding may leave between two temperatures that are the same
SPECIES = Limit(low=0.0, high=0.9, unit="of grass's use", reference=SPECIES_FACTORS)
DEPLETION = Limit(low=0.1, high=0.8, unit="of the soil's water", reference=FAO56_TABLES)
WETTED = Limit(low=0.15, unit="m", reference=DEEP)


def weather_in_order(technique: T) -> Iterator[Breach]:
    """The day's highest temperature is not below its lowest."""
    m = technique.measures
    if m.day_max_c is None or m.day_min_c is None or m.day_max_c >= m.day_min_c - DUST_C:
        return
    least = f"{num(round_up(m.day_min_c, 0.1), 4)} °C".replace("−", "-")
    yield Breach(
        field="measures.day_max_c",
        also="measures.day_min_c",
        what=f"the day's highest temperature, {num(m.day_max_c)} °C, is below its lowest, {num(m.day_min_c)} °C",
        why="water use is worked out from the spread between the two, which would be below 0",
        mend=f"look at the two again, and write `day max: {least}` or more",
        edit=Edit(key="day max", text=least),
    )


def species_factor(technique: T) -> Iterator[Breach]:
    """The species factor stands in the range of the plant's water use."""
    m = technique.measures
    if m.species_factor is None:
        return
    span = tables.SPECIES[m.plant_water][1] if m.plant_water else Span(SPECIES.low or 0.0, SPECIES.high or 0.9)
    yield from _outside("species factor", "species_factor", m.species_factor, span, m.plant_water)


def place_factors(technique: T) -> Iterator[Breach]:
    """Density and microclimate factors stand in their published ranges."""
    m = technique.measures
    if m.density_factor is not None:
        span = tables.DENSITY[m.density] if m.density else Span(0.5, 1.3)
        yield from _outside("density factor", "density_factor", m.density_factor, span, m.density)
    if m.microclimate_factor is not None:
        span = tables.MICROCLIMATE[m.microclimate] if m.microclimate else Span(0.5, 1.4)
        name = "microclimate_factor"
        yield from _outside("microclimate factor", name, m.microclimate_factor, span, m.microclimate)


def _outside(key: str, field: str, value: float, span: Span, degree: str | None) -> Iterator[Breach]:
    if Limit(low=span.low, high=span.high, unit="", reference=SPECIES_FACTORS).allows(value):
        return
    bound = num(span.low if value < span.low else span.high)
    yield Breach(
        field=f"measures.{field}",
        what=f"a {key} of {num(value)} is outside {num(span.low)} to {num(span.high)}",
        why=f"the published range{f' for {degree}' if degree else ''} is {num(span.low)} to {num(span.high)}; the "
        "three factors are multiplied, so one that is off throws the litres off as far",
        mend=f"write `{key}: {bound}`, or one nearer the middle of the range",
        edit=Edit(key=key, text=bound),
    )


def wilting_below_capacity(technique: T) -> Iterator[Breach]:
    """Soil holds at least 2 % more at field capacity than at wilting point."""
    if needs.ground(technique) is not None:
        return
    m, soil = technique.measures, tables.SOILS[needs.soil_name(technique)]
    capacity = soil.field_capacity * 100 if m.field_capacity_percent is None else m.field_capacity_percent
    wilting = soil.wilting_point * 100 if m.wilting_point_percent is None else m.wilting_point_percent
    half = f"{num(round_down(capacity / 2, 0.1))} %"
    yield Breach(
        field="measures.field_capacity_percent"
        if m.wilting_point_percent is None
        else "measures.wilting_point_percent",
        also="" if m.wilting_point_percent is None else "measures.field_capacity_percent",
        what=f"wilting point, {num(wilting)} %, is not 2 % below field capacity, {num(capacity)} %",
        why=f"what plants can take is {num(capacity)} - {num(wilting)} = {num(capacity - wilting)} % of the soil",
        mend=f"look at the two again; about half of field capacity is usual: write `wilting point: {half}`",
        edit=Edit(key="wilting point", text=half),
    )


def depletion_range(technique: T) -> Iterator[Breach]:
    """The part of the soil's water used before watering again stands within 0.1 to 0.8."""
    p = technique.measures.depletion_fraction
    if p is None or DEPLETION.allows(p):
        return
    bound = "0.1" if p < 0.1 else "0.8"
    yield Breach(
        field="measures.depletion_fraction",
        what=f"{num(p * 100)} % of the soil's water is used before the next watering",
        why=f"the published range is {DEPLETION}; tender crops stand near 0.2, lawns near 0.4",
        mend=f"write `depletion: {bound}`",
        edit=Edit(key="depletion", text=bound),
    )


def root_depth(technique: T) -> Iterator[Breach]:
    """Roots are reckoned no deeper than the crop's table says they grow."""
    m = technique.measures
    if m.root_depth_mm is None or m.crop is None:
        return
    most = tables.CROPS[m.crop].root_high_m * 1000
    if Limit(high=most, unit="mm", reference=FAO56_TABLES).allows(m.root_depth_mm):
        return
    yield Breach(
        field="measures.root_depth_mm",
        also="measures.crop",
        what=f"roots of {m.crop} are written {num(m.root_depth_mm, 5)} mm deep",
        why=f"the table's deepest is {num(most, 5)} mm; water below the roots is lost",
        mend=f"dig and look, and write `root depth: {num(most, 5)} mm` or less",
        edit=Edit(key="root depth", text=f"{num(most, 5)} mm"),
    )


def dried_too_far(technique: T) -> Iterator[Breach]:
    """Water comes before the soil has dried past what plants take easily."""
    dried, soil = technique.measures.dried_mm, needs.ground(technique)
    if dried is None or soil is None or dried <= soil.easy_mm * (1 + 1e-9):
        return
    ks = soil_water.stress_factor(soil.total_mm, soil.depletion, dried)
    most = f"{num(round_down(soil.easy_mm, 0.1), 6)} mm"
    yield Breach(
        field="measures.dried_mm",
        what=f"{num(dried)} mm has gone from the root zone before it is watered",
        why=f"it holds {num(soil.total_mm)} mm, of which {num(soil.easy_mm)} mm is easily taken; at {num(dried)} mm "
        f"the plant has slowed to {num(ks * 100)} % (Ks {num(ks)})",
        mend=f"water when {most} has gone at the latest, and write `dried: {most}`",
        edit=Edit(key="dried", text=most),
    )


def interval(technique: T) -> Iterator[Breach]:
    """The days between waterings are no more than the soil's easy water lasts."""
    own, days = technique.measures.interval_days, needs.days_between(technique)
    if own is None or days is None or technique.measures.is_new:
        return
    most, soil, use = min(365, soil_water.whole_days(days)), needs.ground(technique), needs.plant_use(technique)
    if own <= most or soil is None or use is None:
        return
    yield Breach(
        field="measures.interval_days",
        what=f"{num(own)} days between waterings",
        why=f"{num(soil.easy_mm)} mm easily taken / {num(use.value)} mm a day = {num(days)} days, rounded down {most}",
        mend=f"write `interval: {most} days` or less",
        edit=Edit(key="interval", text=f"{most} days"),
    )


def root_zone_holds(technique: T) -> Iterator[Breach]:
    """One watering is no more than the root zone can hold."""
    depth, soil = technique.measures.wanted_depth_mm, needs.ground(technique)
    if depth is None or soil is None or depth <= soil.total_mm * (1 + 1e-9):
        return
    most = f"{num(round_down(soil.total_mm, 0.1), 6)} mm"
    yield Breach(
        field="measures.wanted_depth_mm",
        what=f"{num(depth)} mm is put on at once",
        why=f"{soil.name} holds 1000 x {num(soil.available)} x {num(soil.root_m)} m = {num(soil.total_mm)} mm down to "
        "the roots' depth; the rest drains away below them",
        mend=f"write `wanted depth: {most}` or less, and water more often",
        edit=Edit(key="wanted depth", text=most),
    )


def deep_enough(technique: T) -> Iterator[Breach]:
    """A watering over an area wets the soil at least 150 mm deep, or to the roots where they are shallower."""
    m, depth, soil = technique.measures, plan.net_depth(technique), needs.ground(technique)
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
        what=f"{num(depth.value)} mm wets {soil.name} only {num(reach * 1000)} mm deep",
        why=f"{num(depth.value)} / (1000 x {num(soil.available)} x {num(soil.depletion)}) = {num(reach)} m; the least "
        f"is {num(target * 1000)} mm, since roots follow the water",
        mend=f"write `wanted depth: {least}` or more, and water less often",
        edit=Edit(key="wanted depth", text=least),
    )


RULES: tuple[Rule[WateringMeasures], ...] = (
    Rule(
        name="watering.weather-in-order",
        severity=Severity.ERROR,
        why="The spread of temperature stands for the sun that came through; it cannot be below 0.",
        references=(FAO56,),
        applies="techniques that write a day's temperatures",
        check=weather_in_order,
    ),
    Rule(
        name="watering.species-factor",
        severity=Severity.WARNING,
        why="Against grass, plants of low water use take 0.1 to 0.3, moderate 0.4 to 0.6, high 0.7 to 0.9.",
        references=(SPECIES_FACTORS,),
        applies="techniques that write a species factor",
        check=species_factor,
    ),
    Rule(
        name="watering.place-factors",
        severity=Severity.ADVICE,
        why="Planting density runs from 0.5 to 1.3 and exposure from 0.5 to 1.4; both are 1 for an average place.",
        references=(DENSITY_FACTORS,),
        applies="techniques that write a density or microclimate factor",
        check=place_factors,
    ),
    Rule(
        name="watering.wilting-below-capacity",
        severity=Severity.ERROR,
        why="Plants live on the water between the two.",
        references=(FAO56_SOIL, GEOMETRY),
        applies="techniques that write a field capacity or a wilting point",
        check=wilting_below_capacity,
    ),
    Rule(
        name="watering.depletion-range",
        severity=Severity.ERROR,
        why="Below 0.1 the soil never drains; over 0.8 every plant of the table has slowed.",
        references=(FAO56_TABLES,),
        applies="techniques that write a depletion",
        check=depletion_range,
    ),
    Rule(
        name="watering.root-depth",
        severity=Severity.WARNING,
        why="Lawns root to 0.5 to 1.0 m, fruit trees to 1 to 2 m, strawberries to 0.2 to 0.3 m; often less.",
        references=(FAO56_TABLES,),
        applies="techniques that write a crop and a root depth",
        check=root_depth,
    ),
    Rule(
        name="watering.dried-too-far",
        severity=Severity.WARNING,
        why="Past the easily taken water a plant shuts its leaves and slows, down to nothing at wilting point.",
        references=(FAO56_SOIL,),
        applies="techniques that write how far the soil has dried",
        check=dried_too_far,
    ),
    Rule(
        name="watering.interval",
        severity=Severity.WARNING,
        why="The easily taken water over the daily use is the days it lasts: 16.8 mm at 4.75 mm a day is 3.5 days, "
        "3 in practice.",
        references=(FAO56_SOIL,),
        applies="established plantings that write an interval",
        check=interval,
    ),
    Rule(
        name="watering.root-zone-holds",
        severity=Severity.ERROR,
        why="Water past the roots is paid for, and takes the feed down with it.",
        references=(FAO56_SOIL,),
        applies="techniques that write a wanted depth",
        check=root_zone_holds,
    ),
    Rule(
        name="watering.deep-enough",
        severity=Severity.WARNING,
        why="A sprinkle that wets 50 mm keeps roots at the top, where they dry first; 6 in is the least.",
        references=(DEEP,),
        applies="areas watered by sprinkler, hose or can, where a depth or an interval is written",
        check=deep_enough,
    ),
    *RUNNING_RULES,
    *YOUNG_RULES,
)
