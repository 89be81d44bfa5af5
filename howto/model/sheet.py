"""What is placed: sheets of blocks for pages, and frames of marks for pictures."""

from collections.abc import Mapping
from typing import Literal

from howto.model.prose import Prose
from howto.model.value import Value

Point = tuple[float, float]
Align = Literal["left", "middle", "right"]
Face = Literal["text", "text-bold", "text-italic", "head", "head-bold"]


# -- marks: what a painter paints, y downwards from the upper left, in the picture's own unit --


class Stroke(Value):
    """A polyline; `dash` is on/off lengths, () for solid."""

    points: tuple[Point, ...]
    width: float
    colour: str
    dash: tuple[float, ...] = ()
    closed: bool = False


class Area(Value):
    """A filled polygon; `opacity` from 0 to 1."""

    points: tuple[Point, ...]
    colour: str
    opacity: float = 1.0


class Dot(Value):
    """A filled circle with an optional ring round it."""

    centre: Point
    radius: float
    colour: str
    ring_width: float = 0.0
    ring_colour: str = ""


class TextMark(Value):
    """One line of text; `at` is on its baseline, at the left, middle or right; `angle` in degrees, anticlockwise."""

    text: str
    at: Point
    size: float
    face: Face = "text"
    colour: str
    align: Align = "left"
    angle: float = 0.0


class Pixels(Value):
    """A photograph, already upright and in sRGB: the crop (in its own pixels) and the box it fills."""

    source: str
    crop: tuple[float, float, float, float]
    box: tuple[float, float, float, float]


PaintMark = Stroke | Area | Dot | TextMark | Pixels


class Art(Value):
    """A fitted drawing: marks in a box of `width` × `height` (mm on pages, px in frames), words placed."""

    width: float
    height: float
    marks: tuple[PaintMark, ...]
    caption: str
    alt: str
    scale: str = ""  # "1:20" on pages, where a ruler can be laid on it


class Frame(Value):
    """One picture of a carousel in px, ready to paint; `alt` is what a person who cannot see it needs."""

    name: str
    width: int
    height: int
    ground: str
    marks: tuple[PaintMark, ...]
    alt: str
    credit: str = ""


# -- blocks: what a page holds, in reading order --


class Paragraph(Value):
    """A paragraph; `small` for notes."""

    kind: Literal["paragraph"] = "paragraph"
    text: Prose
    small: bool = False


class Bullets(Value):
    """A list; with `tick` each item has a box to tick."""

    kind: Literal["bullets"] = "bullets"
    items: tuple[Prose, ...]
    tick: bool = False


class Entry(Value):
    """One measure or figure: what it is, how much, and a note such as its tolerance; `headline` stands large."""

    label: str
    value: str
    note: str = ""
    headline: bool = False


class Facts(Value):
    """Measures and figures, a line each."""

    kind: Literal["facts"] = "facts"
    entries: tuple[Entry, ...]


def _is_amount(cell: str) -> bool:
    """Tell whether a cell is a number, an amount, or the dash of one that is missing."""
    return cell.lstrip("±−-–")[:1].isdigit() or cell[:1] in {*"¼½¾–-−"}


class Grid(Value):
    """A table with a header row.

    A `turned` one reads across, its names down the left; a `folded` one has its lower half beside the upper.
    """

    kind: Literal["grid"] = "grid"
    caption: str = ""
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    turned: bool = False
    folded: bool = False

    @property
    def left(self) -> tuple[bool, ...]:
        """Tell of each column whether it holds words, which stand left; amounts stand right, below one another."""
        if self.turned:
            return (True, *(False for _ in self.columns[1:]))
        cells = zip(*self.rows, strict=True)
        words = tuple(any(cell and not _is_amount(cell) for cell in column) for column in cells)
        return words or tuple(False for _ in self.columns)

    @property
    def upright(self) -> "Grid":
        """The same table with its names across and all its rows below each other, for a page that can grow."""
        columns, rows = self.columns, self.rows
        if self.turned:
            columns, *lines = zip(columns, *rows, strict=True)
            rows = tuple(lines)
        elif self.folded:
            half = len(columns) // 2
            columns, rows = columns[:half], (*(row[:half] for row in rows), *(row[half:] for row in rows if row[half]))
        return Grid(caption=self.caption, columns=columns, rows=rows)


class StepRow(Value):
    """A numbered step with its box to tick, key points, reasons and checks."""

    kind: Literal["step"] = "step"
    number: int
    title: str
    text: Prose = ()
    key_points: tuple[Prose, ...] = ()
    reasons: tuple[Prose, ...] = ()
    checks: tuple[Prose, ...] = ()


class CautionRow(Value):
    """A caution with what to wear."""

    kind: Literal["caution"] = "caution"
    title: str
    text: Prose = ()
    wear: tuple[str, ...] = ()


class Dated(Value):
    """A task with its date or time."""

    kind: Literal["dated"] = "dated"
    when: str
    text: Prose
    note: str = ""
    number: int = 0  # the disc that stands for it on a line of dates; 0 for none


class ArtBlock(Value):
    """A drawing in a page, and where paper needs other colours, as it is printed."""

    kind: Literal["art"] = "art"
    art: Art
    printed: Art | None = None  # the same in the colours of white paper


class Photo(Value):
    """A photograph in a page: JPEG bytes cleaned of everything but pixels."""

    kind: Literal["photo"] = "photo"
    jpeg: bytes
    width: int
    height: int
    alt: str
    caption: str = ""


class Code(Value):
    """A QR code: what it opens, in words and as the address."""

    kind: Literal["code"] = "code"
    url: str
    label: str


Block = Paragraph | Bullets | Facts | Grid | StepRow | CautionRow | Dated | ArtBlock | Photo | Code


class Section(Value):
    """A headed part of a page; `tone` tells cautions, "do not" and "call us" boxes apart."""

    heading: str
    blocks: tuple[Block, ...]
    name: str = ""  # what a shorter telling calls it when it has to leave parts out
    tone: Literal["plain", "caution", "never", "call"] = "plain"
    side: bool = False  # may stand in a narrow column beside the next section
    fresh: bool = False  # starts a new side where the sheet still fits when it does
    spare: int = 0  # left off a print that will not fit with it, 1 before 2; a page on a screen always has it


class Sheet(Value):
    """A page or two, in reading order.

    `width_mm` × `height_mm` is the paper; `text_pt` the body size; `small_pt` the floor below which a sheet
    is not shrunk, and `least_pt` below which nothing on it is; `most_pages` what it must fit. A sheet that
    `saves_paper` is shrunk before it takes another page. `leading` and `gap` are in ems, `title_ratio` in text sizes.
    """

    template: Literal["card", "leaflet"] = "leaflet"
    leaf: str = "page"  # the label of a page's number
    home: str = ""  # the page that lists it with others
    saves_paper: bool = True
    least_pt: float
    leading: float = 0.66
    gap: float = 1.5
    title_ratio: float = 2.6
    id: str
    title: str
    over: str = ""  # a short line above the title: family, level, minutes
    under: Prose = ()  # the paragraph below it
    language: str = "en"
    width_mm: float
    height_mm: float
    text_pt: float
    small_pt: float
    most_pages: int
    ink: str
    ground: str
    accent: str
    sections: tuple[Section, ...]
    footer: str
    stamp: str  # version and date
    words: Mapping[str, str] = {}  # the small labels a painter sets, by name, in the sheet's language
