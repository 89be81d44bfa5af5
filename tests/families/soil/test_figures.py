from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.families.soil import FAMILY
from howto.families.soil.figures import figures
from howto.languages.reader import Reader
from howto.model.figure import Figure
from howto.model.reference import Grade
from howto.model.shown import shown
from tests.support.builders import technique
from tests.support.told import ENGLISH, told_figure

TODAY = date(2026, 3, 1)


def worked(**measures: Any) -> dict[str, Figure]:
    """Return the figures by name, told to a reader of metric English."""
    return {figure.name: told_figure(figure) for figure in figures(technique(FAMILY, **measures), TODAY)}


def test_h30_the_volume_is_worked_with_a_pencil() -> None:
    # H30: Australian Broadcasting Corporation, Fact sheet on mulch quantity [A]; tolerance 0
    found = worked(area_m2=9.0, depth_mm=100.0)
    assert found["volume"].value == pytest.approx(0.9, abs=1e-12)
    assert found["volume"].working == ("9 m² × 100 mm / 1000 = 0.9 m³",)
    assert found["volume"].headline
    assert found["order"].value == found["volume"].value
    assert found["order"].working == ("no settling is written, so the volume of the layer is ordered",)
    assert "spread depth" not in found


def test_h37_metric_figures_are_shown_in_cubic_yards() -> None:
    # H37: 1,000 square feet at 1 in is 3.09 cubic yards; 0.01
    found = worked(area_m2=92.90304, depth_mm=25.4)
    assert shown(found["volume"], Reader(units="us")).replace("\u00a0", " ") == "3.09 cu yd"


def test_what_sinks_is_spread_and_ordered_too() -> None:
    found = worked(area_m2=20.0, depth_mm=60.0, settling_percent=20.0)
    assert found["spread depth"].value == 75
    assert found["spread depth"].working == ("60 mm / (1 - 0.2) = 75 mm",)
    assert found["order"].value == pytest.approx(1.5)
    assert not found["order"].client  # the crew's to order, not the client's
    assert found["spread at"].value == 75
    assert found["cover"].value == pytest.approx(13.333, abs=0.001)


def test_t3_bags_are_counted_from_the_order() -> None:
    # T3: a gardening magazine [C] prints 40 bags of 30 L for 4 m³
    found = worked(area_m2=40.0, depth_mm=100.0, bag_l=30.0)
    assert found["bags needed"].value == 134
    assert found["bags needed"].working == ("4 m³ × 1000 / 30 L = 133, rounded up = 134 bags",)
    assert "bags needed" not in worked()


def test_t4_the_cover_of_a_cubic_metre_by_depth() -> None:
    # T4: a garden page [C] prints 15 m² at 75 mm
    table = worked(area_m2=20.0, depth_mm=75.0)["cover"].table
    assert table is not None
    assert [row[0] for row in table.rows] == [25.0, 50.0, 75.0, 100.0]
    assert [row[1] for row in table.rows] == [40.0, 20.0, pytest.approx(13.333, abs=0.001), 10.0]
    assert [row[2] for row in table.rows] == [0.5, 1.0, 1.5, 2.0]
    other = worked(depth_mm=60.0)["cover"].table
    assert other is not None
    assert [row[0] for row in other.rows] == [25.0, 50.0, 60.0, 75.0, 100.0]


def test_compost_is_weighed_by_its_source_and_bark_by_its_docket() -> None:
    found = worked(area_m2=20.0, depth_mm=50.0)["weight"]
    assert found.value == 650
    assert found.references[0].grade is Grade.C
    assert "weight" not in worked(material="bark")
    docket = worked(material="bark", area_m2=20.0, depth_mm=50.0, density_kg_per_m3=300.0)["weight"]
    assert docket.value == 300
    assert docket.references[0].grade is Grade.PRACTICE


def test_loads_are_held_by_the_payload() -> None:
    found = worked(area_m2=40.0, depth_mm=75.0, load_m3=1.5, payload_kg=750.0)["loads"]
    assert found.value == 3
    assert found.working == (
        "a load has room for 1.5 m³",
        "it may carry 750 kg / 650 kg/m³ = 1.15 m³",
        "3 m³ / 1.15 m³, rounded up = 3",
    )
    assert worked(area_m2=40.0, depth_mm=75.0, load_m3=1.5)["loads"].value == 2
    assert worked(area_m2=40.0, depth_mm=75.0, load_m3=1.5, payload_kg=750.0, material="bark")["loads"].value == 2
    assert "loads" not in worked()


def test_heaps_are_set_out_by_the_barrow() -> None:
    found = worked(area_m2=20.0, depth_mm=80.0, barrow_l=80.0)
    assert found["barrows"].value == 20
    assert found["heap every"].value == 1
    assert found["heap every"].working == ("a barrow covers 80 L / 80 mm = 1 m²", "√1 = 1 m each way")
    assert "barrows" not in worked()


def test_the_share_mixed_in_is_told_where_it_is_dug_in() -> None:
    # a compost maker [C]: one part to four
    found = worked(work="new bed", depth_mm=75.0, dig_depth_mm=300.0)["share mixed in"]
    assert found.value == 25
    assert found.working == ("75 mm in 300 mm mixed = 25 %",)
    assert "share mixed in" not in worked(work="new bed")
    assert "share mixed in" not in worked(work="mulch", dig_depth_mm=300.0)


def test_the_bare_ring_is_the_wider_end_unless_written() -> None:
    # Tree planting, in the wording of the International Society of Arboriculture [B]: 25 to 50 mm
    assert worked(trunk_clear_mm=None)["clear of stems"].value == 50
    assert worked(trunk_clear_mm=300.0)["clear of stems"].value == 300
    assert "clear of stems" not in worked(work="dig in")


@pytest.mark.parametrize(("rate_in", "hours"), [(1, 12), (2, 6)])
def test_h48_the_drainage_test(rate_in: float, hours: float) -> None:
    # H48: University of California Statewide IPM Program, Percolation test [A]; tolerance 0
    found = worked(test_hole_mm=304.8, drained_mm=rate_in * 25.4, drained_in_hours=1.0)
    assert found["drainage"].value == pytest.approx(rate_in * 25.4)
    assert found["hole empties in"].value == pytest.approx(hours, abs=1e-9)


def test_a_drainage_test_needs_both_numbers_and_water_that_falls() -> None:
    assert "drainage" not in worked(drained_mm=60.0)
    assert "drainage" not in worked(drained_in_hours=2.0)
    still = worked(drained_mm=0.0, drained_in_hours=24.0)
    assert still["drainage"].value == 0
    assert "hole empties in" not in still
    assert worked(drained_mm=60.0, drained_in_hours=2.0)["hole empties in"].value == 10


@given(
    work=st.sampled_from(["dig in", "mulch", "top-dress", "new bed"]),
    area=st.floats(0.001, 100_000),
    depth=st.floats(0.1, 1000),
    settling=st.none() | st.floats(0, 60),
    dig=st.none() | st.floats(1, 3000),
    bag=st.none() | st.floats(1, 1000),
    load=st.none() | st.floats(0.001, 100),
    drained=st.none() | st.floats(0, 2000),
)
def test_every_figure_has_working_and_a_source(
    work: str,
    area: float,
    depth: float,
    settling: float | None,
    dig: float | None,
    bag: float | None,
    load: float | None,
    drained: float | None,
) -> None:
    found = worked(
        work=work,
        area_m2=area,
        depth_mm=depth,
        settling_percent=settling,
        dig_depth_mm=dig,
        bag_l=bag,
        barrow_l=bag,
        load_m3=load,
        payload_kg=750.0,
        drained_mm=drained,
        drained_in_hours=2.0,
    )
    assert len(found) >= 4
    for figure in found.values():
        assert figure.working
        assert all(line.strip() for line in figure.working)
        assert figure.references
        assert shown(figure, ENGLISH)


@given(area=st.floats(0.1, 50_000), depth=st.floats(1, 500))
def test_double_the_area_doubles_the_order(area: float, depth: float) -> None:
    once, twice = worked(area_m2=area, depth_mm=depth), worked(area_m2=area * 2, depth_mm=depth)
    assert twice["order"].value == pytest.approx(float(once["order"].value) * 2)  # type: ignore[arg-type]
