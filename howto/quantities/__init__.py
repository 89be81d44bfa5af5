"""Quantities: units, how a written amount is read, and how one is printed."""

from howto.quantities.printing import round_down, round_up, show, show_number, show_range, show_tolerance
from howto.quantities.quantity import Quantity, find_all, parse, parse_in
from howto.quantities.units import UNIT_NAMES, Dimension, QuantityError, convert, convert_difference, field_unit

__all__ = [
    "UNIT_NAMES",
    "Dimension",
    "Quantity",
    "QuantityError",
    "convert",
    "convert_difference",
    "field_unit",
    "find_all",
    "parse",
    "parse_in",
    "round_down",
    "round_up",
    "show",
    "show_number",
    "show_range",
    "show_tolerance",
]
