"""The mend of a measure that should be written otherwise."""

from typing import Any

from howto.model.family import Breach, Edit
from howto.quantities import field_unit
from howto.quantities.amounts import Words


def rewritten(
    field: str, text: str, what: Words, why: Words = "", first: Words = "", then: Words = "", **more: Any
) -> Breach:
    """Return the breach of a measure; its mend writes `text` there, with what else to do `first`, and `then`."""
    key = field_unit(field)[0]
    mend = f"{first}write `{key}: {text}`{then}"
    return Breach(f"measures.{field}", what, why, mend, Edit(text, key), **more)
