"""A client's picture is known by its file, its bytes and its look, whatever it is called."""

import shutil
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from PIL import Image

from howto.check.privacy import privacy_findings
from howto.compute.ready import ready
from howto.families import FAMILIES
from howto.jobs.outputs import Make, make
from howto.model.shelf import Shelf
from howto.read import photo_same
from howto.read.shelf import read_shelf
from tests.support.photos import shipped
from tests.support.source import ROOT

TODAY = date(2026, 10, 14)
BY_NAME = {each.name: each for each in FAMILIES}
TECHNIQUE = (ROOT / "techniques/clipping/clip-a-ball.md").read_text("utf-8")
PLAIN = "\n".join(line for line in TECHNIQUE.split("\n") if not line.startswith("     ") and "Picture:" not in line)


def visit(root: Path, site: str, *lines: str) -> None:
    """Write a visit file with some more lines in its front matter."""
    (root / "visits").mkdir(exist_ok=True)
    text = "\n".join(
        ["---", f"site: {site}", "date: 2026-10-14", *lines, "done: [clip-a-ball]", "---", "All is well.", ""]
    )
    (root / f"visits/2026-10-14-{site.casefold()}.md").write_text(text, "utf-8")


def shows(root: Path, file: str) -> None:
    """Write a technique whose first step shows a picture."""
    (root / "clipping").mkdir(exist_ok=True)
    before, first, after = PLAIN.partition("\n1. ")
    step, rest = after.split("\n", 1)
    (root / "clipping/clip-a-ball.md").write_text(f"{before}{first}{step}\n   - Picture: {file}\n{rest}", "utf-8")


def found(root: Path) -> list[tuple[str, str]]:
    """Return rule and observation of what a shelf's visits give away."""
    shelf, findings = read_shelf(root, BY_NAME)
    assert [each.rule for each in findings] == []
    return [(each.rule, each.what) for each in privacy_findings(shelf, shelf.sources)]


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """Return a shelf with a client's photograph and another."""
    pictures = tmp_path / "pictures"
    (pictures / "old").mkdir(parents=True)
    shipped(0).save(pictures / "hedge.jpg", quality=92)
    shipped(1).save(pictures / "other.jpg", quality=92)
    (tmp_path / "crew.yaml").write_text("name: Lantern Field crew\nhemisphere: north\n", "utf-8")
    return tmp_path


def resaved(kind: str, scale: float = 1.0, **options: object) -> Callable[[Path, Path], None]:
    """Return what saves a picture again, smaller by a scale."""

    def save(old: Path, new: Path) -> None:
        with Image.open(old) as image:
            small = image.resize((round(image.width * scale), round(image.height * scale)))
            small.save(new, kind, **options)

    return save


def turned(old: Path, new: Path) -> None:
    """Save a picture lying on its side, with the note that says so."""
    with Image.open(old) as image:
        exif = Image.Exif()
        exif[0x0112] = 6
        image.transpose(Image.Transpose.ROTATE_90).save(new, "JPEG", exif=exif)


@pytest.mark.parametrize(
    "make",
    [
        shutil.copyfile,
        lambda old, new: new.symlink_to(old.name),
        lambda old, new: new.hardlink_to(old),
        resaved("PNG"),
        resaved("WEBP", quality=70),
        resaved("JPEG", quality=25),
        resaved("JPEG", scale=0.31, quality=60),
        turned,
    ],
    ids=["copy", "symlink", "hard link", "png", "webp", "poor", "small", "turned"],
)
def test_a_clients_picture_stays_private_under_another_name(root: Path, make: Callable[[Path, Path], None]) -> None:
    make(root / "pictures/hedge.jpg", root / "pictures/new.jpg")
    visit(root, "Orchard", "after: hedge.jpg")
    shows(root, "new.jpg")
    ((rule, what),) = found(root)
    assert rule == "visit.may-publish"
    assert what.startswith("`new.jpg`, the same picture as `hedge.jpg`, was taken on the visit `2026-10-14-orchard`")
    shows(root, "other.jpg")
    visit(root, "Mill", "before: new.jpg")
    assert found(root) == [
        ("visit.shared-picture", "`hedge.jpg`, the same picture as `new.jpg`, is a picture of `Mill` too")
    ]


@pytest.mark.parametrize(
    "spelled",
    ["./hedge.jpg", "pictures/hedge.jpg", ".//hedge.jpg", "pictures/./hedge.jpg", "./pictures//hedge.jpg", "hedge.jpg"],
)
def test_a_picture_is_one_however_its_name_is_written(root: Path, spelled: str) -> None:
    visit(root, "Orchard", f"before: {spelled}", f"after: {{picture: {spelled}}}")
    shows(root, spelled)
    assert [rule for rule, _ in found(root)] == ["visit.may-publish"]
    visit(root, "Orchard", f"before: {spelled}", "may publish: yes")
    assert found(root) == []


def test_names_that_a_disk_may_take_for_one_are_one() -> None:
    shelf = Shelf(root="nowhere")
    assert shelf.picture("Caf\u00e9.JPG") == shelf.picture("cafe\u0301.jpg")


def test_another_photograph_goes_out(root: Path) -> None:
    visit(root, "Orchard", "after: hedge.jpg")
    shows(root, "other.jpg")
    assert found(root) == []


def test_a_clients_picture_is_no_crews_mark(root: Path) -> None:
    visit(root, "Orchard", "after: hedge.jpg")
    shows(root, "other.jpg")
    with (root / "crew.yaml").open("a") as crew:
        crew.write("mark: pictures/hedge.jpg\n")
    ((rule, what),) = found(root)
    assert rule == "visit.may-publish"
    assert what.startswith("`pictures/hedge.jpg`, the same picture as `hedge.jpg`, was taken")


def test_no_picture_is_opened_where_none_can_get_elsewhere(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    visit(root, "Orchard", "after: hedge.jpg", "may publish: yes")
    shows(root, "hedge.jpg")
    monkeypatch.setattr(photo_same, "_File", None)
    assert found(root) == []


def test_what_is_no_picture_is_like_none(root: Path) -> None:
    for name in ("a.jpg", "b.jpg"):
        (root / "pictures" / name).write_bytes(name.encode())
    visit(root, "Orchard", "before: [a.jpg, gone.jpg]")
    shows(root, "b.jpg")
    assert found(root) == []


def test_a_private_picture_is_not_opened_for_a_carousel_even_past_the_rules(root: Path) -> None:
    shutil.copyfile(root / "pictures/hedge.jpg", root / "pictures/new.jpg")
    visit(root, "Orchard", "after: hedge.jpg")
    shows(root, "new.jpg")
    shelf, _ = read_shelf(root, BY_NAME)
    (technique,) = shelf.techniques
    made: dict[str, dict[str, bytes]] = {"private": {}, "asked": {}, "none": {}}
    bare = technique.model_copy(update={"steps": tuple(s.model_copy(update={"pictures": ()}) for s in technique.steps)})
    asked = shelf.model_copy(
        update={"visits": tuple(each.model_copy(update={"may_publish": True}) for each in shelf.visits)}
    )
    for name, known, told in (("private", shelf, technique), ("asked", asked, technique), ("none", shelf, bare)):
        one = ready(known.work(told), BY_NAME["clipping"], TODAY)
        job = Make(known, BY_NAME, (one,), (one,), (), frozenset({"carousels"}), TODAY)
        make(job, made[name].__setitem__)
    assert made["asked"] != made["private"] == made["none"]
