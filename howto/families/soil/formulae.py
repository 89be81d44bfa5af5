"""The arithmetic of soil work: numbers in, number out."""

from math import ceil, sqrt

DUST = 1e-9  # kept from making one bag or load more
HOURS_A_DAY = 24.0


def volume_m3(area_m2: float, depth_mm: float) -> float:
    """Return the volume of a layer: ABC garden fact sheet and WRAP's compost sums, m³ = m² × mm / 1000."""
    return area_m2 * depth_mm / 1000


def depth_mm(volume_m3: float, area_m2: float) -> float:
    """Return how deep a volume lies on an area."""
    return volume_m3 * 1000 / area_m2


def cover_m2(volume_m3: float, depth_mm: float) -> float:
    """Return the area a volume covers at a depth."""
    return volume_m3 * 1000 / depth_mm


def before_settling(amount: float, settling: float) -> float:
    """Return the loose depth or volume of which `amount` is left when the part `settling` has sunk.

    ValueError for a part that is not from 0 to under 1.
    """
    if not 0 <= settling < 1:
        raise ValueError("settling is a part from 0 to under 1")
    return amount / (1 - settling)


def bags(volume_m3: float, bag_l: float) -> int:
    """Return the whole bags that hold a volume."""
    return ceil(volume_m3 * 1000 / bag_l - DUST)


def load_room_m3(load_m3: float, payload_kg: float | None, density_kg_per_m3: float | None) -> float:
    """Return how much of a material one load holds: its room, or less where its weight reaches the payload first."""
    if payload_kg is None or density_kg_per_m3 is None:
        return load_m3
    return min(load_m3, payload_kg / density_kg_per_m3)


def loads(volume_m3: float, room_m3: float) -> int:
    """Return the trips that carry a volume."""
    return ceil(volume_m3 / room_m3 - DUST)


def mass_kg(volume_m3: float, density_kg_per_m3: float) -> float:
    """Return what a volume weighs."""
    return volume_m3 * density_kg_per_m3


def heap_every_m(barrow_l: float, depth_mm: float) -> float:
    """Return the side of the square that one barrow covers at a depth: how far apart heaps are tipped."""
    return sqrt(barrow_l / depth_mm)


def share_mixed_in(layer_mm: float, dig_mm: float) -> float:
    """Return the part of the mixed depth that is the new layer, 0 to 1; the layer is inside the depth."""
    return min(1.0, layer_mm / dig_mm)


def drainage_mm_per_h(fallen_mm: float, hours: float) -> float:
    """Return how fast water leaves a test hole."""
    return fallen_mm / hours


def hours_to_drain(hole_mm: float, rate_mm_per_h: float) -> float:
    """Return how long a full hole takes to empty at a steady rate."""
    return hole_mm / rate_mm_per_h


def slowest_mm_per_h(hole_mm: float) -> float:
    """Return the rate that just empties a full hole in a day."""
    return hole_mm / HOURS_A_DAY
