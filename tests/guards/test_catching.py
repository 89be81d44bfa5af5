"""Exceptions that nobody expected are caught in one place only."""

import ast

import pytest

from tests.support.source import PACKAGE, modules

ANY = frozenset({"Exception", "BaseException"})


def caught_blindly(text: str) -> list[int]:
    """Return the lines that catch or suppress whatever may come, but for those that clear up and raise it again."""
    lines = []
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.ExceptHandler) and (node.type is None or _any_of(node.type)) and not _raises(node):
            lines.append(node.lineno)
        if isinstance(node, ast.Call) and "suppress" in ast.unparse(node.func) and any(map(_any_of, node.args)):
            lines.append(node.lineno)
    return lines


def _raises(node: ast.ExceptHandler) -> bool:
    """Tell whether a handler ends by raising what it caught."""
    last = node.body[-1]
    return isinstance(last, ast.Raise) and last.exc is None


def _any_of(node: ast.expr) -> bool:
    """Tell whether an expression names a class of all exceptions."""
    return any(isinstance(each, ast.Name) and each.id in ANY for each in ast.walk(node))


def test_one_place_catches_what_nobody_expected() -> None:
    blind = {path: caught_blindly(path.read_text(encoding="utf-8")) for path in modules()}
    assert {path.relative_to(PACKAGE).as_posix(): len(lines) for path, lines in blind.items() if lines} == {
        "guarded.py": 1
    }


@pytest.mark.parametrize(
    ("handler", "blind"),
    [
        ("except:", True),
        ("except Exception:", True),
        ("except (ValueError, BaseException) as problem:", True),
        ("except ValueError:", False),
        ("except (OSError, KeyError):", False),
    ],
)
def test_what_catches_all(handler: str, blind: bool) -> None:
    assert bool(caught_blindly(f"try:\n    x = 1\n{handler}\n    pass\n")) == blind


def test_suppressing_all_is_catching_all() -> None:
    assert caught_blindly("with contextlib.suppress(Exception):\n    pass\n") == [1]
    assert caught_blindly("with suppress(OSError):\n    pass\n") == []
