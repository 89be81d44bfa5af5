"""Rules over the measures of safety: saws, batteries, and marks on what is worn."""

from collections.abc import Iterator

from howto.families.safety import ppe
from howto.families.safety import references as by
from howto.families.safety.machines import CHARGE, START
from howto.families.safety.measures import SafetyMeasures
from howto.findings import Severity
from howto.model.family import Breach, Edit, Rule, outside, rule, typed
from howto.model.work import Work
from howto.quantities.amounts import bare, mm, qty

T = Work[SafetyMeasures]
CLASSES = ", ".join(f"{name} at {bare(speed)}" for name, speed in ppe.CHAIN_SPEED_M_PER_S.items() if name != "0")
MARKS = "4X43D"  # of a usual pair


@rule(
    "safety.start-away",
    Severity.ERROR,
    by.CHAINSAW,
    by.CHAINSAW_QUEBEC,
    applies="techniques with `fuel to start:`",
    least=START.least,
)
def start_away(work: T) -> Iterator[Breach]:
    """A saw is started at least {least} from where it was filled.

    at least {least}; vapour and spilt fuel lie about the can
    """
    what = f"started {mm(work.measures.fuel_to_start_mm or 0)} from where it was filled"
    yield from outside(START, work, "fuel_to_start_mm", what=what, why="")


@rule(
    "safety.trouser-class",
    Severity.WARNING,
    by.SAW_LEGS,
    applies="techniques with `chain speed:` and `trouser class:`",
    classes=CLASSES,
)
def trousers_cover(work: T) -> Iterator[Breach]:
    """Chain-saw trousers are of a class that covers the speed of the chain.

    EN ISO 11393-2 tests a chain in m/s: class {classes}
    """
    m = work.measures
    if m.chain_speed_m_per_s is None or m.trouser_class is None or ppe.covers(m.trouser_class, m.chain_speed_m_per_s):
        return
    least = ppe.class_for(m.chain_speed_m_per_s)
    key, text = ("trouser class", least) if least else ("chain speed", typed(ppe.CHAIN_SPEED_M_PER_S["3"], "m/s"))
    yield Breach(
        field="measures.trouser_class",
        what=f"class {m.trouser_class} trousers with a chain at {qty(m.chain_speed_m_per_s, 'm/s', 3)}",
        why="",
        mend=f"write `{key}: {text}` or higher"
        if least
        else f"no class covers it: take a slower saw, and write `{key}: {text}` or less",
        edit=Edit(key=key, text=text),
        also="measures.chain_speed_m_per_s",
    )


@rule("safety.eye-mark", Severity.WARNING, by.EYES, applies="techniques with `eye mark:` and `eyes worn as:`")
def mark_suits(work: T) -> Iterator[Breach]:
    """An impact mark stands only on the kind of eye protection that can carry it.

    EN 166: F on any kind, B on goggles and shields, A on shields alone
    """
    m = work.measures
    if m.eye_mark is None or m.eyes_worn_as is None or m.eyes_worn_as in ppe.IMPACT_WORN_AS[m.eye_mark]:
        return
    kinds = ppe.IMPACT_WORN_AS[m.eye_mark]
    yield Breach(
        field="measures.eye_mark",
        what=f"{m.eyes_worn_as} marked {m.eye_mark}",
        why=f"{m.eye_mark}, {qty(ppe.IMPACT_M_PER_S[m.eye_mark], 'm/s', 3)}, is for {' and '.join(kinds)}; "
        f"on {m.eyes_worn_as} the mark cannot be true",
        mend=f"refuse the mark: wear and write `eyes worn as: {kinds[0]}`",
        edit=Edit(key="eyes worn as", text=kinds[0]),
        also="measures.eyes_worn_as",
    )


@rule("safety.glove-marks", Severity.WARNING, by.GLOVES, applies="techniques with `glove marks:`")
def marks_read(work: T) -> Iterator[Breach]:
    """The marks of a glove are read in the order of EN 388.

    EN 388 prints abrasion 0 to 4, coup cut 0 to 5, tear 0 to 4, puncture 0 to 4, a letter A to F, and P; X is not
    tested
    """
    text = work.measures.glove_marks
    if text is None or ppe.read_marks(text) is not None:
        return
    yield Breach(
        field="measures.glove_marks",
        what=f"`{text}` is no row of marks",
        why="",
        mend=f"write the marks under the hammer, such as `glove marks: {MARKS}`",
        edit=Edit(key="glove marks", text=MARKS),
    )


@rule(
    "safety.charge-range", Severity.ERROR, by.CHARGING, applies="techniques with `battery temperature:`", limit=CHARGE
)
def charge_range(work: T) -> Iterator[Breach]:
    """A lithium-ion pack goes on charge at {limit}.

    outside {limit} a cell is spoiled and may burn later: let it warm up indoors or cool in the shade first
    """
    yield from outside(CHARGE, work, "battery_temperature_c", what="a pack at {found} put on charge", why="")


WEARING: tuple[Rule[SafetyMeasures], ...] = (start_away, trousers_cover, mark_suits, marks_read, charge_range)
