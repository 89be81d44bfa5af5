"""What README.md and DEVELOPERS.md name is there: folders and files, modules that are run, commands and rules."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Final

import pytest

from howto.cli.app import COMMANDS
from howto.jobs.rulebook import rulebook
from tests.support.source import ROOT

PAGES: Final = ("README.md", "DEVELOPERS.md")
FOLDERS: Final = frozenset({"howto", "tests"})
RULES: Final = frozenset(rule.name for rule in rulebook())
KINDS: Final = frozenset(name.partition(".")[0] for name in RULES)


def untrue(text: str, root: Path = ROOT) -> list[str]:
    """Return what a page names that is not there."""
    return [*_paths(text, root), *_modules(text, root), *_commands(text), *_rules(text)]


def _paths(text: str, root: Path) -> Iterator[str]:
    """Yield the paths into the project that lead nowhere; a `<name>` or `*` stands for anything."""
    for path in re.findall(r"`(\w+/[\w<>/*.-]*)`", text):
        if path.partition("/")[0] in FOLDERS and not any(root.glob(re.sub(r"<[^>]*>", "*", path).rstrip("/"))):
            yield path


def _modules(text: str, root: Path) -> Iterator[str]:
    """Yield the modules that are said to be run and cannot be."""
    for name in re.findall(r"python -m ((?:howto|tests)(?:\.\w+)*)", text):
        place = root / name.replace(".", "/")
        if not place.with_suffix(".py").is_file() and not (place / "__main__.py").is_file():
            yield f"python -m {name}"


def _commands(text: str) -> Iterator[str]:
    """Yield the commands that `howto` does not have."""
    yield from (f"howto {name}" for name in re.findall(r"(?:`|bin/|\$ )howto ([a-z]+)", text) if name not in COMMANDS)


def _rules(text: str) -> Iterator[str]:
    """Yield the rules of a family, or of files, that are in no rulebook."""
    for name in re.findall(r"(?<![\w./-])([a-z]+\.[a-z]+(?:-[a-z]+)*)(?![\w./(-])", text):
        if name.partition(".")[0] in KINDS and name not in RULES and not name.endswith((".md", ".pdf", ".py")):
            yield name


@pytest.mark.parametrize("page", PAGES)
def test_what_a_page_names_is_there(page: str) -> None:
    assert untrue((ROOT / page).read_text(encoding="utf-8")) == []


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("`howto/span.py`, `howto/families/<trade>/rules.py` and `tests/cases/*/*.case`", []),
        ("`howto/gone.py` and `tests/nowhere/`", ["howto/gone.py", "tests/nowhere/"]),
        ("`techniques/clipping/yours.md`", []),
        ("`python -m howto`, `python -m tests.bounds --all`, python -m tests.fuzz", []),
        ("`python -m tests.gone`", ["python -m tests.gone"]),
        ("`howto check` in `.venv/bin/howto build`", []),
        ("`howto chek` or $ howto bild", ["howto chek", "howto bild"]),
        ("error mowing.one-third: a third", []),
        ("error mowing.one-forth: a forth", ["mowing.one-forth"]),
    ],
)
def test_what_is_not_there_is_found(text: str, found: list[str]) -> None:
    assert untrue(text) == found
