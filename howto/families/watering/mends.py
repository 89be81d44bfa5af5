"""The mend of a measure that should be written otherwise."""

from howto.model.family import Breach, Edit
from howto.quantities import field_unit
from howto.quantities.amounts import Words


def rewritten(
    field: str, text: str, what: Words, why: Words = "", mend: Words = "write {}", *, key: str = "", also: str = ""
) -> Breach:
    """Return the breach of a measure; `{}` in its mend is the line that writes `text` there, or under another key."""
    key = key or field_unit(field)[0]
    mend, edit = mend.format(f"`{key}: {text}`"), Edit(key=key, text=text)
    return Breach(f"measures.{field}", what, why, mend, edit, also=f"measures.{also}" if also else "")
