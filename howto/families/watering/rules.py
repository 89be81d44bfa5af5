"""The rules of watering, in reading order: weather, plants and soil here, then running water, then new plants."""

from collections.abc import Iterator

from howto.families.watering import needs, plan, soil_water, tables
from howto.families.watering import references as by
from howto.families.watering.formulae import Bounds
from howto.families.watering.measures import WateringMeasures
from howto.families.watering.mends import rewritten
from howto.families.watering.needs import between
from howto.families.watering.rules_running import RUNNING_RULES
from howto.families.watering.rules_young import YOUNG_RULES
from howto.findings import Severity
from howto.model.family import Breach, Limit, Rule, outside, rule, typed
from howto.model.reference import GEOMETRY
from howto.model.work import Work
from howto.quantities import round_down, round_up
from howto.quantities.amounts import Range, Word, Words, bare, mm, percent, qty

T = Work[WateringMeasures]

DUST = 1e-9  # what arithmetic may leave between a depth and its limit, as a part of it
DUST_C = 1e-6  # what rounding may leave between two temperatures that are the same
DEEP = Limit(unit="mm", low=150, reference=by.DEEP)
SPECIES = tables.whole(span for _, span in tables.SPECIES.values())
DENSITY, MICROCLIMATE = tables.whole(tables.DENSITY.values()), tables.whole(tables.MICROCLIMATE.values())
WILTING, CAPACITY = "wilting_point_percent", "field_capacity_percent"


def _roots(crop: str) -> Words:
    return str(Range(tables.CROPS[crop].root_low_m, tables.CROPS[crop].root_high_m, "m"))


@rule("watering.weather-in-order", Severity.ERROR, by.FAO56, applies="techniques that write a day's temperatures")
def weather_in_order(work: T) -> Iterator[Breach]:
    """The day's highest temperature is not below its lowest.

    The spread of temperature stands for the sun that came through; it cannot be below 0.
    """
    high, low = work.measures.day_max_c, work.measures.day_min_c
    if high is not None and low is not None and high < low - DUST_C:
        text = typed(round_up(low, 0.1), "°C")
        what = f"the day's highest temperature, {qty(high, '°C', 3)}, is below its lowest, {qty(low, '°C', 3)}"
        why = "water use is worked out from the spread between the two, which would be below 0"
        mend = "look at the two again, and write {} or more"
        yield rewritten("day_max_c", text, what, why, mend, also="day_min_c")


@rule(
    "watering.species-factor",
    Severity.WARNING,
    by.SPECIES_FACTORS,
    applies="techniques that write a species factor",
    low=between(tables.SPECIES["low"][1]),
    moderate=between(tables.SPECIES["moderate"][1]),
    high=between(tables.SPECIES["high"][1]),
)
def species_factor(work: T) -> Iterator[Breach]:
    """The species factor stands in the range of the plant's water use.

    Against grass, plants of low water use take {low}, moderate {moderate}, high {high}.
    """
    use = work.measures.plant_water
    yield from _factor(work, "species_factor", use, tables.SPECIES[use][1] if use else SPECIES)


@rule(
    "watering.place-factors",
    Severity.ADVICE,
    by.DENSITY_FACTORS,
    applies="techniques that write a density or microclimate factor",
    density=between(DENSITY),
    exposure=between(MICROCLIMATE),
)
def place_factors(work: T) -> Iterator[Breach]:
    """Density and microclimate factors stand in their published ranges.

    Planting density runs from {density} and exposure from {exposure}; both are 1 for an average place.
    """
    m = work.measures
    dense = tables.DENSITY[m.density] if m.density else DENSITY
    exposed = tables.MICROCLIMATE[m.microclimate] if m.microclimate else MICROCLIMATE
    yield from _factor(work, "density_factor", m.density, dense)
    yield from _factor(work, "microclimate_factor", m.microclimate, exposed)


def _factor(work: T, field: str, degree: str | None, span: Bounds) -> Iterator[Breach]:
    limit = Limit(unit="", low=span.low, high=span.high, reference=by.LANDSCAPE)
    what = f"a {field.replace('_', ' ')} of {{found}} is outside {{limit}}"
    why = (
        f"the published range{f' for {Word(degree)}' if degree else ''} is {{limit}}; the three factors are "
        "multiplied, so one that is off throws the litres off as far"
    )
    yield from outside(limit, work, field, what=what, why=why)


@rule(
    "watering.wilting-below-capacity",
    Severity.ERROR,
    by.FAO56_SOIL,
    GEOMETRY,
    applies="techniques that write a field capacity or a wilting point",
    least=needs.LEAST_TAKEN.least,
)
def wilting_below_capacity(work: T) -> Iterator[Breach]:
    """Soil holds at least {least} more at field capacity than at wilting point.

    Plants live on the water between the two.
    """
    if needs.ground(work) is not None:
        return
    capacity, wilting = needs.contents(work)
    least = needs.LEAST_TAKEN.least
    what = f"wilting point, {percent(wilting)}, is not {least} below field capacity, {percent(capacity)}"
    why = f"what plants can take is {bare(capacity)} - {bare(wilting)} = {percent(capacity - wilting)} of the soil"
    mend = "look at the two again; about half of field capacity is usual: write {}"
    fields = (CAPACITY, "") if work.measures.wilting_point_percent is None else (WILTING, CAPACITY)
    half = typed(round_down(capacity / 2, 0.1), "%")
    yield rewritten(fields[0], half, what, why, mend, key="wilting point", also=fields[1])


@rule(
    "watering.depletion-range",
    Severity.ERROR,
    by.FAO56_TABLES,
    applies="techniques that write a depletion",
    least=needs.DEPLETION.least,
    most=needs.DEPLETION.most,
)
def depletion_range(work: T) -> Iterator[Breach]:
    """The part of the soil's water used before watering again stands within {least} to {most}.

    Below {least} the soil never drains; over {most} every plant of the table has slowed.
    """
    p, tender, lawn = work.measures.depletion_fraction, tables.CROPS["strawberry"], tables.CROPS["cool lawn"]
    if p is not None and not needs.DEPLETION.allows(p):
        what = f"{percent(p * 100)} of the soil's water is used before the next watering"
        near = f"tender crops stand near {bare(tender.depletion)}, lawns near {bare(lawn.depletion)}"
        why = f"the published range is {needs.DEPLETION} of the soil's water; {near}"
        yield rewritten("depletion_fraction", typed(needs.DEPLETION.nearest(p), ""), what, why)


@rule(
    "watering.root-depth",
    Severity.WARNING,
    by.FAO56_TABLES,
    applies="techniques that write a crop and a root depth",
    lawns=_roots("cool lawn"),
    trees=_roots("apple with frost"),
    strawberries=_roots("strawberry"),
)
def root_depth(work: T) -> Iterator[Breach]:
    """Roots are reckoned no deeper than the crop's table says they grow.

    Lawns root to {lawns}, fruit trees to {trees}, strawberries to {strawberries}; often less.
    """
    crop, depth = work.measures.crop, work.measures.root_depth_mm
    if crop is not None and depth is not None and depth > (most := tables.CROPS[crop].root_high_m * 1000) * (1 + DUST):
        what = f"roots of {Word(crop)} are written {mm(depth, 5)} deep"
        why = f"the table's deepest is {mm(most, 5)}; water below the roots is lost"
        mend = "dig and look, and write {} or less"
        yield rewritten("root_depth_mm", typed(most, "mm"), what, why, mend, also="crop")


@rule("watering.dried-too-far", Severity.WARNING, by.FAO56_SOIL, applies="techniques that write how far the soil dried")
def dried_too_far(work: T) -> Iterator[Breach]:
    """Water comes before the soil has dried past what plants take easily.

    Past the easily taken water a plant shuts its leaves and slows, down to nothing at wilting point.
    """
    dried, soil = work.measures.dried_mm, needs.ground(work)
    if dried is not None and soil is not None and dried > soil.easy_mm * (1 + DUST):
        ks, gone = soil_water.stress_factor(soil.total_mm, soil.depletion, dried), mm(dried, 3)
        most = round_down(soil.easy_mm, 0.1)
        what = f"{gone} has gone from the root zone before it is watered"
        holds = f"it holds {mm(soil.total_mm, 3)}, of which {mm(soil.easy_mm, 3)} is easily taken"
        why = f"{holds}; at {gone} the plant has slowed to {percent(ks * 100)} (Ks {bare(ks)})"
        mend = f"water when {mm(most, 6)} has gone at the latest, and write {{}}"
        yield rewritten("dried_mm", typed(most, "mm"), what, why, mend)


@rule("watering.interval", Severity.WARNING, by.FAO56_SOIL, applies="established plantings that write an interval")
def interval(work: T) -> Iterator[Breach]:
    """The days between waterings are no more than the soil's easy water lasts.

    The easily taken water over the daily use is the days it lasts: 16.8 mm at 4.75 mm a day is 3.5 days, 3 in
    practice.
    """
    own, days = work.measures.interval_days, needs.days_between(work)
    soil, use = needs.ground(work), needs.plant_use(work)
    if own is None or days is None or soil is None or use is None or work.measures.is_new:
        return
    if own > (most := soil_water.whole_days(days)):
        lasts = f"{mm(soil.easy_mm, 3)} easily taken / {mm(use.value, 3)} a day = {bare(days)} days"
        what, why = f"{bare(own)} days between waterings", f"{lasts}, rounded down {bare(most)}"
        yield rewritten("interval_days", f"{most} days", what, why, "write {} or less")


@rule("watering.root-zone-holds", Severity.ERROR, by.FAO56_SOIL, applies="techniques that write a wanted depth")
def root_zone_holds(work: T) -> Iterator[Breach]:
    """One watering is no more than the root zone can hold.

    Water past the roots is paid for, and takes the feed down with it.
    """
    depth, soil = work.measures.wanted_depth_mm, needs.ground(work)
    if depth is not None and soil is not None and depth > soil.total_mm * (1 + DUST):
        holds = f"1000 x {bare(soil.available)} x {qty(soil.root_m, 'm', 3)} = {mm(soil.total_mm, 3)}"
        why = f"{Word(soil.name)} holds {holds} down to the roots' depth; the rest drains away below them"
        text, mend = typed(round_down(soil.total_mm, 0.1), "mm"), "write {} or less, and water more often"
        yield rewritten("wanted_depth_mm", text, f"{mm(depth, 3)} is put on at once", why, mend)


@rule(
    "watering.deep-enough",
    Severity.WARNING,
    by.DEEP,
    applies="areas watered by sprinkler, hose or can, where a depth or an interval is written",
    least=DEEP.least,
)
def deep_enough(work: T) -> Iterator[Breach]:
    """A watering over an area wets the soil at least {least} deep, or to the roots where they are shallower.

    A sprinkle that wets 50 mm keeps roots at the top, where they dry first.
    """
    m, depth, soil = work.measures, plan.net_depth(work), needs.ground(work)
    field = "interval_days" if m.wanted_depth_mm is None else "wanted_depth_mm"
    if m.is_new or m.method == "drip" or depth is None or soil is None or getattr(m, field) is None:
        return
    reach = soil_water.wetted_m(depth.value, soil.available, soil.depletion)
    least = min(DEEP.low or 0.0, soil.root_m * 1000)
    if reach * 1000 < least * (1 - DUST):
        what = f"{mm(depth.value, 3)} wets {Word(soil.name)} only {mm(reach * 1000, 3)} deep"
        wets = f"{bare(depth.value)} / (1000 x {bare(soil.available)} x {bare(soil.depletion)}) = {qty(reach, 'm', 3)}"
        why = f"{wets}; the least is {mm(least, 3)}, since roots follow the water"
        text = typed(round_up(soil.available * soil.depletion * least, 0.1), "mm")
        yield rewritten(field, text, what, why, "write {} or more, and water less often", key="wanted depth")


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
