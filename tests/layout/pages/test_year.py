from datetime import date
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from howto.layout.pages.year import DayMark, LineLook, year_line
from howto.model.crew import Colours
from howto.model.sheet import Area, Dot, Stroke, TextMark

START = date(2026, 10, 14)
LOOK = LineLook(174.0, 4.0, Colours(), "#a63d1f", "en")


def test_a_line_without_a_mark_in_its_year_is_not_drawn() -> None:
    assert year_line((START,), (), LOOK, "c", "a") is None
    assert year_line((START,), (DayMark(1, date(2027, 10, 1)),), LOOK, "c", "a") is None


def test_months_run_from_the_month_of_the_visit() -> None:
    art = year_line((START,), (DayMark(1, START),), LOOK, "c", "a")
    assert art is not None
    names = [mark.text for mark in art.marks if isinstance(mark, TextMark) and mark.face == "head"]
    assert names == ["Oct", "Nov", "Dec", "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep"]


def test_a_language_without_short_names_gets_numbers() -> None:
    art = year_line((START,), (DayMark(1, START),), LOOK._replace(language="vi"), "c", "a")
    assert art is not None
    names = [mark.text for mark in art.marks if isinstance(mark, TextMark) and mark.face == "head"]
    assert names == ["10", "11", "12", "1", "2", "3", "4", "5", "6", "7", "8", "9"]


def test_a_disc_stands_on_its_day() -> None:
    art = year_line((START,), (DayMark(1, date(2026, 11, 1)), DayMark(2, date(2027, 2, 15))), LOOK, "c", "a")
    assert art is not None
    across = [mark.centre[0] for mark in art.marks if isinstance(mark, Dot)]
    # 168 mm for 12 months, 3 mm in from the edge: 14 mm a month; 14 of February's 28 days is half a month
    assert [round(x, 3) for x in across] == [17.0, 66.0]


def test_the_visit_is_a_triangle_with_its_point_on_the_line() -> None:
    art = year_line((START,), (DayMark(1, START),), LOOK, "c", "a")
    assert art is not None
    (triangle,) = (mark for mark in art.marks if isinstance(mark, Area))
    line = next(mark for mark in art.marks if isinstance(mark, Stroke))
    assert triangle.points[0] == (3.0 + 14.0 * 13 / 31, line.points[0][1])


def test_the_next_visit_has_a_triangle_too_where_it_falls_within_the_year() -> None:
    for day, count in ((date(2026, 11, 25), 2), (date(2027, 9, 30), 2), (date(2027, 10, 1), 1)):
        art = year_line((START, day), (DayMark(1, START),), LOOK, "c", "a")
        assert art is not None
        assert sum(isinstance(mark, Area) for mark in art.marks) == count


def test_no_leader_runs_over_a_disc() -> None:
    art = year_line((START,), [DayMark(number, START) for number in (1, 2, 3)], LOOK, "c", "a")
    assert art is not None
    kinds = [type(mark) for mark in art.marks]
    assert kinds.index(Dot) > max(at for at, kind in enumerate(kinds) if kind is Stroke)


@given(st.lists(st.dates(date(2026, 10, 1), date(2027, 9, 30)), min_size=1, max_size=9))
def test_discs_never_touch_and_stay_inside(days: list[date]) -> None:
    art = year_line((START,), [DayMark(number, day) for number, day in enumerate(days, 1)], LOOK, "c", "a")
    assert art is not None
    dots = [mark for mark in art.marks if isinstance(mark, Dot)]
    assert len(dots) == len(days)
    for dot in dots:
        assert dot.radius <= dot.centre[0] <= art.width - dot.radius + 0.5
        assert dot.centre[1] - dot.radius >= 0
    rows: dict[float, list[float]] = {}
    for dot in dots:
        rows.setdefault(dot.centre[1], []).append(dot.centre[0])
    for row in rows.values():
        assert all(b - a >= 2 * dots[0].radius for a, b in pairwise(sorted(row)))
