"""Keep a garden technique once, check it by arithmetic, and print it three ways.

A shelf is a folder of technique, visit and crew files. `check_shelf(root, today)` returns what was found on it,
`build_shelf(root, to, today)` writes its cards, pictures, leaflets and page, and `figures_of(root, name, today)` works
one technique or visit out. None of them prints, exits, or raises for what an author wrote.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from howto.jobs.build import build as build_shelf
    from howto.jobs.check import check as check_shelf
    from howto.jobs.figures import figures as figures_of

__all__ = ["build_shelf", "check_shelf", "figures_of"]

FACE = {
    "build_shelf": ("howto.jobs.build", "build"),
    "check_shelf": ("howto.jobs.check", "check"),
    "figures_of": ("howto.jobs.figures", "figures"),
}  # each loaded when it is first asked for, so that one command does not wait for another's libraries


def __getattr__(name: str) -> Any:
    """Return a function of the face."""
    if name not in FACE:
        raise AttributeError(f"module 'howto' has no attribute {name!r}")
    module, function = FACE[name]
    return getattr(import_module(module), function)
