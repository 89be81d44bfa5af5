"""What an author may write about watering."""

from typing import Annotated, Any, Literal

from pydantic import Field

from howto.families.watering.tables import CropName, Degree, PlantWater, SoilName, StageName, Summer
from howto.model.measures import Measures

Method = Literal["sprinkler", "drip", "hose", "can"]
Month = Literal[
    "january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november",
    "december",
]  # fmt: skip
DAY_MIN, MOST_CANS = 1_440, 400
Caught = Annotated[float, Field(ge=0, le=100_000)]  # mL


def optional(least: float, most: float, description: str) -> Any:
    """Return the field of a number that may be left out."""
    return Field(default=None, ge=least, le=most, description=description)


class WateringMeasures(Measures):
    """A planting, its soil, and how water is put on; all but the method may be left out."""

    method: Method = Field(description="sprinkler, drip, hose or can")
    # -- the planting --
    area_m2: float | None = optional(0.01, 1_000_000, "ground the plants cover")
    plant_water: PlantWater | None = Field(None, description="very low, low, moderate or high water use")
    crop: CropName | None = Field(None, description="a crop of the table, such as cool lawn or apple with frost")
    stage: StageName | None = Field(None, description="start, middle or end of the crop's season")
    crop_coefficient: float | None = optional(0.01, 2, "water use over that of grass")
    species_factor: float | None = optional(0.01, 2, "ks, if not from plant water")
    density: Degree | None = Field(None, description="planting: low, average or high")
    density_factor: float | None = optional(0.1, 3, "kd, if not from density")
    microclimate: Degree | None = Field(None, description="exposure: low, average or high")
    microclimate_factor: float | None = optional(0.1, 3, "kmc, if not from microclimate")
    # -- the weather --
    month: Month | None = Field(None, description="month to reckon for; the thirstiest one if left out")
    reference_et_mm_per_day: float | None = optional(0, 25, "reference evapotranspiration, if you have it")
    day_max_c: float | None = optional(-60, 60, "highest temperature of the day")
    day_min_c: float | None = optional(-60, 60, "lowest temperature of the day")
    vapour_pressure_kpa: float | None = optional(0, 15, "vapour pressure of the air")
    humidity_max_percent: float | None = optional(0, 100, "highest relative humidity")
    humidity_min_percent: float | None = optional(0, 100, "lowest relative humidity")
    humidity_percent: float | None = optional(0, 100, "mean relative humidity")
    wind_m_per_s: float | None = optional(0, 60, "mean wind speed")
    wind_height_m: float | None = optional(0.5, 100, "how high the wind is measured")
    sunshine_hours: float | None = optional(0, 24, "hours of sunshine in the day")
    solar_radiation_mj_per_m2: float | None = optional(0, 60, "sun on level ground")
    extraterrestrial_radiation_mj_per_m2: float | None = optional(
        0, 60, "sun above the air; from latitude and day if left out"
    )
    month_mean_c: float | None = optional(-60, 60, "mean temperature of the month")
    previous_month_mean_c: float | None = optional(-60, 60, "and of the month before")
    day_of_year: int | None = optional(1, 366, "1 January is 1")
    latitude_deg: float | None = optional(-90, 90, "south is below 0; the crew's if left out")
    altitude_m: float | None = optional(-430, 6000, "height above the sea")
    # -- the soil --
    soil: SoilName | None = Field(None, description="texture, such as loam or clay; the crew's if left out")
    field_capacity_percent: float | None = optional(4, 80, "water held, of the soil's volume")
    wilting_point_percent: float | None = optional(0, 80, "water left at wilting")
    root_depth_mm: float | None = optional(10, 5_000, "how deep most roots go")
    depletion_fraction: float | None = Field(
        None, ge=0.01, lt=1, description="part of the soil's water used before the next watering"
    )
    dried_mm: float | None = optional(0, 2_000, "depth of water gone from the root zone")
    intake_mm_per_h: float | None = optional(0.1, 1_000, "steady intake, measured on site")
    first_intake_mm_per_h: float | None = optional(0.1, 5_000, "intake of the dry soil")
    intake_decay: float | None = optional(0.01, 100, "how fast intake falls, each hour")
    # -- putting it on --
    efficiency_percent: float | None = optional(5, 100, "water that reaches the roots")
    wanted_depth_mm: float | None = optional(0.1, 500, "depth to reach the roots each time")
    interval_days: float | None = optional(0.25, 365, "days between two waterings")
    run_minutes: float | None = optional(0.1, DAY_MIN, "how long it runs in all, each time")
    cycles: int | None = optional(1, DAY_MIN, "how many parts a run is split into")
    soak_minutes: float | None = optional(0, DAY_MIN, "time off between two parts")
    flow_l_per_min: float | None = optional(0.01, 10_000, "what flows on the whole area")
    rate_mm_per_h: float | None = optional(0.1, 500, "how fast the sprinkler wets the ground")
    heads: int | None = optional(1, 10_000, "sprinkler heads on the area")
    head_flow_l_per_min: float | None = optional(0.01, 500, "flow of one head")
    head_spacing_m: float | None = optional(0.1, 60, "from head to head")
    row_spacing_m: float | None = optional(0.1, 60, "from row to row")
    head_layout: Literal["square", "triangular"] | None = Field(None, description="square or triangular")
    can_count: int | None = optional(1, MOST_CANS, "catch cans to set out")
    catch_cans_ml: tuple[Caught, ...] | None = Field(
        None, min_length=1, max_length=MOST_CANS, description="what each catch can held, comma between"
    )
    can_mouth_mm: float | None = optional(5, 1_000, "across the mouth of a catch can")
    catch_minutes: float | None = optional(0.1, DAY_MIN, "how long the cans stood")
    uniformity_percent: float | None = optional(1, 100, "low-quarter evenness, if known")
    uniformity_rule: Literal["strict", "soft"] | None = Field(
        None, description="strict waters the dry quarter in full, soft lets soil even it out"
    )
    drippers: int | None = optional(1, 100_000, "drippers on the area, or at each plant")
    dripper_flow_l_per_h: float | None = optional(0.05, 200, "flow of one dripper")
    dripper_spacing_mm: float | None = optional(10, 10_000, "from dripper to dripper")
    can_size_l: float | None = optional(0.25, 100, "size of the can the client carries")
    # -- new plants --
    plant_count: int | None = optional(1, 100_000, "how many new plants")
    calliper_mm: float | None = optional(1, 1_000, "stem across, 150 mm above ground")
    pot_l: float | None = optional(0.05, 2_000, "pot a new shrub came in")
    summer: Summer | None = Field(None, description="cool or warm: how hot summers are")
    planted_weeks: float | None = optional(0, 520, "time since planting")
    water_each_l: float | None = optional(0.01, 2_000, "what one new plant gets each time")

    @property
    def is_new(self) -> bool:
        """Tell whether this is about new plants, which are watered by stem or pot and not by area."""
        return self.calliper_mm is not None or self.pot_l is not None
