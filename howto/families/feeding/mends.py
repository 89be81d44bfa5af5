"""Numbers written so that a mend keeps its limit."""

from math import floor, log10

from howto.quantities import round_down
from howto.quantities import show_number as num

DIGITS = 4  # figures a mend is written with


def at_most(value: float) -> str:
    """Return a number written with four figures and never above `value`."""
    step = 10.0 ** (floor(log10(value)) - DIGITS + 1)
    return num(round_down(value, step), DIGITS + 1)
