"""No measure at its bounds, alone or with any other, brings a figure, a rule, a mend or a drawing down."""

import pytest

from howto.families import FAMILIES
from howto.model.family import AnyFamily
from tests.bounds import alone, bases, choices, covering, tried
from tests.support.builders import keys_of


def name(trade: AnyFamily) -> str:
    return trade.name


@pytest.mark.parametrize("trade", FAMILIES, ids=name)
def test_a_measure_at_its_bounds_brings_nothing_down(trade: AnyFamily) -> None:
    assert list(tried(bases()[trade.name][-1], alone(trade))) == []


@pytest.mark.parametrize("trade", FAMILIES, ids=name)
def test_measures_at_their_bounds_together_bring_nothing_down(trade: AnyFamily) -> None:
    assert list(tried(bases()[trade.name][0], covering(trade))) == []


@pytest.mark.parametrize("trade", FAMILIES, ids=name)
def test_every_number_has_a_lowest_and_a_highest(trade: AnyFamily) -> None:
    for each in keys_of(trade.measures).values():
        assert len(choices(trade, each)) >= 2, each
