"""A visit: what was done in a client's garden, from which their leaflet is made."""

import datetime as dt
from collections.abc import Mapping

from pydantic import Field

from howto.model.prose import Prose
from howto.model.technique import AnyTechnique, Picture
from howto.model.value import Value
from howto.span import Located, Span


class Job(Value):
    """One technique done on the visit, with the measures of this garden in place of the technique's.

    `leave_out` are words of aftercare lines that this garden's leaflet does not carry.
    """

    technique: AnyTechnique
    what: str = ""
    count: int = 1
    area_m2: float | None = None
    plant: str = ""
    leave_out: tuple[str, ...] = ()


class Visit(Value):
    """One visit; `site` is a label, never an address; `revision` counts up when a leaflet is sent out again."""

    id: str
    site: str
    date: dt.date
    next_visit: dt.date | None = None
    language: str = "en"
    large_print: bool = False
    may_publish: bool = False
    revision: int = 0
    jobs: tuple[Job, ...]
    words: tuple[Prose, ...] = ()
    before: tuple[Picture, ...] = ()
    after: tuple[Picture, ...] = ()
    version: str = ""
    path: str = ""
    spans: Mapping[str, Span] = {}
    located: Mapping[Span, Located] = Field(default={}, exclude=True, repr=False)
