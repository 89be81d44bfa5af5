"""Rules over the measures of safety: one lift by the revised NIOSH equation."""

from collections.abc import Iterator

from howto.families.safety import lifting
from howto.families.safety import references as by
from howto.families.safety.figures_lifting import INDEX, INDEX_SAID, lifts_of, limit_kg, system_of
from howto.families.safety.lifting import FORMS, MOST_HOURS, MOST_LIFTS_A_MIN, MOST_TWIST_DEG, Lift
from howto.families.safety.measures import SafetyMeasures
from howto.findings import Severity
from howto.model.family import Breach, Edit, Rule, rule, typed
from howto.model.work import Work
from howto.quantities import convert, field_unit, round_down
from howto.quantities.amounts import bare, qty

T = Work[SafetyMeasures]
NEXT_TO_NOTHING = 0.05  # ours: below it no load worth lifting is left
FIELDS = {
    "pick up": ("hands_out_cm", "hands_up_cm", "twist_deg"),
    "set down": ("set_down_out_cm", "set_down_up_cm", "set_down_twist_deg"),
}
METRIC, US = FORMS["metric"], FORMS["us"]


@rule(
    "safety.lift-bounds",
    Severity.ERROR,
    by.WORKSHEET,
    applies="techniques with `hands out:` and `hands up:`",
    out=f"{qty(METRIC.most_reach, 'cm', 3)} ({qty(US.most_reach, 'in', 3)})",
    up=f"{qty(METRIC.most_height, 'cm', 3)} ({qty(US.most_height, 'in', 3)})",
    turn=f"{qty(MOST_TWIST_DEG, '°')}",
)
def within_bounds(work: T) -> Iterator[Breach]:
    """A load is picked up and set down within the reach, height, travel and turn that the equation allows.

    beyond {out} out, {up} up, or {turn} of turn the equation allows no load at all
    """
    m = work.measures
    ends = lifts_of(m)
    for end, lift in ends:
        out, up, twist = FIELDS[end]
        out = out if getattr(m, out) is not None else "hands_out_cm"
        twist = twist if getattr(m, twist) is not None else "twist_deg"
        yield from _beyond(out, lift.out, lift.form.most_reach, lift.form.length, "{} out")
        yield from _beyond(up, lift.up, lift.form.most_height, lift.form.length, "{} up")
        yield from _beyond(twist, lift.twist_deg, MOST_TWIST_DEG, "deg", "a turn of {}")
    if ends:
        lift = ends[0][1]
        if m.lift_travel_cm is not None:
            yield from _beyond("lift_travel_cm", lift.travel, lift.form.most_height, lift.form.length, "{} of travel")
        yield from _too_often(lift)


def _beyond(field: str, value: float, most: float, unit: str, what: str) -> Iterator[Breach]:
    """Yield the breach of a value at which the equation allows no load."""
    if value <= most + 1e-9:
        return
    key, text = field_unit(field)[0], typed(most, unit, down=True)
    yield Breach(
        field=f"measures.{field}",
        what=f"{what.format(qty(value, unit, 3))}, where nothing may be lifted",
        why=f"the multiplier is 0 beyond {qty(most, unit, 3)}, so the weight limit is nothing",
        mend=f"bring the load nearer: write `{key}: {text}` or less",
        edit=Edit(key=key, text=text),
    )


def _too_often(lift: Lift) -> Iterator[Breach]:
    """Yield a breach for a pace or a time at which the frequency table stands at next to nothing."""
    found = lifting.frequency_multiplier(lift.lifts_a_min, lift.hours, lift.up, lift.system)
    if found >= NEXT_TO_NOTHING:
        return
    if lift.hours > MOST_HOURS:
        text = typed(MOST_HOURS, "h")
        yield Breach(
            field="measures.lifting_time_hours",
            what=f"{qty(lift.hours, 'h', 3)} of lifting",
            why=f"the frequency table ends at {qty(MOST_HOURS, 'h')}",
            mend=f"write `lifting time: {text}` or less",
            edit=Edit(key="lifting time", text=text),
        )
        return
    most = max(
        often
        for often in range(1, MOST_LIFTS_A_MIN + 1)
        if lifting.frequency_multiplier(often, lift.hours, lift.up, lift.system) >= NEXT_TO_NOTHING
    )
    yield Breach(
        field="measures.lifts_a_minute",
        what=f"{bare(lift.lifts_a_min)} lifts a minute for {qty(lift.hours, 'h', 3)}",
        why=f"the frequency multiplier is {bare(found)} there, so next to nothing may be lifted",
        mend=f"write `lifts a minute: {most}` or fewer",
        edit=Edit(key="lifts a minute", text=str(most)),
    )


@rule(
    "safety.weight-limit",
    Severity.WARNING,
    by.WORKSHEET,
    by.CCOHS_LIFT,
    by.EQUATION,
    applies="techniques with `load:`, `hands out:` and `hands up:`",
    constant=f"{qty(METRIC.constant, 'kg', 3)} ({qty(US.constant, 'lb', 3)})",
)
def within_limit(work: T) -> Iterator[Breach]:
    """A load weighs no more than the recommended limit of its lift.

    {constant} times six multipliers for reach, height, travel, twist, pace and grip
    """
    m = work.measures
    limit = limit_kg(m)
    if m.load_kg is None or limit is None or limit <= 0:
        return
    index = lifting.lifting_index(m.load_kg, limit)
    if INDEX.allows(index):
        return
    unit = FORMS[system_of(m)].weight
    load, most = (convert(each, "kg", unit) for each in (m.load_kg, limit))
    text = typed(round_down(most, 0.1 if limit < 50 else 1.0), unit, down=True)
    yield Breach(
        field="measures.load_kg",
        what=f"a lifting index of {bare(index, 2)}",
        why=f"{qty(load, unit, 3)} / {qty(most, unit, 3)} = {bare(index)}; {INDEX_SAID}",
        mend=f"split the load: write `load: {text}` or less; or bring it close, off the ground, and give it handles",
        edit=Edit(key="load", text=text),
    )


LIFTS: tuple[Rule[SafetyMeasures], ...] = (within_bounds, within_limit)
