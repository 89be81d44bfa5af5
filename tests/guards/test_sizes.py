"""Files and functions stay small enough to be read in one go."""

import ast

import pytest

from tests.support.source import ROOT, functions, modules

MOST_LINES = 400
MOST_FUNCTION_LINES = 60


def too_long(text: str) -> list[str]:
    """Return the functions of a text that have too many lines, from `def` to the last."""
    return [
        f"{function.name}: {size} lines"
        for function in functions(ast.parse(text))
        if (size := (function.end_lineno or 0) - function.lineno + 1) > MOST_FUNCTION_LINES
    ]


@pytest.mark.parametrize("folder", ["howto", "tests"])
def test_no_file_is_too_long(folder: str) -> None:
    sizes = {path: len(path.read_text(encoding="utf-8").splitlines()) for path in modules(folder)}
    assert [f"{path.relative_to(ROOT)}: {size} lines" for path, size in sizes.items() if size > MOST_LINES] == []


@pytest.mark.parametrize("folder", ["howto", "tests"])
def test_no_function_is_too_long(folder: str) -> None:
    found = {path: too_long(path.read_text(encoding="utf-8")) for path in modules(folder)}
    assert [f"{path.relative_to(ROOT)} {each}" for path, long in found.items() for each in long] == []


def test_a_function_of_sixty_lines_is_the_longest() -> None:
    body = "\n".join(["    x = 1"] * 59)
    assert too_long(f"def f():\n{body}\n") == []
    assert too_long(f"def f():\n{body}\n    y = 2\n") == ["f: 61 lines"]
