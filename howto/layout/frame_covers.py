"""The cover's frame: chooses its picture and puts the parts of `frame_cover` together."""

from typing import Final

from howto.findings import Finding
from howto.layout import fit_rules
from howto.layout.frame_copy import bare, cover_numbers, over_line
from howto.layout.frame_cover import (
    above,
    cover_title,
    drawing_cover,
    photo_cover,
    set_numbers,
)
from howto.layout.frame_look import Ratio
from howto.layout.frame_page import Job, Made, Page, drawn, finding
from howto.layout.frame_parts import heading
from howto.model.prose import plain
from howto.model.sheet import PaintMark
from howto.model.technique import Picture

# of the free height: what a title may take on a photograph, and above a drawing
ON_PHOTO: Final[dict[Ratio, float]] = {"4x5": 0.42, "1x1": 0.3, "9x16": 0.4}
ON_PAPER: Final[dict[Ratio, float]] = {"4x5": 0.29, "1x1": 0.2, "9x16": 0.29}


def cover(job: Job) -> Made:
    """Return the cover: a photograph if there is one, else the first drawing, with the main numbers."""
    title = bare(job.technique.title)
    over = over_line(job.technique, job.say)
    numbers = set_numbers(cover_numbers(job.technique, job.figures), job.sheet.area[2] - job.sheet.area[0])
    chosen = cover_picture(job)
    block = cover_title(job.sheet, title, (ON_PHOTO if chosen else ON_PAPER)[job.sheet.ratio])
    found: list[Finding] = []
    if block is None:
        found.append(_too_long(job, title))
        block = heading(title, 96, job.sheet.area[2] - job.sheet.area[0])
    told = tuple(
        f"{label.lines and ' '.join(label.lines)}: {value.lines[0]}"
        for label, value in zip(numbers.labels, numbers.values, strict=True)
    )
    if chosen:
        picture = chosen[1]
        photo = job.photos[picture.file]
        marks = photo_cover(job.sheet, over, block, numbers, photo, picture)
        alt = (title, picture.alt, *told, *map(plain, job.technique.intro))
        return Page(job.sheet, marks, alt, picture.credit), tuple(found)
    design = above(job.sheet, block, numbers)
    alt = (title, *told)
    art: tuple[PaintMark, ...] = ()
    if job.drawings:
        art, reasons = drawn(job, job.drawings[0], design.box)
        alt = (title, job.drawings[0].alt, *told)
        found.extend(_bare(job, reason) for reason in reasons)
    marks = (*art, *drawing_cover(job.sheet, over, design, numbers))
    return Page(job.sheet, marks, (*alt, *map(plain, job.technique.intro))), tuple(found)


def _bare(job: Job, reason: str) -> Finding:
    """Return the finding of a drawing whose labels do not fit on the cover."""
    what, mend = "the cover's drawing is shown without its labels", "write a shorter title"
    return finding(fit_rules.DRAWING, job.technique, "title", what, reason, mend)


def cover_picture(job: Job) -> tuple[str, Picture] | None:
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


def _too_long(job: Job, title: str) -> Finding:
    """Return the finding of a title that does not fit its cover."""
    return finding(
        fit_rules.FRAME,
        job.technique,
        "title",
        what=f"the title has {len(title)} characters, more than the cover has room for",
        why="a title stands on at most four lines, no smaller than 96 px",
        mend="write a title of at most 40 characters, none of its words longer than 18",
    )
