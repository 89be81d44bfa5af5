import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.planting import counts
from howto.quantities import convert

SPACING = st.floats(min_value=50, max_value=5_000)
AREA = st.floats(min_value=0.1, max_value=10_000)


def test_h38_60_square_feet_at_18_inches_are_27_plants() -> None:
    # H38: a plant nursery's chart [C]: 0.44 a square foot, 26.4, shown as 26; 0.5. Order 27, up and not down
    area, spacing = convert(60, "sq ft", "m2"), convert(18, "in", "mm")
    assert counts.per_m2(spacing) * area == pytest.approx(26.4, abs=0.5)
    assert convert(counts.per_m2(spacing), "/m2", "/sq ft") == pytest.approx(0.44, abs=0.005)
    assert counts.grid_count(area, spacing) == 27


def test_h40_100_square_feet_at_12_inches_in_triangles() -> None:
    # H40: worked from geometry: 115.5 plants, rows 10.4 in apart; 1 plant
    area, spacing = convert(100, "sq ft", "m2"), convert(12, "in", "mm")
    assert counts.per_m2(spacing, triangle=True) * area == pytest.approx(115, abs=1)
    assert counts.grid_count(area, spacing, triangle=True) == 116
    assert convert(counts.triangle_row_gap_mm(spacing), "mm", "in") == pytest.approx(10.4, abs=0.05)


def test_h41_plants_a_square_foot_at_20_inches() -> None:
    # H41: a plant nursery [C]: 144 / 400 = 0.36; exact
    found = counts.per_m2(convert(20, "in", "mm"))
    assert convert(found, "/m2", "/sq ft") == pytest.approx(0.36, abs=1e-9)


def test_h42_ten_metres_at_6_a_metre_take_60_plants_in_two_rows() -> None:
    # H42: worked from UK Government, BN11 Planting new hedges [A]: two staggered rows 0.4 m apart; exact
    spacing = 2000 / 6
    assert counts.per_metre(spacing, rows=2) == pytest.approx(6)
    assert counts.row_count(10_000, spacing) * 2 == 60
    assert counts.neighbour_mm(spacing, 400) == pytest.approx(433.3, abs=0.1)


@pytest.mark.parametrize(("spacing_mm", "rows", "plants"), [(400, 2, 5.0), (600, 1, 1.7), (750, 1, 1.3)])
def test_h61_plants_a_metre(spacing_mm: float, rows: int, plants: float) -> None:
    # H61: a hedge nursery's planting guide [C]; 0.2
    assert counts.per_metre(spacing_mm, rows) == pytest.approx(plants, abs=0.2)


@pytest.mark.parametrize(
    ("length", "width", "spacing", "sides"),
    [(3000, 1200, 500, (7, 3)), (3000, 1000, 500, (7, 3)), (100, 100, 500, (1, 1)), (900, 900, 300, (4, 4))],
)
def test_a_grid_on_the_edge(length: float, width: float, spacing: float, sides: tuple[int, int]) -> None:
    # worked from geometry: (floor(L/s) + 1) × (floor(W/s) + 1); exact
    assert counts.edge_grid(length, width, spacing) == sides


@pytest.mark.parametrize(("slope", "level", "face"), [(0, 10, 10), (75, 4, 5), (100, 1, 1.41421)])
def test_a_slope_is_measured_on_its_face(slope: float, level: float, face: float) -> None:
    # Taylor & Francis, landscape handbook, planting densities [A]: the sloped face, not the plan
    assert counts.sloped(level, slope) == pytest.approx(face, abs=1e-5)


@pytest.mark.parametrize(("count", "spare", "order"), [(60, 0, 60), (60, 5, 63), (61, 5, 65), (1, 100, 2)])
def test_spare_plants_are_rounded_up(count: int, spare: float, order: int) -> None:
    assert counts.with_spare(count, spare) == order


def test_the_smallest_bed_takes_one_plant() -> None:
    assert counts.grid_count(0.01, 1000) == 1
    assert counts.row_count(10, 1000) == 1


@given(area=AREA, spacing=SPACING)
def test_double_the_area_doubles_the_plants(area: float, spacing: float) -> None:
    once, twice = counts.grid_count(area, spacing), counts.grid_count(area * 2, spacing)
    assert once * 2 - 1 <= twice <= once * 2


@given(spacing=SPACING)
def test_triangles_hold_2_over_root_3_as_many(spacing: float) -> None:
    assert counts.per_m2(spacing, triangle=True) == pytest.approx(counts.per_m2(spacing) * 1.1547005, rel=1e-6)
    assert counts.neighbour_mm(spacing, counts.triangle_row_gap_mm(spacing)) == pytest.approx(spacing)


@given(area=AREA, spacing=SPACING)
def test_a_count_in_feet_and_inches_is_the_same(area: float, spacing: float) -> None:
    feet, inches = convert(area, "m2", "sq ft"), convert(spacing, "mm", "in")
    assert feet * 144 / inches**2 == pytest.approx(area * counts.per_m2(spacing), rel=1e-9)


@given(length=st.floats(10, 100_000), spacing=SPACING)
def test_a_row_is_never_short(length: float, spacing: float) -> None:
    count = counts.row_count(length, spacing)
    assert count * spacing >= length * (1 - 1e-6)
    assert (count - 1) * spacing < length
