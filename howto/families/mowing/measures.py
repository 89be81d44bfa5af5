"""What an author may write about cutting a lawn."""

from pydantic import Field

from howto.model.measures import Measures

HIGHEST_SET_MM = 300
TALLEST_MM = 2_000  # a meadow
HIGHEST_CUT_MM = 1_334  # two thirds of the tallest, rounded up: the highest first cut there can be


class MowingMeasures(Measures):
    """A lawn: how high it stands, how high it is set, how fast it grows."""

    set_height_mm: float = Field(ge=2, le=HIGHEST_SET_MM, description="the height the lawn is kept at, from the soil")
    standing_height_mm: float | None = Field(
        default=None, ge=2, le=TALLEST_MM, description="how high the grass stands now"
    )
    cut_height_mm: float | None = Field(
        default=None, ge=2, le=HIGHEST_CUT_MM, description="the height of today's cut; worked out if left out"
    )
    grass: str | None = Field(default=None, description="the kind of grass, by its botanical or common name")
    climate: str | None = Field(default=None, description="the place or climate the mowing range is for")
    growth_mm_per_day: float | None = Field(default=None, ge=0.05, le=30, description="how fast it grows just now")
    stage_wait_days: float | None = Field(
        default=None, ge=0, le=60, description="days between two cuts on the way down"
    )
    growing_months: int | None = Field(default=None, ge=1, le=12, description="months of the year it is mown in")
    area_m2: float | None = Field(default=None, ge=0.5, le=1_000_000, description="area of the lawn")
    cutting_width_mm: float | None = Field(default=None, ge=100, le=5_000, description="width of the mower's cut")
    walking_speed_km_per_h: float | None = Field(
        default=None, ge=0.5, le=20, description="how fast the mower is walked"
    )
    mower: str | None = Field(default=None, description="rotary or reel")
    blade_hours: float | None = Field(default=None, ge=0, le=2_000, description="hours since the blade was sharpened")
    turf_age_weeks: float | None = Field(
        default=None, ge=0, le=520, description="weeks since the turf was laid or sown"
    )
    shade: bool | None = Field(default=None, description="yes if the lawn lies in shade for most of the day")
    drought: bool | None = Field(default=None, description="yes if it is short of water or heat-stressed")
    wet: bool | None = Field(default=None, description="yes if the grass or ground is wet")
