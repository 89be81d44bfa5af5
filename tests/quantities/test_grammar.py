"""The reading of numbers, parts and tolerances from left to right."""

from fractions import Fraction

import pytest

from howto.quantities.grammar import PLAIN, Refusal, part_at, scan, sum_at


@pytest.mark.parametrize(
    ("text", "number", "end"),
    [
        ("900", Fraction(900), 3),
        ("0.5", Fraction(1, 2), 3),
        (".5", Fraction(1, 2), 2),
        ("1/3", Fraction(1, 3), 3),
        ("1 / 3", Fraction(1, 3), 5),
        ("1 1/2", Fraction(3, 2), 5),
        ("1-1/2", Fraction(3, 2), 5),
        ("½", Fraction(1, 2), 1),
        ("1½", Fraction(3, 2), 2),
        ("1 ¾", Fraction(7, 4), 3),
    ],
)
def test_a_number_is_read_exactly(text: str, number: Fraction, end: int) -> None:
    part = part_at(text, 0)
    assert part is not None
    assert (part.number, part.end, part.unit) == (number, end, None)


def test_parts_add_up_to_the_sign_in_front() -> None:
    found = sum_at("-3 ft 6 in", 0)
    assert found is not None
    assert found.total == -Fraction("1.0668")
    assert found.end == 10


def test_a_part_without_a_unit_is_left_unread() -> None:
    found = sum_at("3 ft 6", 0)
    assert found is not None
    assert found.end == 4
    leading_point = sum_at("3 ft .5 in", 0)
    assert leading_point is not None
    assert leading_point.end == 4


def test_nothing_is_read_where_no_number_stands() -> None:
    assert scan("mm", 0) is None
    assert part_at("mm", 0) is None


def test_a_tolerance_mark_without_a_number_is_left_unread() -> None:
    found = scan("5 mm ± x", 0)
    assert found is not None
    assert (found.end, found.tolerance) == (4, None)


def test_a_refusal_knows_its_place_and_what_to_write() -> None:
    with pytest.raises(Refusal) as refused:
        scan("1/0 mm", 0)
    assert refused.value.where == (0, 3)
    assert refused.value.offers == ("1/2 mm",)


def test_making_a_text_plain_keeps_every_place() -> None:
    odd = "5′6″ −3 1⁄2 20％ 5\u00a0mm"
    plain = odd.translate(PLAIN)
    assert len(plain) == len(odd)
    assert plain == "5'6\" -3 1/2 20% 5 mm"
