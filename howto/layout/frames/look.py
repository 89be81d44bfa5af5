"""The sheet a frame is laid out on: its size, its free area, its colours, its tape and its title block.

Sizes are px on a frame 1080 px wide. On a phone about 65 mm wide 36 to 44 px read like 11 to 13 pt (computed); no
words are smaller than 28 px.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

from howto.colour import clearer, mixed
from howto.layout.drawing.plane import Box, box_outline
from howto.layout.text import CAP, length
from howto.model.crew import Crew
from howto.model.sheet import Area, PaintMark, Pixels, Stroke, TextMark

Ratio = Literal["4x5", "1x1", "9x16"]

SIZES: Final[dict[Ratio, tuple[int, int]]] = {"4x5": (1080, 1350), "1x1": (1080, 1080), "9x16": (1080, 1920)}
FREE_SHARE: Final = 0.14  # of a 9:16 frame at its top and bottom, often under controls: common allowance, from memory
SIDE: Final = 64.0  # margin left and right
TOP: Final = 60.0  # margin above, where there is no free band
COLUMN: Final = 136.0  # the left column: numerals, labels, discs
SMALLEST: Final = 28.0  # px
HAIR, LINE, EDGE = 2.0, 3.0, 5.0  # px: lines that stay behind, lines that measure, lines that bound
TAPE_HIGH: Final = 58.0
BLOCK_HIGH: Final = 62.0  # the title block below the tape
OWN_MARK: Final = "the crew's own mark"  # the name its pixels go by among the photographs
MARK_HIGH, MARK_WIDE = 44.0, 180.0  # px it may take


@dataclass(frozen=True, slots=True)
class Board:
    """One frame's sheet: what every frame of a carousel shares."""

    ratio: Ratio
    width: float
    height: float
    top: float  # where words may begin
    floor: float  # where the title block ends
    ink: str
    ground: str
    accent: str

    @property
    def area(self) -> Box:
        """Where words and drawings may stand: inside the margins, above the tape."""
        return (SIDE, self.top, self.width - SIDE, self.tape - 34.0)

    @property
    def tape(self) -> float:
        """Where the tape begins, from the top."""
        return self.floor - BLOCK_HIGH - TAPE_HIGH

    @property
    def soft(self) -> str:
        """Ink thinned for lines that stay behind."""
        return mixed(self.ground, self.ink, 0.3)

    @property
    def on_accent(self) -> str:
        """The colour of words on the accent."""
        return clearer(self.accent, self.ground, self.ink)


def board(ratio: Ratio, crew: Crew, accent: str, ground: str = "", ink: str = "") -> Board:
    """Return the sheet of a ratio in the crew's colours, or in those given."""
    width, height = SIZES[ratio]
    free = round(height * FREE_SHARE) if ratio == "9x16" else 0.0
    return Board(
        ratio=ratio,
        width=width,
        height=height,
        top=free or TOP,
        floor=height - free,
        ink=ink or crew.colours.ink,
        ground=ground or crew.colours.ground,
        accent=accent,
    )


def tape(sheet: Board, number: int, names: Sequence[str]) -> tuple[PaintMark, ...]:
    """Return the measuring tape: a division a frame with its short name, that of frame `number` (from 1) solid."""
    count = len(names)
    top, bottom = sheet.tape, sheet.tape + TAPE_HIGH
    pitch = sheet.width / count
    left = pitch * (number - 1)
    marks: list[PaintMark] = [
        Area(points=box_outline((left, top, left + pitch, bottom)), colour=sheet.accent),
        Stroke(points=((0, top), (sheet.width, top)), width=LINE, colour=sheet.ink),
    ]
    parts = 10 if pitch > 100 else 5
    for step in range(count * parts):
        x = pitch * step / parts
        if not step or left - 0.5 < x < left + pitch - 0.5:
            continue
        long = 26.0 if step % parts == 0 else 17.0 if step % 5 == 0 and parts == 10 else 11.0
        marks.append(Stroke(points=((x, top), (x, top + long)), width=HAIR, colour=sheet.ink))
    for each, name in enumerate(names, start=1):
        current = each == number
        size = min(44.0 if current else SMALLEST, pitch * 0.9)
        if not name or (not current and pitch < 40):
            continue
        baseline = (top + bottom) / 2 + size * CAP["head"] / 2 + (0 if current else 7)
        colour = sheet.on_accent if current else sheet.ink
        at = (pitch * (each - 0.5), baseline)
        marks.append(
            TextMark(
                text=name, at=at, size=size, face="head-bold" if current else "head", colour=colour, align="middle"
            )
        )
    return tuple(marks)


def title_block(
    sheet: Board, crew: str, title: str, version: str, own_mark: tuple[float, float] | None = None
) -> tuple[PaintMark, ...]:
    """Return the line below the tape: whose sheet it is, and of which version of which technique.

    `own_mark` is the size of the crew's mark in its own pixels; it stands before the name where there is one.
    """
    baseline = sheet.floor - BLOCK_HIGH / 2 + SMALLEST * CAP["head"] / 2
    right = sheet.width - SIDE
    pixels, left = _own_mark(sheet, own_mark)
    left_words = TextMark(text=crew, at=(left, baseline), size=SMALLEST, face="head-bold", colour=sheet.ink)
    room = right - left - length(crew, "head-bold", SMALLEST) - 40
    told = f"{title} · {version}" if version else title
    if length(told, "head", SMALLEST) > room:
        told = version
    stamp = TextMark(text=told, at=(right, baseline), size=SMALLEST, face="head", colour=sheet.ink, align="right")
    return (*pixels, left_words, stamp) if told else (*pixels, left_words)


def _own_mark(sheet: Board, size: tuple[float, float] | None) -> tuple[tuple[PaintMark, ...], float]:
    """Return the crew's mark, as large as the title block holds, and where the words after it begin."""
    if size is None:
        return (), float(SIDE)
    scale = min(MARK_HIGH / size[1], MARK_WIDE / size[0])
    wide, high = size[0] * scale, size[1] * scale
    top = sheet.floor - (BLOCK_HIGH + high) / 2
    box = (SIDE, top, SIDE + wide, top + high)
    return (Pixels(source=OWN_MARK, crop=(0.0, 0.0, *size), box=box),), SIDE + wide + 14.0
