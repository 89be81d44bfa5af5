"""The arithmetic of feeding: labels, rates, trees, rings and mixes; numbers in, number out.

Functions without a unit in their names keep whatever unit goes in: pounds and 1,000 sq ft, or grams and m².
"""

from math import ceil, pi

# P2O5 and K2O to P and K, from atomic masses; Virginia Tech (SPES-201NP) prints 0.4365 and 0.8301.
P_IN_P2O5 = 0.4364
K_IN_K2O = 0.8301
PPM_A_PERCENT = 10.0  # 1 g of a 1 % product in 1 L holds 10 mg, which is 10 ppm
PPM_AN_OUNCE = 75.0  # 1 oz of pure nutrient in 100 US gal, as Texas A&M rounds it (exactly 74.9)


def phosphorus(p2o5: float) -> float:
    """Return the phosphorus (P) in an amount or percentage of phosphate (P2O5)."""
    return p2o5 * P_IN_P2O5


def phosphate(p: float) -> float:
    """Return the phosphate (P2O5) that holds an amount or percentage of phosphorus (P)."""
    return p / P_IN_P2O5


def potassium(k2o: float) -> float:
    """Return the potassium (K) in an amount or percentage of potash (K2O)."""
    return k2o * K_IN_K2O


def potash(k: float) -> float:
    """Return the potash (K2O) that holds an amount or percentage of potassium (K)."""
    return k / K_IN_K2O


def product_for(nutrient: float, percent: float) -> float:
    """Return the product that holds an amount (or rate) of nutrient; ValueError if it holds none."""
    if percent <= 0:
        raise ValueError("a product without the nutrient cannot supply it")
    return nutrient * 100 / percent


def nutrient_in(product: float, percent: float) -> float:
    """Return the nutrient in an amount (or rate) of product, such as a bag."""
    return product * percent / 100


def on_area(rate: float, area: float, rate_area: float = 1.0) -> float:
    """Return what an area takes at a rate given for `rate_area`: 5 lb for 1,000 sq ft on 12,000 is 60 lb."""
    return rate * area / rate_area


def area_fed(bag: float, percent: float, rate: float, rate_area: float = 1.0) -> float:
    """Return the area a bag feeds at a nutrient rate given for `rate_area`; ValueError for no rate."""
    if rate <= 0:
        raise ValueError("a rate of nothing feeds any area")
    return nutrient_in(bag, percent) / rate * rate_area


def across(girth: float) -> float:
    """Return the thickness of a round trunk from the tape round it."""
    return girth / pi


def tree_nitrogen(trunk: float, for_each: float, most: float = float("inf")) -> float:
    """Return a tree's nitrogen for a year by its trunk: so much for each inch or cm, and at most `most`."""
    return min(trunk * for_each, most)


def by_age(full: float, years: float, share_a_year: float = 0.1) -> float:
    """Return a young tree's part of the full dose: a tenth for each year of age, all of it from the tenth."""
    return full * min(1.0, max(0.0, years) * share_a_year)


def split(total: float, doses: int) -> float:
    """Return one of so many equal doses; ValueError for fewer than one."""
    if doses < 1:
        raise ValueError("a total is split into at least one dose")
    return total / doses


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


def ppm_us(percent: float, ounces: float, us_gallons: float = 100.0) -> float:
    """Return the strength of ounces of product in US gallons of water, at 75 ppm for a pure ounce in 100."""
    return percent / 100 * PPM_AN_OUNCE * ounces * 100 / us_gallons


def ounces_for(strength_ppm: float, percent: float, us_gallons: float = 100.0) -> float:
    """Return the ounces of product for a strength in US gallons of water; ValueError if it holds none."""
    if percent <= 0:
        raise ValueError("a product without the nutrient cannot supply it")
    return strength_ppm / (percent / 100 * PPM_AN_OUNCE) * us_gallons / 100


def stock(strength: float, injector: float) -> float:
    """Return the strength of the stock for a 1:n injector: n times that of the feed."""
    return strength * injector


def stock_volume(feed: float, injector: float) -> float:
    """Return the stock a 1:n injector draws for so much feed."""
    return feed / injector


def fills(total: float, size: float) -> int:
    """Return how many times a can or sprayer is filled, the last one perhaps not to the top."""
    return max(1, ceil(total / size - 1e-9))


def bags(total: float, bag: float) -> int:
    """Return the whole bags to buy."""
    return ceil(total / bag - 1e-9)


def cost(total: float, bag: float, price: float) -> float:
    """Return the price of what is used, where a bag may serve more than one job."""
    return total / bag * price


def price_of_nutrient(price: float, bag: float, percent: float) -> float:
    """Return the price of one unit of weight of nutrient; ValueError if the bag holds none."""
    held = nutrient_in(bag, percent)
    if held <= 0:
        raise ValueError("a product without the nutrient has no price for it")
    return price / held
