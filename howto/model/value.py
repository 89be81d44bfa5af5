"""The base of every model: frozen, strict, and closed to unknown keys."""

from pydantic import BaseModel, ConfigDict


class Value(BaseModel):
    """A value that cannot change, takes no guessing, and refuses keys it does not know."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True, arbitrary_types_allowed=False)
