"""How a drawing looks: its colours, line widths and text sizes, in the unit of the box it is fitted to.

Line widths keep the steps of technical drawing, each about 1.4 times the last (ISO 128-20:1996, line groups:
from memory): hatching and leaders thin, visible edges medium, what matters heavy.
"""

from dataclasses import dataclass

from howto.colour import mixed, on_paper
from howto.model.crew import Colours

LEAF = "#5e7a4f"  # mixed thinly into the ground for what lives


@dataclass(frozen=True, slots=True)
class Look:
    """Colours as `#rrggbb`; widths and sizes in the box's unit; `page` tells paper from a picture."""

    ink: str
    ground: str
    accent: str
    page: bool
    fine: float  # hatching
    thin: float  # dimension lines, leaders, centre lines
    medium: float  # edges of wood, walls, blades
    heavy: float  # what stays, what to look at
    size: float  # words
    small: float  # the size below which words are not set
    disc: float  # radius of a numbered disc
    gap: float  # the least air between two things

    @property
    def leaf(self) -> str:
        """The pale fill of what stays."""
        return mixed(self.ground, LEAF, 0.26)

    @property
    def wood(self) -> str:
        """The dark fill of stems and stakes."""
        return mixed(self.ground, self.ink, 0.78)

    @property
    def grey(self) -> str:
        """Ink thinned for hatching that should stay behind."""
        return mixed(self.ground, self.ink, 0.6)

    @property
    def water(self) -> str:
        """The fill of water and wetted soil: the ink, very thin."""
        return mixed(self.ground, self.ink, 0.12)


def page_look(colours: Colours) -> Look:
    """Return the look on paper, in mm: words 3.2 mm (9 pt), never below 2.8 mm (8 pt)."""
    return Look(
        ink=colours.ink,
        ground=colours.ground,
        accent=colours.accent,
        page=True,
        fine=0.13,
        thin=0.18,
        medium=0.35,
        heavy=0.6,
        size=3.2,
        small=2.8,
        disc=2.3,
        gap=1.2,
    )


def print_look(colours: Colours) -> Look:
    """Return the look of a page on white paper, where the crew's ground and a pale ink do not reach."""
    ink, ground, accent = on_paper(colours.ink, colours.ground, colours.accent)
    return page_look(colours.model_copy(update={"ink": ink, "ground": ground, "accent": accent}))


def frame_look(colours: Colours) -> Look:
    """Return the look in pictures 1080 px wide, in px: words 38 px, never below 28 px."""
    return Look(
        ink=colours.ink,
        ground=colours.ground,
        accent=colours.accent,
        page=False,
        fine=2.0,
        thin=2.5,
        medium=4.5,
        heavy=7.0,
        size=38.0,
        small=28.0,
        disc=30.0,
        gap=14.0,
    )
