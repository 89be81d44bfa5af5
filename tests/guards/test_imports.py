"""Imports follow the arrows: cli → jobs → stages and families → model → languages, quantities."""

import sys

import pytest

from tests.support.source import Import, all_imports, imports_in, known_modules, module_of

STAGES = frozenset({"read", "check", "compute", "layout", "render"})
COMMANDS = frozenset({"build", "check", "draft", "figures", "letter", "mark", "new", "why"})
FAMILY_TABLE = "howto.families"
PILLOW = ("howto.fonts", "howto.layout.text", "howto.layout.frames.contrast", "howto.read.photo", "howto.render.image",
          "howto.render.paint")  # fmt: skip
BARE = {"formulae": ("howto.quantities", "howto.seasons"), "references": ("howto.model.",)}
FOLDERS = STAGES | {"model", "families", "cli", "data", "jobs", "languages", "quantities", "fonts"}


def layer(module: str) -> str:
    """Return which layer a module belongs to: its folder, or `words` for the few that stand alone."""
    parts = module.split(".")
    if len(parts) == 1:
        return "face"
    if parts[1] == "__main__":
        return "main"
    return parts[1] if parts[1] in FOLDERS else "words"


ALONE = {"words", "quantities", "fonts"}
BELOW = {
    "words": {"words", "languages", "quantities"},
    "quantities": {"quantities"},
    "fonts": {"fonts"},
    "languages": {"languages", "quantities"},
    "model": {"model", "languages", *ALONE},
    "families": {"model", "languages", *ALONE},
    **{stage: {stage, "model", "languages", *ALONE} for stage in STAGES},
    "jobs": {"jobs", "families", "model", "languages", "data", *ALONE, *STAGES},
    "cli": {"jobs", "model", "languages", *ALONE},
}


def allowed(module: str, target: str) -> bool:
    """Tell whether a module of ours may import another of ours."""
    here, there = layer(module), layer(target)
    if here == there == "families":
        return _same_trade(module, target)
    if here == there == "cli":
        return _beside(module, target)
    if here in BELOW:
        return there in BELOW[here]
    return target == "howto.cli.app" if here == "main" else target.startswith("howto.jobs.")


def _same_trade(module: str, target: str) -> bool:
    """Tell whether two modules are of one family, or the first is the table of all."""
    if target == FAMILY_TABLE:
        return False
    return module == FAMILY_TABLE or module.split(".")[2] == target.split(".")[2]


def _beside(module: str, target: str) -> bool:
    """Tell whether a module of the commands may know another: only `app` knows the commands."""
    return module == "howto.cli.app" or target.rsplit(".", 1)[-1] not in COMMANDS


def broken(found: Import) -> str:
    """Return what is wrong with an import, or nothing."""
    if found.target.startswith("."):
        return "is relative; write the whole name"
    if found.inside:
        return "stands inside a function; move the shared thing down a layer"
    target = module_of(found, known_modules())
    return _ours(found.module, target) if target.split(".")[0] == "howto" else _library(found.module, target)


def _ours(module: str, target: str) -> str:
    """Return what is wrong with an import of our own."""
    if not allowed(module, target):
        return f"goes against the arrows: {layer(module)} → {layer(target)}"
    last = module.rsplit(".", 1)[-1]
    if layer(module) == "families" and last in BARE and not target.startswith(BARE[last]):
        return f"is more than {last} may know"
    return ""


def _library(module: str, target: str) -> str:
    """Return what is wrong with an import of a library."""
    top = target.split(".", maxsplit=1)[0]
    if top == "PIL" and not module.startswith(PILLOW):
        return "brings Pillow where no pixels are"
    if top == "jinja2" and not module.startswith("howto.render."):
        return "brings templates out of render"
    if layer(module) in {"words", "quantities"} and top not in sys.stdlib_module_names:
        return "brings a library into the words"
    return ""


def test_every_import_follows_the_arrows() -> None:
    assert [
        f"{each.module}:{each.line} {each.target} {fault}" for each in all_imports() if (fault := broken(each))
    ] == []


def test_the_whole_package_is_looked_at() -> None:
    seen = {layer(module) for module in known_modules()}
    assert seen >= {"face", "words", "model", "families", "jobs", "cli", "languages", "quantities", *STAGES}
    assert len(all_imports()) > 500


@pytest.mark.parametrize(
    ("module", "line", "fault"),
    [
        ("howto.span", "from howto.findings import Finding", ""),
        ("howto.span", "from howto.model.crew import Crew", "goes against the arrows: words → model"),
        ("howto.span", "import pydantic", "brings a library into the words"),
        ("howto.model.crew", "from howto.read.text import read_text", "goes against the arrows: model → read"),
        ("howto.check.rules", "from howto.families import FAMILIES", "goes against the arrows: check → families"),
        ("howto.check.rules", "from howto.read.text import read_text", "goes against the arrows: check → read"),
        ("howto.check.rules", "from howto.check.place import placed", ""),
        ("howto.check.rules", "from .place import placed", "is relative; write the whole name"),
        (
            "howto.check.rules",
            "def f():\n    import os",
            "stands inside a function; move the shared thing down a layer",
        ),
        (
            "howto.families.clipping.rules",
            "from howto.families.mowing import rules",
            "goes against the arrows: families → families",
        ),
        ("howto.families.clipping.rules", "from howto.families.clipping import formulae", ""),
        ("howto.families.clipping.formulae", "from howto.quantities import convert", ""),
        ("howto.families.clipping.formulae", "from howto.span import Span", "is more than formulae may know"),
        ("howto.families.clipping.diagram", "from PIL import Image", "brings Pillow where no pixels are"),
        ("howto.families", "from howto.families.clipping import FAMILY", ""),
        (
            "howto.families.clipping.rules",
            "from howto.families import FAMILIES",
            "goes against the arrows: families → families",
        ),
        ("howto.layout.pages.card", "import jinja2", "brings templates out of render"),
        ("howto.jobs.pipeline", "from howto.cli import report", "goes against the arrows: jobs → cli"),
        ("howto.cli.build", "from howto.cli import report", ""),
        ("howto.cli.build", "from howto.cli.check import check", "goes against the arrows: cli → cli"),
        ("howto.cli.build", "from howto.check.rules import check_technique", "goes against the arrows: cli → check"),
        ("howto.cli.app", "from howto.cli.check import check", ""),
        ("howto.__main__", "from howto.cli.app import main", ""),
        ("howto.__main__", "from howto.jobs.pipeline import build", "goes against the arrows: main → jobs"),
        ("howto", "from howto.jobs.pipeline import build", ""),
        ("howto", "from howto.quantities import parse", "goes against the arrows: face → quantities"),
    ],
)
def test_the_arrows(module: str, line: str, fault: str) -> None:
    (found,) = imports_in(module, line)
    assert broken(found) == fault
