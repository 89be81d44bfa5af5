"""Amounts are found in prose of every language, each at its place in the author's text."""

import pytest

from howto.languages.written_units import amounts_in


@pytest.mark.parametrize(
    ("text", "language", "found"),
    [
        ("Water 9 L, or 2.5 US gal.", "en", [("9 L", 9.0), ("2.5 US gal", 9.4635295)]),
        ("Riegue con 4,5 litros y luego 9 L.", "es", [("4,5 litros", 4.5), ("9 L", 9.0)]),
        ("Pida 1.5 L o 1.500 L.", "es", [("1.5 L", 1.5)]),
        ("Pida 1,500 L o 1.500 L.", "es-MX", [("1.500 L", 1.5)]),
        ("Tưới 4,5 lít mỗi cây.", "vi", [("4,5 lít", 4.5)]),
        ("Whakainu 4.5 rīta.", "mi", [("4.5 rīta", 4.5)]),
        ("Doce plantas, 12 plantas.", "es", []),
    ],
)
def test_an_amount_is_found_as_it_is_written(text: str, language: str, found: list[tuple[str, float]]) -> None:
    told = list(amounts_in(text, language))
    assert [(text[start:end], each.written) for start, end, each in told] == [(words, words) for words, _ in found]
    assert [each.to("L") for *_, each in told] == pytest.approx([litres for _, litres in found])
