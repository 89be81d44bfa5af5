"""Pictures are found however the accents of their names are stored."""

from pathlib import Path

import pytest
from PIL import Image

from howto.check.shelf import check_shelf
from howto.findings import Finding
from howto.model.shelf import Shelf
from howto.model.technique import Picture, Step
from howto.read.photo import read_photo
from howto.span import Span
from tests.support.builders import DIGGING, technique

STORED = "cafe\u0301.jpg"  # as some phones and computers store it
SEEN = "caf\u00e9.jpg"


@pytest.fixture
def pictures(tmp_path: Path) -> Path:
    """Return a folder of one picture whose accent is stored by itself."""
    folder = tmp_path / "pictures"
    folder.mkdir()
    Image.new("RGB", (1200, 900)).save(folder / STORED)
    return folder


def found(pictures: Path, name: str) -> tuple[Finding, ...]:
    """Return what is found of a shelf with a step that shows the picture of this name."""
    shown = technique(DIGGING, {"steps": (Step(title="Look.", pictures=(Picture(file=name),)),)})
    return check_shelf(Shelf(root=str(pictures.parent), techniques=(shown.technique,)), {})


def test_a_picture_is_found_and_read(pictures: Path) -> None:
    assert found(pictures, SEEN) == ()
    photo, findings = read_photo(pictures, SEEN, Span("a.md"), "")
    assert photo is not None
    assert findings == ()


def test_a_mend_that_names_it_works(pictures: Path) -> None:
    (one,) = found(pictures, "Caf\u00e9.jpg")
    assert one.mend == f"write `{SEEN}`"
    (one,) = read_photo(pictures, "caf\u00e8.jpg", Span("a.md"), "")[1]
    assert one.mend == f"write `{SEEN}`"


def test_two_names_that_look_the_same_are_told_until_one_is_gone(pictures: Path) -> None:
    (pictures / SEEN).touch()
    (one,) = found(pictures, SEEN)
    assert (one.rule, str(one.severity)) == ("shelf.picture-twice", "error")
    assert one.what == f"`{SEEN}` is there twice: 2 files have names that look the same"
    (pictures / SEEN).unlink()
    assert found(pictures, SEEN) == ()
