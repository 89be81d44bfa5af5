"""What is known of plants and grasses: each value with its source and grade."""

from collections.abc import Iterable
from difflib import get_close_matches
from typing import Literal

from howto.model.reference import Grade, Reference
from howto.model.value import Value
from howto.seasons import Hemisphere, months_here


class Vouched(Value):
    """Something known, with who says so."""

    source: str
    grade: Grade

    def reference(self, of: str) -> Reference:
        """Return who says so as a source, `of` naming what they say it of."""
        return Reference(title=of, publisher=self.source, grade=self.grade)


class Fact(Vouched):
    """A range of numbers with who says so; `unit` names what they are in."""

    low: float
    high: float
    unit: str

    @property
    def middle(self) -> float:
        """The middle of the range."""
        return (self.low + self.high) / 2


class VouchedWords(Vouched):
    """A word or sentence with who says so."""

    text: str


class PlantMonths(Vouched):
    """Months of the northern year (1 to 12) with who says so; the south is six months on."""

    months: tuple[int, ...]

    def at(self, hemisphere: Hemisphere) -> tuple[int, ...]:
        """Return the months where the crew works."""
        return months_here(self.months, hemisphere)


class Plant(Value):
    """A plant the trade clips, trains, feeds or plants."""

    botanical: str
    common: tuple[str, ...] = ()
    kind: Literal["evergreen", "deciduous", "conifer"]
    uses: tuple[Literal["hedge", "topiary", "fruit", "screen", "ground cover", "tree", "shrub"], ...] = ()
    group: Literal["upright deciduous", "upright evergreen", "stocky deciduous", "leave the leader", "none"] = "none"
    regrows: VouchedWords | None = None  # "old wood", "green wood only" or "slowly from old wood"
    clip_months: PlantMonths | None = None
    clips_a_year: Fact | None = None
    growth_mm_per_year: Fact | None = None
    spacing_mm: Fact | None = None
    water: VouchedWords | None = None  # "low", "moderate" or "high": the landscape species factor
    cautions: tuple[VouchedWords, ...] = ()

    @property
    def names(self) -> tuple[str, ...]:
        """Every name it answers to, lower case."""
        return tuple(name.casefold() for name in (self.botanical, *self.common))


class Mowing(Vouched):
    """A range of set heights for one climate or place."""

    climate: str
    low_mm: float
    high_mm: float


class Grass(Value):
    """A lawn grass."""

    botanical: str
    common: tuple[str, ...] = ()
    season: Literal["warm", "cool"]
    mowing: tuple[Mowing, ...]
    growth_mm_per_day: Fact | None = None
    nitrogen_g_per_m2_year: Fact | None = None
    cautions: tuple[VouchedWords, ...] = ()

    @property
    def names(self) -> tuple[str, ...]:
        """Every name it answers to, lower case."""
        return tuple(name.casefold() for name in (self.botanical, *self.common))


class PlantBook(Value):
    """The plants and grasses a shelf knows: the package's own, and the shelf's over them."""

    plants: tuple[Plant, ...] = ()
    grasses: tuple[Grass, ...] = ()

    def plant(self, name: str) -> Plant | None:
        """Return the plant of that botanical or common name, or None."""
        return next((plant for plant in self.plants if name.casefold() in plant.names), None)

    def grass(self, name: str) -> Grass | None:
        """Return the grass of that botanical or common name, or None."""
        return next((grass for grass in self.grasses if name.casefold() in grass.names), None)

    def nearest(self, name: str, kind: Literal["plant", "grass"] = "plant") -> tuple[str, ...]:
        """Return up to three known names nearest to `name`."""
        known: Iterable[Plant | Grass] = self.plants if kind == "plant" else self.grasses
        names = sorted({each for item in known for each in item.names})
        return tuple(get_close_matches(name.casefold(), names, n=3, cutoff=0.5))
