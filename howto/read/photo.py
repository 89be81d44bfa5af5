"""A picture file → upright sRGB pixels of a size frames need; what cannot be used becomes a finding, never a crash."""

import struct
import warnings
import zlib
from collections.abc import Callable
from difflib import get_close_matches
from os.path import isfile
from pathlib import Path

from PIL import Image, ImageFile

from howto.findings import Finding
from howto.guarded import guarded
from howto.model.names import as_seen, on_disk
from howto.model.photo import Photograph
from howto.read import photo_rules
from howto.read.photo_kinds import ACCEPTED, EXPORT, kind_of
from howto.read.photo_pixels import WHITE, held_size, pixels, turns
from howto.span import Span

Read = tuple[Photograph | None, tuple[Finding, ...]]
Size = tuple[int, int]

MOST_BYTES = 64_000_000
# Megapixels that decode within 400 MB (measured, see tests/bench): a plain JPEG is decoded small, the others whole.
# The first is where the imaging library itself stops.
MOST_MEGAPIXELS = {"JPEG": 178.0, "MPO": 178.0, "PNG": 50.0, "WEBP": 16.0}
MOST_PROGRESSIVE = 40.0

# What the decoders raise on bytes that are not what they say; anything else is a bug of ours.
DAMAGE = (OSError, SyntaxError, ValueError, EOFError, LookupError, OverflowError, struct.error, zlib.error)


def name_in(folder: Path, file: str) -> str:
    """Return the name, in a folder, of the picture that a shelf's files call `file`."""
    return file.removeprefix("./").removeprefix(f"{folder.name}/")


def read_photo(
    folder: Path, file: str, span: Span, text: str, ground: str = WHITE, held: Callable[[Size], Size] = held_size
) -> Read:
    """Return the picture `file` of `folder`, or findings at `span` that say why not.

    `text` is the author's line, `ground` what shows through transparent parts. Big pictures come back smaller,
    never smaller than `held` of their size: what the largest box of a frame needs.
    """
    found: list[Finding] = []
    photo = None
    with guarded(found, span, f"read the picture `{file}`"):
        photo, notes = _read(folder, file, span, text, ground, held)
        found += notes
    return photo, tuple(found)


def _read(folder: Path, file: str, span: Span, text: str, ground: str, held: Callable[[Size], Size]) -> Read:
    """Return the picture, or the finding that says why not."""
    file = name_in(folder, file)
    path = on_disk(folder, file)
    missing = _missing(folder, path, file, span, text)
    if missing:
        return None, (missing,)
    try:
        size = path.stat().st_size
        with path.open("rb") as stream:
            kind = kind_of(stream.read(64))
    except OSError as problem:
        return None, (_barred(span, text, file, problem),)
    if size > MOST_BYTES:
        what = f"`{file}` is {size / 1e6:.0f} MB"
        why = f"a picture is read whole, and more than {MOST_BYTES / 1e6:.0f} MB would fill a small computer"
        return None, (_too_large(span, text, what, why, file),)
    if kind not in ACCEPTED:
        return None, (_wrong_kind(span, text, file, kind),)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # size is checked below, and damage is found by decoding
        return _decoded(path, file, span, text, ground, held)


def _decoded(path: Path, file: str, span: Span, text: str, ground: str, held: Callable[[Size], Size]) -> Read:
    """Return the picture at `path`, opened only as one of the accepted kinds."""
    try:
        with Image.open(path, formats=ACCEPTED) as image:
            oversize = _oversize(image, file, span, text)
            if oversize:
                return None, (oversize,)
            turn = turns(image)
            full = (image.height, image.width) if turn.swaps else (image.width, image.height)
            need = held(full)
            ready = pixels(image, (need[1], need[0]) if turn.swaps else need, ground)
    except Image.DecompressionBombError:
        what = f"`{file}` has more than {MOST_MEGAPIXELS['JPEG']:.0f} megapixels"
        return None, (
            _too_large(span, text, what, "no phone takes one so large, and it would not fit in memory", file),
        )
    except DAMAGE as trouble:
        return None, (_damaged(span, text, file, trouble),)
    upright = turn.apply(ready)
    photo = Photograph(
        file=file,
        width=upright.width,
        height=upright.height,
        rgb=upright.tobytes(),
        full_width=full[0],
        full_height=full[1],
    )
    return photo, ()


def _missing(folder: Path, path: Path, file: str, span: Span, text: str) -> Finding | None:
    """Return the finding for a name that leaves the pictures folder or names nothing in it."""
    home = folder.resolve()
    if not path.resolve().is_relative_to(home) or "\0" in file:
        return photo_rules.OUTSIDE.finding(
            span,
            what=f"`{file}` is outside the pictures folder",
            why="only pictures kept with the shelf are published, so that nothing else on the computer can slip out",
            mend=f"copy the picture into `{folder.name}` and write only its name",
            text=text,
        )
    if isfile(path):  # noqa: PTH113 - Path.is_file raises where a name is too long for the disk
        return None
    there = sorted(as_seen(each.name) for each in home.iterdir() if each.is_file()) if home.is_dir() else []
    near = get_close_matches(file, there, n=1, cutoff=0.6)
    mend = f"write `{near[0]}`" if near else f"put `{file}` into the folder `{folder.name}`, or take this line out"
    return photo_rules.MISSING.finding(
        span,
        what=f"there is no `{file}` in `{folder.name}`",
        why="the step would be published without its picture" + (f"; `{near[0]}` is there" if near else ""),
        mend=mend,
        text=text,
    )


def _barred(span: Span, text: str, file: str, problem: OSError) -> Finding:
    """Return the finding for a picture that the computer does not open."""
    what = f"`{file}` cannot be opened"
    why = f"the computer says: {str(problem.strerror).lower()}"
    mend = f"allow yourself to read `{file}` (its owner can), or copy the photograph from the phone again in its place"
    return photo_rules.MISSING.finding(span, what, why, mend, text)


def _wrong_kind(span: Span, text: str, file: str, kind: str) -> Finding:
    """Return the finding for a file that is no JPEG, PNG or WebP."""
    why, mend = EXPORT[kind]
    article = "an" if kind[:1] in "AEFHILMNORSX" and kind.isupper() else "a"
    what = f"`{file}` is {article} {kind} file" if kind else f"`{file}` is not a picture"
    return photo_rules.KIND.finding(span, what, why, mend.format(file=file), text)


def _oversize(image: ImageFile.ImageFile, file: str, span: Span, text: str) -> Finding | None:
    """Return the finding for more pixels than can be decoded in bounded memory."""
    most = MOST_MEGAPIXELS.get(image.format or "", MOST_PROGRESSIVE)
    if image.info.get("progressive"):
        most = min(most, MOST_PROGRESSIVE)
    megapixels = image.width * image.height / 1e6
    if megapixels <= most:
        return None
    what = f"`{file}` has {megapixels:.0f} megapixels ({image.width} × {image.height})"
    kind = "progressive JPEG" if image.info.get("progressive") else (image.format or "").replace("WEBP", "WebP")
    return _too_large(span, text, what, f"a {kind} of more than {most:.0f} megapixels needs too much memory", file)


def _too_large(span: Span, text: str, what: str, why: str, file: str) -> Finding:
    """Return the finding for a picture too large to read."""
    mend = f"save `{file}` again as a plain JPEG of at most 4000 × 3000 pixels"
    return photo_rules.TOO_LARGE.finding(span, what, why, mend, text)


def _damaged(span: Span, text: str, file: str, trouble: Exception) -> Finding:
    """Return the finding for a picture whose bytes break off or make no sense."""
    broken_off = isinstance(trouble, EOFError) or "truncated" in str(trouble).casefold()
    what = f"`{file}` stops part-way through" if broken_off else f"`{file}` is damaged"
    why = "the rest was lost in copying or sending" if broken_off else "its contents do not hold together as a picture"
    mend = f"copy the photograph from the phone again and put it in place of `{file}`"
    return photo_rules.DAMAGED.finding(span, what, why, mend, text)
