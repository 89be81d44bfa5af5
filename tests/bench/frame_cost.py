"""Prints what a frame with a 12-megapixel photograph costs beside decoding, resizing and encoding its pixels alone.

Run it by hand: `python tests/bench/frame_cost.py`. It is no test: times belong to the machine they were taken on.
"""

import io
import resource
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path
from time import process_time

from PIL import Image

sys.path.insert(0, str(Path(__file__).parents[2]))

from howto.layout.frames.carousel import frames
from howto.model.photo import Photograph
from howto.model.ready import Ready
from howto.model.sheet import Frame, Pixels
from howto.model.technique import Mark, Picture, Step
from howto.read.photo import read_photo
from howto.render.image import jpeg
from howto.render.srgb import SRGB_PROFILE
from howto.span import Span
from tests.support import sample
from tests.support.photos import shipped

ROUNDS = 9
SIZE = (4000, 3000)
SPAN = Span("a.md")
MARKS = tuple(Mark(x_percent=x, y_percent=y, text="here") for x, y in ((40.0, 40.0), (60.0, 55.0), (50.0, 48.0)))


def bare(path: Path, frame: Frame) -> None:
    """Decode, resize and encode the pixels a frame shows, with nothing drawn."""
    mark = next(each for each in frame.marks if isinstance(each, Pixels))
    left, top, right, bottom = (round(edge) for edge in mark.box)
    with Image.open(path) as image:
        image.draft("RGB", (1920, 1440))
        shown = image.resize((right - left, bottom - top), Image.Resampling.LANCZOS, box=mark.crop, reducing_gap=2.0)
    whole = Image.new("RGB", (frame.width, frame.height), frame.ground)
    whole.paste(shown, (left, top))
    whole.save(io.BytesIO(), "JPEG", quality=90, subsampling=0, icc_profile=SRGB_PROFILE)


def best(task: object, *args: object) -> float:
    """Return the shortest of several runs, in milliseconds."""
    times = []
    for _ in range(ROUNDS):
        start = process_time()
        task(*args)  # type: ignore[operator]
        times.append(process_time() - start)
    return min(times) * 1000


def main() -> None:
    """Print a line for the cover and one for a step, then the most memory the process took."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "p.jpg"
        shipped(0).resize(SIZE, Image.Resampling.BICUBIC).save(path, quality=92)
        for name, number, picture in (
            ("cover", 0, Picture(file="p.jpg")),
            ("step", -2, Picture(file="p.jpg", marks=MARKS)),
        ):
            step = Step(title="Find the ring.", text=sample.STEPS[0].text, pictures=(picture,))
            ready = sample.ready((), steps=(step,), tools=(), materials=(), cautions=())

            def laid(ready: Ready = ready, number: int = number) -> tuple[Frame, Photograph]:
                photo, _ = read_photo(Path(folder), "p.jpg", SPAN, "p.jpg")
                assert photo is not None
                made, _ = frames(ready, {"p.jpg": photo}, "4x5")
                return made[number], photo

            def whole(laid: Callable[[], tuple[Frame, Photograph]] = laid) -> None:
                frame, photo = laid()
                jpeg(frame, {"p.jpg": photo})

            ours, alone = best(whole), best(bare, path, laid()[0])
            print(f"{name}: {ours:.0f} ms, pixels alone {alone:.0f} ms, ratio {ours / alone:.2f}")  # noqa: T201
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"most memory: {peak:.0f} MB")  # noqa: T201


if __name__ == "__main__":
    main()
