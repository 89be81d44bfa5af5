"""What an author may write about watering."""

from typing import Annotated, Literal

from pydantic import Field

from howto.families.watering.tables import CropName, Degree, PlantWater, SoilName, StageName, Summer
from howto.model.measures import Measures

Method = Literal["sprinkler", "drip", "hose", "can"]
Month = Literal[
    "january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november",
    "december",
]  # fmt: skip
Caught = Annotated[float, Field(ge=0, le=100_000)]  # mL


class WateringMeasures(Measures):
    """A planting, its soil, and how water is put on; all but the method may be left out."""

    method: Method = Field(description="sprinkler, drip, hose or can")
    # -- the planting --
    area_m2: float | None = Field(default=None, ge=0.01, le=1_000_000, description="ground the plants cover")
    plant_water: PlantWater | None = Field(default=None, description="very low, low, moderate or high water use")
    crop: CropName | None = Field(
        default=None, description="a crop of the table, such as cool lawn or apple with frost"
    )
    stage: StageName | None = Field(default=None, description="start, middle or end of the crop's season")
    crop_coefficient: float | None = Field(default=None, ge=0.01, le=2, description="water use over that of grass")
    species_factor: float | None = Field(default=None, ge=0.01, le=2, description="ks, if not from plant water")
    density: Degree | None = Field(default=None, description="planting: low, average or high")
    density_factor: float | None = Field(default=None, ge=0.1, le=3, description="kd, if not from density")
    microclimate: Degree | None = Field(default=None, description="exposure: low, average or high")
    microclimate_factor: float | None = Field(default=None, ge=0.1, le=3, description="kmc, if not from microclimate")
    # -- the weather --
    month: Month | None = Field(default=None, description="month to reckon for; the thirstiest one if left out")
    reference_et_mm_per_day: float | None = Field(
        default=None, ge=0, le=25, description="reference evapotranspiration, if you have it"
    )
    day_max_c: float | None = Field(default=None, ge=-60, le=60, description="highest temperature of the day")
    day_min_c: float | None = Field(default=None, ge=-60, le=60, description="lowest temperature of the day")
    vapour_pressure_kpa: float | None = Field(default=None, ge=0, le=15, description="vapour pressure of the air")
    humidity_max_percent: float | None = Field(default=None, ge=0, le=100, description="highest relative humidity")
    humidity_min_percent: float | None = Field(default=None, ge=0, le=100, description="lowest relative humidity")
    humidity_percent: float | None = Field(default=None, ge=0, le=100, description="mean relative humidity")
    wind_m_per_s: float | None = Field(default=None, ge=0, le=60, description="mean wind speed")
    wind_height_m: float | None = Field(default=None, ge=0.5, le=100, description="how high the wind is measured")
    sunshine_hours: float | None = Field(default=None, ge=0, le=24, description="hours of sunshine in the day")
    solar_radiation_mj_per_m2: float | None = Field(default=None, ge=0, le=60, description="sun on level ground")
    extraterrestrial_radiation_mj_per_m2: float | None = Field(
        default=None, ge=0, le=60, description="sun above the air; from latitude and day if left out"
    )
    month_mean_c: float | None = Field(default=None, ge=-60, le=60, description="mean temperature of the month")
    previous_month_mean_c: float | None = Field(default=None, ge=-60, le=60, description="and of the month before")
    day_of_year: int | None = Field(default=None, ge=1, le=366, description="1 January is 1")
    latitude_deg: float | None = Field(
        default=None, ge=-90, le=90, description="south is below 0; the crew's if left out"
    )
    altitude_m: float | None = Field(default=None, ge=-430, le=6000, description="height above the sea")
    # -- the soil --
    soil: SoilName | None = Field(default=None, description="texture, such as loam or clay; the crew's if left out")
    field_capacity_percent: float | None = Field(
        default=None, ge=4, le=80, description="water held, of the soil's volume"
    )
    wilting_point_percent: float | None = Field(default=None, ge=0, le=80, description="water left at wilting")
    root_depth_mm: float | None = Field(default=None, ge=10, le=5_000, description="how deep most roots go")
    depletion_fraction: float | None = Field(
        default=None, ge=0.01, lt=1, description="part of the soil's water used before the next watering"
    )
    dried_mm: float | None = Field(default=None, ge=0, le=2_000, description="depth of water gone from the root zone")
    intake_mm_per_h: float | None = Field(default=None, ge=0.1, le=1_000, description="steady intake, measured on site")
    first_intake_mm_per_h: float | None = Field(default=None, ge=0.1, le=5_000, description="intake of the dry soil")
    intake_decay: float | None = Field(default=None, ge=0.01, le=100, description="how fast intake falls, each hour")
    # -- putting it on --
    efficiency_percent: float | None = Field(default=None, ge=5, le=100, description="water that reaches the roots")
    wanted_depth_mm: float | None = Field(
        default=None, ge=0.1, le=500, description="depth to reach the roots each time"
    )
    interval_days: float | None = Field(default=None, ge=0.25, le=365, description="days between two waterings")
    run_minutes: float | None = Field(default=None, ge=0.1, le=1_440, description="how long it runs in all, each time")
    cycles: int | None = Field(default=None, ge=1, le=1_440, description="how many parts a run is split into")
    soak_minutes: float | None = Field(default=None, ge=0, le=1_440, description="time off between two parts")
    flow_l_per_min: float | None = Field(default=None, ge=0.01, le=10_000, description="what flows on the whole area")
    rate_mm_per_h: float | None = Field(
        default=None, ge=0.1, le=500, description="how fast the sprinkler wets the ground"
    )
    heads: int | None = Field(default=None, ge=1, le=10_000, description="sprinkler heads on the area")
    head_flow_l_per_min: float | None = Field(default=None, ge=0.01, le=500, description="flow of one head")
    head_spacing_m: float | None = Field(default=None, ge=0.1, le=60, description="from head to head")
    row_spacing_m: float | None = Field(default=None, ge=0.1, le=60, description="from row to row")
    head_layout: Literal["square", "triangular"] | None = Field(default=None, description="square or triangular")
    can_count: int | None = Field(default=None, ge=1, le=400, description="catch cans to set out")
    catch_cans_ml: tuple[Caught, ...] | None = Field(
        default=None, min_length=1, max_length=400, description="what each catch can held, comma between"
    )
    can_mouth_mm: float | None = Field(default=None, ge=5, le=1_000, description="across the mouth of a catch can")
    catch_minutes: float | None = Field(default=None, ge=0.1, le=1_440, description="how long the cans stood")
    uniformity_percent: float | None = Field(default=None, ge=1, le=100, description="low-quarter evenness, if known")
    uniformity_rule: Literal["strict", "soft"] | None = Field(
        default=None, description="strict waters the dry quarter in full, soft lets soil even it out"
    )
    drippers: int | None = Field(default=None, ge=1, le=100_000, description="drippers on the area, or at each plant")
    dripper_flow_l_per_h: float | None = Field(default=None, ge=0.05, le=200, description="flow of one dripper")
    dripper_spacing_mm: float | None = Field(default=None, ge=10, le=10_000, description="from dripper to dripper")
    can_size_l: float | None = Field(default=None, ge=0.25, le=100, description="size of the can the client carries")
    # -- new plants --
    plant_count: int | None = Field(default=None, ge=1, le=100_000, description="how many new plants")
    calliper_mm: float | None = Field(default=None, ge=1, le=1_000, description="stem across, 150 mm above ground")
    pot_l: float | None = Field(default=None, ge=0.05, le=2_000, description="pot a new shrub came in")
    summer: Summer | None = Field(default=None, description="cool or warm: how hot summers are")
    planted_weeks: float | None = Field(default=None, ge=0, le=520, description="time since planting")
    water_each_l: float | None = Field(default=None, ge=0.01, le=2_000, description="what one new plant gets each time")

    @property
    def is_new(self) -> bool:
        """Tell whether this is about new plants, which are watered by stem or pot and not by area."""
        return self.calliper_mm is not None or self.pot_l is not None
