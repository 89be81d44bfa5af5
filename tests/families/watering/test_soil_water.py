"""The arithmetic of water in soil against published worked examples."""

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.watering import soil_water, tables


def test_w32_water_by_weight() -> None:
    """New Mexico State University after Israelsen, 1932 (A): loam 2.02 in/ft = 169 mm/m; silty clay 2.49 in/ft."""
    loam = _per_metre(22.3, 10.2, 1.395)
    assert loam == pytest.approx(169, abs=0.5)
    assert loam * 12 / 1000 == pytest.approx(2.02, abs=0.01)
    assert _per_metre(31.2, 15.0, 1.279) * 12 / 1000 == pytest.approx(2.49, abs=0.01)


def _per_metre(capacity: float, wilting: float, density: float) -> float:
    return soil_water.total_available_mm(capacity / 100 * density, wilting / 100 * density, 1.0)


@pytest.mark.parametrize(
    ("capacity", "wilting", "roots", "p", "total", "easy"),
    [
        (0.15, 0.06, 0.4, 0.30, 36, 11),
        (0.15, 0.06, 0.8, 0.40, 72, 29),
        (0.15, 0.06, 1.2, 0.55, 108, 59),
        (0.32, 0.15, 0.4, 0.30, 68, 20),
        (0.32, 0.15, 0.8, 0.40, 136, 54),
        (0.32, 0.15, 1.2, 0.55, 204, 112),
        (0.35, 0.23, 0.4, 0.30, 48, 14),
        (0.35, 0.23, 0.8, 0.40, 96, 38),
        (0.35, 0.23, 1.2, 0.55, 144, 79),
    ],
)
def test_w33_onion_tomato_and_maize(
    capacity: float, wilting: float, roots: float, p: float, total: float, easy: float
) -> None:
    """FAO-56 example 36 (memory, recomputed): loamy sand, silt, silty clay; within 0.5 mm."""
    found = soil_water.total_available_mm(capacity, wilting, roots)
    assert found == pytest.approx(total, abs=0.5)
    assert soil_water.readily_available_mm(found, p) == pytest.approx(easy, abs=0.5)


@pytest.mark.parametrize(("use", "p"), [(3, 0.58), (5, 0.50), (7, 0.42)])
def test_w34_depletion_by_use(use: float, p: float) -> None:
    """FAO-56 table 22 (B): p of 0.50 at 3, 5 and 7 mm a day."""
    assert soil_water.adjusted_depletion(0.50, use) == pytest.approx(p, abs=0.01)


def test_depletion_stays_within_bounds() -> None:
    """FAO-56 table 22 (B): 0.1 to 0.8."""
    assert soil_water.adjusted_depletion(0.20, 20) == 0.1
    assert soil_water.adjusted_depletion(0.70, 0) == 0.8


def test_w35_stress() -> None:
    """FAO-56 chapter 8 (A): TAW 60, p 0.5, 45 gone: RAW 30, Ks 0.50."""
    assert soil_water.readily_available_mm(60, 0.5) == pytest.approx(30, abs=0.01)
    assert soil_water.stress_factor(60, 0.5, 45) == pytest.approx(0.50, abs=0.01)
    assert soil_water.stress_factor(60, 0.5, 30) == 1
    assert soil_water.stress_factor(60, 0.5, 70) == 0


def test_w36_lawn_on_loam() -> None:
    """Saxton and Rawls 2006 (B), FAO-56 table 22 (B): TAW 42, RAW 16.8 mm, 3.5 days, 3 in practice."""
    loam = tables.SOILS["loam"]
    total = soil_water.total_available_mm(loam.field_capacity, loam.wilting_point, 0.30)
    easy = soil_water.readily_available_mm(total, tables.CROPS["cool lawn"].depletion)
    days = soil_water.days_between(easy, 4.75)
    assert total == pytest.approx(42, abs=0.1)
    assert easy == pytest.approx(16.8, abs=0.1)
    assert days == pytest.approx(3.5, abs=0.1)
    assert soil_water.whole_days(days) == 3


def test_w38_longest_run() -> None:
    """Hung's formula in a trade article (B): P 1.5, f0 2.0, fc 0.2 in/h, b 2 per h: 11.3 min."""
    hours = soil_water.longest_run_h(1.5, 2.0, 0.2, 2)
    assert hours is not None
    assert hours * 60 == pytest.approx(11.3, abs=0.1)


def test_longest_run_at_the_ends() -> None:
    assert soil_water.longest_run_h(0.2, 2.0, 0.2, 2) is None  # the soil keeps up for ever
    assert soil_water.longest_run_h(2.0, 2.0, 0.2, 2) == 0  # and never begins to


def test_trap_t11_the_lower_intake_is_taken() -> None:
    """Loam is 5 to 10 mm/h in one table and 10 to 20 in another, sandy loam 10 to 20 and 20 to 30."""
    assert tables.SOILS["loam"].intake_mm_per_h == 5
    assert tables.SOILS["sandy loam"].intake_mm_per_h == 10
    assert tables.SOILS["clay"].intake_mm_per_h == 1


def test_cycles_and_soak() -> None:
    assert soil_water.cycles_needed(40, 15) == 3
    assert soil_water.cycles_needed(45, 15) == 3
    assert soil_water.soak_minutes(15, 24, 8) == pytest.approx(30)
    assert soil_water.soak_minutes(15, 5, 8) == 0
    assert soil_water.day_plan(30, 2, 45) == ((0, 15), (60, 75))


def test_a_bulb_is_half_a_ball_until_it_is_wide() -> None:
    """Solid geometry: 1 L that fills 0.1 of the soil is half a ball 337 mm across, 168 mm deep."""
    wide, deep = soil_water.bulb_m(1, 0.6, 0.1)
    assert (wide, deep) == pytest.approx((0.3367, 0.1684), abs=0.0001)
    narrow, far = soil_water.bulb_m(1, 0.2, 0.1)
    assert (narrow, far) == pytest.approx((0.2, 0.4775), abs=0.0001)


@given(p=st.floats(0.5, 50), steady=st.floats(0.1, 10), more=st.floats(0.1, 50), decay=st.floats(0.1, 10))
def test_metric_and_imperial_longest_runs_agree(p: float, steady: float, more: float, decay: float) -> None:
    metric = soil_water.longest_run_h(p, steady + more, steady, decay)
    inches = soil_water.longest_run_h(p / 25.4, (steady + more) / 25.4, steady / 25.4, decay)
    assert (metric is None) == (inches is None)
    if metric is not None and inches is not None:
        assert metric == pytest.approx(inches, abs=1e-9)
        assert metric >= -1e-12


@given(water=st.floats(0.05, 50), widest=st.floats(0.2, 1), share=st.floats(0.01, 0.3))
def test_a_bulb_holds_its_water(water: float, widest: float, share: float) -> None:
    wide, deep = soil_water.bulb_m(water, widest, share)
    assert wide <= widest
    assert deep >= wide / 2 - 1e-9
    assert 2 / 3 * pi * (wide / 2) ** 2 * deep * share * 1000 == pytest.approx(water)
