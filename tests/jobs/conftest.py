"""A small shelf that the jobs work on."""

import shutil
from pathlib import Path

import pytest

from tests.support.source import ROOT

BALL = ROOT / "techniques/clipping/clip-a-ball.md"


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    """Return a shelf of one technique with its pictures, and one visit."""
    root = tmp_path / "shelf"
    (root / "clipping").mkdir(parents=True)
    (root / "pictures").mkdir()
    (root / "visits").mkdir()
    shutil.copy(ROOT / "techniques/crew.yaml", root)
    shutil.copy(BALL, root / "clipping")
    for picture in ("ball-from-above.jpg", "ball-from-side.jpg"):
        shutil.copy(ROOT / "techniques/pictures" / picture, root / "pictures")
    (root / "visits/2026-10-14-long-field.md").write_text(
        "---\nsite: Long field\ndate: 2026-10-14\ndone:\n  - technique: clip-a-ball\n    what: the ball by the gate\n"
        "---\nThe ball is round again.\n"
    )
    return root
