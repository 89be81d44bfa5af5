"""Amounts stand in a sentence as they were put there, whatever is between them."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from howto.quantities.amounts import (
    CLOSE,
    OPEN,
    Amount,
    Count,
    Day,
    Held,
    Months,
    Name,
    Phrase,
    Range,
    Share,
    Spread,
    Word,
    bare,
    dated,
    mm,
    month_named,
    months_named,
    percent,
    phrase,
    qty,
)

NUMBERS = st.floats(allow_nan=False, allow_infinity=False)
TEXTS = st.text(st.characters(exclude_categories=("Cs", "Co")))
UNITS = st.sampled_from(("mm", "%", "L", "g/m²", "°C", ""))
DIGITS = st.none() | st.integers(1, 6)
PLAIN = (
    st.builds(Amount, NUMBERS, UNITS, DIGITS),
    st.builds(Range, NUMBERS, NUMBERS, UNITS),
    st.builds(Spread, NUMBERS, UNITS),
    st.builds(Count, st.integers(), TEXTS, TEXTS),
    st.builds(dated, st.dates(), st.sampled_from(("long", "short", "plain"))),
    st.builds(months_named, st.lists(st.integers(1, 12), min_size=1), st.sampled_from((",", "and", "or", "to"))),
    st.builds(Share, st.floats(0, 1)),
    st.builds(Name, TEXTS),
)
HELD = st.one_of(*PLAIN, st.builds(lambda text, held: Word(f"{text}{held}"), TEXTS, st.one_of(*PLAIN)))


@given(HELD, TEXTS, TEXTS)
def test_every_amount_comes_out_of_a_sentence_as_it_went_in(held: Held, before: str, after: str) -> None:
    said = phrase(f"{before}{held}{after}")
    assert said.amounts == (held,)
    assert said.parts == tuple(part for part in (before, held, after) if part != "")
    assert phrase(str(said)) == said


@given(st.lists(HELD, max_size=4))
def test_amounts_keep_their_order_and_none_is_lost(held: list[Held]) -> None:
    assert phrase(", ".join(map(str, held))).amounts == tuple(held)


@given(TEXTS)
def test_a_text_without_amounts_is_one_stretch(text: str) -> None:
    said = phrase(text)
    assert (said.parts, said.amounts) == ((text,) if text else (), ())
    assert bool(said) is bool(text)


@given(TEXTS, TEXTS, st.one_of(*PLAIN))
def test_words_within_words_are_found_when_the_outer_ones_are_opened(outer: str, inner: str, held: Held) -> None:
    deep = Word(f"{inner}{held}")
    (found,) = phrase(f"{Word(f'{outer}{deep}')}").amounts
    assert isinstance(found, Word)
    assert phrase(found.text).amounts == (deep,)
    assert phrase(deep.text).amounts == (held,)


def test_the_key_is_in_small_letters_with_a_place_for_each_amount() -> None:
    said = phrase(f"Take\u00a0 {mm(40)} off  each side, in {Count(2, 'pass', 'passes')}.")
    assert said.key == "take {} off each side, in {}."
    assert phrase(f"Take {mm(55)} off each side, in {Count(1, 'pass', 'passes')}.").key == said.key
    assert phrase(f"{Word(f'{mm(1)} deep')}").key == "{}"
    assert Phrase(()).key == ""


def test_the_private_characters_stand_in_pairs_round_nothing_but_ascii() -> None:
    text = str(Word(f"{Name('ngaio — tū')} {mm(3)}"))
    assert (text.count(OPEN), text.count(CLOSE)) == (1, 1)
    assert text[1:-1].isascii()


@pytest.mark.parametrize(
    ("short", "long"),
    [
        (qty(9, "L", 3), Amount(9, "L", 3)),
        (mm(40), Amount(40, "mm")),
        (percent(27.7213), Amount(27.7213, "%", 3)),
        (bare(980, 5), Amount(980, "", 5)),
        (dated(date(2027, 4, 14)), Day("2027-04-14")),
        (dated(date(2027, 4, 14), "plain"), Day("2027-04-14", "plain")),
        (month_named(3), Months((3,))),
        (months_named([3, 4], "or"), Months((3, 4), "or")),
    ],
)
def test_the_short_ways_to_write_them(short: Held, long: Held) -> None:
    assert short == long


def test_an_amount_is_not_formatted_where_it_is_said() -> None:
    with pytest.raises(ValueError, match=r"'\.1f': an amount is formatted by its reader"):
        f"{mm(40):.1f}"
