"""Rules over the measures of safety: saws, batteries, and marks on what is worn."""

from collections.abc import Iterator

from howto.families.safety import gloves, machines
from howto.families.safety import references as by
from howto.families.safety.measures import SafetyMeasures
from howto.findings import Severity
from howto.model.family import Breach, Edit, Limit, Rule, rule
from howto.model.work import Work
from howto.quantities import show_number as num
from howto.quantities.amounts import mm, qty

T = Work[SafetyMeasures]
START = Limit(low=machines.START_FROM_FUEL_MM / 1000, unit="m", reference=by.CHAINSAW)
CHARGE = Limit(low=machines.LEAST_CHARGE_C, high=machines.MOST_CHARGE_C, unit="°C", reference=by.CHARGING)


@rule("safety.start-away", Severity.ERROR, by.CHAINSAW, by.CHAINSAW_QUEBEC, applies="techniques with `fuel to start:`")
def start_away(work: T) -> Iterator[Breach]:
    """A saw is started at least 3 m from where it was filled.

    10 ft (3 m) in the United States, over 3 m in Québec.
    """
    m = work.measures
    if m.fuel_to_start_mm is None or START.allows(m.fuel_to_start_mm / 1000):
        return
    yield Breach(
        field="measures.fuel_to_start_mm",
        what=f"started {mm(m.fuel_to_start_mm)} from where it was filled",
        why=f"{START} (10 ft); vapour and spilt fuel lie about the can",
        mend="walk on, and write `fuel to start: 3 m` or more",
        edit=Edit(key="fuel to start", text="3 m"),
    )


@rule(
    "safety.trouser-class", Severity.WARNING, by.SAW_LEGS, applies="techniques with `chain speed:` and `trouser class:`"
)
def trousers_cover(work: T) -> Iterator[Breach]:
    """Chain-saw trousers are of a class that covers the speed of the chain.

    EN ISO 11393-2: class 1 stops a chain at 20 m/s, 2 at 24, 3 at 28.
    """
    m = work.measures
    if m.chain_speed_m_per_s is None or m.trouser_class is None:
        return
    if machines.covers(m.trouser_class, m.chain_speed_m_per_s):
        return
    least = machines.class_for(m.chain_speed_m_per_s)
    speed = machines.CHAIN_SPEED_M_PER_S[m.trouser_class]
    slowest = num(machines.CHAIN_SPEED_M_PER_S["3"])
    yield Breach(
        field="measures.trouser_class",
        what=f"class {m.trouser_class} trousers with a chain at {qty(m.chain_speed_m_per_s, 'm/s', 3)}",
        why=f"class {m.trouser_class} is tested at {qty(speed, 'm/s', 3)}; 1 at 20, 2 at 24, 3 at 28",
        mend=f"write `trouser class: {least}` or higher"
        if least
        else f"no class covers it: take a slower saw, and write `chain speed: {slowest} m/s` or less",
        edit=Edit(key="trouser class", text=least) if least else Edit(key="chain speed", text=f"{slowest} m/s"),
        also="measures.chain_speed_m_per_s",
    )


@rule("safety.eye-mark", Severity.WARNING, by.EYES, applies="techniques with `eye mark:` and `eyes worn as:`")
def mark_suits(work: T) -> Iterator[Breach]:
    """An impact mark stands only on the kind of eye protection that can carry it.

    EN 166: F on any kind, B on goggles and shields, A on shields alone.
    """
    m = work.measures
    if m.eye_mark is None or m.eyes_worn_as is None or machines.mark_suits(m.eye_mark, m.eyes_worn_as):
        return
    kinds = machines.IMPACT_WORN_AS[m.eye_mark]
    yield Breach(
        field="measures.eye_mark",
        what=f"{m.eyes_worn_as} marked {m.eye_mark}",
        why=f"{m.eye_mark}, {qty(machines.IMPACT_M_PER_S[m.eye_mark], 'm/s', 3)}, is for {' and '.join(kinds)}; "
        f"on {m.eyes_worn_as} the mark cannot be true",
        mend=f"refuse the mark: wear and write `eyes worn as: {kinds[0]}`",
        edit=Edit(key="eyes worn as", text=kinds[0]),
        also="measures.eyes_worn_as",
    )


@rule("safety.glove-marks", Severity.WARNING, by.GLOVES, applies="techniques with `glove marks:`")
def marks_read(work: T) -> Iterator[Breach]:
    """The marks of a glove are read in the order of EN 388.

    EN 388:2016 + A1:2018 prints four digits, a letter, and P where impact was tested.
    """
    text = work.measures.glove_marks
    if text is None or gloves.read_marks(text) is not None:
        return
    yield Breach(
        field="measures.glove_marks",
        what=f"`{text}` is no row of marks",
        why="EN 388 prints abrasion 0 to 4, coup cut 0 to 5, tear 0 to 4, puncture 0 to 4, a letter A to F, and P; X "
        "is not tested",
        mend="write the marks under the hammer, such as `glove marks: 4X43D`",
        edit=Edit(key="glove marks", text="4X43D"),
    )


@rule("safety.charge-range", Severity.ERROR, by.CHARGING, applies="techniques with `battery temperature:`")
def charge_range(work: T) -> Iterator[Breach]:
    """A lithium-ion pack goes on charge between 0 and 40 °C.

    0 to 40 °C (32 to 105 °F).
    """
    pack = work.measures.battery_temperature_c
    if pack is None or CHARGE.allows(pack):
        return
    cold = pack < machines.LEAST_CHARGE_C
    text = "0 °C" if cold else "40 °C"
    yield Breach(
        field="measures.battery_temperature_c",
        what=f"a pack at {qty(pack, '°C')} put on charge",
        why=f"{'below 0' if cold else 'above 40'} °C (32 to 105 °F is safe) a cell is spoiled and may burn later",
        mend=f"let it {'warm up indoors' if cold else 'cool in the shade'} first: write `battery temperature: {text}`",
        edit=Edit(key="battery temperature", text=text),
    )


WEARING: tuple[Rule[SafetyMeasures], ...] = (start_away, trousers_cover, mark_suits, marks_read, charge_range)
