"""What a frame on wires comes to before it is printed: heights, spans, loads, and the fruit it is."""

from howto.families.espalier import formulae
from howto.families.espalier.measures import EspalierMeasures, Fruit
from howto.model.work import Work

T = Work[EspalierMeasures]

ENDS_M = 0.3  # of wire, for the turn through an end eye and the tail in a tensioner: common practice
STONE_FRUIT = ("Prunus domestica", "Prunus avium", "Prunus cerasus", "Prunus persica", "Prunus armeniaca",
               "Prunus dulcis", "Prunus salicina")  # fmt: skip
POME_FRUIT: dict[str, Fruit] = {"Malus": "apple", "Pyrus": "pear"}


def heights_mm(m: EspalierMeasures) -> tuple[float, ...]:
    """Return the height of each wire above the ground, the lowest first; none where they are not written."""
    if m.first_wire_mm is None:
        return ()
    if m.tiers == 1:
        return (m.first_wire_mm,)
    if m.tier_spacing_mm is None:
        return ()
    return tuple(m.first_wire_mm + tier * m.tier_spacing_mm for tier in range(m.tiers))


def spans(m: EspalierMeasures) -> int | None:
    """Return how many spans each wire has between its ends, or None where length or spacing is missing."""
    if m.wall_length_m is None or m.eye_spacing_mm is None:
        return None
    return formulae.spans_of(m.wall_length_m * 1000, m.eye_spacing_mm)


def span_mm(m: EspalierMeasures) -> float | None:
    """Return the distance from eye to eye: the wall in equal parts, or the spacing as written."""
    count = spans(m)
    if count is None or m.wall_length_m is None:
        return m.eye_spacing_mm
    return m.wall_length_m * 1000 / count


def breaking_n(m: EspalierMeasures) -> float | None:
    """Return the wire's breaking load: the maker's, or by the formula from diameter and lay."""
    if m.breaking_load_n is not None:
        return m.breaking_load_n
    if m.wire_diameter_mm is None or m.lay is None:
        return None
    return formulae.breaking_load_n(m.wire_diameter_mm, m.lay)


def bare_n_per_m(m: EspalierMeasures) -> float:
    """Return the weight of a metre of the bare wire, 0 where its diameter or lay is not written."""
    if m.wire_diameter_mm is None or m.lay is None:
        return 0.0
    return formulae.weight_n_per_m(formulae.mass_kg_per_m(m.wire_diameter_mm, m.lay))


def load_n_per_m(m: EspalierMeasures) -> float | None:
    """Return the weight of a metre of wire with what it carries, or None where its load is not written."""
    return None if m.load_kg_per_m is None else bare_n_per_m(m) + formulae.weight_n_per_m(m.load_kg_per_m)


def sag_m(m: EspalierMeasures) -> float | None:
    """Return the sag under the load with the pull held as set, or None where anything is missing."""
    load, span, set_n = load_n_per_m(m), span_mm(m), tension_n(m)
    if load is None or span is None or set_n is None:
        return None
    return formulae.sag(load, span / 1000, set_n)


def tension_n(m: EspalierMeasures) -> float | None:
    """Return the pull the wire is set to: as written, or from how much 1x19 grew."""
    breaking = breaking_n(m)
    if m.tension_n is not None or m.stretch_mm_per_m is None or breaking is None or m.lay != "1x19":
        return m.tension_n
    return formulae.share_from_stretch(m.stretch_mm_per_m, 1000) * breaking


def loaded_n(m: EspalierMeasures) -> float | None:
    """Return the pull once the load is on, for 1x19, whose stretch is known; None where anything is missing."""
    load, span, set_n, breaking = load_n_per_m(m), span_mm(m), tension_n(m), breaking_n(m)
    if not load or span is None or set_n is None or breaking is None or m.lay != "1x19":
        return None
    return formulae.loaded_tension_n(load, span / 1000, set_n, formulae.stiffness_n(breaking))


def bay_mm(m: EspalierMeasures) -> float | None:
    """Return the length of wall that one tree has: the spacing as written, or its part of the wall."""
    if m.tree_spacing_mm is not None:
        return m.tree_spacing_mm
    return None if m.wall_length_m is None else m.wall_length_m * 1000 / m.trees


def arm_mm(m: EspalierMeasures) -> float | None:
    """Return how long an arm may grow: half of what one tree has, and never past the end of the wire."""
    bay = bay_mm(m)
    if bay is None:
        return None
    most = bay if m.wall_length_m is None else min(bay, m.wall_length_m * 1000 / m.trees)
    return most / 2


def fruit_of(work: T) -> Fruit | None:
    """Return which fruit it is: as written, or from the plants the file names."""
    if work.measures.fruit is not None:
        return work.measures.fruit
    for plant in work.plants:
        if plant.botanical in STONE_FRUIT:
            return "stone fruit"
        for genus, fruit in POME_FRUIT.items():
            if plant.botanical.startswith(f"{genus} "):
                return fruit
    return None
