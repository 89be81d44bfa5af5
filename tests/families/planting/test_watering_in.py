import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.planting import watering_in
from howto.families.planting.watering_in import LowHigh, WateringStage
from howto.quantities import convert

TWO_INCHES = 50.8


def near(low: float, high: float, dust: float = 0.1) -> tuple[object, object]:
    return pytest.approx(low, abs=dust), pytest.approx(high, abs=dust)


def test_h43_a_tree_of_two_inches() -> None:
    # H43: worked from University of Minnesota [A]: 2 to 3 gal, 7.6 to 11.4 L; UF/IFAS [A]: 2 gal an inch, 15.1 L; 0.1 L
    assert watering_in.by_calliper(TWO_INCHES, watering_in.COOL_GAL_PER_IN) == near(7.6, 11.4)
    assert watering_in.by_calliper(TWO_INCHES, watering_in.WARM_GAL_PER_IN).low == pytest.approx(15.1, abs=0.1)


def test_h43_a_nursery_column_says_2_to_6_gallons() -> None:
    # H43: a nursery column for a cool climate and others [B]: 1 to 3 gal an inch, 2 to 6 gal a tree; 0.1 L
    found = watering_in.by_calliper(TWO_INCHES, LowHigh(1, 3))
    assert [convert(each, "L", "US gal") for each in found] == [pytest.approx(2), pytest.approx(6)]


def test_h44_five_inches_at_10_gallons_an_inch_are_50_gallons() -> None:
    # H44: a general page [C]; exact
    litres = watering_in.by_calliper(127, LowHigh(10, 10)).low
    assert convert(litres, "L", "US gal") == pytest.approx(50)


def test_w39_and_w40_new_trees_each_time() -> None:
    # W39, W40: University of Minnesota Extension [A]: 2 in, 7.6 to 11.4 L; 5 cm, 7.5 to 11.2 L; 0.1 L
    assert watering_in.by_calliper(TWO_INCHES, watering_in.COOL_GAL_PER_IN) == near(7.6, 11.4)
    assert watering_in.by_calliper(50, watering_in.COOL_GAL_PER_IN) == near(7.5, 11.2)


def test_w41_a_shrub_from_a_10_litre_pot() -> None:
    # W41: University of Minnesota Extension [A]: 25 to 30 % of the pot; exact
    assert watering_in.by_pot(10) == (2.5, 3.0)


def test_w42_waterings_in_12_weeks() -> None:
    # W42: worked from University of Minnesota Extension [A]: 14 + 23.3 to 35 = 37 to 49; 1
    first, second = watering_in.stages("cool", 30, watering_in.YEAR)[:2]
    found = [watering_in.waterings(stage.end_day - stage.start_day, stage) for stage in (first, second)]
    assert found[0] == (14, 14)
    assert sum(each.low for each in found) == pytest.approx(37, abs=1)
    assert sum(each.high for each in found) == pytest.approx(49, abs=1)


def test_water_on_the_day() -> None:
    # UF/IFAS Okeechobee County, Proper Tree Planting, 2006 [A]: 10 to 20 gal, 38 to 76 L; 0.5 L
    assert watering_in.on_the_day() == near(38, 76, 0.5)


def test_litres_a_week() -> None:
    # Georgia Forestry Commission [A]: 7.5 to 11.2 L a cm; eXtension [A]: 14.9 L a cm in a dry summer; 0.1 L
    assert watering_in.by_calliper(10, watering_in.WEEK_GAL_PER_IN) == near(7.5, 11.2)
    assert watering_in.litres_per_cm(watering_in.DRY_WEEK_GAL_PER_IN) == pytest.approx(14.9, abs=0.1)


def test_months_to_root_where_it_is_warm() -> None:
    # UF/IFAS, ENH857 [A]: 3 to 4 months an inch, 1.2 to 1.6 a cm; a container 1 to 2 months an inch more
    assert watering_in.months_to_root(10, container=False) == near(1.2, 1.6, 0.03)
    assert watering_in.months_to_root(TWO_INCHES, container=False) == near(6, 8, 1e-9)
    assert watering_in.months_to_root(TWO_INCHES, container=True) == near(8, 12, 1e-9)


def test_how_often_by_calliper_and_summer() -> None:
    # University of Minnesota [A]; UF/IFAS Charlotte County [A] to 50 mm; a nursery column [B] above
    cool = watering_in.stages("cool", 30, 365)
    assert cool == (WateringStage(0, 14, 1, 1), WateringStage(14, 84, 2, 3), WateringStage(84, 365, 7, 7))
    assert watering_in.stages("warm", 50, 365) == (
        WateringStage(0, 14, 1, 1),
        WateringStage(14, 75, 2, 2),
        WateringStage(75, 365, 7, 7),
    )
    assert watering_in.stages("warm", 51, 365)[:2] == (WateringStage(0, 30, 1, 1), WateringStage(30, 121, 2, 2))
    assert watering_in.stages("warm", 100, 365)[0] == WateringStage(0, 30, 1, 1)
    assert watering_in.stages("warm", 101, 365)[:2] == (WateringStage(0, 42, 1, 1), WateringStage(42, 194, 2, 2))


def test_a_tree_that_roots_early_is_not_watered_on() -> None:
    assert watering_in.stages("warm", 12, 40) == (WateringStage(0, 14, 1, 1), WateringStage(14, 40, 2, 2))
    assert watering_in.stages("warm", 3, 5) == (WateringStage(0, 14, 1, 1),)


@given(calliper=st.floats(1, 500))
def test_double_the_trunk_double_the_litres(calliper: float) -> None:
    once = watering_in.by_calliper(calliper, watering_in.COOL_GAL_PER_IN)
    twice = watering_in.by_calliper(calliper * 2, watering_in.COOL_GAL_PER_IN)
    assert twice.low == pytest.approx(once.low * 2)
    assert twice.high == pytest.approx(once.high * 2)


@given(summers=st.sampled_from(["cool", "warm"]), calliper=st.floats(0, 500), rooted=st.integers(0, 4000))
def test_stages_follow_on_each_other(summers: str, calliper: float, rooted: int) -> None:
    found = watering_in.stages(summers, calliper, rooted)
    assert found[0].start_day == 0
    assert [stage.end_day for stage in found[:-1]] == [stage.start_day for stage in found[1:]]
    assert all(stage.start_day < stage.end_day for stage in found)
    assert found[-1].end_day == max(rooted, found[0].end_day)
