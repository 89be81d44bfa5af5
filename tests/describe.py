"""Rewrites what DEVELOPERS.md says of the code: `python -m tests.describe` fills in its tree and its table.

Each line of the tree is the first sentence of that module; each row of the table is counted from the families.
Guards fail where the page and the code differ, and name this command.
"""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

from howto.families import FAMILIES
from howto.jobs.rulebook import rulebook
from tests.support.source import ROOT

PAGE = ROOT / "DEVELOPERS.md"
WIDE = 118
# Published or derived worked examples carried into each family's tests, counted by hand when they were.
EXAMPLES = {
    "clipping": 1,
    "hedging": 5,
    "espalier": 7,
    "mowing": 8,
    "feeding": 16,
    "watering": 38,
    "soil": 8,
    "planting": 7,
    "safety": 44,
}


def tree() -> str:
    """Return the tree: a line a module, folder by folder."""
    lines = [
        "README.md                  what it makes, one file explained, how to run it",
        "DEVELOPERS.md              this page",
        "pyproject.toml             dependencies and every setting of lint, types, tests, coverage",
        "techniques/<family>/*.md   the technique files an author writes",
        "output/                    what a build writes; never edited by hand",
    ]
    root = ROOT / "howto"
    for folder in [root, *sorted(path for path in root.rglob("*") if path.is_dir() and any(path.glob("*.py")))]:
        lines += _folder(folder)
    return "\n".join(f"    {line}" for line in lines)


def _folder(folder: Path) -> Iterator[str]:
    """Yield the lines of one folder."""
    for path in sorted(folder.glob("*.py")):
        name = path.relative_to(ROOT).as_posix()
        line = f"{name:<44} {first_sentence(path)}"
        yield line if len(line) <= WIDE else line[: WIDE - 1].rsplit(" ", 1)[0] + " …"


def first_sentence(path: Path) -> str:
    """Return the first line of a module's docstring without its full stop."""
    said = ast.get_docstring(ast.parse(path.read_text(encoding="utf-8"))) or ""
    return said.split("\n", 1)[0].rstrip(".")


def table() -> str:
    """Return the table of families: rules, figures, worked examples tested, sources."""
    rows = ["| Family | Rules | Figures | Examples tested | Sources |", "|---|---|---|---|---|"]
    for each in FAMILIES:
        folder = ROOT / "howto" / "families" / each.name
        rules = len(each.rules) + len(each.every)
        rows.append(
            f"| {each.name} | {rules} | {len(figure_names(folder))} | {EXAMPLES[each.name]} | {sources(folder)} |"
        )
    rest = len(rulebook()) - sum(len(each.rules) + len(each.every) for each in FAMILIES)
    rows.append(f"| files, words, shelf, fit, visits | {rest} | - | - | - |")
    return "\n".join(rows)


def figure_names(folder: Path) -> set[str]:
    """Return the names that a family's figures may have, as written in its code."""
    text = "".join(path.read_text(encoding="utf-8") for path in folder.glob("*.py"))
    return set(re.findall(r"Figure\(\s*name=f?\"([^\"]+)\"", text))


def sources(folder: Path) -> int:
    """Return how many sources a family names."""
    return sum(len(re.findall(r"^\w+ = (?:Reference|from_memory)\(", path.read_text(encoding="utf-8"), re.MULTILINE))
               for path in folder.glob("references*.py"))  # fmt: skip


def filled(page: str) -> str:
    """Return the page with its tree and table made anew, each between its two marker lines."""
    for name, text in (("tree", tree()), ("families", table())):
        pattern = rf"(<!-- {name}: python -m tests\.describe -->\n).*?(\n<!-- end -->)"
        page = re.sub(pattern, lambda found, text=text: f"{found[1]}\n{text}\n{found[2]}", page, flags=re.DOTALL)  # type: ignore[misc]
    return page


def main() -> None:
    """Rewrite the page."""
    PAGE.write_text(filled(PAGE.read_text(encoding="utf-8")), encoding="utf-8")


if __name__ == "__main__":
    main()
