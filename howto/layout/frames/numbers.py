"""The frame of tools and numbers; two or more where one will not hold them."""

from collections.abc import Iterator, Sequence
from typing import Final

from howto.layout import fit_rules
from howto.layout.frames.copy import all_numbers, by_weight, kit
from howto.layout.frames.cover import Number
from howto.layout.frames.lists import (
    ITEMS,
    VALUES,
    paint_entries,
    paint_tools,
    set_entries,
    set_tools,
    sub_heading,
    sub_high,
    top_heading,
)
from howto.layout.frames.shared import Carousel, FramePage, Made, finding
from howto.model.sheet import PaintMark

BETWEEN: Final = 44.0  # px between numbers and tools
UNDER: Final = 26.0  # px under the heading
SIZES: Final = tuple(zip((*VALUES, VALUES[-1]), ITEMS, strict=False))
ROOMY: Final = 5  # the sizes, from the largest, at which a number may still crowd in
FEW: Final = 4  # numbers below which none is left to the card


def numbers_pages(job: Carousel) -> tuple[Made, ...]:
    """Return one frame of the main numbers and all tools; where one does not hold them, frames of each.

    Numbers that matter less stay on the card: first the words, then figures that are no headline.
    """
    numbers, items = all_numbers(job.ready), kit(job.ready)
    if not numbers and not items:
        return ()
    both = _fitted(job, items, FEW)
    if both:
        return (both,)
    alone = _fitted(job, (), 1) if numbers else None
    return (*filter(None, (alone,)), *_tools_alone(job, items))


def _fitted(job: Carousel, items: Sequence[str], fewest: int) -> Made | None:
    """Return the frame with as many numbers as fit above the items, at the largest size; None for too few."""
    numbers = all_numbers(job.ready)
    weighty = by_weight(job.ready)
    title = job.say["tools_and_numbers"] if items else job.say["numbers"]
    for count in range(len(numbers), min(len(numbers), fewest) - 1, -1):
        main = tuple(each for each in numbers if each in weighty[:count])
        for value_size, item_size in SIZES if count <= FEW else SIZES[:ROOMY]:
            if _high(job, main, items, value_size, item_size) <= _room(job):
                return _page(job, title, main, items, value_size, item_size)
    return None


def _room(job: Carousel) -> float:
    """Return the height below the heading."""
    _, top, _, bottom = job.sheet.area
    return bottom - top - top_heading(job.sheet, job.say["tools_and_numbers"]).height - UNDER


def _width(job: Carousel) -> float:
    """Return the width of the free area."""
    return job.sheet.area[2] - job.sheet.area[0]


def _high(job: Carousel, numbers: Sequence[Number], items: Sequence[str], value_size: float, item_size: float) -> float:
    """Return how high numbers and tools stand, one below the other."""
    entries = sum(each.height for each in set_entries(numbers, value_size, _width(job)))
    if not items:
        return entries
    tools = set_tools(items, item_size, _width(job)).height + sub_high()
    return entries + tools + (BETWEEN if numbers else 0.0)


def _page(
    job: Carousel, title: str, numbers: Sequence[Number], items: Sequence[str], value_size: float, item_size: float
) -> Made:
    """Return the frame: numbers on rules, then tools with boxes to tick, spread over the height."""
    left, top, right, _ = job.sheet.area
    head = top_heading(job.sheet, title)
    spare = max(0.0, _room(job) - _high(job, numbers, items, value_size, item_size))
    entries = set_entries(numbers, value_size, right - left, air=min(26.0, spare * 0.5 / max(1, len(numbers))))
    marks: list[PaintMark] = [*head.at(left, top, job.sheet.ink)]
    y = top + head.height + UNDER
    marks.extend(paint_entries(job.sheet, entries, left, y, right))
    if items:
        tools = set_tools(items, item_size, right - left)
        y += sum(each.height for each in entries) + (BETWEEN if numbers else 0.0) + min(30.0, spare * 0.2)
        if numbers:
            marks.append(sub_heading(job.say["tools"], left, y, job.sheet.accent))
            y += sub_high()
        marks.extend(paint_tools(job.sheet, tools, left, y, right))
    told = [f"{each.label}: {each.value}" for each in numbers]
    tools_told = [f"{job.say['tools']}: {'; '.join(items)}"] if items else []
    return FramePage(job.sheet, tuple(marks), (title, *told, *tools_told)), ()


def _tools_alone(job: Carousel, items: Sequence[str]) -> Iterator[Made]:
    """Yield the tools and materials on as few frames as hold them."""
    for count in range(1, len(items) + 1):
        size = -(-len(items) // count)
        parts = [items[start : start + size] for start in range(0, len(items), size)]
        for item_size in ITEMS:
            if all(set_tools(part, item_size, _width(job)).height <= _room(job) for part in parts):
                yield from (_page(job, job.say["tools"], (), part, VALUES[0], item_size) for part in parts)
                return
    if items:
        yield _overfull(job)


def _overfull(job: Carousel) -> Made:
    """Return a frame with its heading alone, and the finding of a tool whose note is longer than a frame."""
    what = "one of the tools or materials has a note that fills more than a frame"
    why = f"a frame has {_room(job):.0f} px for it, at {ITEMS[-1]:.0f} px a line"
    mend = "write a note of at most 200 characters"
    heading = top_heading(job.sheet, job.say["tools"]).at(*job.sheet.area[:2], job.sheet.ink)
    page = FramePage(job.sheet, tuple(heading), ())
    return page, (finding(fit_rules.FRAME, job.technique, "tools", what, why, mend),)
