"""The steps' frames: one size of text for all, a photograph or a drawing for each, and what would not fit."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from howto.findings import Finding
from howto.layout import fit_rules
from howto.layout.drawing.plane import Box
from howto.layout.frames.alone import Alone, alone, paint_alone
from howto.layout.frames.alt import mark_sentences
from howto.layout.frames.copy import bare, step_copy
from howto.layout.frames.matching import matched
from howto.layout.frames.parts import heading
from howto.layout.frames.picture import Trouble, paint_photo, show
from howto.layout.frames.shared import Carousel, FramePage, Made, drawn, finding
from howto.layout.frames.step import (
    BODY_SIZES,
    GOOD_SHARE,
    LEAST_SHARE,
    Copy,
    Placed,
    across_fullest,
    besides,
    characters_over,
    fits,
    paint_words,
    step_title,
)
from howto.model.photo import Photograph
from howto.model.prose import plain
from howto.model.sheet import PaintMark
from howto.model.technique import Picture, Step
from howto.shapes import Drawing

RULES = {rule.name: rule for rule in fit_rules.FIT_RULES}
SQUARE_SHARE = 0.54  # of a square frame's height: what a picture has before reasons and checks are added
LEAST_WHOLE = 240.0  # px wide and high: a photograph shown whole is no smaller
WORTH = 1.35  # how much more of a photograph has to show for a legend beside it


@dataclass(frozen=True, slots=True)
class StepToLay:
    """A step to lay out: its words, and its picture with the field it stands in, else its drawing, else neither."""

    step: Step
    copy: Copy
    field: str
    picture: Picture | None = None
    drawing: Drawing | None = None


def steps(job: Carousel) -> tuple[Made, ...]:
    """Return a frame for every step; all that show something have text of the largest size at which each still fits."""
    tasks = [_task(job, number, step) for number, step in enumerate(job.technique.steps)]
    chosen = matched([None if task.picture else task.step for task in tasks], job.ready.drawings)
    ready = [
        replace(task, drawing=None if at is None else job.ready.drawings[at])
        for task, at in zip(tasks, chosen, strict=True)
    ]
    words = [None if _shows(job, task) else alone(job.sheet, task.copy) for task in ready]
    size, share = _common(job, [task for task, said in zip(ready, words, strict=True) if not said])
    return tuple(
        _alone(job, task, said) if said else _step(job, task, size, share)
        for task, said in zip(ready, words, strict=True)
    )


def _shows(job: Carousel, task: StepToLay) -> bool:
    """Tell whether a frame shows more than words: a picture, or a drawing that the words leave room for."""
    return bool(task.picture) or bool(task.drawing and fits(job.sheet, task.copy, BODY_SIZES[-1], LEAST_SHARE))


def _alone(job: Carousel, task: StepToLay, words: Alone) -> Made:
    """Return the frame of a step that nothing is shown of."""
    marks = tuple(paint_alone(job.sheet, task.copy, words))
    return FramePage(job.sheet, marks, _alt(task), name=str(task.copy.number)), ()


def _task(job: Carousel, number: int, step: Step) -> StepToLay:
    """Return a step with its first picture that could be read."""
    found = ((at, picture) for at, picture in enumerate(step.pictures) if picture.file in job.photos)
    at, picture = next(found, (0, None))
    copy = step_copy(step, number + 1, picture, job.say)
    field = f"steps[{number}]"
    return StepToLay(step, copy, f"{field}.pictures[{at}]" if picture else field, picture)


def _common(job: Carousel, tasks: list[StepToLay]) -> tuple[float, float]:
    """Return the text size that all steps share, and the share of the height their pictures get at least."""
    for share in (GOOD_SHARE, (GOOD_SHARE + LEAST_SHARE) / 2, LEAST_SHARE):
        for size in BODY_SIZES:
            if all(fits(job.sheet, task.copy, size, share) for task in tasks):
                return size, share
    return BODY_SIZES[-1], LEAST_SHARE


def _step(job: Carousel, task: StepToLay, size: float, share: float) -> Made:
    """Return one step's frame."""
    good = SQUARE_SHARE if job.sheet.ratio == "1x1" else GOOD_SHARE
    across = across_fullest(job.sheet, task.copy, size, share, max(share, good))
    beside = besides(job.sheet, task.copy, size, share)
    if across is None and not beside:
        return _overfull(job, task)
    if task.picture:
        return _with_photo(job, task, task.picture, _ordered(job, task.picture, across, beside))
    return _with_drawing(job, task, across or beside[0])


def _with_drawing(job: Carousel, task: StepToLay, placed: Placed) -> Made:
    """Return the frame of a step with a drawing, or with its words alone."""
    marks = tuple(paint_words(job.sheet, task.copy, placed))
    alt = _alt(task)
    if task.drawing is None:
        return FramePage(job.sheet, marks, alt, name=str(task.copy.number)), ()
    art, reasons = drawn(job, task.drawing, placed.box)
    found = tuple(
        finding(
            fit_rules.DRAWING,
            job.technique,
            task.field,
            what=f"the drawing of step {task.copy.number} is shown without its labels",
            why=reason,
            mend="take a sentence out of this step, or give it a picture of its own",
        )
        for reason in reasons
    )
    return FramePage(job.sheet, (*art, *marks), (alt[0], task.drawing.alt, *alt[1:]), name=str(task.copy.number)), found


def _with_photo(job: Carousel, task: StepToLay, picture: Picture, ways: Sequence[Placed]) -> Made:
    """Return the frame of a step with its photograph, arranged the first way that keeps its marks."""
    photo = job.photos[picture.file]
    troubles: tuple[Trouble, ...] = ()
    for each, box in _boxes(job, photo, ways):
        shown, troubles = show(photo, picture, box, _free(box), job.sheet.ratio)
        if shown:
            marks = (*paint_photo(job.sheet, picture, shown), *paint_words(job.sheet, task.copy, each))
            return _photo_page(job, task, picture, marks), tuple(_said(job, task, troubles))
    marks = tuple(paint_words(job.sheet, task.copy, ways[0]))
    return _photo_page(job, task, picture, marks), tuple(_said(job, task, troubles))


def _boxes(job: Carousel, photo: Photograph, ways: Sequence[Placed]) -> Iterator[tuple[Placed, Box]]:
    """Yield the arrangements with the box the photograph fills; last those in which it is shown whole."""
    for each in ways:
        yield each, _bled(job, each)
    for each in ways:
        left, top, right, bottom = _bled(job, each)
        scale = min((right - left) / photo.width, (bottom - top) / photo.height)
        wide, high = photo.width * scale, photo.height * scale
        if wide >= LEAST_WHOLE and high >= LEAST_WHOLE:
            yield each, (left, top, left + wide, top + high)


def _ordered(job: Carousel, picture: Picture, across: Placed | None, beside: Sequence[Placed]) -> tuple[Placed, ...]:
    """Return the arrangements, the best first: across, unless beside its legend much more of the picture shows."""
    if across is None:
        return tuple(beside)
    photo = job.photos[picture.file]
    saves = beside and _share_shown(job, photo, beside[0]) > WORTH * _share_shown(job, photo, across)
    return (*beside, across) if saves else (across, *beside)


def _share_shown(job: Carousel, photo: Photograph, placed: Placed) -> float:
    """Return how much of a photograph an arrangement shows, from 0 to 1."""
    left, top, right, bottom = _bled(job, placed)
    shape, whole = (right - left) / (bottom - top), photo.width / photo.height
    return min(shape / whole, whole / shape)


def _bled(job: Carousel, placed: Placed) -> Box:
    """Return the photograph's box: out to the frame's edges."""
    _, top, right, bottom = placed.box
    return (0.0, top, right if placed.beside else job.sheet.width, bottom)


def _free(box: Box) -> Box:
    """Return where on the photograph discs may stand."""
    return (box[0] + 12, box[1] + 4, box[2] - 12, box[3] - 4)


def _photo_page(job: Carousel, task: StepToLay, picture: Picture, marks: tuple[PaintMark, ...]) -> FramePage:
    """Return the page of a step with a photograph."""
    alt = _alt(task)
    pointed = mark_sentences(picture.marks, job.say)
    return FramePage(job.sheet, marks, (alt[0], picture.alt, *pointed, *alt[1:]), picture.credit, str(task.copy.number))


def _said(job: Carousel, task: StepToLay, troubles: tuple[Trouble, ...]) -> Iterator[Finding]:
    """Yield the findings of what would not work with a picture."""
    for each in troubles:
        where = f"{task.field}.marks[{each.mark - 1}]" if each.mark else task.field
        yield finding(RULES[each.rule], job.technique, where, each.what, each.why, each.mend)


def _alt(task: StepToLay) -> tuple[str, ...]:
    """Return a step in sentences: what to do, how, and what makes or breaks it."""
    step = task.step
    lead = f"{task.copy.number}. {bare(step.title)}"
    return (lead, plain(step.text), *map(plain, step.key_points))


def _overfull(job: Carousel, task: StepToLay) -> Made:
    """Return a frame with the title alone, and the finding that says how much is too much."""
    title = step_title(job.sheet, task.copy)
    ratio = job.sheet.ratio.replace("x", ":")
    if title is None:
        what = f"the title of step {task.copy.number} is too long for the {ratio} frame"
        why = "a step's title stands on at most three lines, no smaller than 56 px"
        mend = f"write “{task.copy.title.split()[0]} …” in at most 50 characters, none of its words longer than 24"
    else:
        over = characters_over(job.sheet, task.copy)
        what = f"step {task.copy.number} has more words than the {ratio} frame has room for"
        why = f"at {BODY_SIZES[-1]:.0f} px, the smallest, they leave the picture under {LEAST_SHARE:.0%} of the height"
        mend = f"take at least {over} characters out of this step's text and key points, or make two steps of it"
    width = job.sheet.area[2] - job.sheet.area[0]
    marks = tuple(
        (title or heading(task.copy.title, 56, width)).at(job.sheet.area[0], job.sheet.area[1], job.sheet.ink)
    )
    return FramePage(job.sheet, marks, _alt(task), name=str(task.copy.number)), (
        finding(fit_rules.FRAME, job.technique, task.field, what, why, mend),
    )
