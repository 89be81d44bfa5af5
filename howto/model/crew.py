"""The crew: who works, where, in which units, and how their pages look."""

from collections.abc import Mapping

from pydantic import Field

from howto.languages.reader import Reader, System
from howto.languages.tags import base
from howto.model.value import Value
from howto.seasons import Hemisphere, month_here
from howto.span import Span

__all__ = ["Climate", "Colours", "Crew", "System"]


class Climate(Value):
    """Twelve monthly means, January first."""

    max_c: tuple[float, ...] = Field(min_length=12, max_length=12)
    min_c: tuple[float, ...] = Field(min_length=12, max_length=12)
    humidity_percent: tuple[float, ...] = Field(min_length=12, max_length=12)
    wind_m_per_s: tuple[float, ...] = Field(min_length=12, max_length=12)
    sunshine_hours: tuple[float, ...] = Field(min_length=12, max_length=12)
    rain_mm: tuple[float, ...] = Field(default=(0.0,) * 12, min_length=12, max_length=12)


class Colours(Value):
    """Ink, ground and the one accent, each `#rrggbb`."""

    ink: str = "#1d2a26"
    ground: str = "#f6f3ea"
    accent: str = "#a63d1f"


class Crew(Value):
    """One crew; the defaults serve a shelf whose `crew.yaml` says nothing.

    `spans` says where each field stands (`mark`, `colours.ink`).
    """

    name: str = "The crew"
    place: str = ""
    hemisphere: Hemisphere = "north"
    latitude_deg: float = Field(default=45.0, ge=-90, le=90)
    altitude_m: float = Field(default=0.0, ge=-430, le=6000)
    coast: bool = False
    soil: str = ""
    units: System = "metric"
    language: str = "en"
    currency: str = "$"
    colours: Colours = Colours()
    contact: str = ""
    web: str = ""
    mark: str = ""  # an own mark: a picture file beside crew.yaml
    climate: Climate | None = None
    caption_limit: int = Field(default=2000, ge=100, le=10000)
    alt_limit: int = Field(default=900, ge=125, le=5000)
    spans: Mapping[str, Span] = Field(default={}, repr=False)
    words: Mapping[str, Mapping[str, str]] = {}  # by language: an English label or phrase in small letters, and its own

    @property
    def reader(self) -> Reader:
        """The one who reads this crew's pages."""
        return self.read_in(self.language)

    def read_in(self, language: str) -> Reader:
        """Return the reader of this crew's pages in a language."""
        return Reader(language, self.units, self.words.get(base(language), {}))

    @property
    def in_english(self) -> "Crew":
        """The crew as its authors read of it: numbers in findings are typed into files as they stand."""
        return self.model_copy(update={"language": "en"})

    def month(self, northern: int) -> int:
        """Return the month (1 to 12) here that answers to a northern one."""
        return month_here(northern, self.hemisphere)
