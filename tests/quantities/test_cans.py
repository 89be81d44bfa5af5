"""The can that people own is one that their shops sell."""

import pytest

from howto.quantities import convert
from howto.quantities.cans import usual_can_l


@pytest.mark.parametrize(("system", "size", "unit"), [("metric", 9, "L"), ("us", 2, "US gal"), ("uk", 2, "UK gal")])
def test_a_can_is_a_whole_number_in_the_units_of_its_owner(system: str, size: int, unit: str) -> None:
    assert convert(usual_can_l(system), "L", unit) == pytest.approx(size)
