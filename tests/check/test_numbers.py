"""Which numbers in prose are said to be a measure or a figure, and which of those disagree."""

import pytest

from howto.check.numbers import agrees, claims_in, named_in
from howto.languages.reader import Reader
from howto.model.figure import Figure
from howto.model.reference import GEOMETRY
from howto.quantities import parse
from tests.support.builders import DiggingMeasures

MEASURES = DiggingMeasures(
    hole_width_mm=500,
    hole_depth_mm=300,
    settling_mm_per_year=12,
    rounds=2,
    tolerances={"hole_width_mm": 20},
    written={"hole_width_mm": "500 mm ± 20 mm"},
)
FIGURES = (
    Figure(name="soil out", label="Soil out", value=74.6, unit="L", working=("a",), references=(GEOMETRY,)),
    Figure(name="stakes", label="Stakes", value=3, working=("a",), references=(GEOMETRY,)),
    Figure(name="depth", label="Depth", value=300.0, unit="mm", working=("a",), references=(GEOMETRY,)),
    Figure(name="next dig", label="Next dig", value="spring", working=("a",), references=(GEOMETRY,)),
)
KNOWN = named_in(MEASURES, FIGURES, Reader())


def claims(text: str) -> list[tuple[str, str]]:
    return [(each.written, each.named.name) for each in claims_in(text, KNOWN)]


@pytest.mark.parametrize(
    ("text", "written", "name"),
    [
        ("Dig to a hole width of 600 mm.", "600 mm", "hole width"),
        ("The hole width must be 600 mm.", "600 mm", "hole width"),
        ("Hole width: 0.6 m", "0.6 m", "hole width"),
        ("Hole width 24 in, no wider", "24 in", "hole width"),
        ("The hole widths are about 600 mm.", "600 mm", "hole width"),
        ("The width of the hole is 600 mm.", "600 mm", "hole width"),
        ("A 600 mm hole width is wanted.", "600 mm", "hole width"),
        ("Mark 600 mm, the hole width, with a peg.", "600 mm", "hole width"),
        ("Mark 600 mm (hole width) with a peg.", "600 mm", "hole width"),
        ("The hole is dug when the width is 600 mm.", "600 mm", "hole width"),
        ("Bring the hole depth to 350 mm.", "350 mm", "hole depth"),
        ("A depth of 350 mm is enough.", "350 mm", "depth"),
        ("It has settling of 15 mm/year.", "15 mm/year", "settling"),
        ("Soil out is 80 L.", "80 L", "soil out"),
        ("Hole width 500 mm, hole depth 350 mm.", "350 mm", "hole depth"),
        ("Hole width 900 mm ± 20 mm", "900 mm ± 20 mm", "hole width"),
        ("Hole width 300 mm to 400 mm.", "300 mm", "hole width"),
        ("Hole width 300 mm or 60 L.", "300 mm", "hole width"),
        ("Make 3 rounds.", "3", "rounds"),
        ("Make three rounds.", "three", "rounds"),
        ("Rounds: 3", "3", "rounds"),
        ("Set 4 stakes round it.", "4", "stakes"),
    ],
)
def test_a_number_tied_to_a_name_disagrees(text: str, written: str, name: str) -> None:
    assert claims(text) == [(written, name)]


@pytest.mark.parametrize(
    "text",
    [
        "The hole width is 500 mm.",
        "The hole width is 520 mm, and no more.",
        "Hole width 20 in.",
        "Hole depth 12 in.",
        "Soil out is 75 L.",
        "Soil out is 74.7 L.",
        "Make 2 rounds.",
        "Make two rounds.",
    ],
)
def test_a_number_that_agrees_is_no_finding(text: str) -> None:
    assert claims(text) == []


@pytest.mark.parametrize(
    "text",
    [
        "Stay within 20 mm of the hole width.",
        "The hole width less 20 mm.",
        "Go 50 mm over the hole width.",
        "Rake the soil 3 m beyond the hole width.",
        "Rake over the hole width 3 m beyond the edge.",
        "Set the string at 300 mm, the hole width less 200 mm.",
        "At 100 mm, the hole width is checked again.",
        "Go from the hole width to 300 mm.",
        "Hole width 400 mm to 600 mm.",
        "Hole width 490 to 510 mm.",
        "Keep a 400 mm to 600 mm hole width.",
        "Leave the hole width as it is. 600 mm is the reach of the arm.",
        "Check the hole width with a 2 m board.",
        "The hole width is {hole width}.",
        "The {hole width} 600 mm.",
        "The hole width takes 3 minutes to measure.",
        "The root width is 600 mm.",
        "Planting depth 50 mm.",
        "A 600 mm board lies over the hole.",
        "After 3 rounds, rest.",
        "In the first 3 rounds, look up.",
        "Each of 3 rounds.",
        "Do it in one round.",
        "2 to 3 rounds.",
        "Rounds are 3 m wide.",
        "",
        "Hole width.",
        "600 mm",
        "the",
    ],
)
def test_a_number_that_claims_nothing_is_no_finding(text: str) -> None:
    assert claims(text) == []


def test_what_prose_may_name() -> None:
    assert [(each.name, each.unit, each.shown, each.field) for each in KNOWN] == [
        ("hole width", "mm", "500 mm ± 20 mm", "hole_width_mm"),
        ("hole depth", "mm", "300\u00a0mm", "hole_depth_mm"),
        ("settling", "mm/year", "12\u00a0mm/year", "settling_mm_per_year"),
        ("rounds", None, "2", "rounds"),
        ("soil out", "L", "74.6\u00a0L", ""),
        ("stakes", None, "3", ""),
        ("depth", "mm", "300\u00a0mm", ""),
    ]


@pytest.mark.parametrize(
    ("written", "same"),
    [
        ("520 mm", True),  # the ± is 20 mm
        ("520.4 mm", False),
        ("480 mm", True),
        ("479 mm", False),
        ("20 in", True),  # 508 mm
        ("19 in", True),  # 482.6 mm
        ("21 in", False),  # 533.4 mm, and half an inch is 12.7
        ("1 ft 8 in", True),
        ("1 ft 10 in", False),
        ("0.5 m", True),
        ("2 ft", False),  # 609.6 mm: half a foot is no rounding of 500 mm
        ("50 L", False),
    ],
)
def test_agreement_is_within_the_tolerance_or_half_the_last_digit(written: str, same: bool) -> None:
    width = next(each for each in KNOWN if each.name == "hole width")
    assert agrees(parse(written), width) is same


@pytest.mark.parametrize(
    ("written", "same"),
    [
        ("11 13/16 in", True),  # 300.04 mm, and half a sixteenth is 0.8
        ("11 7/8 in", False),  # 301.63 mm, and half an eighth is 1.59
        ("11 3/4 in", True),  # 298.45 mm, and half a quarter is 3.2
        ("1 ft", True),  # 304.8 mm: under 3 % out
        ("12 in", True),
        ("½ m", False),
        ("301.000000000000000 mm", False),  # no digit more can be read
        ("300.000000000000000 mm", True),
    ],
)
def test_agreement_of_fractions_and_of_very_long_numbers(written: str, same: bool) -> None:
    depth = next(each for each in KNOWN if each.name == "hole depth")
    assert agrees(parse(written), depth) is same


@pytest.mark.parametrize(("written", "same"), [("75 L", True), ("74 L", False), ("74.9 L", True), ("75.2 L", False)])
def test_a_figure_agrees_as_it_is_shown(written: str, same: bool) -> None:
    soil = next(each for each in KNOWN if each.name == "soil out")
    assert agrees(parse(written), soil) is same
