"""Prints the tree of the code, a line a module with its first sentence: `python -m tests.describe`."""

import ast
import sys
from collections.abc import Iterator
from pathlib import Path

from tests.support.source import PACKAGE, ROOT

WIDE = 118


def tree() -> Iterator[str]:
    """Yield a line a module, folder by folder, the top first."""
    for folder in [PACKAGE, *sorted(path for path in PACKAGE.rglob("*") if path.is_dir())]:
        for path in sorted(folder.glob("*.py")):
            line = f"{path.relative_to(ROOT).as_posix():<44} {first_sentence(path)}"
            yield line if len(line) <= WIDE else line[: WIDE - 1].rsplit(" ", 1)[0] + " …"


def first_sentence(path: Path) -> str:
    """Return the first line of a module's docstring without its full stop."""
    said = ast.get_docstring(ast.parse(path.read_text(encoding="utf-8"))) or ""
    return said.split("\n", 1)[0].rstrip(".")


if __name__ == "__main__":
    sys.stdout.writelines(f"{line}\n" for line in tree())
