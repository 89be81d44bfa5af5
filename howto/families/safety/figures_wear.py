"""The figures of saws, batteries and what to wear."""

from collections.abc import Iterator, Mapping

from howto.families.safety import gloves, machines, sharpening
from howto.families.safety import references as by
from howto.families.safety.measures import SafetyMeasures
from howto.families.safety.ppe import WEAR, Task
from howto.model.figure import Figure, Table
from howto.model.reference import GEOMETRY
from howto.model.work import Work
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, mm, qty

T = Work[SafetyMeasures]


def wear_figures(work: T) -> Iterator[Figure]:
    """Yield distances, ranges and levels that kit is held to, then what to wear."""
    m, units = work.measures, work.crew.units
    if m.fuel_to_start_mm is not None:
        yield _start(m.fuel_to_start_mm, units)
    if m.chain_speed_m_per_s is not None:
        yield _legs(m.chain_speed_m_per_s)
    if m.battery_temperature_c is not None:
        yield _charge(m.battery_temperature_c, units)
    if m.bevel_deg is not None:
        yield from _bevel(m, m.bevel_deg)
    if m.eye_mark is not None:
        yield _eyes(m.eye_mark)
    if m.glove_marks is not None:
        yield from _gloves(m.glove_marks)
    if m.task is not None:
        yield _wear(m.task)


def _start(walked_mm: float, units: str) -> Figure:
    least = machines.START_FROM_FUEL_MM
    enough = "far enough" if walked_mm >= least else "too near"
    return Figure(
        name="start distance",
        label="Start a saw from where it was fuelled",
        value=least,
        unit="mm",
        working=(
            f"at least {mm(least)} (10 ft); {mm(walked_mm)} is {enough}",
            "on the ground, chain brake on, two hands; never a drop start",
        ),
        references=(by.CHAINSAW, by.CHAINSAW_QUEBEC),
    )


def _legs(chain: float) -> Figure:
    found = machines.class_for(chain)
    speeds = ", ".join(f"class {name} to {bare(speed)}" for name, speed in machines.CHAIN_SPEED_M_PER_S.items())
    return Figure(
        name="trousers needed",
        label="Chain-saw trousers for this chain",
        value=f"class {found}" if found else "no class covers it",
        working=(f"EN ISO 11393: {speeds} m/s", f"lowest that covers {qty(chain, 'm/s', 3)}: {found or 'none'}"),
        references=(by.SAW_LEGS,),
    )


def _charge(pack_c: float, units: str) -> Figure:
    low, high = (f"{qty(each, '°C')}" for each in (machines.LEAST_CHARGE_C, machines.MOST_CHARGE_C))
    said = "may go on charge" if machines.may_charge(pack_c) else "must not go on charge"
    return Figure(
        name="charge range",
        label="Charge a lithium-ion pack at",
        value=f"{low} to {high}",
        working=(
            f"{qty(pack_c, '°C')}: {said}",
            "a smell, a swelling, a leak or heat of its own: stop, outdoors, never in the bin",
        ),
        references=(by.CHARGING,),
    )


def _bevel(m: SafetyMeasures, bevel: float) -> Iterator[Figure]:
    if m.blade_thickness_mm is not None:
        wide = sharpening.bevel_width(m.blade_thickness_mm, bevel)
        yield Figure(
            name="bevel width",
            label="Ground face, once it is right",
            value=wide,
            unit="mm",
            working=(f"{mm(m.blade_thickness_mm, 3)} / sin {qty(bevel, '°', 3)} = {mm(wide, 3)}",),
            references=(GEOMETRY,),
            headline=True,
        )
    if m.file_length_mm is not None:
        up = sharpening.raised_end(m.file_length_mm, bevel)
        yield Figure(
            name="file raised",
            label="Far end of the file, above the blade's back",
            value=up,
            unit="mm",
            working=(f"{mm(m.file_length_mm, 3)} x sin {qty(bevel, '°', 3)} = {mm(up, 3)}",),
            references=(GEOMETRY,),
            headline=True,
        )


def _eyes(mark: str) -> Figure:
    kinds = machines.IMPACT_WORN_AS[mark]
    return Figure(
        name="eye impact",
        label=f"Eye protection marked {mark}",
        value=f"{qty(machines.IMPACT_M_PER_S[mark], 'm/s', 3)}, on {', '.join(kinds)}",
        working=(
            "EN 166, a 6 mm ball: S 12, F 45, B 120, A 190 m/s",
            f"{mark} can stand on {', '.join(kinds)}; on anything else refuse the mark",
        ),
        references=(by.EYES,),
    )


def _gloves(text: str) -> Iterator[Figure]:
    marks = gloves.read_marks(text)
    if marks is None:
        return
    tested: tuple[tuple[str, int | None, Mapping[int, float]], ...] = (
        ("abrasion, cycles", marks.abrasion, gloves.ABRASION_CYCLES),
        ("coup cut, index", marks.coup_cut, gloves.COUP_INDEX),
        ("tear, N", marks.tear, gloves.TEAR_N),
        ("puncture, N", marks.puncture, gloves.PUNCTURE_N),
    )
    rows: list[tuple[str, str, str]] = [
        (name, "not tested" if level is None else str(level), num(levels[level]) if level else "none")
        for name, level, levels in tested
    ]
    newtons = gloves.cut_newtons(marks)
    rows.append(("cut ISO 13997, N", marks.cut or "not tested", num(newtons) if newtons else "none"))
    rows.append(("impact", "P" if marks.impact else "not tested", "5 J" if marks.impact else "none"))
    yield Figure(
        name="glove levels",
        label="What the gloves stand (EN 388)",
        value=text.strip(),
        working=(
            "in order: abrasion, coup cut, tear, puncture, then the letter of ISO 13997, then P for impact",
            "where the coup blade dulls, the letter rules; no puncture level means safe against thorns",
        ),
        references=(by.GLOVES, by.GLOVES_THORNS),
        table=Table(columns=("Test", "Level", "At least"), units=("", "", ""), rows=tuple(rows)),
    )


def _wear(task: Task) -> Figure:
    pieces = WEAR[task]
    return Figure(
        name="wear",
        label=f"Wear for {task}",
        value=", ".join(piece.worn for piece in pieces),
        working=tuple(f"{piece.worn}: {piece.standard}, {piece.level}" for piece in pieces),
        references=tuple(dict.fromkeys(piece.reference for piece in pieces)),
        table=Table(
            columns=("Wear", "Standard", "Level"),
            units=("", "", ""),
            rows=tuple((piece.worn, piece.standard, piece.level) for piece in pieces),
        ),
    )
