"""Rules over the measures of safety: one lift by the revised NIOSH equation."""

from collections.abc import Iterator

from howto.families.safety import lifting
from howto.families.safety.figures_lifting import LENGTH, lifts_of, limit_kg, system_of
from howto.families.safety.lifting import Lift
from howto.families.safety.measures import SafetyMeasures
from howto.families.safety.references import CCOHS_LIFT, EQUATION, WORKSHEET
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, rule
from howto.model.work import Work
from howto.quantities import convert, round_down
from howto.quantities.amounts import bare, qty

T = Work[SafetyMeasures]
NEXT_TO_NOTHING = 0.05  # ours: below it no load worth lifting is left
INDEX = Limit(high=1, unit="", of="load over recommended limit", reference=WORKSHEET)


@rule("safety.lift-bounds", Severity.ERROR, WORKSHEET, applies="techniques with `hands out:` and `hands up:`")
def within_bounds(work: T) -> Iterator[Breach]:
    """A load is picked up and set down within the reach, height, travel and turn that the equation allows.

    Beyond 63 cm (25 in) out, 175 cm (70 in) up, or 135° of turn the equation allows no load at all.
    """
    m, system = work.measures, system_of(work)
    unit = LENGTH[system]
    ends = dict(lifts_of(work))
    fields = {
        "pick up": ("hands_out_cm", "hands_up_cm", "twist_deg"),
        "set down": ("set_down_out_cm", "set_down_up_cm", "set_down_twist_deg"),
    }
    for end, lift in ends.items():
        out_field, up_field, twist_field = fields[end]
        out_field = out_field if getattr(m, out_field) is not None else "hands_out_cm"
        twist_field = twist_field if getattr(m, twist_field) is not None else "twist_deg"
        for field, value, most, word in (
            (out_field, lift.out, lifting.MOST_REACH[system], "out"),
            (up_field, lift.up, lifting.MOST_HEIGHT[system], "up"),
        ):
            if value > most + 1e-9:
                yield _beyond(field, f"{bare(value)} {unit} {word}", f"{bare(most)} {unit}")
        if lift.twist_deg > lifting.MOST_TWIST_DEG:
            yield _beyond(
                twist_field, f"a turn of {qty(lift.twist_deg, '°', 3)}", f"{bare(lifting.MOST_TWIST_DEG)} deg"
            )
    if ends:
        far = lifting.MOST_HEIGHT[system]
        if ends["pick up"].travel > far + 1e-9 and m.lift_travel_cm is not None:
            yield _beyond("lift_travel_cm", f"{bare(ends['pick up'].travel)} {unit} of travel", f"{bare(far)} {unit}")
        yield from _too_often(ends["pick up"])


def _beyond(field: str, seen: str, most: str) -> Breach:
    key = field.removesuffix("_cm").removesuffix("_deg").replace("_", " ")
    return Breach(
        field=f"measures.{field}",
        what=f"{seen}, where nothing may be lifted",
        why=f"the multiplier is 0 beyond {most.replace(' deg', '°')}, so the weight limit is nothing",
        mend=f"bring the load nearer: write `{key}: {most}` or less",
        edit=Edit(key=key, text=most),
    )


def _too_often(lift: Lift) -> Iterator[Breach]:
    """Yield a breach for a pace or a time at which the frequency table stands at next to nothing."""
    found = lifting.frequency_multiplier(lift.lifts_a_min, lift.hours, lift.up, lift.system)
    if found >= NEXT_TO_NOTHING:
        return
    hours = min(lift.hours, lifting.MOST_HOURS)
    if hours < lift.hours:
        yield Breach(
            field="measures.lifting_time_hours",
            what=f"{bare(lift.hours)} hours of lifting",
            why=f"the frequency table ends at {bare(lifting.MOST_HOURS)} hours",
            mend="write `lifting time: 8 h` or less",
            edit=Edit(key="lifting time", text="8 h"),
        )
        return
    most = max(
        often
        for often in range(1, 16)
        if lifting.frequency_multiplier(often, hours, lift.up, lift.system) >= NEXT_TO_NOTHING
    )
    yield Breach(
        field="measures.lifts_a_minute",
        what=f"{bare(lift.lifts_a_min)} lifts a minute for {qty(hours, 'h', 3)}",
        why=f"the frequency multiplier is {bare(found)} there, so next to nothing may be lifted",
        mend=f"write `lifts a minute: {most}` or fewer",
        edit=Edit(key="lifts a minute", text=str(most)),
    )


@rule(
    "safety.weight-limit",
    Severity.WARNING,
    WORKSHEET,
    CCOHS_LIFT,
    EQUATION,
    applies="techniques with `load:`, `hands out:` and `hands up:`",
)
def within_limit(work: T) -> Iterator[Breach]:
    """A load weighs no more than the recommended limit of its lift.

    23 kg (51 lb) times six multipliers for reach, height, travel, twist, pace and grip.
    """
    m = work.measures
    limit = limit_kg(work)
    if m.load_kg is None or limit is None or limit <= 0:
        return
    index = lifting.lifting_index(m.load_kg, limit)
    if INDEX.allows(index):
        return
    us = system_of(work) == "us"
    weight = "lb" if us else "kg"
    step = 0.1 if limit < 50 else 1.0
    most = round_down(convert(limit, "kg", weight), step)
    text = f"{bare(most)} {weight}"
    ends = [lifting.weight_limit(lift) for _, lift in lifts_of(work)]
    yield Breach(
        field="measures.load_kg",
        what=f"a lifting index of {bare(index, 2)}",
        why=f"{bare(convert(m.load_kg, 'kg', weight))} / {bare(min(ends))} {weight} = {bare(index)}; up to 1 suits nearly "
        "everyone, over 3 many are at risk",
        mend=f"split the load: write `load: {text}` or less; or bring it close, off the ground, and give it handles",
        edit=Edit(key="load", text=text),
    )


LIFTS: tuple[Rule[SafetyMeasures], ...] = (within_bounds, within_limit)
