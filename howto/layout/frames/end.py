"""The last frame: how to tell that the work is done, what comes after, and whose crew this is."""

from howto.findings import Finding
from howto.layout import fit_rules
from howto.layout.frames.copy import sentences
from howto.layout.frames.lists import sub_heading, sub_high, top_heading
from howto.layout.frames.look import LINE, SMALLEST
from howto.layout.frames.parts import Block, block, rule, steps_down
from howto.layout.frames.rows import Row, SetRow, paint_rows, rows_height, set_rows
from howto.layout.frames.shared import Carousel, FramePage, Made, drawn, finding
from howto.model.prose import plain
from howto.model.sheet import PaintMark

SIZES = steps_down(56, 34, 2)
GAP = 24.0
AIR = 36.0
LEAST_DRAWING = 300.0  # px high: a smaller one is left out
TICK = 0.82  # a tick box's side in text sizes


def finish_page(job: Carousel) -> Made:
    """Return the frame: the finish standard with boxes to tick, aftercare while there is room, the crew's contact."""
    left, top, right, bottom = job.sheet.area
    head = top_heading(job.sheet, job.say["done_when"] if job.technique.finish else job.say["finish_frame"])
    foot = _contact(job)
    start = top + head.height + 24
    room = bottom - (foot.height + AIR if foot.lines else 0.0) - start
    ticks, care, found = _lists(job, room)
    marks: list[PaintMark] = [*head.at(left, top, job.sheet.ink)]
    marks.extend(paint_rows(job.sheet, ticks, left, start, right=right, gap=GAP))
    y = start + rows_height(ticks, GAP)
    if care:
        y += AIR
        marks.append(sub_heading(job.say["afterwards"], left, y, job.sheet.accent))
        y += sub_high()
        marks.extend(paint_rows(job.sheet, care, left, y, right=right, gap=GAP))
        y += rows_height(care, GAP)
    alt = [head_text(head), *sentences(job.technique.finish)]
    free = start + room - y - AIR
    if job.ready.drawings and free >= LEAST_DRAWING:
        art, reasons = drawn(job, job.ready.drawings[0], (left, y + AIR, right, start + room))
        marks.extend(art if not reasons else ())
        alt.extend([job.ready.drawings[0].alt] if not reasons else [])
    if foot.lines:
        marks.append(rule(left, right, bottom - foot.height - AIR / 2, job.sheet.ink, LINE))
        marks.extend(foot.at(left, bottom - foot.height, job.sheet.ink))
    alt.extend(f"{each.when.text}: {plain(each.text)}" for each in job.technique.aftercare[: len(care)])
    return FramePage(job.sheet, tuple(marks), tuple(alt), name="✓"), found


def head_text(head: Block) -> str:
    """Return a heading's words on one line."""
    return " ".join(head.lines)


def _lists(job: Carousel, room: float) -> tuple[tuple[SetRow, ...], tuple[SetRow, ...], tuple[Finding, ...]]:
    """Return the finish standard at the largest size that fits, and as much aftercare as then fits below it."""
    width = job.sheet.area[2] - job.sheet.area[0]
    standard = [Row(text=text, kind="tick") for text in sentences(job.technique.finish)]
    for size in SIZES:
        ticks = set_rows(standard, size, width - size * TICK - 26)
        if rows_height(ticks, GAP) <= room:
            return ticks, _aftercare(job, min(size, 44.0), room - rows_height(ticks, GAP), width), ()
    what = "the finish standard has more words than its frame has room for"
    over = rows_height(ticks, GAP) - room
    why = f"at {SIZES[-1]:.0f} px, the smallest, it stands {over:.0f} px higher than the {room:.0f} px there are"
    characters = int(over / (SIZES[-1] * 1.22) + 1) * 70
    mend = f"take at least {characters} characters out of `## Finish`"
    return (), (), (finding(fit_rules.FRAME, job.technique, "finish", what, why, mend),)


def _aftercare(job: Carousel, size: float, room: float, width: float) -> tuple[SetRow, ...]:
    """Return the first tasks of the aftercare that fit below the standard: when, and what to do."""
    rows = [
        Row(text=f"{each.when.text}: {_lowered(plain(each.text))}", kind="flat") for each in job.technique.aftercare
    ]
    for count in range(len(rows), 0, -1):
        ready = set_rows(rows[:count], size, width)
        if AIR + sub_high() + rows_height(ready, GAP) <= room:
            return ready
    return ()


def _lowered(text: str) -> str:
    """Return the text with a small first letter, to follow a colon; a name or number keeps its own."""
    return text[:1].lower() + text[1:] if text[1:2].islower() else text


def _contact(job: Carousel) -> Block:
    """Return the crew's contact line and web address."""
    crew = job.ready.crew
    width = job.sheet.area[2] - job.sheet.area[0]
    told = "\n".join(filter(None, (crew.reader.tell(crew.contact), crew.web)))
    return block(told, "text", max(SMALLEST, 32.0), width, 1.25)
