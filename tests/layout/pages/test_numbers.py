from collections.abc import Sequence

from howto.languages.reader import Reader
from howto.layout.pages.numbers import CardNumbers, grid, kept_together, numbers
from howto.model.figure import Cell, Figure, Table
from howto.model.measures import Measures
from howto.model.reference import GEOMETRY
from howto.model.sheet import Art
from tests.support import sample

NBSP = "\u00a0"


def tabled(columns: tuple[str, ...], units: tuple[str, ...], rows: Sequence[tuple[Cell, ...]]) -> Figure:
    """Return a figure with a table."""
    table = Table(columns=columns, units=units, rows=tuple(rows))
    return Figure(name="t", label="stages", value=2.0, working=("",), references=(GEOMETRY,), table=table)


def found(figures: Sequence[Figure] = sample.FIGURES, arts: Sequence[Art] = ()) -> CardNumbers:
    """Return the numbers of the sample technique, with these figures."""
    return numbers(sample.ready(figures), arts)


def test_targets_come_first_then_headline_figures_then_other_measures() -> None:
    entries = [
        (e.label, e.value.replace(NBSP, " "), e.note.replace(NBSP, " ")) for e in found(arts=(sample.art(),)).beside
    ]
    assert entries == [
        ("Finished width", "900 mm", "± 20 mm"),
        ("Standing width", "980 mm", ""),
        ("Off each side", "40 mm", "(980 mm − 900 mm) ÷ 2 = 40 mm"),
        ("Share of the ball taken off", "23 %", "1 − (900 ÷ 980)³ = 0.2255 = 23 %"),
        ("Passes", "2", ""),
    ]


def test_words_and_other_figures_stand_small_without_working() -> None:
    assert [(e.label, e.value.replace(NBSP, " "), e.headline) for e in found().rest] == [
        ("Shape", "ball", False),
        ("Water after the clip", "9 L", False),
        ("Next clip due", "2 June 2027", False),
    ]


def test_only_as_many_numbers_as_the_drawing_is_high_stand_beside_it() -> None:
    # 6 mm a number and 4 mm a line of working: two measures and one figure with its working take 22 mm of 44
    figures = [sample.FIGURES[0].model_copy(update={"name": f"f{at}", "label": f"F{at}"}) for at in range(6)]
    low = found(figures)
    high = found(figures, (sample.art(),))
    assert [entry.label for entry in low.beside] == ["Finished width", "Standing width", "F0", "F1", "F2"]
    assert [entry.label for entry in high.beside] == ["Finished width", "Standing width", "F0", "F1", "F2", "F3"]
    assert [entry.label for entry in high.rest] == ["Shape", "Passes", "F4", "F5"]


def test_a_number_moved_below_keeps_its_tolerance_and_drops_its_working() -> None:
    class Many(Measures):
        one_mm: float = 1.0
        two_mm: float = 2.0
        three_mm: float = 3.0
        four_mm: float = 4.0
        five_mm: float = 5.0
        six_mm: float = 6.0
        seven_mm: float = 7.0
        eight_mm: float = 8.0

    written = dict.fromkeys(Many.model_fields, "so wide")
    rest = numbers(sample.ready((), measures=Many(tolerances={"eight_mm": 1.0}, written=written)), ()).rest
    assert [(e.label, e.value.replace(NBSP, " "), e.note) for e in rest] == [("Eight", "8 mm ± 1 mm", "")]


def test_a_measure_nobody_wrote_stands_small_and_last_and_a_nought_nowhere() -> None:
    class Lifting(Measures):
        load_kg: float | None = None
        twist_deg: float = 0.0
        lifts: int = 4
        consent: bool = False

    got = numbers(sample.ready(sample.FIGURES[:1], measures=Lifting(load_kg=25.0)), ())
    assert [entry.label for entry in got.beside] == ["Load", "Off each side"]
    assert [(entry.label, entry.value) for entry in got.rest] == [("Lifts", "4")]
    written = sample.ready((), measures=Lifting(load_kg=25.0, twist_deg=0.0))
    assert "Twist" in [entry.label for entry in numbers(written, ()).beside]


def test_a_list_is_never_set_large() -> None:
    class Cans(Measures):
        cans_ml: tuple[float, ...] = (31.0, 34.0, 29.0, 22.0, 36.0, 39.0)

    shared = numbers(sample.ready((), measures=Cans()), ())
    assert shared.beside == ()
    assert shared.rest[0].value.replace(NBSP, " ") == "31, 34, 29, 22, 36, 39 mL"


def test_a_long_table_is_turned_and_its_unit_moves_to_the_heading() -> None:
    (table,) = found().tables
    assert table.turned
    assert table.columns == ("Height, mm", "150", "300", "450", "600", "750")
    assert table.rows == (("Ring width, mm", "671", "849", "900", "849", "671"),)


def test_a_wide_table_keeps_its_columns_and_mixed_units_stay_in_the_cells() -> None:
    table = grid(tabled(("Cut", "From", "To"), ("", "mm", "mm"), ((1.0, 1200.0, 900.0), (2.0, 900.0, 600.0))), Reader())
    assert table is not None
    assert not table.turned
    assert table.caption == "Stages"
    assert table.columns == ("Cut", "From", "To, mm")
    assert table.rows == (("1", f"1.2{NBSP}m", "900"), ("2", f"900{NBSP}mm", "600"))


def test_a_long_table_too_wide_to_turn_is_folded_in_two() -> None:
    names = [
        "January",
        "February",
        "March",
        "April",
        "May",
        "June",
        "July",
        "August",
        "September",
        "October",
        "November",
    ]
    rows = [(name, float(at)) for at, name in enumerate(names, 1)]
    table = grid(tabled(("Month", "Water"), ("", "L"), rows), Reader())
    assert table is not None
    assert table.columns == ("Month", "Water, L", "Month", "Water, L")
    assert len(table.rows) == 6
    assert table.rows[0] == ("January", "1", "July", "7")
    assert table.rows[-1] == ("June", "6", "", "")


def test_a_figure_without_table_has_no_grid() -> None:
    assert grid(sample.FIGURES[0], Reader()) is None


def test_working_that_does_not_end_in_the_value_is_left_to_the_figures_command() -> None:
    figure = sample.FIGURES[0].model_copy(update={"working": ("the rest is half of 80 mm",)})
    assert found((figure,)).beside[2].note == ""


def test_working_breaks_before_a_sign_only() -> None:
    assert kept_together("980 mm - 900 mm / 2 x 3 = 40 mm") == (
        f"980{NBSP}mm −{NBSP}900{NBSP}mm ÷{NBSP}2 ×{NBSP}3 ={NBSP}40{NBSP}mm"
    )
