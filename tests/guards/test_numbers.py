"""A number of a rule has one home: no sentence repeats what a limit, a reference or a constant already holds."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from howto.languages.reader import SHARES
from howto.quantities.units import known_unit
from tests.support.source import PACKAGE

FAMILIES = sorted(path for path in (PACKAGE / "families").iterdir() if path.is_dir() and path.name[0] != "_")
AMOUNT = re.compile(
    r"(?<![\w./-])(?P<number>\d+(?:\.\d+)?)\s?(?P<unit>mm|cm|m|%|°C|kg|g|L|min|h|hours?|days?|weeks?|months?|years?|"
    r"dB\(A\)|kPa|N|kN|ppm)(?![\w²³/])"
)
SUFFIX = re.compile(r"_(MM|CM|M|PERCENT|C|KG|G|L|MIN|H|DAYS|WEEKS|MONTHS|YEARS|N|KPA)$")
UNITS = {"PERCENT": "%", "C": "°C", "L": "L", "N": "N", "KPA": "kPa"}
Held = tuple[float, str]  # a value and its unit; "share" for a part of a whole


def held_in(tree: ast.Module) -> Iterator[Held]:
    """Yield the numbers that limits and constants of a module hold."""
    for node in tree.body:
        target = (
            node.targets[0]
            if isinstance(node, ast.Assign)
            else node.target
            if isinstance(node, ast.AnnAssign)
            else None
        )
        value = node.value if isinstance(node, ast.Assign | ast.AnnAssign) else None
        if not isinstance(target, ast.Name) or value is None:
            continue
        if isinstance(value, ast.Call) and ast.unparse(value.func) == "Limit":
            yield from _of_limit(value)
        number, suffix = _number(value), SUFFIX.search(target.id)
        if number is not None and suffix:
            yield number, UNITS.get(suffix[1], suffix[1].lower())


def _of_limit(call: ast.Call) -> Iterator[Held]:
    given = {each.arg: each.value for each in call.keywords}
    unit = ast.unparse(given["unit"]).strip("'\"") if "unit" in given else ""
    for end in ("low", "high"):
        number = _number(given[end]) if end in given else None
        if number is not None:
            yield number, "share" if unit == "SHARE" else unit


def _number(node: ast.expr) -> float | None:
    """Return what plain arithmetic comes to, or None for anything else."""
    if isinstance(node, ast.Constant) and isinstance(node.value, int | float) and not isinstance(node.value, bool):
        return float(node.value)
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub) and (inner := _number(node.operand)) is not None:
        return -inner
    if isinstance(node, ast.BinOp):
        left, right = _number(node.left), _number(node.right)
        if left is not None and right is not None and isinstance(node.op, ast.Div | ast.Mult):
            return left / right if isinstance(node.op, ast.Div) else left * right
    return None


def said_in(tree: ast.Module) -> Iterator[tuple[int, str]]:
    """Yield the line and text of each string that is printed: docstrings of rules, and texts in functions."""
    for function in (node for node in tree.body if isinstance(node, ast.FunctionDef)):
        ruled = any(isinstance(each, ast.Call) and ast.unparse(each.func) == "rule" for each in function.decorator_list)
        doc = function.body[0] if ast.get_docstring(function) else None
        for node in ast.walk(function):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                if doc is not None and isinstance(doc, ast.Expr) and node is doc.value and not ruled:
                    continue
                yield node.lineno, node.value


def repeated(text: str, held: set[Held]) -> list[str]:
    """Return what a text says that one of the numbers held already says."""
    found = []
    for each in AMOUNT.finditer(text):
        unit = known_unit(each["unit"])
        for value, of in held:
            other = known_unit(of) if of != "share" else None
            if unit is not None and other is not None and unit == other and float(each["number"]) == value:
                found.append(each[0])
    found += [
        words
        for words, part in SHARES.items()
        if words != "all"
        and re.search(rf"\b{words}\b", text)
        and any(abs(value - part) < 1e-9 for value, of in held if of == "share")
    ]
    return found


@pytest.mark.parametrize("family", FAMILIES, ids=lambda path: path.name)
def test_no_sentence_repeats_a_number_that_a_limit_or_constant_holds(family: Path) -> None:
    faults = []
    for path in sorted(family.glob("*.py")):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        held = set(held_in(tree))
        faults += [f"{path.name}:{line} {each}" for line, text in said_in(tree) for each in repeated(text, held)]
    assert faults == []


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("stops 150 mm inside", ["150 mm"]),
        ("at most a third of it", ["a third"]),
        ("stops 151 mm inside", []),
        ("a quarter", []),
    ],
)
def test_a_repeated_number_is_seen(text: str, found: list[str]) -> None:
    assert repeated(text, {(150.0, "mm"), (1 / 3, "share")}) == found
