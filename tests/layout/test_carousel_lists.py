import pytest

from howto.findings import Severity
from howto.layout.frames.copy import all_numbers
from howto.layout.frames.cover import Number
from howto.layout.frames.lists import set_entries, top_heading
from howto.layout.frames.look import board
from howto.layout.frames.shared import moved
from howto.model.measures import Measures
from howto.model.prose import prose
from howto.model.sheet import Art, Dot, Pixels, Stroke, TextMark
from howto.model.technique import Kit
from howto.shapes import Drawing, Label
from tests.support import sample
from tests.support.carousels import BALL, Empty, laid
from tests.support.frames import outside, text_of, words_of


def test_numbers_too_wide_to_stand_side_by_side_are_fewer() -> None:
    wide = tuple(
        sample.FIGURES[0].model_copy(
            update={"name": f"n{n}", "label": f"Number {n}", "value": "between late summer and spring"}
        )
        for n in range(3)
    )
    made, _ = laid(figures=wide)
    assert ["Number 0" in text_of(made[0]), "Number 1" in text_of(made[0])] == [True, False]


def test_a_number_wider_than_the_cover_stays_off_it() -> None:
    value = "not before the leaves have come down and the ground is dry enough to walk on again"
    wide = sample.FIGURES[0].model_copy(update={"value": value})
    made, findings = laid(figures=(wide,), tools=(), materials=())
    assert findings == ()
    assert "Off each side" not in text_of(made[0])
    assert "not before the leaves" in text_of(made[1])


def test_a_tool_whose_note_fills_more_than_a_frame_is_a_finding() -> None:
    _, (found,) = laid(tools=(Kit(name="Shears", note=prose("sharp " * 400)),))
    assert (found.rule, found.what) == (
        "fit.frame",
        "one of the tools or materials has a note that fills more than a frame",
    )


def test_a_lone_headline_is_joined_by_measures_on_the_cover() -> None:
    made, _ = laid(figures=sample.FIGURES[:1])
    told = text_of(made[0])
    labels = ("Off each side", "Finished width", "Standing width")
    assert [label in told for label in labels] == [True, True, False]


def test_a_long_trade_name_is_set_smaller_above_the_title() -> None:
    made, _ = laid(family="clipping, shaping and thinning of evergreen shrubs and hedges")
    assert words_of(made[0])[0].size < 42
    assert outside(made[0]) == []


def test_a_technique_without_measures_figures_and_tools_has_no_frame_of_numbers() -> None:
    made, _ = laid(figures=(), tools=(), materials=(), measures=Empty())
    assert len(made) == 9


def test_of_more_numbers_than_a_frame_holds_the_rest_stay_on_the_card() -> None:
    many = tuple(
        sample.FIGURES[0].model_copy(update={"name": f"n{n}", "label": f"Number {n}", "value": 1000.0 + n})
        for n in range(30)
    )
    made, findings = laid(figures=many, tools=(), materials=())
    assert findings == ()
    assert len(made) == 10
    assert sum(f"Number {n} " in text_of(made[1]) for n in range(30)) == 13
    assert "Number 0 " in text_of(made[1])


def test_a_technique_without_minutes_or_a_crew_without_contact_says_less() -> None:
    crew = sample.CREW.model_copy(update={"contact": "", "web": ""})
    made, _ = laid(minutes=None, crew=crew)
    assert words_of(made[0])[0].text != ""
    assert "minutes" not in text_of(made[0])
    assert "01632" not in text_of(made[-1])


def test_a_heading_too_wide_for_one_line_is_set_smaller() -> None:
    sheet = board("4x5", sample.CREW, "#a63d1f")
    assert top_heading(sheet, "Tools and numbers").size == 104
    wide = top_heading(sheet, "Everything that has to be done before the work")
    assert wide.size < 104
    assert wide.width <= 952


def test_a_drawing_whose_labels_do_not_fit_is_shown_bare_with_a_finding() -> None:
    crowd = Drawing(
        shapes=(*BALL.shapes, *(Label((0.0, 10.0 * n), f"a label that is rather long, number {n}") for n in range(40))),
        caption="Find the circle",
        alt=BALL.alt,
    )
    made, findings = laid(drawings=(crowd,), steps=sample.STEPS[:1])
    assert [each.rule for each in findings] == ["fit.drawing", "fit.drawing"]
    assert findings[0].severity is Severity.WARNING
    assert not any("a label that" in text_of(frame) for frame in made)


def test_a_drawing_is_moved_whole_to_its_place() -> None:
    art = Art(
        width=10,
        height=10,
        marks=(
            Stroke(points=((0, 0), (1, 1)), width=1, colour="#000000"),
            Dot(centre=(2, 2), radius=1, colour="#000000"),
            TextMark(text="a", at=(3, 3), size=28, colour="#000000"),
            Pixels(source="p.jpg", crop=(0, 0, 1, 1), box=(4, 4, 5, 5)),
        ),
        caption="",
        alt="",
    )
    stroke, dot, words, pixels = moved(art, 100, 200)
    assert isinstance(stroke, Stroke)
    assert stroke.points == ((100, 200), (101, 201))
    assert isinstance(dot, Dot)
    assert dot.centre == (102, 202)
    assert isinstance(words, TextMark)
    assert words.at == (103, 203)
    assert isinstance(pixels, Pixels)
    assert pixels.box == (104, 204, 105, 205)


def test_the_finish_shows_the_drawing_where_there_is_room() -> None:
    made, _ = laid("9x16", aftercare=(), finish=(prose("It is round."),))
    assert "900 mm" in text_of(made[-1])
    assert BALL.alt in made[-1].alt


def test_a_value_on_two_lines_takes_the_height_of_two() -> None:
    long = Number("Catch cans", ", ".join(["31 mL"] * 12))
    (one,) = set_entries([Number("Catch", "30 min")], 72.0, 952.0)
    (two,) = set_entries([long], 72.0, 952.0)
    lines = len(two.value.lines)
    assert lines > 1
    assert two.height == pytest.approx(one.height + (lines - 1) * 72.0)


def test_a_long_list_stays_on_the_card() -> None:
    class Cans(Measures):
        cans_ml: tuple[float, ...]
        mouth_mm: float

    few = Cans(cans_ml=(31.0, 34.0, 29.0), mouth_mm=75.0)
    many = Cans(cans_ml=tuple(31.0 + at for at in range(16)), mouth_mm=75.0)
    told = [[one.label for one in all_numbers(sample.ready((), measures=each))] for each in (few, many)]
    assert told == [["Cans", "Mouth"], ["Mouth"]]
