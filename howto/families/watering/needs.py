"""What a planting needs: its weather, its water use and its soil, each value with its working and who says so."""

from collections.abc import Iterable
from typing import Any, NamedTuple

from howto.families.watering import evapotranspiration as et
from howto.families.watering import formulae, garden, soil_water, tables, weather
from howto.families.watering import references as by
from howto.families.watering.formulae import Bounds
from howto.families.watering.measures import WateringMeasures
from howto.languages.form import MONTHS
from howto.model.family import Limit
from howto.model.figure import Cell, Figure
from howto.model.reference import MEASURED, PRACTICE, Reference
from howto.model.work import Work
from howto.quantities.amounts import Held, Name, Word, Words, bare, mm, month_named, qty

T = Work[WateringMeasures]
BALL_CALLIPERS = 10  # see references.BALL
BALL_DEPTH = 0.75  # of its width, see references.BALL_DEPTH
LEAST_TAKEN = Limit(unit="%", low=2, of="of the soil", reference=by.FAO56_SOIL)  # no soil of its table gives under 5 %
DEPLETION = Limit(unit="", low=soil_water.LEAST_DEPLETION, high=soil_water.MOST_DEPLETION, reference=by.FAO56_TABLES)
GIVEN = Reference(title="as the author gives it", grade=PRACTICE.grade)


class WorkedSum(NamedTuple):
    """A value, how it was worked out, and who says so."""

    value: float
    working: tuple[Words, ...]
    references: tuple[Reference, ...]

    def figure(self, name: str, label: str, unit: str = "", **more: Any) -> Figure:
        """Return it as a figure."""
        return figure(name, label, self.value, self.working, self.references, unit=unit, **more)


def figure(
    name: str, label: str, value: Cell, working: Iterable[Words], references: tuple[Reference, ...], **more: Any
) -> Figure:
    """Return a figure."""
    return Figure(name=name, label=label, value=value, working=tuple(working), references=references, **more)


def between(span: Bounds, unit: str = "") -> Words:
    """Return a range as its sum gives it."""
    return f"{bare(span.low)} to {qty(span.high, unit, 3)}"


def written(value: float, said: Words | Held) -> WorkedSum:
    """Return what the author wrote."""
    return WorkedSum(value, (f"as written: {said}",), (GIVEN,))


# -- weather --


def latitude(work: T) -> float:
    """Return the latitude, the south below 0."""
    own = work.measures.latitude_deg
    return garden.signed_latitude(work.crew) if own is None else own


def month(work: T) -> int | None:
    """Return the month reckoned for: as written, else the thirstiest of the crew's climate, else None."""
    own = work.measures.month
    return MONTHS.index(own) + 1 if own else garden.thirstiest_month(work.crew)


def own_weather(work: T) -> weather.Weather | None:
    """Return the weather that the measures write, or None without both temperatures in order."""
    m = work.measures
    if m.day_max_c is None or m.day_min_c is None or m.day_max_c < m.day_min_c:
        return None
    at = month(work) or work.crew.month(7)
    return weather.Weather(
        latitude_deg=latitude(work),
        altitude_m=work.crew.altitude_m if m.altitude_m is None else m.altitude_m,
        day=m.day_of_year or garden.mid_month_day(at),
        max_c=m.day_max_c,
        min_c=m.day_min_c,
        vapour_kpa=m.vapour_pressure_kpa,
        humidity_max_percent=m.humidity_max_percent,
        humidity_min_percent=m.humidity_min_percent,
        humidity_percent=m.humidity_percent,
        wind_m_per_s=m.wind_m_per_s,
        wind_height_m=m.wind_height_m or 2.0,
        sunshine_hours=m.sunshine_hours,
        solar_mj_per_m2=m.solar_radiation_mj_per_m2,
        month_c=m.month_mean_c,
        previous_c=m.previous_month_mean_c,
        coast=work.crew.coast,
        extraterrestrial_mj_per_m2=m.extraterrestrial_radiation_mj_per_m2,
    )


def reference_et(work: T) -> WorkedSum | None:
    """Return reference evapotranspiration in mm a day, at least 0: as written, from weather, or from climate."""
    m, crew = work.measures, work.crew
    if m.reference_et_mm_per_day is not None:
        return written(m.reference_et_mm_per_day, f"{mm(m.reference_et_mm_per_day)} a day")
    own = own_weather(work)
    if own is not None and weather.only_temperature(own):
        return _from_temperature(own)
    if own is not None:
        return _from_weather(own, f"latitude {qty(own.latitude_deg, '°')}, day {bare(own.day)} of the year")
    at = month(work)
    if crew.climate is None or at is None:
        return None
    mean = garden.monthly_weather(crew.climate, latitude(work), crew.altitude_m, at)
    return _from_weather(mean, f"{month_named(at)}, monthly means, latitude {qty(mean.latitude_deg, '°')}")


def _from_temperature(own: weather.Weather) -> WorkedSum:
    above = weather.extraterrestrial(own)
    found, depth = max(0.0, et.hargreaves_mm(own.max_c, own.min_c, above)), above * et.MM_PER_MJ
    mean, spread = (own.max_c + own.min_c) / 2, own.max_c - own.min_c
    working = (
        "only temperature is known, so the temperature formula is used",
        f"Ra = {bare(above)} MJ/m² a day x {bare(et.MM_PER_MJ)} = {mm(depth)} a day (never the MJ themselves)",
        f"0.0023 x ({bare(mean)} + 17.8) x √{bare(spread)} x {bare(depth)} = {mm(found)} a day",
    )
    return WorkedSum(found, working, (by.HARGREAVES,))


def _from_weather(own: weather.Weather, place: str) -> WorkedSum:
    t = weather.terms(own)
    heat = bare(t.soil_heat)
    air = t.psychrometric * 900 / (t.mean_c + 273) * t.wind
    working = (
        f"{place}: Tmax {bare(own.max_c)}, Tmin {bare(own.min_c)}, mean {qty(t.mean_c, '°C')}; "
        f"wind at 2 m {qty(t.wind, 'm/s')}",
        f"air: es {bare(t.saturation)}, ea {qty(t.vapour, 'kPa')}; Δ {bare(t.slope)}, γ {bare(t.psychrometric)} kPa/°C",
        f"sun: Ra {bare(t.extraterrestrial)}, day {qty(t.daylight, 'h')}, Rs {bare(t.solar)}, "
        f"clear Rso {bare(t.clear_sky)} MJ/m²",
        f"Rn = {bare(1 - et.ALBEDO)} x {bare(t.solar)} - {bare(t.net_longwave)} = {bare(t.net)} MJ/m²; soil G {heat}",
        f"top: {bare(et.MM_PER_MJ)} x {bare(t.slope)} x ({bare(t.net)} - {heat}) + {bare(air)} x "
        f"({bare(t.saturation)} - {bare(t.vapour)})",
        f"bottom: {bare(t.slope)} + {bare(t.psychrometric)} x (1 + 0.34 x {bare(t.wind)})",
        f"ETo = top / bottom = {mm(t.mm_per_day)} a day" + (", taken as 0" if t.mm_per_day < 0 else ""),
    )
    return WorkedSum(max(0.0, t.mm_per_day), working, (by.FAO56,))


# -- the planting --


def species_factor(work: T) -> tuple[float, Words]:
    """Return ks and where it is from: as written, the plant water class, the plant book, or moderate."""
    m = work.measures
    if m.species_factor is not None:
        return m.species_factor, "as written"
    if m.plant_water is not None:
        return tables.SPECIES[m.plant_water][0], f"{Word(m.plant_water)} water use"
    for plant in work.plants:
        if plant.water is not None and (use := plant.water.text) in tables.SPECIES:
            return tables.SPECIES[use][0], f"{Name(plant.botanical)}: {Word(use)} water use"
    return tables.SPECIES["moderate"][0], "moderate water use taken"


def _degree(factor: float | None, degree: str | None, ranges: dict[str, Bounds]) -> float:
    return ranges[degree or "average"].middle if factor is None else factor


def coefficient(work: T) -> WorkedSum:
    """Return what turns grass's water use into this planting's: Kc of a crop, else KL = ks x kd x kmc."""
    m = work.measures
    if m.crop_coefficient is not None:
        return written(m.crop_coefficient, bare(m.crop_coefficient))
    if m.crop is not None:
        stage = m.stage or "middle"
        kc: float = getattr(tables.CROPS[m.crop], stage)
        return WorkedSum(kc, (f"{Word(m.crop)}, {Word(stage)} of its season: Kc = {bare(kc)}",), (by.FAO56_TABLES,))
    ks, said = species_factor(work)
    kd = _degree(m.density_factor, m.density, tables.DENSITY)
    kmc = _degree(m.microclimate_factor, m.microclimate, tables.MICROCLIMATE)
    found = formulae.landscape_coefficient(ks, kd, kmc)
    working = (
        f"ks {bare(ks)} ({said}), density kd {bare(kd)}, microclimate kmc {bare(kmc)}",
        f"KL = {bare(ks)} x {bare(kd)} x {bare(kmc)} = {bare(found)}",
    )
    return WorkedSum(found, working, (by.LANDSCAPE, by.SPECIES_FACTORS, by.DENSITY_FACTORS))


def plant_use(work: T) -> WorkedSum | None:
    """Return what the planting uses in mm a day, or None where the weather is not known."""
    reference = reference_et(work)
    if reference is None:
        return None
    factor = coefficient(work)
    found = formulae.plant_water_mm(reference.value, factor.value)
    working = (*factor.working, f"{bare(reference.value)} x {bare(factor.value)} = {mm(found)} a day")
    return WorkedSum(found, working, factor.references)


# -- the soil --


class RootZone(NamedTuple):
    """The root zone: water contents by volume, root depth in m, p with its origin, and who says so."""

    name: str
    field_capacity: float
    wilting_point: float
    root_m: float
    depletion: float
    depletion_said: Words
    references: tuple[Reference, ...]

    @property
    def available(self) -> float:
        """Field capacity less wilting point."""
        return self.field_capacity - self.wilting_point

    @property
    def total_mm(self) -> float:
        """TAW: all the water that plants can take."""
        return soil_water.total_available_mm(self.field_capacity, self.wilting_point, self.root_m)

    @property
    def easy_mm(self) -> float:
        """RAW: what they take before they slow."""
        return soil_water.readily_available_mm(self.total_mm, self.depletion)


def soil_name(work: T) -> str:
    """Return the texture: as written, else the crew's, else loam."""
    return work.measures.soil or garden.soil_of(work.crew)


def ball_mm(work: T) -> tuple[float, float] | None:
    """Return how wide and deep a new plant's root ball is: as its pot, else ten callipers wide, three quarters deep."""
    m = work.measures
    if m.pot_l is not None:
        wide = formulae.pot_width_mm(m.pot_l)
        return wide, wide
    if m.calliper_mm is None:
        return None
    wide = m.calliper_mm * BALL_CALLIPERS
    return wide, wide * BALL_DEPTH


def root_m(work: T) -> float:
    """Return the root depth: as written, else a new plant's ball, else 300 mm or a crop's least if that is less."""
    m, ball = work.measures, ball_mm(work)
    if m.root_depth_mm is not None:
        return m.root_depth_mm / 1000
    if ball is not None:
        return ball[1] / 1000
    usual = garden.USUAL_ROOT_MM / 1000
    return min(usual, tables.CROPS[m.crop].root_low_m) if m.crop else usual


def contents(work: T) -> tuple[float, float]:
    """Return field capacity and wilting point in percent: as written, else the soil's."""
    m, soil = work.measures, tables.SOILS[soil_name(work)]
    capacity, wilting = m.field_capacity_percent, m.wilting_point_percent
    return (
        soil.field_capacity * 100 if capacity is None else capacity,
        soil.wilting_point * 100 if wilting is None else wilting,
    )


def ground(work: T) -> RootZone | None:
    """Return the root zone, or None where field capacity is hardly above wilting point."""
    m, name, (capacity, wilting) = work.measures, soil_name(work), contents(work)
    if not LEAST_TAKEN.allows(capacity - wilting):
        return None
    p, said, source = _depletion(work)
    usual = m.field_capacity_percent is None and m.wilting_point_percent is None
    references = (by.FAO56_SOIL, garden.soil_reference(name) if usual else GIVEN, source)
    return RootZone(name, capacity / 100, wilting / 100, root_m(work), p, said, references)


def _depletion(work: T) -> tuple[float, Words, Reference]:
    m = work.measures
    if m.depletion_fraction is not None:
        return m.depletion_fraction, f"p = {bare(m.depletion_fraction)} as written", GIVEN
    table = tables.CROPS[m.crop].depletion if m.crop else garden.USUAL_P
    source = by.FAO56_TABLES if m.crop else by.USUAL_DEPLETION
    use = plant_use(work)
    if use is None:
        return table, f"p = {bare(table)}", source
    p = soil_water.adjusted_depletion(table, use.value)
    slope, usual = bare(soil_water.DEPLETION_SLOPE), bare(soil_water.TABLE_USE_MM)
    said = f"p = {bare(table)} + {slope} x ({usual} - {bare(use.value)}) = {bare(p)}, kept within {DEPLETION}"
    return p, said, source


def days_between(work: T) -> float | None:
    """Return how many days the easily taken water lasts, or None where that is not known or has no end."""
    use, soil = plant_use(work), ground(work)
    if use is None or soil is None or use.value < garden.LEAST_USE_MM:
        return None
    return soil_water.days_between(soil.easy_mm, use.value)


def kept_interval(work: T) -> float | None:
    """Return the days between waterings: as written, else those the soil allows, rounded down."""
    if (own := work.measures.interval_days) is not None:
        return own
    days = days_between(work)
    return None if days is None else float(soil_water.whole_days(days))


def steady_intake(work: T) -> WorkedSum:
    """Return how fast the soil drinks when wet, in mm/h: measured, else the lowest published for its texture."""
    if (own := work.measures.intake_mm_per_h) is not None:
        return WorkedSum(own, (f"measured: {qty(own, 'mm/h')}",), (MEASURED,))
    name = soil_name(work)
    intake = tables.SOILS[name].intake_mm_per_h
    return WorkedSum(
        intake, (f"{Word(name)}: {qty(intake, 'mm/h')}, the lowest published; measure yours",), (by.INTAKE,)
    )
