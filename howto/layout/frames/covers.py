"""The cover's frame: chooses its picture and puts the parts of `frame_cover` together."""

from dataclasses import replace
from typing import Final

from howto.findings import Finding
from howto.layout import fit_rules
from howto.layout.frames.copy import bare, cover_numbers, over_line
from howto.layout.frames.cover import (
    CoverNumbers,
    above,
    cover_crop,
    cover_title,
    drawing_cover,
    photo_cover,
    set_numbers,
)
from howto.layout.frames.look import Ratio
from howto.layout.frames.parts import Block, heading
from howto.layout.frames.picture import too_small
from howto.layout.frames.shared import Carousel, FramePage, Made, drawn, finding
from howto.model.prose import plain
from howto.model.technique import Picture

# of the free height: what a title may take on a photograph, and above a drawing
ON_PHOTO: Final[dict[Ratio, float]] = {"4x5": 0.42, "1x1": 0.3, "9x16": 0.4}
ON_PAPER: Final[dict[Ratio, float]] = {"4x5": 0.29, "1x1": 0.2, "9x16": 0.29}


def cover(job: Carousel) -> Made:
    """Return the cover: a photograph if there is one, else the first drawing, with the main numbers."""
    title = bare(job.technique.title)
    width = job.sheet.area[2] - job.sheet.area[0]
    numbers = set_numbers(cover_numbers(job.ready), width)
    chosen = cover_picture(job)
    block = cover_title(job.sheet, title, (ON_PHOTO if chosen else ON_PAPER)[job.sheet.ratio])
    found = () if block else (_too_long(job, title),)
    block = block or heading(title, 96, width)
    told = (*(f"{each.label}: {each.value}" for each in numbers.told), *map(plain, job.technique.intro))
    page, more = _on_photo(job, block, numbers, *chosen) if chosen else _on_paper(job, block, numbers)
    return replace(page, alt=(title, *page.alt, *told)), (*found, *more)


def _on_photo(job: Carousel, title: Block, numbers: CoverNumbers, field: str, picture: Picture) -> Made:
    """Return the cover with its title on a photograph."""
    photo = job.photos[picture.file]
    crop = cover_crop(job.sheet, numbers, photo, picture)
    marks = photo_cover(job.sheet, over_line(job.ready, job.say), title, numbers, photo, picture)
    found = tuple(
        finding(fit_rules.SMALL, job.technique, field, each.what, each.why, each.mend)
        for each in too_small(photo, picture, crop, job.sheet.ratio)
    )
    return FramePage(job.sheet, marks, (picture.alt,), picture.credit), found


def _on_paper(job: Carousel, title: Block, numbers: CoverNumbers) -> Made:
    """Return the cover with its title above the first drawing, or alone."""
    design = above(job.sheet, title, numbers)
    words = tuple(drawing_cover(job.sheet, over_line(job.ready, job.say), design, numbers))
    if not job.ready.drawings:
        return FramePage(job.sheet, words, ()), ()
    art, reasons = drawn(job, job.ready.drawings[0], design.box)
    return FramePage(job.sheet, (*art, *words), (job.ready.drawings[0].alt,)), tuple(
        _bare(job, reason) for reason in reasons
    )


def _bare(job: Carousel, reason: str) -> Finding:
    """Return the finding of a drawing whose labels do not fit on the cover."""
    what, mend = "the cover's drawing is shown without its labels", "write a shorter title"
    return finding(fit_rules.DRAWING, job.technique, "title", what, reason, mend)


def cover_picture(job: Carousel) -> tuple[str, Picture] | None:
    """Return the cover's picture and its field: the last without marks, as it shows most, else the last."""
    pictures = [
        (f"steps[{number}].pictures[{at}]", picture)
        for number, step in enumerate(job.technique.steps)
        for at, picture in enumerate(step.pictures)
        if picture.file in job.photos
    ]
    plain_ones = [each for each in pictures if not each[1].marks]
    chosen = plain_ones or pictures
    return chosen[-1] if chosen else None


def _too_long(job: Carousel, title: str) -> Finding:
    """Return the finding of a title that does not fit its cover."""
    return finding(
        fit_rules.FRAME,
        job.technique,
        "title",
        what=f"the title has {len(title)} characters, more than the cover has room for",
        why="a title stands on at most four lines, no smaller than 96 px",
        mend="write a title of at most 40 characters, none of its words longer than 18",
    )
