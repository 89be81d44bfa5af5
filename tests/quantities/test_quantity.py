"""Quantities as a crew writes them, and what is said of the ones that cannot be read."""

import re

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from howto.quantities import Quantity, QuantityError, find_all, parse, parse_in, show


@pytest.mark.parametrize(
    ("text", "unit", "value", "tolerance"),
    [
        ("900 mm", "mm", 900, None),
        ("900mm", "mm", 900, None),
        ("  900\u00a0mm ", "mm", 900, None),
        ("900 mm.", "mm", 900, None),
        ("900 millimetres", "mm", 900, None),
        ("900 mm ± 20 mm", "mm", 900, 20),
        ("900 ± 20 mm", "mm", 900, 20),
        ("900 mm ± 20", "mm", 900, 20),
        ("900 mm +/- 2 %", "mm", 900, 18),
        ("900 mm plus or minus 2 cm", "mm", 900, 20),
        ("90 cm ±2cm", "mm", 900, 20),
        ("0.29 m", "mm", 290, None),
        ("3 ft 6 in", "in", 42, None),
        ("3ft6in", "in", 42, None),
        ("3' 6\"", "in", 42, None),
        ("3'2\"", "in", 38, None),
        ("5′6″", "in", 66, None),
        ("5’ 6”", "in", 66, None),
        ("6''", "in", 6, None),
        ("3 ft 6 in ± ½ in", "in", 42, 0.5),
        ("-3 ft 6 in", "in", -42, None),
        ("1/3", "1", 0.3333333333333333, None),
        ("1/3 ft", "in", 4, None),
        ("1 1/2 in", "mm", 38.1, None),
        ("1-1/2 in", "mm", 38.1, None),
        ("1½ in", "mm", 38.1, None),
        ("½ in", "mm", 12.7, None),
        ("4 inches", "in", 4, None),
        ("2-inch", "in", 2, None),
        ("25 %", "1", 0.25, None),
        ("25 %", "%", 25, None),
        ("25 per cent", "%", 25, None),
        ("25 % ± 5 %", "%", 25, 5),
        ("25 ± 5 %", "%", 25, 5),
        ("1/4", "%", 25, None),
        ("3", "1", 3, None),
        ("5 ± 1", "1", 5, 1),
        ("5 ± 10 %", "%", 5, 10),
        ("2 L/m2", "L/m2", 2, None),
        ("2 L/m²", "mm", 2, None),
        ("2 litres per square metre", "L/m2", 2, None),
        ("2 liters per sq m", "L/m2", 2, None),
        ("2 l", "L", 2, None),
        ("5 lb/1000 ft2", "lb/1000 sq ft", 5, None),
        ("0.1 lb/in", "g/cm", 17.857967322834646, None),
        ("6 plants/m", "/m", 6, None),
        ("6/m", "plants/m", 6, None),
        ("6 per m", "/m", 6, None),
        ("6 per 10 m", "/m", 0.6, None),
        ("10 mm/h", "mm/h", 10, None),
        ("85 dB(A)", "dB(A)", 85, None),
        ("3.5 m/s2", "m/s2", 3.5, None),
        ("30 °C", "°C", 30, None),
        ("30 °C", "°F", 86, None),
        ("30 °C ± 2 °C", "°F", 86, 3.6),
        ("30 °C ± 2 K", "°C", 30, 2),
        ("86 °F", "°C", 30, None),
        ("−5 °C", "°C", -5, None),
        ("+5 °C", "°C", 5, None),
        ("45°", "deg", 45, None),
        ("60 psi", "psi", 60, None),
        ("1.2 kN", "N", 1200, None),
        ("12 sq ft", "sq ft", 12, None),
        ("2 cu yd", "cu yd", 2, None),
        ("6 weeks", "days", 42, None),
        ("1 month", "days", 30.416666666666668, None),
        ("1 h 35 min", "min", 95, None),
        ("5 lb 4 oz", "oz", 84, None),
        ("2 US gal", "US gal", 2, None),
        ("12 mm/m", "mm/m", 12, None),
    ],
)
def test_a_measure_is_read(text: str, unit: str, value: float, tolerance: float | None) -> None:
    assert parse_in(text, unit) == (value, tolerance)


# Each text with what is said of it, the part that is pointed at, and the mend.
REFUSED = [
    ("", "nothing is written here", "", "write a number and its unit, such as `900 mm`"),
    (" \u00a0", "nothing is written here", "", "write a number and its unit, such as `900 mm`"),
    ("mm", "`mm` is written", "mm", "write a number and its unit, such as `900 mm`"),
    ("nan", "`nan` is written", "nan", "write a number and its unit, such as `900 mm`"),
    ("inf mm", "`inf mm` is written", "inf mm", "write a number and its unit, such as `900 mm`"),
    ("--5 mm", "`--5 mm` is written", "--5 mm", "write a number and its unit, such as `900 mm`"),
    ("x" * 201, "201 characters are written", "x" * 201, "write a number and its unit, such as `900 mm`"),
    ("9" * 16, "a very long number", "9" * 16, "write a number and its unit, such as `900 mm`"),
    ("5 gallon", "`gallon` does not say whose", "gallon", "write `5 US gal` or `5 UK gal`"),
    ("5 gal/min", "`gal` does not say whose", "gal", "write `5 US gal/min` or `5 UK gal/min`"),
    ("5 lb/gal", "`gal` does not say whose", "gal", "write `5 lb/US gal` or `5 lb/UK gal`"),
    ("5 gpm", "`gpm` does not say whose", "gpm", "write `5 US gal/min` or `5 UK gal/min`"),
    ("3 fl oz", "`fl oz` does not say whose", "fl oz", "write `3 US fl oz` or `3 UK fl oz`"),
    ("1 Pint", "`pint` does not say whose", "Pint", "write `1 US pt` or `1 UK pt`"),
    ("2 tons", "`tons` does not say whose", "tons", "write `2 US ton` or `2 UK ton`"),
    ("250-300 mm", "`250-300 mm` is a range", "250-300 mm", "write `275 mm ± 25 mm`"),
    ("250–300 mm", "`250–300 mm` is a range", "250–300 mm", "write `275 mm ± 25 mm`"),
    ("250 mm to 30 cm", "`250 mm to 30 cm` is a range", "250 mm to 30 cm", "write `27.5 cm ± 2.5 cm`"),
    ("50 °F to 20 °C", "`50 °F to 20 °C` is a range", "50 °F to 20 °C", "write `15 °C ± 5 °C`"),
    ("20-30", "`20-30` is a range", "20-30", "write `25 ± 5`"),
    ("20-30 %", "`20-30 %` is a range", "20-30 %", "write `25 % ± 5 %`"),
    ("2 m to 3 kg", "`2 m to 3 kg` is a range", "2 m to 3 kg", "write a number and its unit, such as `900 mm`"),
    ("2 m to 3", "`2 m to 3` is a range", "2 m to 3", "write a number and its unit, such as `900 mm`"),
    ("2 m to .", "`2 m to .` is a range", "2 m to .", "write a number and its unit, such as `900 mm`"),
    ("between 250 and 300 mm", "`between` stands before the number", "between ", "write `275 mm ± 25 mm`"),
    ("1,200 mm", "`1,200` has a comma in it", "1,200", "write `1200 mm` or `1.2 mm`"),
    ("1,5 m", "`1,5` has a comma in it", "1,5", "write `1.5 m`"),
    ("1,200,000 mm", "`1,200,000` has a comma in it", "1,200,000", "write `1200000 mm`"),
    ("1,200.5 mm", "`1,200.5` has a comma in it", "1,200.5", "write `1200.5 mm`"),
    ("1.200,5 mm", "`1.200,5` has a comma in it", "1.200,5", "write `1200.5 mm`"),
    ("1 200 mm", "`1 200` has a space in it", "1 200", "write `1200 mm`"),
    ("about 900 mm", "`about` stands before the number", "about ", "write `900 mm` or `900 mm ± 45 mm`"),
    ("~900 mm", "`~` stands before the number", "~", "write `900 mm` or `900 mm ± 45 mm`"),
    ("about 30 °C", "`about` stands before the number", "about ", "write `30 °C`"),
    ("about 1,200 mm", "`about` stands before the number", "about ", "write `1200 mm` or `1.2 mm`"),
    ("two weeks", "`two` is written as a word", "two", "write `2 weeks`"),
    ("half", "`half` is written as a word", "half", "write `1/2`"),
    ("1e3 mm", "`1e3` is a power of ten", "1e3", "write `1000 mm`"),
    ("1e99 mm", "`1e99` is a power of ten", "1e99", "write a number and its unit, such as `900 mm`"),
    ("12:1", "`12:1` is a ratio", "12:1", "write `12`"),
    ("1:3", "`1:3` is a ratio", "1:3", "write `1/3`"),
    ("1:0", "`1:0` is a ratio", "1:0", "write a number and its unit, such as `900 mm`"),
    ("1 in 4", "`4` stands after the measure", "4", "write `1/4` or `1 in` or `4 in`"),
    ("900 mmm", "`mmm` is not a unit known here", "mmm", "write `900 mm`"),
    ("900 metrs", "`metrs` is not a unit known here", "metrs", "write `900 metres`"),
    ("900 M", "`M` is not a unit known here", "M", "write `900 m`"),
    ("5 KG", "`KG` is not a unit known here", "KG", "write `5 kg`"),
    ("30 C", "`C` is not a unit known here", "C", "write `30 °C`"),
    ("85 dB", "`dB` is not a unit known here", "dB", "write `85 dB(A)`"),
    ("12 bags", "`bags` is not a unit known here", "bags", "write `12`"),
    ("5²", "`²` is not a unit known here", "²", "write `5`"),
    ("5 g/m2/wek", "`wek` is not a unit known here", "wek", "write `5 g/m2/week`"),
    ("5 ±", "`±` is not a unit known here", "±", "write `5`"),
    ("1/3 of the plant", "`of` is not a unit known here", "of", "write `1/3`"),
    ("900 mm wide", "`wide` stands after the measure", "wide", "write `900 mm`"),
    ("900 mm x 600 mm", "`x 600 mm` stands after the measure", "x 600 mm", "write `900 mm`"),
    ("5 mm a day", "`a day` stands after the measure", "a day", "write `5 mm/day`"),
    ("2 L each week", "`each week` stands after the measure", "each week", "write `2 L/week`"),
    ("50 mm a side", "`a side` stands after the measure", "a side", "write `50 mm`"),
    ("5 mm ± x", "`± x` stands after the measure", "± x", "write `5 mm`"),
    ("3 ft 6", "`6` stands after the measure", "6", "write `3 ft 6 in` or `3 ft`"),
    ("9 9 mm", "`9 mm` stands after the measure", "9 mm", "write `9`"),
    ("1/0 in", "`1/0` is written", "1/0", "write `1/2 in`"),
    ("5 lb/0 ft2", "`/0 ft2` is written", "/0 ft2", "write `5 lb`"),
    ("3 ft 6 kg", "`3 ft` and `6 kg` stand together", "6 kg", "write `3 ft`"),
    ("6 in 3 ft", "`6 in` and `3 ft` stand together", "3 ft", "write `3 ft 6 in` or `6 in`"),
    ("30 °C 5 °F", "`30 °C` and `5 °F` stand together", "5 °F", "write `5 °F` or `30 °C`"),
    ("900 mm ± 20 g", "`900 mm` has a tolerance in g", "20 g", "write `900 mm`"),
    ("900 mm ± -20 mm", "a tolerance below nothing", "-20 mm", "write `900 mm ± 20 mm`"),
    ("3 ft 6 in ± 1", "`1` has no unit", "1", "write `3 ft 6 in ± 1 in`"),
    ("30 °C ± 5 %", "`5 %` of a temperature", "5 %", "write `30 °C ± 1.5 °C`"),
]


@pytest.mark.parametrize(("text", "what", "part", "mend"), REFUSED, ids=[row[0][:24] for row in REFUSED])
def test_what_cannot_be_read_is_explained(text: str, what: str, part: str, mend: str) -> None:
    with pytest.raises(QuantityError) as refused:
        parse(text)
    found = refused.value
    assert (found.what, text[found.start : found.end], found.mend) == (what, part, mend)
    assert str(found) == f"{found.what}: {found.why}; {found.mend}"


@pytest.mark.parametrize(
    ("text", "area", "m2"),
    [
        ("40 ft x 25 ft", "1000 sq ft", 92.90304),
        ("40 x 25 ft", "1000 sq ft", 92.90304),
        ("12 by 8 yd", "864 sq ft", 80.26822656),
        ("3 ft 6 in × 2′", "7 sq ft", 0.65032128),
        ("3m × 2.5 m", "7.5 m2", 7.5),
    ],
)
def test_two_sides_are_offered_as_their_area(text: str, area: str, m2: float) -> None:
    with pytest.raises(QuantityError) as refused:
        parse_in(text, "m2")
    assert (refused.value.what, refused.value.mend) == (f"`{text}` is two sides", f"write `{area}`")
    assert parse_in(area, "m2") == (m2, None)


@pytest.mark.parametrize(
    "text", ["3 x 2", "6 x 40 L", "5 kg x 2 m", "0 x 3 m", "1/0 x 3 m", "2 m x 3 m x 4 m", "x 3 m"]
)
def test_what_is_not_two_sides_makes_no_area(text: str) -> None:
    with pytest.raises(QuantityError) as refused:
        parse_in(text, "m2")
    assert "sides" not in refused.value.what


@pytest.mark.parametrize("text", [row[0] for row in REFUSED])
def test_every_mend_can_be_read(text: str) -> None:
    with pytest.raises(QuantityError) as refused:
        parse(text)
    for offer in re.findall("`([^`]+)`", refused.value.mend):
        assert isinstance(parse(offer), Quantity)


@pytest.mark.parametrize(
    ("text", "unit", "what", "why", "mend"),
    [
        ("2 kg", "mm", "`2 kg` is written", "a length is wanted here", "write a length, such as `900 mm`"),
        (
            "2 kg",
            "/m2",
            "`2 kg` is written",
            "a measure in /m² is wanted here",
            "write a measure in /m², such as `5/m2`",
        ),
        ("2 m", "N", "`2 m` is written", "a force is wanted here", "write a force, such as `5 N`"),
        ("900", "mm", "`900` has no unit", "a length is wanted here", "write `900 mm`"),
        ("900 ± 20", "mm", "`900 ± 20` has no unit", "a length is wanted here", "write `900 ± 20 mm`"),
        (" 6 ", "/m", "`6` has no unit", "a measure in /m is wanted here", "write `6/m`"),
        ("25", "%", "`25` has no unit", "a share in % is wanted here", "write `25 %`"),
        ("5 mm", "1", "`5 mm` is written", "a plain number is wanted here", "write a plain number, such as `1/3`"),
    ],
)
def test_the_wrong_kind_of_measure_is_explained(text: str, unit: str, what: str, why: str, mend: str) -> None:
    with pytest.raises(QuantityError) as refused:
        parse_in(text, unit)
    found = refused.value
    assert (found.what, found.why, found.mend) == (what, why, mend)
    assert (found.start, found.end) == (0, len(text))
    parse_in(re.findall("`([^`]+)`", mend)[-1], unit)


def test_a_quantity_keeps_what_the_author_wrote() -> None:
    found = parse(" 3′ 6″ ± ½ in ")
    assert found.written == "3′ 6″ ± ½ in"
    assert found.amount == 1.0668
    assert found.tolerance == 0.0127
    assert (found.dimension.length, found.dimension.mass) == (1, 0)
    assert len({found.dimension, parse("2 m").dimension}) == 1
    assert parse("2 m").tolerance_in("m") is None


def found_in(text: str) -> list[str]:
    return [text[start:end] for start, end, _ in find_all(text)]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Clip to 900 mm ± 20 mm, then 2 L/m² per week.", ["900 mm ± 20 mm", "2 L/m² per week"]),
        ("A 3 ft 6 in. post, 10 mm/h.", ["3 ft 6 in", "10 mm/h"]),
        ("A 3′6″ post at −5 °C", ["3′6″", "−5 °C"]),
        ("A 2-inch layer, 6\u00a0weeks.", ["2-inch", "6\u00a0weeks"]),
        ("from 250 mm to 300 mm", ["250 mm", "300 mm"]),
        ("600 to 750 mm, or 600–750 mm", []),
        ("take off 1/3, or 30 %", ["30 %"]),
        ("{finished width} and {5 mm}", []),
        ("Clip 2 in spring, a 2 in layer", ["2 in"]),
        ("a ladder at 1 in 4", []),
        ("in the 1980s, for 30 s", ["30 s"]),
        ('Say "number 3" and 5" deep', []),
        ("12 plants, 2 cuts, 2026-10-14, 3", []),
        ("1,200 mm, 1:10 m, v2 m", []),
        ("Give 5 L 2 weeks after", ["5 L", "2 weeks"]),
        ("½ in of mulch", ["½ in"]),
        ("1/0 mm, or 5 mm", ["5 mm"]),
        ("2 or more", []),
        ("", []),
    ],
)
def test_quantities_are_found_in_prose(text: str, expected: list[str]) -> None:
    assert found_in(text) == expected


def test_a_quantity_in_prose_has_its_value() -> None:
    [(start, end, found)] = find_all("Water 5 L/m2 now")
    assert (start, end, found.to("mm"), found.written) == (6, 12, 5, "5 L/m2")


def refusal_of(text: str) -> QuantityError | None:
    try:
        parse(text)
    except QuantityError as refused:
        return refused
    return None


AMOUNTS = st.decimals(min_value=0, max_value=99_999, places=3, allow_nan=False).map(lambda number: f"{number:f}")


@given(AMOUNTS, st.sampled_from(["mm", "in", "L/m2", "lb/1000 ft2", "US gal", "psi", "weeks", "dB(A)", "deg"]))
def test_what_is_written_comes_back(number: str, unit: str) -> None:
    assert parse_in(f"{number} {unit}", unit) == (float(number), None)


@given(st.floats(20, 9000))
def test_metric_and_imperial_print_the_same_length(value: float) -> None:
    shown = [parse_in(show(value, "mm", system), "mm")[0] for system in ("metric", "us", "uk")]
    assert shown[0] == pytest.approx(shown[1], rel=0.04, abs=13)
    assert shown[1] == shown[2]


@given(st.text(alphabet="0123456789 .,:/-–±%½'\"²mftinLgalC°eabout()\u00a0", max_size=24))
@example("." * 5)
@example("1/2/3 m")
def test_any_text_is_read_or_refused_with_a_mend_that_reads(text: str) -> None:
    refused = refusal_of(text)
    if refused is not None:
        assert 0 <= refused.start <= refused.end <= len(text)
        offers = re.findall("`([^`]+)`", refused.mend)
        assert offers
        assert [refusal_of(offer) for offer in offers] == [None] * len(offers)
    for start, end, found in find_all(text):
        assert text[start:end] == found.written


# A mend that would leave the number without the unit that is wanted gives way to an example of that unit.
@pytest.mark.parametrize(
    ("text", "unit", "mend"),
    [
        ("10 см", "mm", "write a length, such as `900 mm`"),
        ("10 blobs", "l", "write a volume, such as `9 L`"),
        ("warm", "°C", "write a temperature, such as `30 °C`"),
        ("10 millimetrs", "mm", "write `10 millimetres`"),
    ],
)
def test_a_unit_that_is_not_known_is_not_mended_into_none(text: str, unit: str, mend: str) -> None:
    with pytest.raises(QuantityError) as problem:
        parse_in(text, unit)
    assert problem.value.mend == mend
