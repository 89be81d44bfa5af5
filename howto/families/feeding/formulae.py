"""The arithmetic of feeding: labels, rates, trees, rings and mixes; numbers in, number out.

Functions without a unit in their names keep whatever unit goes in: pounds and 1,000 sq ft, or grams and m².
"""

from math import ceil, pi

# P2O5 and K2O to P and K, from atomic masses; Virginia Tech (SPES-201NP) prints 0.4365 and 0.8301.
P_IN_P2O5 = 0.4364
K_IN_K2O = 0.8301
PPM_A_PERCENT = 10.0  # 1 g of a 1 % product in 1 L holds 10 mg, which is 10 ppm
AGE_PART = 0.1  # of the full dose, for each year of a tree's age


def product_for(nutrient: float, percent: float) -> float:
    """Return the product that holds an amount (or rate) of nutrient; ValueError if it holds none."""
    if percent <= 0:
        raise ValueError("a product without the nutrient cannot supply it")
    return nutrient * 100 / percent


def nutrient_in(product: float, percent: float) -> float:
    """Return the nutrient in an amount (or rate) of product, such as a bag."""
    return product * percent / 100


def age_part(years: float) -> float:
    """Return a young tree's part of the full dose: a tenth for each year of age, all of it from the tenth."""
    return min(1.0, max(0.0, years) * AGE_PART)


def ring_m2(inner_mm: float, outer_mm: float, part: float = 1.0) -> float:
    """Return the area between two circles round a stem, or the `part` of it that is soil; 0 if turned about."""
    return max(0.0, pi * (outer_mm**2 - inner_mm**2) / 1e6) * part


def ppm(percent: float, g_per_l: float) -> float:
    """Return the strength of a mix in parts per million of the nutrient: 10 x percent x g/L."""
    return PPM_A_PERCENT * percent * g_per_l


def g_per_l_for(strength_ppm: float, percent: float) -> float:
    """Return the grams of product a litre needs for a strength; ValueError if it holds none of the nutrient."""
    if percent <= 0:
        raise ValueError("a product without the nutrient cannot supply it")
    return strength_ppm / (PPM_A_PERCENT * percent)


def fills(total: float, size: float) -> int:
    """Return how many times a can or sprayer is filled, the last one perhaps not to the top."""
    return max(1, ceil(total / size - 1e-9))


def bags(total: float, bag: float) -> int:
    """Return the whole bags to buy."""
    return ceil(total / bag - 1e-9)
