"""Reads what DEVELOPERS.md says of the project, so that guards can hold it to the truth."""

import re
from collections.abc import Iterable, Mapping
from pathlib import Path

_FAMILIES = "howto/families/"


def tree_of(text: str) -> list[str]:
    """Return the files and folders that the tree lists, one a line of it, those of each family written out.

    The tree is the indented or fenced block with a line for `howto/__init__.py`. A line starts with a path; a line
    of folders alone names the families, and the names set in below it are files of every one of them.
    """
    listed: list[str] = []
    families: list[str] = []
    for line in _block(text):
        words = line.split()
        if not words or words[0] == "--":
            continue
        if all(re.fullmatch(r"[a-z]+/", word) for word in words):
            families = [_FAMILIES + word for word in words]
            listed += families
        elif "/" in words[0] or not words[0].endswith(".py"):
            listed += [words[0]] if re.match(r"[\w.<>*-]+[./]", words[0]) else []
        else:
            listed += [folder + words[0] for folder in families]
    return listed


def _block(text: str) -> list[str]:
    """Return the lines of the tree."""
    lines = text.split("\n")
    at = next((at for at, line in enumerate(lines) if re.match(r"\s*howto/__init__\.py\b", line)), None)
    if at is None:
        return []
    fenced = any(line.startswith("```") for line in lines[:at]) and not lines[at].startswith("    ")
    first = last = at
    while first > 0 and _within(lines[first - 1], fenced=fenced):
        first -= 1
    while last + 1 < len(lines) and _within(lines[last + 1], fenced=fenced):
        last += 1
    return lines[first : last + 1]


def _within(line: str, *, fenced: bool) -> bool:
    """Tell whether a line belongs to the block."""
    return not line.startswith("```") if fenced else line.startswith("    ") or not line.strip()


def listed_and_gone(listed: Iterable[str], root: Path) -> list[str]:
    """Return what is listed and is not there; a `<name>` or `*` stands for anything."""
    return [each for each in listed if not any(root.glob(re.sub(r"<[^>]*>", "*", each).rstrip("/")))]


def there_and_unlisted(listed: Iterable[str], root: Path) -> list[str]:
    """Return the modules that the tree leaves out; a folder that is listed stands for all in it."""
    known = set(listed)
    folders = tuple(each for each in known if each.endswith("/") and each != "howto/")
    found = sorted(path.relative_to(root).as_posix() for path in (root / "howto").rglob("*.py"))
    empty = {path for path in found if path.endswith("__init__.py") and (root / path).read_text().count("\n") <= 1}
    return [path for path in found if path not in known | empty and not path.startswith(folders)]


def column_of(text: str, first: str, column: str) -> dict[str, str]:
    """Return a column of the table whose first heading is `first`, by what stands in that first column."""
    rows = [[cell.strip().strip("`") for cell in line.strip().strip("|").split("|")] for line in text.split("\n")]
    start = next((at for at, row in enumerate(rows) if row[0] == first and column in row), None)
    if start is None:
        return {}
    wanted = rows[start].index(column)
    found: dict[str, str] = {}
    for row in rows[start + 2 :]:
        if len(row) <= wanted:
            break
        found[row[0].casefold()] = row[wanted]
    return found


def untrue_counts(said: Mapping[str, str], true: Mapping[str, int]) -> list[str]:
    """Return where a column of counts does not say what is true."""
    return [
        f"{each}: {said.get(each, 'nothing')} is written, {count} is true"
        for each, count in true.items()
        if said.get(each) != str(count)
    ]
