"""The arithmetic of feeding against published worked examples; each answer is carried over as it was printed."""

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.feeding import formulae, tables
from howto.families.feeding.label import Label, as_oxides, numbers_in
from howto.quantities import convert

POSITIVE = st.floats(0.01, 10_000)
PERCENT = st.floats(0.1, 100)

# -- products for a rate: nutrient, percent, product, tolerance; in lb for 1,000 sq ft --

PRODUCTS = (
    # H9: University of Georgia, lawn fertilizer calculations (A), printed to 0.1 lb
    ("H9 10-10-10", 1.0, 10.0, 10.0, 0.05),
    ("H9 12-4-8", 1.0, 12.0, 8.3, 0.05),
    ("H9 5-10-15", 1.0, 5.0, 20.0, 0.05),
    ("H9 16-4-8", 1.0, 16.0, 6.3, 0.05),
    # H10: the same (A), ammonium nitrate; printed 3 lb
    ("H10 33 % ammonium nitrate", 1.0, 33.0, 3.0, 0.05),
    # H12: a gardening site (C)
    ("H12 3 lb from 21 %", 3.0, 21.0, 14.28, 0.02),
    # H13: a country gardener's site (C)
    ("H13 1 lb from 20 %", 1.0, 20.0, 5.0, 0.0),
    # H15: a landscape trade page (C)
    ("H15 0.9 lb from 20-5-10", 0.9, 20.0, 4.5, 1e-9),
    # H16: a Texas extension officer's column (B)
    ("H16 46-0-0", 1.0, 46.0, 2.17, 0.01),
    ("H16 15-5-10", 1.0, 15.0, 6.66, 0.01),
    # H24: San Diego Master Gardeners (B), which round up to 5 and 8 lb
    ("H24 ammonium sulphate", 1.0, 21.0, 5.0, 0.35),
    ("H24 blood meal", 1.0, 13.0, 8.0, 0.35),
)


@pytest.mark.parametrize(
    ("nutrient", "percent", "product", "tolerance"), [row[1:] for row in PRODUCTS], ids=[row[0] for row in PRODUCTS]
)
def test_product_for_a_rate(nutrient: float, percent: float, product: float, tolerance: float) -> None:
    assert formulae.product_for(nutrient, percent) == pytest.approx(product, abs=tolerance)


@pytest.mark.parametrize(
    ("rate", "area", "total", "tolerance"),
    [
        # H12: a gardening site (C): 5,000 sq ft take 71.42 lb
        pytest.param(3 * 100 / 21, 5_000.0, 71.42, 0.02, id="H12"),
        # H13: a country gardener's site (C): 12,000 sq ft take 60 lb
        pytest.param(5.0, 12_000.0, 60.0, 0.0, id="H13"),
    ],
)
def test_product_for_an_area(rate: float, area: float, total: float, tolerance: float) -> None:
    assert formulae.on_area(rate, area, 1_000) == pytest.approx(total, abs=tolerance)


def test_h17_metric_twin() -> None:
    """Derived from H9: 4.88 g/m² N from 10-10-10 on 100 m² is 4.88 kg."""
    assert formulae.on_area(formulae.product_for(4.88, 10), 100) / 1000 == pytest.approx(4.88, abs=0.01)


def test_h18_potash() -> None:
    """Virginia Tech, SPES-201NP (A): 49.8 % K is 60.0 % K2O, within 0.05; its own factor is 1.2051."""
    assert formulae.potash(49.8) == pytest.approx(60.0, abs=0.05)


def test_factors_of_the_label() -> None:
    """Virginia Tech, SPES-201NP (A) prints 0.4365 and 2.2910 for P, 0.8301 and 1.2051 for K."""
    assert formulae.phosphorus(1) == pytest.approx(0.4365, abs=0.0002)
    assert formulae.phosphate(1) == pytest.approx(2.2910, abs=0.001)
    assert formulae.potassium(1) == pytest.approx(0.8301, abs=0.00005)
    assert formulae.potash(1) == pytest.approx(1.2051, abs=0.0006)


# -- feed in water --


def test_h20_calcium_nitrate() -> None:
    """Texas A&M (A): 15 % N, 1 oz in 100 US gal is 11.25 ppm; 250 ppm needs 22 oz, within 0.3 (exactly 22.2)."""
    assert formulae.ppm_us(15, 1) == pytest.approx(11.25)
    assert formulae.ounces_for(250, 15) == pytest.approx(22, abs=0.3)


def test_h21_ounces_for_200_ppm() -> None:
    """A glasshouse growers' page (C): 200 ppm N from 33 % is 8.09 oz in 100 US gal, within 0.02."""
    assert formulae.ounces_for(200, 33) == pytest.approx(8.09, abs=0.02)


def test_h22_a_gram_in_a_litre() -> None:
    """A growers' site (C): 1 g of 20-20-20 in 1 L is 200 ppm of each nutrient of the label."""
    assert [formulae.ppm(percent, 1) for percent in Label(20, 20, 20)] == [200, 200, 200]


def test_h23_two_salts_together() -> None:
    """The same (C): 0.55 g/L of 13-0-44 and 0.37 g/L of 12-62-0: 201 ppm K, 101 ppm P, 116 ppm N, each within 1."""
    one, two = Label(13, 0, 44), Label(12, 62, 0)
    assert formulae.ppm(one.potassium, 0.55) == pytest.approx(201, abs=1)
    assert formulae.ppm(two.phosphorus, 0.37) == pytest.approx(101, abs=1)
    assert formulae.ppm(one.nitrogen, 0.55) + formulae.ppm(two.nitrogen, 0.37) == pytest.approx(116, abs=1)


def test_trap_t2_an_ounce_of_33_percent() -> None:
    """Texas A&M prints 0.33 x 75 = 29.75, so 5 oz and 7 oz; it is 24.75 ppm, so 6.06 oz and 8.08 oz."""
    assert formulae.ppm_us(33, 1) == pytest.approx(24.75)
    assert formulae.ounces_for(150, 33) == pytest.approx(6.06, abs=0.005)
    assert formulae.ounces_for(200, 33) == pytest.approx(8.08, abs=0.005)


def test_the_us_and_metric_sums_agree() -> None:
    """Texas A&M rounds 74.9 ppm to 75: an ounce in 100 US gal is 0.0749 g/L."""
    grams = convert(1, "oz", "g") / convert(100, "US gal", "L")
    assert formulae.ppm(100, grams) == pytest.approx(74.9, abs=0.05)
    assert formulae.ppm_us(100, 1) == pytest.approx(formulae.ppm(100, grams), rel=0.002)


def test_stock_and_cans() -> None:
    """Texas A&M (A): a 1:n injector needs n times the feed; the rest is worked by hand."""
    assert formulae.stock(1.5, 100) == 150
    assert formulae.stock_volume(200, 100) == 2
    assert formulae.g_per_l_for(200, 20) == pytest.approx(1.0)
    assert [formulae.fills(litres, 9) for litres in (9, 9.01, 27, 45)] == [1, 2, 3, 5]
    assert formulae.bags(40, 20) == 2
    assert formulae.bags(41, 20) == 3


# -- trees --


def test_h24_three_equal_lots() -> None:
    """San Diego Master Gardeners (B): 5 lb of ammonium sulphate in 3 equal lots is 1.67 lb each."""
    assert formulae.split(5, 3) == pytest.approx(1.67, abs=0.005)


def test_h25_apple_of_three_inches() -> None:
    """University of Tennessee (A) and a gardening site (C): 0.3 lb N (136 g), 1.36 kg; capped at 1.13 kg; 1 %."""
    assert formulae.tree_nitrogen(3, 0.1) == pytest.approx(0.3)
    nitrogen = formulae.tree_nitrogen(7.62, tables.POME_G_PER_CM)
    assert nitrogen == pytest.approx(136, rel=0.01)
    assert formulae.product_for(nitrogen, 10) / 1000 == pytest.approx(1.36, rel=0.01)
    capped = formulae.tree_nitrogen(7.62, tables.POME_G_PER_CM, tables.MOST_TREE_G)
    assert formulae.product_for(capped, 10) / 1000 == pytest.approx(1.13, rel=0.01)


def test_the_rates_by_trunk() -> None:
    """University of Tennessee and Colorado State University (A): 17.9 and 22.3 g N a cm, 0.1 and 1/8 lb an inch."""
    assert formulae.tree_nitrogen(1, tables.POME_G_PER_CM) == pytest.approx(17.9, abs=0.05)
    assert formulae.tree_nitrogen(1, tables.STONE_G_PER_CM) == pytest.approx(22.3, abs=0.05)


def test_h26_nutrient_in_a_bag() -> None:
    """University of Arizona, 2002 (A): 10 lb of 10-10-10 holds 1 lb of each."""
    assert [formulae.nutrient_in(10, percent) for percent in (10, 10, 10)] == [1, 1, 1]


def test_h28_dessert_apple_and_cooker_in_grass() -> None:
    """Royal Horticultural Society (A): 6 m² at 140 g/m² is 840 g; half as much again for a cooker, 1260 g."""
    dessert, cooker = tables.FRUITS["apple"].grass_g_per_m2, tables.FRUITS["cooking apple"].grass_g_per_m2
    assert dessert is not None
    assert cooker is not None
    assert formulae.on_area(dessert, 6) == 840
    assert formulae.on_area(cooker, 6) == 1260


def test_h29_apple_of_four_years() -> None:
    """After an Australian fruit handbook (B): 2 kg, a tenth for each year: 4 years is 0.8 kg; 12 years all of it."""
    assert formulae.by_age(2, 4) == pytest.approx(0.8)
    assert formulae.by_age(2, 12) == 2
    assert formulae.by_age(2, 0) == 0


def test_trap_t6_a_bag_of_urea() -> None:
    """A Texas column (B) prints 25,000 sq ft for 50 lb of 46-0-0 at 1 lb N; it is 23,000."""
    assert formulae.area_fed(50, 46, 1, 1_000) == pytest.approx(23_000)


def test_trap_t13_an_acre_at_five_pounds() -> None:
    """A Georgia column (B) prints 200 lb for an acre at 5 lb a thousand; it is 218 lb."""
    assert formulae.on_area(5, 43_560, 1_000) == pytest.approx(218, abs=0.5)


def test_the_ring() -> None:
    """Worked by hand: π x (1² - 0.5²) = 2.356 m², half of it before a wall; nothing where it is turned about."""
    assert formulae.ring_m2(500, 1000) == pytest.approx(2.356, abs=0.0005)
    assert formulae.ring_m2(500, 1000, 0.5) == pytest.approx(1.178, abs=0.0005)
    assert formulae.ring_m2(1000, 500) == 0
    assert formulae.across(100 * pi) == pytest.approx(100)


def test_money() -> None:
    """Worked by hand: 5 kg of a 20 kg bag at 40 is 10; its 10 % N is 2 kg, so 20 a kilogram."""
    assert formulae.cost(5, 20, 40) == 10
    assert formulae.price_of_nutrient(40, 20, 10) == 20


# -- labels as they are written --


@pytest.mark.parametrize(
    ("text", "numbers"),
    [
        ("10-10-10", (10, 10, 10)),
        ("8:4:10", (8, 4, 10)),
        ("NPK 12-4,5-8 + TE", (12, 4.5, 8)),
        ("N-P-K: 5 - 3 - 8", (5, 3, 8)),
        ("12 % – 0 % – 44 %", (12, 0, 44)),
        ("46/0/0", (46, 0, 0)),
        ("6 5 10", (6, 5, 10)),
        ("6-5-10 with iron", (6, 5, 10)),
        ("6\u20135\u201310\u00a0+ MgO", (6, 5, 10)),
    ],
)
def test_a_label_is_read(text: str, numbers: tuple[float, ...]) -> None:
    assert numbers_in(text) == numbers


@pytest.mark.parametrize("text", ["", "general", "10-10", "10-10-10-2", "10,10,10", "blood and bone", "-", "21 % N"])
def test_a_text_that_is_no_label_is_not_read(text: str) -> None:
    assert numbers_in(text) is None


def test_a_label_in_elements() -> None:
    """Worked by hand: 4 % P is 9.17 % P2O5 and 10 % K is 12.05 % K2O."""
    label = as_oxides((8, 4, 10), "element")
    assert label.phosphate == pytest.approx(9.166, abs=0.001)
    assert label.potash == pytest.approx(12.047, abs=0.001)
    assert label.phosphorus == pytest.approx(4)
    assert label.potassium == pytest.approx(10)


# -- what cannot be --


def test_a_product_without_the_nutrient_is_refused() -> None:
    with pytest.raises(ValueError, match="without the nutrient"):
        formulae.product_for(1, 0)
    with pytest.raises(ValueError, match="without the nutrient"):
        formulae.g_per_l_for(100, 0)
    with pytest.raises(ValueError, match="without the nutrient"):
        formulae.ounces_for(100, 0)
    with pytest.raises(ValueError, match="no price"):
        formulae.price_of_nutrient(10, 20, 0)


def test_no_rate_and_no_dose_are_refused() -> None:
    with pytest.raises(ValueError, match="a rate of nothing"):
        formulae.area_fed(50, 46, 0)
    with pytest.raises(ValueError, match="at least one dose"):
        formulae.split(5, 0)


# -- properties --


@given(rate=POSITIVE, percent=PERCENT)
def test_the_product_holds_the_nutrient(rate: float, percent: float) -> None:
    assert formulae.nutrient_in(formulae.product_for(rate, percent), percent) == pytest.approx(rate)


@given(rate=POSITIVE, area=POSITIVE)
def test_double_the_area_takes_double_the_product(rate: float, area: float) -> None:
    assert formulae.on_area(rate, 2 * area) == pytest.approx(2 * formulae.on_area(rate, area))


@given(bag=POSITIVE, percent=PERCENT, rate=POSITIVE)
def test_what_a_bag_feeds_takes_a_bag(bag: float, percent: float, rate: float) -> None:
    fed = formulae.area_fed(bag, percent, rate)
    assert formulae.on_area(formulae.product_for(rate, percent), fed) == pytest.approx(bag)
    assert formulae.area_fed(2 * bag, percent, rate) == pytest.approx(2 * fed)


@given(rate=st.floats(0.1, 10), percent=PERCENT, square_feet=st.floats(10, 100_000))
def test_pounds_and_grams_agree(rate: float, percent: float, square_feet: float) -> None:
    pounds = formulae.on_area(formulae.product_for(rate, percent), square_feet, 1_000)
    grams_per_m2 = convert(rate, "lb/1000 ft2", "g/m2")
    grams = formulae.on_area(formulae.product_for(grams_per_m2, percent), convert(square_feet, "ft2", "m2"))
    assert convert(pounds, "lb", "g") == pytest.approx(grams, rel=1e-9)


@given(strength=st.floats(1, 2_000), percent=PERCENT)
def test_a_mix_has_the_strength_it_was_reckoned_for(strength: float, percent: float) -> None:
    assert formulae.ppm(percent, formulae.g_per_l_for(strength, percent)) == pytest.approx(strength)
    assert formulae.ppm_us(percent, formulae.ounces_for(strength, percent, 40), 40) == pytest.approx(strength)


@given(amount=st.floats(0, 100))
def test_there_and_back_again(amount: float) -> None:
    assert formulae.phosphorus(formulae.phosphate(amount)) == pytest.approx(amount)
    assert formulae.potash(formulae.potassium(amount)) == pytest.approx(amount)


@given(years=st.floats(0, 60))
def test_a_tree_by_age_never_gets_less_for_being_older(years: float) -> None:
    assert formulae.by_age(2_000, years) <= formulae.by_age(2_000, years + 1) <= 2_000


@given(total=st.floats(0.1, 1_000), size=st.floats(0.5, 50))
def test_fills_are_enough_and_not_one_too_many(total: float, size: float) -> None:
    count = formulae.fills(total, size)
    assert count * size >= total - 1e-6
    assert (count - 1) * size < total
