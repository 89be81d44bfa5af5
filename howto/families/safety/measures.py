"""What an author may write about keeping people whole: any of it, in any order."""

from typing import Annotated, Literal

from pydantic import Field

from howto.families.safety.countries import Country, LadderRule, LineKind
from howto.families.safety.ppe import Task
from howto.model.measures import Measures

Toxicity = Literal["I", "II", "III", "IV"]
Level = Annotated[float, Field(ge=0, le=194)]  # 194 dB is as loud as air can be
Minutes = Annotated[float, Field(ge=0, le=1440)]
Shake = Annotated[float, Field(gt=0, le=100)]


class NoiseAndVibration(Measures):
    """Several tools in one day, a list each, in the same order."""

    machines: tuple[str, ...] | None = Field(default=None, description="tools of the day, in the order of the lists")
    noise_db: tuple[Level, ...] | None = Field(
        default=None, description="level at the ear of each tool, as its maker declares it"
    )
    noise_time_minutes: tuple[Minutes, ...] | None = Field(default=None, description="time with each tool running")
    noise_scheme: Literal["NIOSH", "OSHA"] | None = Field(
        default=None, description="how noise is counted: NIOSH (85 dB, 3 dB; the usual one) or OSHA (90 dB, 5 dB)"
    )
    protector_rating_db: float | None = Field(
        default=None, ge=0, le=50, description="SNR on the box of the ear muffs or plugs that are worn"
    )
    vibration_m_per_s2: tuple[Shake, ...] | None = Field(
        default=None, description="vibration total value of each tool, as its maker declares it"
    )
    trigger_time_minutes: tuple[Minutes, ...] | None = Field(
        default=None, description="time with the trigger of each tool held"
    )


class Lifting(NoiseAndVibration):
    """One lift, by the terms of the revised NIOSH equation."""

    load_kg: float | None = Field(default=None, gt=0, le=500, description="what is lifted, wet if it comes wet")
    hands_out_cm: float | None = Field(
        default=None, ge=0, le=200, description="from the middle of the ankles to the hands when it is picked up"
    )
    hands_up_cm: float | None = Field(default=None, ge=0, le=300, description="floor to hands when it is picked up")
    set_down_out_cm: float | None = Field(
        default=None, ge=0, le=200, description="ankles to hands when it is set down, with care"
    )
    set_down_up_cm: float | None = Field(default=None, ge=0, le=300, description="floor to hands when it is set down")
    lift_travel_cm: float | None = Field(
        default=None, ge=0, le=300, description="how far the hands go up or down; from the two heights if left out"
    )
    twist_deg: float | None = Field(default=None, ge=0, le=180, description="how far the body turns to pick it up")
    set_down_twist_deg: float | None = Field(default=None, ge=0, le=180, description="how far it turns at the end")
    lifts_a_minute: float | None = Field(
        default=None, ge=0, le=60, description="lifts in a minute; 0.2, one in five minutes, if left out"
    )
    lifting_time_hours: float | None = Field(
        default=None, gt=0, le=24, description="how long the lifting goes on; an hour if left out"
    )
    grip: Literal["good", "fair", "poor"] | None = Field(
        default=None, description="good: handles; fair: fingers curl under; poor: a bag that sags, and if left out"
    )


class Height(Lifting):
    """Ladders, falls and lines overhead; their limits belong to a country."""

    country: Country | None = Field(default=None, description="the country or state whose limits hold")
    ladder_rule: LadderRule | None = Field(
        default=None, description="by height, by length or 75 degrees; the country's own if left out"
    )
    top_contact_mm: float | None = Field(default=None, gt=0, le=15_000, description="ground to where the ladder leans")
    working_length_mm: float | None = Field(
        default=None, gt=0, le=15_000, description="length of ladder from its foot to where it leans"
    )
    foot_measured_mm: float | None = Field(
        default=None, ge=0, le=15_000, description="wall to foot as it stands, to be checked"
    )
    landing_mm: float | None = Field(default=None, gt=0, le=15_000, description="ground to the landing stepped on to")
    rail_top_mm: float | None = Field(default=None, gt=0, le=20_000, description="ground to the top of the rails")
    fall_mm: float | None = Field(default=None, ge=0, le=50_000, description="how far down a fall would go")
    ladder_time_minutes: float | None = Field(
        default=None, ge=0, le=1440, description="time on the ladder without coming down"
    )
    carried_kg: float | None = Field(default=None, ge=0, le=100, description="what is carried up the ladder")
    line: LineKind | None = Field(default=None, description="low voltage, high voltage, on poles or on towers")
    line_kv: float | None = Field(default=None, gt=0, le=1200, description="voltage of the line in kV, a plain number")
    line_consent: bool | None = Field(default=None, description="the line's owner has given written consent")
    line_distance_mm: float | None = Field(
        default=None, ge=0, le=100_000, description="from the line to the nearest of body, tool or branch"
    )
    line_height_mm: float | None = Field(
        default=None, gt=0, le=100_000, description="ground to the line as it sags in heat"
    )
    reach_mm: float | None = Field(
        default=None, gt=0, le=50_000, description="ground to the highest point of body, tool or branch"
    )


class Weather(Height):
    """Heat, sun and what to drink."""

    air_temperature_c: float | None = Field(default=None, ge=-60, le=60, description="air in the shade, warmest hour")
    humidity_percent: float | None = Field(default=None, ge=0, le=100, description="relative humidity in that hour")
    in_sun: bool | None = Field(default=None, description="the work is in full sun")
    wet_bulb_c: float | None = Field(default=None, ge=-40, le=50, description="natural wet bulb, where it is measured")
    globe_c: float | None = Field(default=None, ge=-40, le=90, description="black globe, where it is measured")
    heat_time_hours: float | None = Field(default=None, gt=0, le=24, description="hours of work in the heat")
    drink_l_per_h: float | None = Field(default=None, ge=0, le=5, description="what is drunk in an hour")
    water_carried_l: float | None = Field(default=None, ge=0, le=50, description="drinking water taken along a person")
    uv_index: float | None = Field(default=None, ge=0, le=20, description="ultraviolet index forecast for the day")


class SafetyMeasures(Weather):
    """Chemicals, saws, batteries and what to wear."""

    bleach_mix_l: float | None = Field(default=None, gt=0, le=1000, description="bleach mix wanted")
    bleach_parts: float | None = Field(default=None, gt=0, le=100, description="parts of bleach; 1 if left out")
    water_parts: float | None = Field(default=None, ge=0, le=1000, description="parts of water to that; 9 if left out")
    soak_minutes: float | None = Field(default=None, ge=0, le=1440, description="how long the blades stay in it")
    mix_age_hours: float | None = Field(default=None, ge=0, le=240, description="how long ago it was mixed")
    disinfectant: Literal["alcohol", "bleach"] | None = Field(default=None, description="what blades are cleaned with")
    disease: Literal["none known", "fire blight"] | None = Field(default=None, description="what the plants may carry")
    toxicity: tuple[Toxicity, ...] | None = Field(
        default=None, description="category of each active ingredient on the label, I to IV"
    )
    dry_nerve_poison: bool | None = Field(
        default=None, description="a cholinesterase inhibitor of category I, outdoors where little rain falls"
    )
    label_wait_hours: float | None = Field(default=None, ge=0, le=1000, description="no entry, as the label says")
    sprayed_at: str | None = Field(default=None, max_length=20, description="time of day, such as 14:00")
    entry_after_hours: float | None = Field(default=None, ge=0, le=1000, description="when people go in again")
    bag_holds: Literal["potting mix", "compost", "mulch", "soil mix"] | None = Field(
        default=None, description="the bagged mix that is opened and worked with"
    )
    wound: Literal["clean", "dirty"] | None = Field(default=None, description="dirty: soil, thorns, or deep")
    tetanus_doses: int | None = Field(default=None, ge=0, le=20, description="doses ever had; leave out if not known")
    last_dose_years: float | None = Field(default=None, ge=0, le=120, description="time since the last of them")
    fuel_to_start_mm: float | None = Field(
        default=None, ge=0, le=1_000_000, description="from where the saw was filled to where it is started"
    )
    chain_speed_m_per_s: float | None = Field(default=None, gt=0, le=60, description="speed of the saw's chain")
    trouser_class: Literal["1", "2", "3"] | None = Field(default=None, description="class on the chain-saw trousers")
    battery_temperature_c: float | None = Field(default=None, ge=-60, le=100, description="the pack going on charge")
    bevel_deg: float | None = Field(default=None, gt=0, lt=90, description="angle between a blade's bevel and its back")
    blade_thickness_mm: float | None = Field(default=None, gt=0, le=50, description="thickness of the blade behind it")
    file_length_mm: float | None = Field(default=None, gt=0, le=1000, description="length of the file or stone")
    task: Task | None = Field(default=None, description="the work to dress for")
    glove_marks: str | None = Field(default=None, max_length=20, description="marks of EN 388, such as 4X43D")
    eye_mark: Literal["S", "F", "B", "A"] | None = Field(default=None, description="impact mark of EN 166")
    eyes_worn_as: Literal["spectacles", "goggles", "shield"] | None = Field(
        default=None, description="spectacles, goggles or shield"
    )

    @property
    def place(self) -> Country:
        """The country whose limits hold; `elsewhere` where none is written."""
        return self.country or "elsewhere"

    @property
    def parts(self) -> tuple[float, float]:
        """Parts of bleach and of water; 1 and 9 where none are written."""
        return (
            1.0 if self.bleach_parts is None else self.bleach_parts,
            9.0 if self.water_parts is None else self.water_parts,
        )
