"""The arithmetic of feeding against published worked examples; each answer is carried over as it was printed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.feeding import formulae, tables
from howto.families.feeding.label import BagLabel, as_oxides, numbers_in
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


def test_h18_potash() -> None:
    """Virginia Tech, SPES-201NP (A): 49.8 % K is 60.0 % K2O, within 0.05; its own factor is 1.2051."""
    assert as_oxides((0, 0, 49.8), "element").potash == pytest.approx(60.0, abs=0.05)


def test_factors_of_the_label() -> None:
    """Virginia Tech, SPES-201NP (A) prints 0.4365 and 2.2910 for P, 0.8301 and 1.2051 for K."""
    assert pytest.approx(0.4365, abs=0.0002) == formulae.P_IN_P2O5
    assert pytest.approx(2.2910, abs=0.001) == 1 / formulae.P_IN_P2O5
    assert pytest.approx(0.8301, abs=0.00005) == formulae.K_IN_K2O
    assert pytest.approx(1.2051, abs=0.0006) == 1 / formulae.K_IN_K2O


# -- feed in water --

HUNDRED_GAL_L = convert(100, "US gal", "L")


def ounces(strength_ppm: float, percent: float) -> float:
    """Return the ounces of product in 100 US gal for a strength."""
    return convert(formulae.g_per_l_for(strength_ppm, percent) * HUNDRED_GAL_L, "g", "oz")


def ppm_of_an_ounce(percent: float) -> float:
    """Return the strength of an ounce of product in 100 US gal."""
    return formulae.ppm(percent, convert(1, "oz", "g") / HUNDRED_GAL_L)


def test_h20_calcium_nitrate() -> None:
    """Texas A&M (A): 15 % N, 1 oz in 100 US gal is 11.25 ppm; 250 ppm needs 22 oz, within 0.3 (exactly 22.2)."""
    assert ppm_of_an_ounce(15) == pytest.approx(11.25, abs=0.02)
    assert ounces(250, 15) == pytest.approx(22, abs=0.3)


def test_h21_ounces_for_200_ppm() -> None:
    """A glasshouse growers' page (C): 200 ppm N from 33 % is 8.09 oz in 100 US gal, within 0.02."""
    assert ounces(200, 33) == pytest.approx(8.09, abs=0.02)


def test_h22_a_gram_in_a_litre() -> None:
    """A growers' site (C): 1 g of 20-20-20 in 1 L is 200 ppm of each nutrient of the label."""
    assert [formulae.ppm(percent, 1) for percent in BagLabel(20, 20, 20)] == [200, 200, 200]


def test_h23_two_salts_together() -> None:
    """The same (C): 0.55 g/L of 13-0-44 and 0.37 g/L of 12-62-0: 201 ppm K, 101 ppm P, 116 ppm N, each within 1."""
    one, two = BagLabel(13, 0, 44), BagLabel(12, 62, 0)
    assert formulae.ppm(one.potassium, 0.55) == pytest.approx(201, abs=1)
    assert formulae.ppm(two.phosphorus, 0.37) == pytest.approx(101, abs=1)
    assert formulae.ppm(one.nitrogen, 0.55) + formulae.ppm(two.nitrogen, 0.37) == pytest.approx(116, abs=1)


def test_trap_t2_an_ounce_of_33_percent() -> None:
    """Texas A&M prints 0.33 x 75 = 29.75, so 5 oz and 7 oz; it is 24.75 ppm, so 6.06 oz and 8.08 oz."""
    assert ppm_of_an_ounce(33) == pytest.approx(24.75, abs=0.05)
    assert ounces(150, 33) == pytest.approx(6.06, abs=0.015)
    assert ounces(200, 33) == pytest.approx(8.08, abs=0.015)


def test_the_us_and_metric_sums_agree() -> None:
    """Texas A&M rounds 74.9 ppm to 75: an ounce in 100 US gal is 0.0749 g/L."""
    assert ppm_of_an_ounce(100) == pytest.approx(74.9, abs=0.05)


def test_mixes_cans_and_bags() -> None:
    """Worked by hand."""
    assert formulae.g_per_l_for(200, 20) == pytest.approx(1.0)
    assert [formulae.fills(litres, 9) for litres in (9, 9.01, 27, 45)] == [1, 2, 3, 5]
    assert [formulae.bags(weight, 20) for weight in (40, 41)] == [2, 3]


# -- trees --


def test_the_rates_by_trunk() -> None:
    """University of Tennessee and Colorado State University (A): 17.9 and 22.3 g N a cm, 0.1 and 1/8 lb an inch."""
    assert pytest.approx(17.9, abs=0.05) == tables.POME_G_PER_CM
    assert pytest.approx(22.3, abs=0.05) == tables.STONE_G_PER_CM


def test_h26_nutrient_in_a_bag() -> None:
    """University of Arizona, 2002 (A): 10 lb of 10-10-10 holds 1 lb of each."""
    assert [formulae.nutrient_in(10, percent) for percent in (10, 10, 10)] == [1, 1, 1]


def test_h29_apple_of_four_years() -> None:
    """After an Australian fruit handbook (B): 2 kg, a tenth for each year: 4 years is 0.8 kg; 12 years all of it."""
    assert 2 * formulae.age_part(4) == pytest.approx(0.8)
    assert formulae.age_part(12) == 1
    assert formulae.age_part(0) == 0


def test_trap_t6_a_bag_of_urea() -> None:
    """A Texas column (B) prints 25,000 sq ft for 50 lb of 46-0-0 at 1 lb N; it is 23,000."""
    assert 50 / formulae.product_for(1, 46) * 1_000 == pytest.approx(23_000)


def test_the_ring() -> None:
    """Worked by hand: π x (1² - 0.5²) = 2.356 m², half of it before a wall; nothing where it is turned about."""
    assert formulae.ring_m2(500, 1000) == pytest.approx(2.356, abs=0.0005)
    assert formulae.ring_m2(500, 1000, 0.5) == pytest.approx(1.178, abs=0.0005)
    assert formulae.ring_m2(1000, 500) == 0


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


# -- properties --


@given(rate=POSITIVE, percent=PERCENT)
def test_the_product_holds_the_nutrient(rate: float, percent: float) -> None:
    assert formulae.nutrient_in(formulae.product_for(rate, percent), percent) == pytest.approx(rate)


@given(strength=st.floats(1, 2_000), percent=PERCENT)
def test_a_mix_has_the_strength_it_was_reckoned_for(strength: float, percent: float) -> None:
    assert formulae.ppm(percent, formulae.g_per_l_for(strength, percent)) == pytest.approx(strength)


@given(amount=st.floats(0, 100))
def test_there_and_back_again(amount: float) -> None:
    label = as_oxides((0, amount, amount), "element")
    assert (label.phosphorus, label.potassium) == pytest.approx((amount, amount))


@given(years=st.floats(0, 60))
def test_a_tree_by_age_never_gets_less_for_being_older(years: float) -> None:
    assert formulae.age_part(years) <= formulae.age_part(years + 1) <= 1


@given(total=st.floats(0.1, 1_000), size=st.floats(0.5, 50))
def test_fills_are_enough_and_not_one_too_many(total: float, size: float) -> None:
    count = formulae.fills(total, size)
    assert count * size >= total - 1e-6
    assert (count - 1) * size < total
