"""What a mend tells an author to type can be typed."""

import pytest

from howto.model.family import typed
from howto.quantities import parse_in


@pytest.mark.parametrize(
    ("value", "unit", "down", "text"),
    [
        (0.000009, "mm", False, "0.000009 mm"),
        (5e13, "mm", False, "50000000000000 mm"),
        (0, "L", False, "0 L"),
        (2 / 3, "L", True, "0.666666 L"),
        (2 / 3, "L", False, "0.666667 L"),
        (-1 / 3, "°C", True, "-0.333334 °C"),
        (9, "", False, "9"),
        (3, "/m", False, "3/m"),
    ],
)
def test_an_amount_is_typed_in_full_and_rounded_inwards(value: float, unit: str, down: bool, text: str) -> None:
    assert typed(value, unit, down=down) == text
    if unit not in {"", "/m"}:
        assert parse_in(text, unit)[0] == pytest.approx(value, rel=3e-6)
