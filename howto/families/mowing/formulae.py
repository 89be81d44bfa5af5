"""The arithmetic of mowing: numbers in, number out."""

from math import ceil, log

DUST_MM = 1e-6
KEPT = 2 / 3  # of the standing height that a cut leaves: UC Statewide IPM, how much to mow
DAYS_A_MONTH = 365.25 / 12


def mow_at_mm(set_height_mm: float) -> float:
    """Return the height at which a lawn kept at `set_height_mm` is due: half as high again."""
    return set_height_mm / KEPT


def lowest_cut_mm(standing_mm: float) -> float:
    """Return the lowest height a single cut may leave: two thirds of what stands."""
    return standing_mm * KEPT


def share_removed(standing_mm: float, cut_mm: float) -> float:
    """Return the part of the height a cut takes, 0 to 1."""
    return 1 - cut_mm / standing_mm


def cuts_to_reach(standing_mm: float, target_mm: float) -> int:
    """Return how many cuts bring the lawn down when each keeps two thirds, growth between them left out."""
    if standing_mm <= target_mm:
        return 0
    return max(1, ceil(log(standing_mm / target_mm) / log(1 / KEPT) - 1e-9))


def heights_down_mm(standing_mm: float, target_mm: float, growth_mm_between: float = 0.0) -> tuple[float, ...]:
    """Return the height after each cut on the way down to `target_mm`; none where the lawn is no higher.

    `growth_mm_between` is what grows back between two cuts. ValueError where that is half the target or more: the
    cuts then stop at twice what grows back, and the lawn never comes down.
    """
    if standing_mm <= target_mm:
        return ()
    heights = [max(target_mm, lowest_cut_mm(standing_mm))]
    while heights[-1] > target_mm + DUST_MM:
        if not comes_down(target_mm, growth_mm_between):
            raise ValueError(f"{growth_mm_between:g} mm grows back between two cuts: it never reaches {target_mm:g} mm")
        heights.append(max(target_mm, lowest_cut_mm(heights[-1] + growth_mm_between)))
    return tuple(heights)


def comes_down(target_mm: float, growth_mm_between: float) -> bool:
    """Tell whether cuts of a third reach a height when so much grows back between two of them."""
    return 2 * growth_mm_between < target_mm - DUST_MM


def days_between_cuts(set_height_mm: float, growth_mm_per_day: float) -> float:
    """Return the days a lawn takes from its set height to its mowing height."""
    return (mow_at_mm(set_height_mm) - set_height_mm) / growth_mm_per_day


def cuts_a_season(months: float, days_between: float) -> float:
    """Return how many cuts fall in that many months of the same length."""
    return months * DAYS_A_MONTH / days_between


def clippings_l(area_m2: float, removed_mm: float, density_share: float) -> float:
    """Return the loose volume of clippings: the layer cut off, times the share of it that is leaf."""
    return area_m2 * removed_mm * density_share


def mowing_minutes(area_m2: float, width_mm: float, speed_km_per_h: float, overlap: float) -> float:
    """Return the time to mow an area at a steady walk; `overlap` is the part of each pass mown twice."""
    metres = area_m2 / (width_mm / 1000 * (1 - overlap))
    return metres / (speed_km_per_h * 1000 / 60)
