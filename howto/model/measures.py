"""What an author writes under `measures:`; each family extends it with its own fields."""

from collections.abc import Mapping
from typing import Any

from pydantic import Field

from howto.model.value import Value


class Measures(Value):
    """The measures of one technique.

    A field's name carries its unit (`finished_width_mm`), and the author's key is the name without it
    (`finished width`), so the reader can turn any written unit into the field's. A field annotated `int` is a
    count, `bool` a yes or no, `Literal[...]` one of those words, `tuple[float, ...]` a comma-separated list.
    `tolerances` holds what stood after ±, by field name and in the field's unit; `written` the author's text.
    """

    tolerances: Mapping[str, float] = Field(default_factory=dict)
    written: Mapping[str, str] = Field(default_factory=dict)

    def tolerance(self, field: str) -> float | None:
        """Return the ± of a field in the field's unit, or None where the author gave none."""
        return self.tolerances.get(field)

    def assumed(self, field: str) -> bool:
        """Tell whether a field holds what the family takes where the author says nothing."""
        if field in self.written or field not in self.model_fields_set:
            return field not in self.written
        return bool(self.written) and bool(getattr(self, field) == type(self).model_fields[field].default)

    def given(self) -> dict[str, Any]:
        """Return the fields that hold a value, in the order the family declares them."""
        names = (name for name in type(self).model_fields if name not in {"tolerances", "written"})
        return {name: value for name in names if (value := getattr(self, name)) is not None}
