"""The pictures that the README shows, made from the demo shelf: `python -m tests.gallery` rewrites them.

They are real outputs: a side of a card and a page of a leaflet as a PDF viewer shows them, and frames as built.
"""

import io
import shutil
from collections.abc import Mapping
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory

import pypdfium2
from PIL import Image

import howto
from tests.support.source import ROOT

GALLERY = ROOT / "output" / "gallery"
TODAY = date(2026, 10, 14)
TECHNIQUE, VISIT = "clip-a-ball", "2026-10-14-orchard-end"
SHELF = ROOT / "techniques"
WIDE_PX = 760


def pictures() -> Mapping[str, bytes]:
    """Return each picture of the gallery by its file name."""
    with TemporaryDirectory() as name:
        out = Path(name)
        only = [SHELF / "clipping" / f"{TECHNIQUE}.md", SHELF / "visits" / f"{VISIT}.md"]
        built = howto.build_shelf(SHELF, out, TODAY, only, kinds=("cards", "carousels", "leaflets"))
        if built.stopped:
            raise SystemExit("the demo shelf does not build: howto check")
        frames = out / "carousels" / TECHNIQUE / "4x5"
        return {
            "card.png": page(out / "cards" / f"{TECHNIQUE}.pdf", 0),
            "card-back.png": page(out / "cards" / f"{TECHNIQUE}.pdf", 1),
            "cover.jpg": smaller(frames / "01.jpg"),
            "step.jpg": smaller(frames / "03.jpg"),
            "leaflet.png": page(out / "leaflets" / f"{VISIT}.pdf", 0),
        }


def page(path: Path, number: int) -> bytes:
    """Return one page of a PDF as a PNG."""
    with pypdfium2.PdfDocument(path) as document:
        sheet = document[number]
        image = sheet.render(scale=WIDE_PX / sheet.get_width()).to_pil().convert("RGB")
    stream = io.BytesIO()
    image.quantize(64, dither=Image.Dither.NONE).save(stream, "PNG", optimize=True)
    return stream.getvalue()


def smaller(path: Path) -> bytes:
    """Return a frame at the gallery's width."""
    with Image.open(path) as image:
        small = image.resize((WIDE_PX, round(image.height * WIDE_PX / image.width)))
    stream = io.BytesIO()
    small.save(stream, "JPEG", quality=85)
    return stream.getvalue()


def main() -> None:
    """Rewrite the gallery."""
    shutil.rmtree(GALLERY, ignore_errors=True)
    GALLERY.mkdir(parents=True)
    for name, data in pictures().items():
        (GALLERY / name).write_bytes(data)
        print(f"{GALLERY / name}: {len(data) // 1000} kB")  # noqa: T201 - a command


if __name__ == "__main__":
    main()
