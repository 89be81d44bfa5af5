"""A technique → the frames of its carousel: cover, tools and numbers, a frame a step, cautions, finish."""

from collections.abc import Mapping, Sequence

from howto.colour import TEXT_RATIO, contrast, nearest
from howto.findings import Finding, in_order
from howto.languages import language_of
from howto.layout.drawing.look import frame_look
from howto.layout.fit_rules import FIT_RULES
from howto.layout.frames.alt import within
from howto.layout.frames.cautions import caution_pages
from howto.layout.frames.copy import bare
from howto.layout.frames.covers import cover
from howto.layout.frames.end import finish_page
from howto.layout.frames.look import OWN_MARK, Ratio, board, tape, title_block
from howto.layout.frames.numbers import numbers_pages
from howto.layout.frames.publish import caption_findings
from howto.layout.frames.shared import Carousel, FramePage
from howto.layout.frames.steps import steps
from howto.layout.unset_letters import letter_findings
from howto.model.crew import Colours
from howto.model.photo import Photograph
from howto.model.ready import Ready
from howto.model.sheet import Frame

FRAME_RULES = FIT_RULES
RATIOS: tuple[Ratio, ...] = ("4x5", "1x1", "9x16")


def frames(
    ready: Ready, photos: Mapping[str, Photograph], ratio: Ratio
) -> tuple[tuple[Frame, ...], tuple[Finding, ...]]:
    """Return the frames of a technique laid out for one ratio, and what will not fit.

    `photos` are the pictures that could be read, by the name the technique gives them; a step without one shows
    the drawing that goes with it.
    """
    technique, crew = ready.technique, ready.crew
    accent = legible_accent(crew.colours)
    colours = crew.colours.model_copy(update={"accent": accent})
    job = Carousel(
        ready=ready,
        photos=photos,
        sheet=board(ratio, crew, accent),
        look=frame_look(colours),
        say=language_of(technique.language).labels,
    )
    made = (cover(job), *numbers_pages(job), *steps(job), *caution_pages(job), finish_page(job))
    pages = [page for page, _ in made]
    names = tuple(page.name for page in pages)
    laid = tuple(_frame(job, page, number, names) for number, page in enumerate(pages, start=1))
    notes = (each for _, findings in made for each in findings)
    letters = letter_findings(laid, technique.spot("title"))
    return laid, in_order((*letters, *caption_findings(ready), *notes))


def legible_accent(colours: Colours) -> str:
    """Return the accent, or the nearest colour to it that makes AA on the ground; the ink where there is none."""
    passing = nearest(colours.accent, lambda colour: contrast(colour, colours.ground) >= TEXT_RATIO)
    return passing or colours.ink


def _frame(job: Carousel, page: FramePage, number: int, names: Sequence[str]) -> Frame:
    """Return a page as a frame, with its tape and its title block."""
    technique, crew, sheet = job.technique, job.ready.crew, page.sheet
    own = job.photos.get(OWN_MARK) if sheet.ground == crew.colours.ground else None
    own_size = (float(own.width), float(own.height)) if own is not None else None
    block = title_block(sheet, crew.name, bare(technique.title), technique.version, own_size)
    lead = job.say["frame_of"].format(number=number, count=len(names))
    return Frame(
        name=f"{number:02d}",
        width=int(sheet.width),
        height=int(sheet.height),
        ground=sheet.ground,
        marks=(*page.marks, *tape(sheet, number, names), *block),
        alt=within((f"{lead}: {page.alt[0]}" if page.alt else lead, *page.alt[1:]), crew.alt_limit),
        credit=page.credit,
    )
