"""What an author may write about keeping people whole: any of it, in any order."""

from typing import Annotated, Any, Literal

from pydantic import Field

from howto.families.safety.countries import Country, LadderRule, LineKind
from howto.families.safety.ppe import Task
from howto.model.measures import Measures

Toxicity = Literal["I", "II", "III", "IV"]
Level = Annotated[float, Field(ge=0, le=194)]  # 194 dB is as loud as air can be
Minutes = Annotated[float, Field(ge=0, le=1440)]
Shake = Annotated[float, Field(gt=0, le=100)]


def asked(description: str, **bounds: Any) -> Any:
    """Return a measure that an author may leave out."""
    return Field(default=None, description=description, **bounds)


class NoiseAndVibration(Measures):
    """Several tools in one day, a list each, in the same order."""

    machines: tuple[str, ...] | None = asked("tools of the day, in the order of the lists")
    noise_db: tuple[Level, ...] | None = asked("level at the ear of each tool, as its maker declares it")
    noise_time_minutes: tuple[Minutes, ...] | None = asked("time with each tool running")
    noise_scheme: Literal["NIOSH", "OSHA"] | None = asked(
        "how noise is counted: NIOSH (85 dB, 3 dB; the usual one) or OSHA (90 dB, 5 dB)"
    )
    protector_rating_db: float | None = asked("SNR on the box of the ear muffs or plugs that are worn", ge=0, le=50)
    vibration_m_per_s2: tuple[Shake, ...] | None = asked("vibration total value of each tool, as its maker declares it")
    trigger_time_minutes: tuple[Minutes, ...] | None = asked("time with the trigger of each tool held")


class Lifting(NoiseAndVibration):
    """One lift, by the terms of the revised NIOSH equation."""

    load_kg: float | None = asked("what is lifted, wet if it comes wet", gt=0, le=500)
    hands_out_cm: float | None = asked("from the middle of the ankles to the hands when it is picked up", ge=0, le=200)
    hands_up_cm: float | None = asked("floor to hands when it is picked up", ge=0, le=300)
    set_down_out_cm: float | None = asked("ankles to hands when it is set down, with care", ge=0, le=200)
    set_down_up_cm: float | None = asked("floor to hands when it is set down", ge=0, le=300)
    lift_travel_cm: float | None = asked(
        "how far the hands go up or down; from the two heights if left out", ge=0, le=300
    )
    twist_deg: float | None = asked("how far the body turns to pick it up", ge=0, le=180)
    set_down_twist_deg: float | None = asked("how far it turns at the end", ge=0, le=180)
    lifts_a_minute: float | None = asked("lifts in a minute; 0.2, one in five minutes, if left out", ge=0, le=60)
    lifting_time_hours: float | None = asked("how long the lifting goes on; an hour if left out", gt=0, le=24)
    grip: Literal["good", "fair", "poor"] | None = asked(
        "good: handles; fair: fingers curl under; poor: a bag that sags, and if left out"
    )


class Height(Lifting):
    """Ladders, falls and lines overhead; their limits belong to a country."""

    country: Country | None = asked("the country or state whose limits hold")
    ladder_rule: LadderRule | None = asked("by height, by length or 75 degrees; the country's own if left out")
    top_contact_mm: float | None = asked("ground to where the ladder leans", gt=0, le=15_000)
    working_length_mm: float | None = asked("length of ladder from its foot to where it leans", gt=0, le=15_000)
    foot_measured_mm: float | None = asked("wall to foot as it stands, to be checked", ge=0, le=15_000)
    landing_mm: float | None = asked("ground to the landing stepped on to", gt=0, le=15_000)
    rail_top_mm: float | None = asked("ground to the top of the rails", gt=0, le=20_000)
    fall_mm: float | None = asked("how far down a fall would go", ge=0, le=50_000)
    ladder_time_minutes: float | None = asked("time on the ladder without coming down", ge=0, le=1440)
    carried_kg: float | None = asked("what is carried up the ladder", ge=0, le=100)
    line: LineKind | None = asked("low voltage, high voltage, on poles or on towers")
    line_kv: float | None = asked("voltage of the line in kV, a plain number", gt=0, le=1200)
    line_consent: bool | None = asked("the line's owner has given written consent")
    line_distance_mm: float | None = asked("from the line to the nearest of body, tool or branch", ge=0, le=100_000)
    line_height_mm: float | None = asked("ground to the line as it sags in heat", gt=0, le=100_000)
    reach_mm: float | None = asked("ground to the highest point of body, tool or branch", gt=0, le=50_000)


class DayWeather(Height):
    """Heat, sun and what to drink."""

    air_temperature_c: float | None = asked("air in the shade, warmest hour", ge=-60, le=60)
    humidity_percent: float | None = asked("relative humidity in that hour", ge=0, le=100)
    in_sun: bool | None = asked("the work is in full sun")
    wet_bulb_c: float | None = asked("natural wet bulb, where it is measured", ge=-40, le=50)
    globe_c: float | None = asked("black globe, where it is measured", ge=-40, le=90)
    heat_time_hours: float | None = asked("hours of work in the heat", gt=0, le=24)
    drink_l_per_h: float | None = asked("what is drunk in an hour", ge=0, le=5)
    water_carried_l: float | None = asked("drinking water taken along a person", ge=0, le=50)
    uv_index: float | None = asked("ultraviolet index forecast for the day", ge=0, le=20)


class SafetyMeasures(DayWeather):
    """Chemicals, saws, batteries and what to wear."""

    bleach_mix_l: float | None = asked("bleach mix wanted", gt=0, le=1000)
    bleach_parts: float | None = asked("parts of bleach; 1 if left out", gt=0, le=100)
    water_parts: float | None = asked("parts of water to that; 9 if left out", ge=0, le=1000)
    soak_minutes: float | None = asked("how long the blades stay in it", ge=0, le=1440)
    mix_age_hours: float | None = asked("how long ago it was mixed", ge=0, le=240)
    disinfectant: Literal["alcohol", "bleach"] | None = asked("what blades are cleaned with")
    disease: Literal["none known", "fire blight"] | None = asked("what the plants may carry")
    toxicity: tuple[Toxicity, ...] | None = asked("category of each active ingredient on the label, I to IV")
    dry_nerve_poison: bool | None = asked("a cholinesterase inhibitor of category I, outdoors where little rain falls")
    label_wait_hours: float | None = asked("no entry, as the label says", ge=0, le=1000)
    sprayed_at: str | None = asked("time of day, such as 14:00", max_length=20)
    entry_after_hours: float | None = asked("when people go in again", ge=0, le=1000)
    bag_holds: Literal["potting mix", "compost", "mulch", "soil mix"] | None = asked(
        "the bagged mix that is opened and worked with"
    )
    wound: Literal["clean", "dirty"] | None = asked("dirty: soil, thorns, or deep")
    tetanus_doses: int | None = asked("doses ever had; leave out if not known", ge=0, le=20)
    last_dose_years: float | None = asked("time since the last of them", ge=0, le=120)
    fuel_to_start_mm: float | None = asked("from where the saw was filled to where it is started", ge=0, le=1_000_000)
    chain_speed_m_per_s: float | None = asked("speed of the saw's chain", gt=0, le=60)
    trouser_class: Literal["1", "2", "3"] | None = asked("class on the chain-saw trousers")
    battery_temperature_c: float | None = asked("the pack going on charge", ge=-60, le=100)
    bevel_deg: float | None = asked("angle between a blade's bevel and its back", gt=0, lt=90)
    blade_thickness_mm: float | None = asked("thickness of the blade behind it", gt=0, le=50)
    file_length_mm: float | None = asked("length of the file or stone", gt=0, le=1000)
    task: Task | None = asked("the work to dress for")
    glove_marks: str | None = asked("marks of EN 388, such as 4X43D", max_length=20)
    eye_mark: Literal["S", "F", "B", "A"] | None = asked("impact mark of EN 166")
    eyes_worn_as: Literal["spectacles", "goggles", "shield"] | None = asked("spectacles, goggles or shield")

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
