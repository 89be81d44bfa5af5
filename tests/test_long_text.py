"""No text takes long: what is slow is timed against plain words of the same length, on the processor's own clock."""

import time
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from howto.jobs.check import examine
from howto.read.notes import LONGEST
from howto.read.text import MOST_OF_WORDS
from tests.support.cases import BASES

TODAY = date(2026, 10, 14)
RIGHT = (BASES / "ball-with-picture.md").read_text("utf-8")
VISIT = "---\nsite: Long field\ndate: 2026-10-14\ndone:\n  - technique: clip-a-ball\n    what: the ball\n---\n"
OF_WORDS = MOST_OF_WORDS[0] * 1024 - 3000  # as much as a technique holds beside what stands there
TIMES = 4
MOST_S = 5
SLACK_S = 0.3  # of a machine that does other things too
WORDS = f"{'Clip it well and look at the ring. ' * 8}\n\n"
SHAPES = {
    "letters": "a",
    "one long word": "twelvethousand",
    "digits and spaces": "12 345 ",
    "amounts": "12 mm ± 3 ",
    "nested stars": "**a _b ",
    "open brackets": "[",
    "pictures": "![a](",
    "open braces": "{",
    "pairs of braces": "{a} ",
    "commas": "a, ",
    "colons": "a: ",
    "dots": "a.b+c",
    "quotes": "\"'",
    "tags": "<!-- <a ",
    "spaces": " \t",
    "accents": "e\u0301\u0302",
    "backslashes": "\\",
    "tiny lines": "a\n",
    "list items": f"- {'a ' * 35}\n",
    "numbers": f"1. {'a ' * 35}\n",
    "nested items": f"- a\n  - b\n    - {'c ' * 90}\n",
    "paragraphs": f"{'a ' * 70}\n\n",
    "keys": f"k: {'v ' * 35}\n",
    "odd keys": f"titel: {'v ' * 35}\n",
    "tables": f"|a|{'b ' * 70}|\n|-|-|\n",
}


def filled(shape: str, length: int) -> str:
    """Return a text of one shape and a length in bytes."""
    return shape * (length // len(shape.encode()))


def shelf(root: Path, **files: str) -> Path:
    """Return a shelf of these files over a right one."""
    right = {"crew.yaml": "hemisphere: north\n", "clipping/clip-a-ball.md": RIGHT, "visits/long-field.md": VISIT}
    for name, text in {**right, **files}.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
    return root


def seconds(root: Path) -> float:
    """Return the processor's time for reading and checking a shelf."""
    start = time.process_time()
    examine(root, TODAY)
    return time.process_time() - start


def in_bodies(root: Path, shape: str) -> Path:
    """Return a shelf with a text of a shape among the words of its technique and visit."""
    text, half = filled(shape, OF_WORDS), filled(shape, OF_WORDS // 2)
    body = RIGHT.replace("## Tools\n", f"{half}\n\n## Tools\n- {half}\n")
    return shelf(root, **{"clipping/clip-a-ball.md": body, "visits/long-field.md": f"{VISIT}{text}\n"})


def in_passages(root: Path, shape: str) -> Path:
    """Return a shelf with a text of a shape in passages just short enough, in every section."""
    text = filled(shape.replace("\n", " "), LONGEST - 100)
    lines = {
        "Tools": "- {}",
        "Steps": "1. **Look.** {}\n   - Key point: {}",
        "Cautions": "- **B.** {}",
        "Finish": "- [ ] {}",
    }
    body = RIGHT
    for name, line in {**lines, "Aftercare": "- Within 2 days: {}"}.items():
        body = body.replace(f"## {name}\n", f"## {name}\n" + f"{line}\n".replace("{}", text) * 4, 1)
    words = f"{VISIT}" + f"{text}\n\n" * 25
    return shelf(root, **{"clipping/clip-a-ball.md": body, "visits/long-field.md": words})


def in_keys(root: Path, shape: str) -> Path:
    """Return a shelf with a text of a shape among its keys and values."""
    text = filled(shape, OF_WORDS)
    return shelf(
        root,
        **{
            "clipping/clip-a-ball.md": RIGHT.replace("season: ", f"season: {text}", 1),
            "visits/long-field.md": VISIT.replace("what: ", f"what: {text}", 1),
            "crew.yaml": f"name: The crew\n{text}\n",
            "people.yaml": f"- name: {text}\n",
            "plants.yaml": text,
        },
    )


@pytest.fixture(scope="module")
def plain(tmp_path_factory: pytest.TempPathFactory) -> float:
    """Return the time that plain words take, once all that is read but once was read."""
    root = in_bodies(tmp_path_factory.mktemp("plain"), WORDS)
    seconds(root)
    return seconds(root)


@pytest.mark.parametrize("place", [in_bodies, in_passages, in_keys], ids=lambda place: place.__name__)
@pytest.mark.parametrize("shape", SHAPES)
def test_no_text_takes_much_longer_than_plain_words(
    tmp_path: Path, plain: float, place: Callable[[Path, str], Path], shape: str
) -> None:
    assert seconds(place(tmp_path, SHAPES[shape])) <= TIMES * plain + SLACK_S


@pytest.mark.parametrize("shape", ["letters", "digits and spaces", "open braces", "list items", "tiny lines"])
def test_a_megabyte_of_anything_is_checked_in_little_time(tmp_path: Path, shape: str) -> None:
    names = ("clipping/clip-a-ball.md", "visits/long-field.md", "crew.yaml", "people.yaml", "plants.yaml")
    root = shelf(tmp_path, **dict.fromkeys(names, filled(SHAPES[shape], 1_000_000)))
    assert seconds(root) < MOST_S
    findings = examine(root, TODAY).findings
    assert [each.span.path.removeprefix(f"{root.as_posix()}/") for each in findings] == sorted(names)
    assert {each.rule for each in findings} == {"file.too-big"}


def test_words_that_run_on_are_cut_and_told(tmp_path: Path) -> None:
    long = (
        f"---\nsite: {'a ' * LONGEST}\ndate: 2026-10-14\ndone:\n  - technique: clip-a-ball\n---\n{'Look. ' * LONGEST}\n"
    )
    found = examine(shelf(tmp_path, **{"visits/long-field.md": long}), TODAY).findings
    told = [(each.span.line, each.what) for each in found if each.rule == "file.too-long"]
    assert (2, "these words run on for 3999 characters") in told
    assert (7, "these words run on for 11999 characters") in told
