"""Families say things with values: they print none, and ask neither for the reader's language nor for their units."""

import ast
from collections.abc import Callable

import pytest

from tests.support.source import PACKAGE, imports_in, modules, name_of

FAMILIES = tuple(path for path in modules() if path.is_relative_to(PACKAGE / "families"))
PRINTERS = frozenset({"show", "show_number", "show_range", "show_tolerance", "day_told", "locale_of", "Reader"})
SYSTEMS = frozenset({"metric", "us", "uk"})


def printed(text: str) -> list[str]:
    """Return the lines of a family's text that bring in what prints."""
    return [
        f"{each.line}: {each.name or each.target}"
        for each in imports_in("howto.families", text)
        if each.name in PRINTERS or each.target.split(".")[0] == "babel"
    ]


def asked(text: str) -> list[str]:
    """Return the lines of a family's text that ask who reads: a crew's units may be handed on, unlooked-at."""
    return [
        f"{node.lineno}: {ast.unparse(node)}"
        for node in ast.walk(ast.parse(text))
        if (isinstance(node, ast.Attribute) and _is_of_the_reader(node))
        or (isinstance(node, ast.Compare | ast.MatchValue) and _names_a_system(node))
        or (isinstance(node, ast.Subscript) and isinstance(node.slice, ast.Attribute) and node.slice.attr == "units")
    ]


def _is_of_the_reader(node: ast.Attribute) -> bool:
    """Tell whether an attribute is the reader, or a language that is not the one a technique is written in."""
    return node.attr == "reader" or (node.attr == "language" and not ast.unparse(node.value).endswith("technique"))


def _names_a_system(node: ast.AST) -> bool:
    """Tell whether a comparison holds the name of a system of units."""
    return any(isinstance(each, ast.Constant) and each.value in SYSTEMS for each in ast.walk(node))


def everywhere(look: Callable[[str], list[str]]) -> list[str]:
    """Return what is found in the families, each with its module."""
    return [f"{name_of(path)}:{line}" for path in FAMILIES for line in look(path.read_text(encoding="utf-8"))]


def test_no_family_prints_what_it_says() -> None:
    assert everywhere(printed) == []


def test_no_family_asks_who_reads() -> None:
    assert everywhere(asked) == []


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ("from howto.quantities import convert, show", ["1: show"]),
        ("from howto.quantities import show_number as num", ["1: show_number"]),
        ("from babel.dates import format_date", ["1: format_date"]),
        ("from howto.languages.reader import day_told", ["1: day_told"]),
        ("from howto.quantities import convert, round_down\nfrom howto.quantities.amounts import mm", []),
    ],
)
def test_what_prints(text: str, lines: list[str]) -> None:
    assert printed(text) == lines


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("units == 'us'", 1),
        ("system in ('us', 'uk')", 1),
        ("match units:\n    case 'us':\n        pass", 1),
        ("can = CANS[crew.units]", 1),
        ("words = crew.language", 1),
        ("work.reader.tell(words)", 1),
        ("work.technique.language == 'en'", 0),
        ("can_words(litres, times, crew.units)", 0),
        ("can_words(litres, units=crew.units)", 0),
        ("unit == 'mm'", 0),
    ],
)
def test_what_asks(text: str, count: int) -> None:
    assert len(asked(text)) == count
