"""The cautions' frame: a warning panel in safety yellow and black, with every caution in words."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from howto.colour import SAFETY_YELLOW
from howto.findings import Finding
from howto.layout import fit_rules
from howto.layout.frames.lists import pages
from howto.layout.frames.look import LINE, Board, Ratio, board
from howto.layout.frames.parts import Block, block, heading, rule, steps_down, stripes, warning_sign
from howto.layout.frames.shared import Carousel, FramePage, Made, finding
from howto.layout.text import ASCENT
from howto.model.prose import plain
from howto.model.sheet import PaintMark
from howto.model.technique import Hazard

BLACK: Final = "#000000"
BAND: Final = 56.0  # the striped band's height
SIGN: Final[dict[Ratio, float]] = {"4x5": 190.0, "1x1": 132.0, "9x16": 210.0}
BODIES: Final = steps_down(62.0, 34.0, 2.0)
TITLE: Final = 1.42  # a caution's title, in sizes of its words
EASY: Final = 36.0  # px: cautions are set smaller only where that saves two frames
GAP: Final = 34.0
MORE_GAP: Final = 56.0  # px more between cautions where there is room
APART: Final = 48.0  # px between a title and what to wear, on one line
CODES: Final = 30.0  # px: the line about local codes


@dataclass(frozen=True, slots=True)
class SetHazard:
    """One caution wrapped: its title, what it says, and what to wear, `beside` the title or below."""

    title: Block
    text: Block
    wear: Block
    room: float
    beside: bool = False

    @property
    def narrow(self) -> bool:
        """Tell whether what to wear, if anything, has room on the title's line."""
        if not self.wear.lines:
            return True
        lines = len(self.title.lines), len(self.wear.lines)
        return lines == (1, 1) and self.title.width + APART + self.wear.width <= self.room

    @property
    def sentences(self) -> tuple[str, ...]:
        """What the caution says, part by part."""
        return tuple(" ".join(part.lines) for part in (self.title, self.text, self.wear) if part.lines)

    @property
    def height(self) -> float:
        """From the top of the title to the foot of the last line."""
        parts = [each.height for each in self.stacked]
        return sum(parts) + 6 * (len(parts) - 1)

    @property
    def stacked(self) -> tuple[Block, ...]:
        """The parts that stand one below another."""
        parts = (self.title, self.text) if self.beside else (self.title, self.text, self.wear)
        return tuple(each for each in parts if each.lines)

    def at(self, left: float, top: float) -> Iterator[PaintMark]:
        """Yield the caution with its upper left corner at a point."""
        y = top
        for part in self.stacked:
            yield from part.evened.at(left, y, BLACK)
            y += part.height + 6
        if self.beside and self.wear.lines:
            above = self.title.size * ASCENT - self.wear.size * ASCENT  # one baseline for both
            yield from self.wear.at(left + self.room - self.wear.width, top + above, BLACK)


@dataclass(frozen=True, slots=True)
class Panel:
    """One frame of cautions: which ones, and whether they are higher than the panel."""

    hazards: tuple[SetHazard, ...]
    codes: Block
    over: bool


def panels(sheet: Board, hazards: Sequence[Hazard], wear: str, codes: str) -> tuple[Panel, ...]:
    """Return the cautions on as few frames as hold them, at the largest size that does."""
    left, _, right, _ = sheet.area
    foot = block(codes, "text", CODES, right - left, 1.18)
    room = _room(sheet, foot)
    tried: list[tuple[float, list[SetHazard], tuple[slice, ...]]] = []
    for body in BODIES:
        ready = [set_hazard(each, wear, body, right - left) for each in hazards]
        if all(each.narrow for each in ready):
            ready = [replace(each, beside=True) for each in ready]
        cuts = pages([each.height for each in ready], GAP, room)
        tried.append((len(cuts) + (1.5 if body < EASY else 0.0), ready, cuts))
    fits = [each for each in tried if all(_high(each[1][cut]) <= room for cut in each[2])] or tried[-1:]
    _, ready, cuts = min(fits, key=lambda each: each[0])
    return tuple(Panel(tuple(ready[cut]), foot, over=_high(ready[cut]) > room) for cut in cuts)


def set_hazard(hazard: Hazard, wear: str, body: float, width: float) -> SetHazard:
    """Return a caution wrapped, its words at a size."""
    title = round(body * TITLE)
    things = ", ".join(hazard.wear)
    return SetHazard(
        title=heading(hazard.title.rstrip(" ."), title, width) if hazard.title else Block((), "head-bold", title, 1.0),
        text=block(plain(hazard.text), "text", body, width),
        wear=block(wear.format(things=things) if things else "", "text-bold", body, width),
        room=width,
    )


def paint_panel(sheet: Board, title: str, panel: Panel) -> Iterator[PaintMark]:
    """Yield the panel: stripes, warning sign, heading, cautions, and the line about local codes."""
    left, _, right, bottom = sheet.area
    band = _band_top(sheet)
    yield from stripes(band, band + BAND, sheet.width, sheet.ink)
    start = band + BAND + 36
    size = SIGN[sheet.ratio]
    yield from warning_sign(left, start, size, sheet.ink, sheet.ground)
    words = heading(title, 104 if size > 150 else 92, right - left - size - 40)
    yield from words.at(left + size + 36, start + size * 0.5 - words.height / 2, sheet.ink)
    y = start + size * 0.9 + 40
    free = bottom - panel.codes.height - 36 - y - _high(panel.hazards)
    gap = GAP + min(MORE_GAP, max(0.0, free / (len(panel.hazards) + 1)))
    for number, each in enumerate(panel.hazards):
        if number:
            yield rule(left, right, y - gap / 2, sheet.ink, LINE)
        yield from each.at(left, y)
        y += each.height + gap
    yield from panel.codes.evened.at(left, bottom - panel.codes.height, sheet.ink)


def _band_top(sheet: Board) -> float:
    """Return where the striped band begins: at the sheet's edge, or below the free band."""
    return sheet.top if sheet.ratio == "9x16" else 0.0


def _room(sheet: Board, codes: Block) -> float:
    """Return how high the cautions may stand."""
    start = _band_top(sheet) + BAND + 36 + SIGN[sheet.ratio] * 0.9 + 40
    return sheet.area[3] - codes.height - 36 - start


def _high(hazards: Sequence[SetHazard]) -> float:
    """Return how high the cautions stand together."""
    return sum(each.height for each in hazards) + GAP * max(0, len(hazards) - 1)


def caution_pages(job: Carousel) -> tuple[Made, ...]:
    """Return the frames of the cautions: one where they fit on one, never leaving one out."""
    if not job.technique.cautions:
        return ()
    crew = job.ready.crew
    sheet = board(job.sheet.ratio, crew, BLACK, ground=SAFETY_YELLOW, ink=BLACK)
    made: list[Made] = []
    for panel in panels(sheet, job.technique.cautions, job.say["wear_things"], job.say["leaflet_footer"]):
        title = job.say["take_care"]
        told = [sentence for each in panel.hazards for sentence in each.sentences]
        page = FramePage(
            sheet, tuple(paint_panel(sheet, title, panel)), (title, *told, job.say["warning_sign"]), name="!"
        )
        made.append((page, (_overfull(job),) if panel.over else ()))
    return tuple(made)


def _overfull(job: Carousel) -> Finding:
    """Return the finding of a caution that is longer than a frame."""
    longest = max(range(len(job.technique.cautions)), key=lambda at: len(plain(job.technique.cautions[at].text)))
    what = "this caution has more words than a frame has room for"
    why = f"at {BODIES[-1]:.0f} px, the smallest, it is higher than the warning panel"
    mend = "make two cautions of it, or write it in at most 300 characters"
    return finding(fit_rules.FRAME, job.technique, f"cautions[{longest}]", what, why, mend)
