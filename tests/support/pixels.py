"""Compares pictures pixel by pixel with the ones kept under tests/golden, and sets words in the block face."""

from pathlib import Path

from PIL import Image, ImageChops

from howto.fonts import pens
from howto.layout.text import CAP, length
from howto.model.sheet import Area, Frame, PaintMark, TextMark

GOLDEN = Path(__file__).parents[1] / "golden"
FAILED = GOLDEN / "failed"


def blocked(frame: Frame) -> Frame:
    """Return the frame with its words in the block face: every letter a full rectangle, so no font is drawn."""
    marks: list[PaintMark] = []
    for mark in frame.marks:
        if isinstance(mark, TextMark):
            marks.extend(_letters(mark))
        else:
            marks.append(mark)
    return frame.model_copy(update={"marks": tuple(marks)})


def _letters(words: TextMark) -> list[Area]:
    """Return a rectangle for each letter; words that are turned become one rectangle about their middle."""
    wide, high = length(words.text, words.face, words.size), words.size * CAP[words.face]
    left = words.at[0] - {"left": 0.0, "middle": wide / 2, "right": wide}[words.align]
    if words.angle:
        x, y = words.at
        return [Area(points=_box(x - high, y - wide / 2, x, y + wide / 2), colour=words.colour)]
    letters = [pen for pen in pens(words.text, words.face) if pen.letter.strip()]
    starts = [left + pen.x * words.size / 1000 for pen in letters]
    ends = [*starts[1:], left + wide]
    return [
        Area(
            points=_box(round(start), round(words.at[1] - high), round(max(start + 3, end - 3)), round(words.at[1])),
            colour=words.colour,
        )
        for start, end in zip(starts, ends, strict=True)
    ]


def _box(left: float, top: float, right: float, bottom: float) -> tuple[tuple[float, float], ...]:
    return ((left, top), (right, top), (right, bottom), (left, bottom))


def quarter(image: Image.Image) -> Image.Image:
    """Return a picture at a quarter of its size."""
    return image.reduce(4)


def assert_golden(image: Image.Image, case: str, name: str, *, accept: bool, tolerance: int = 0) -> None:
    """Fail where a picture differs from the one kept; with `accept`, keep this one in its place.

    A failure names the first pixel that differs and how many do, and leaves what was found, what was kept and
    the difference in tests/golden/failed.
    """
    kept = GOLDEN / case / f"{name}.png"
    if accept:
        kept.parent.mkdir(parents=True, exist_ok=True)
        image.save(kept, optimize=True)
        return
    assert kept.is_file(), f"{kept} is missing: run pytest --accept, and look at the picture before committing it"
    with Image.open(kept) as opened:
        wanted = opened.convert("RGB")
    if image.size != wanted.size:
        _leave(image, wanted, None, f"{case}-{name}")
        raise AssertionError(f"{case}/{name}: {image.size} px where {wanted.size} px were kept")
    difference = ImageChops.difference(image.convert("RGB"), wanted)
    over = difference.point([255 * (value > tolerance) for value in range(256)] * 3).convert("L")
    over = over.point([255 * (value > 0) for value in range(256)])
    count = over.histogram()[255]
    if not count:
        return
    _leave(image, wanted, difference, f"{case}-{name}")
    first = next(at for at, value in enumerate(over.tobytes()) if value)
    x, y = first % over.width, first // over.width
    found, was = image.convert("RGB").getpixel((x, y)), wanted.getpixel((x, y))
    raise AssertionError(f"{case}/{name}: {count} pixels differ, the first at {x}, {y}: {found} where {was} was kept")


def _leave(image: Image.Image, wanted: Image.Image, difference: Image.Image | None, name: str) -> None:
    FAILED.mkdir(parents=True, exist_ok=True)
    image.save(FAILED / f"{name}-actual.png")
    wanted.save(FAILED / f"{name}-expected.png")
    if difference is not None:
        difference.save(FAILED / f"{name}-difference.png")
