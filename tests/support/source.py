"""The project's own source as guards look at it: modules, their imports and their functions."""

import ast
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import NamedTuple

ROOT = Path(__file__).parent.parent.parent
PACKAGE = ROOT / "howto"


class Import(NamedTuple):
    """One import: the module it stands in, the line, what is imported, and whether it stands inside a function."""

    module: str
    line: int
    target: str
    name: str
    inside: bool


@cache
def modules(folder: str = "howto") -> tuple[Path, ...]:
    """Return every Python file of a folder of the project, sorted."""
    return tuple(sorted((ROOT / folder).rglob("*.py")))


def name_of(path: Path) -> str:
    """Return a module's dotted name: `howto.read` for `howto/read/__init__.py`."""
    parts = path.relative_to(ROOT).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def imports_in(module: str, text: str) -> list[Import]:
    """Return the imports of a module's text, those in functions too."""
    tree = ast.parse(text)
    nested = {node for function in functions(tree) for node in ast.walk(function)}
    found: list[Import] = []
    for node in ast.walk(tree):
        inside = node in nested
        if isinstance(node, ast.Import):
            found += [Import(module, node.lineno, alias.name, "", inside) for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            target = "." * node.level + (node.module or "")
            found += [Import(module, node.lineno, target, alias.name, inside) for alias in node.names]
    return sorted(found, key=lambda each: (each.line, each.target, each.name))


def functions(tree: ast.AST) -> Iterator[ast.FunctionDef | ast.AsyncFunctionDef]:
    """Yield every function of a tree, methods and inner ones too."""
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            yield node


def module_of(found: Import, known: frozenset[str]) -> str:
    """Return the module that an import reaches: `from howto.cli import report` reaches `howto.cli.report`."""
    inner = f"{found.target}.{found.name}"
    return inner if inner in known else found.target


@cache
def known_modules() -> frozenset[str]:
    """Return the dotted names of the package's modules."""
    return frozenset(name_of(path) for path in modules())


@cache
def all_imports() -> tuple[Import, ...]:
    """Return every import of the package."""
    return tuple(each for path in modules() for each in imports_in(name_of(path), path.read_text(encoding="utf-8")))


def bytes_of(folder: Path) -> dict[str, bytes]:
    """Return every file below a folder."""
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()}
