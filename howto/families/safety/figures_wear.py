"""The figures of saws, batteries and what to wear."""

from collections.abc import Iterator, Mapping

from howto.families.safety import machines, ppe
from howto.families.safety import references as by
from howto.families.safety.figure import figure, table
from howto.families.safety.measures import SafetyMeasures
from howto.model.figure import Figure
from howto.model.reference import GEOMETRY
from howto.model.work import Work
from howto.quantities.amounts import Name, Word, bare, mm, qty

T = Work[SafetyMeasures]


def wear_figures(work: T) -> Iterator[Figure]:
    """Yield distances, ranges and levels that kit is held to, then what to wear."""
    m = work.measures
    if m.fuel_to_start_mm is not None:
        yield _start(m.fuel_to_start_mm)
    if m.chain_speed_m_per_s is not None:
        yield _legs(m.chain_speed_m_per_s)
    if m.battery_temperature_c is not None:
        yield _charge(m.battery_temperature_c)
    if m.bevel_deg is not None:
        yield from _bevel(m, m.bevel_deg)
    if m.eye_mark is not None:
        yield _eyes(m.eye_mark)
    if m.glove_marks is not None:
        yield from _gloves(m.glove_marks)
    if m.task is not None:
        yield _wear(m.task)


def _start(walked_mm: float) -> Figure:
    working = (
        f"{machines.START}; {mm(walked_mm)} is {'far enough' if machines.START.allows(walked_mm) else 'too near'}",
        "on the ground, chain brake on, two hands; never a drop start",
    )
    value = machines.START.low or 0
    label = "Start a saw from where it was fuelled"
    return figure("start distance", label, value, "mm", working, by.CHAINSAW, by.CHAINSAW_QUEBEC)


def _legs(chain: float) -> Figure:
    found = ppe.class_for(chain)
    speeds = ", ".join(f"class {Name(name)} to {bare(speed)}" for name, speed in ppe.CHAIN_SPEED_M_PER_S.items())
    working = (f"EN ISO 11393: {speeds} m/s", f"lowest that covers {qty(chain, 'm/s', 3)}: {Word(found or 'none')}")
    value = f"class {Name(found)}" if found else "no class covers it"
    return figure("trousers needed", "Chain-saw trousers for this chain", value, "", working, by.SAW_LEGS)


def _charge(pack_c: float) -> Figure:
    working = (
        f"{qty(pack_c, '°C')}: {'may' if machines.CHARGE.allows(pack_c) else 'must not'} go on charge",
        "a smell, a swelling, a leak or heat of its own: stop, outdoors, never in the bin",
    )
    return figure("charge range", "Charge a lithium-ion pack at", f"{machines.CHARGE}", "", working, by.CHARGING)


def _bevel(m: SafetyMeasures, bevel: float) -> Iterator[Figure]:
    sine = f"sin {qty(bevel, '°', 3)}"
    if (thick := m.blade_thickness_mm) is not None:
        wide = machines.bevel_width(thick, bevel)
        yield _face("bevel width", "Ground face, once it is right", wide, f"{mm(thick, 3)} / {sine}")
    if (long := m.file_length_mm) is not None:
        up = machines.raised_end(long, bevel)
        yield _face("file raised", "Far end of the file, above the blade's back", up, f"{mm(long, 3)} x {sine}")


def _face(name: str, label: str, value: float, sum_: str) -> Figure:
    return figure(name, label, value, "mm", f"{sum_} = {mm(value, 3)}", GEOMETRY, headline=True)


def _eyes(mark: str) -> Figure:
    kinds = ", ".join(str(Word(kind)) for kind in ppe.IMPACT_WORN_AS[mark])
    levels = ", ".join(f"{Name(name)} {bare(speed)}" for name, speed in ppe.IMPACT_M_PER_S.items())
    working = (
        f"EN 166, a 6 mm ball: {levels} m/s",
        f"{Name(mark)} can stand on {kinds}; on anything else refuse the mark",
    )
    label = f"Eye protection marked {Name(mark)}"
    return figure("eye impact", label, f"{qty(ppe.IMPACT_M_PER_S[mark], 'm/s', 3)}, on {kinds}", "", working, by.EYES)


def _gloves(text: str) -> Iterator[Figure]:
    marks = ppe.read_marks(text)
    if marks is None:
        return
    tested: tuple[tuple[str, int | None, Mapping[int, float]], ...] = (
        ("abrasion, cycles", marks.abrasion, ppe.ABRASION_CYCLES),
        ("coup cut, index", marks.coup_cut, ppe.COUP_INDEX),
        ("tear, N", marks.tear, ppe.TEAR_N),
        ("puncture, N", marks.puncture, ppe.PUNCTURE_N),
    )
    rows: list[tuple[str, str, str]] = [
        (name, "not tested" if level is None else f"{bare(level)}", f"{bare(levels[level])}" if level else "none")
        for name, level, levels in tested
    ]
    newtons = ppe.cut_newtons(marks)
    rows.append(("cut ISO 13997, N", marks.cut or "not tested", f"{bare(newtons)}" if newtons else "none"))
    rows.append(("impact", "P" if marks.impact else "not tested", "5 J" if marks.impact else "none"))
    tests = table({"Test": "", "Level": "", "At least": ""}, rows)
    working = (
        "in order: abrasion, coup cut, tear, puncture, then the letter of ISO 13997, then P for impact",
        "where the coup blade dulls, the letter rules; no puncture level means safe against thorns",
    )
    value = text.strip()
    label = "What the gloves stand (EN 388)"
    yield figure("glove levels", label, value, "", working, by.GLOVES, by.GLOVES_THORNS, table=tests)


def _wear(task: ppe.Task) -> Figure:
    pieces = ppe.WEAR[task]
    rows = table(
        {"Wear": "", "Standard": "", "Level": ""}, tuple((piece.worn, piece.standard, piece.level) for piece in pieces)
    )
    working = tuple(f"{Word(piece.worn)}: {Word(piece.standard)}, {Word(piece.level)}" for piece in pieces)
    label = f"Wear for {Word(task)}"
    value = ", ".join(str(Word(piece.worn)) for piece in pieces)
    return figure("wear", label, value, "", working, *dict.fromkeys(piece.reference for piece in pieces), table=rows)
