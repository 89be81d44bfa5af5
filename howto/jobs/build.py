"""Builds a shelf: checks it, then writes its cards, pictures, leaflets and page."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from howto.findings import Finding, in_order, stops
from howto.jobs.check import KINDS, examine, to_make
from howto.jobs.outputs import make
from howto.jobs.staging import Stage
from howto.span import SourceText

Progress = Callable[[int, int], None]


@dataclass(frozen=True)
class Built:
    """What a build found and wrote; `stopped` when nothing was written."""

    findings: tuple[Finding, ...]
    sources: Mapping[str, SourceText]
    stopped: bool
    written: tuple[str, ...] = ()
    texts: tuple[str, ...] = ()

    def summary(self, to: Path) -> str:
        """Return one line that counts what was written."""
        cards = {name for name in self.written if name.startswith("cards/") and name.endswith(".pdf")}
        carousels = {name.split("/")[1] for name in self.written if name.startswith("carousels/")}
        leaflets = {name for name in self.written if name.startswith("leaflets/") and name.endswith(".pdf")}
        parts = [
            f"{len(found)} {word if len(found) == 1 else word + 's'}"
            for found, word in ((cards, "card"), (carousels, "carousel"), (leaflets, "leaflet"))
            if found
        ]
        parts += ["the shelf page"] if "index.html" in self.written else []
        return f"Wrote {', '.join(parts) or 'nothing'} in {to}."


def build(
    root: Path,
    to: Path,
    today: date,
    paths: Sequence[Path] = (),
    *,
    kinds: Sequence[str] = KINDS,
    strict: bool = False,
    step: Progress | None = None,
) -> Built:
    """Check the shelf, then write its outputs into `to`; nothing is written while something stops the build."""
    examined = examine(root, today)
    if stops(examined.findings, strict=strict):
        return Built(examined.findings, examined.sources, stopped=True)
    stage = Stage(to)
    try:
        job = to_make(examined, paths, kinds, today)
        found = in_order((*examined.findings, *make(job, stage.write, step)))
        if stops(found, strict=strict):
            return Built(found, examined.sources, stopped=True)
        stage.swap_in(() if paths else [kind for kind in kinds if kind != "shelf"])
    finally:
        stage.drop()
    return Built(found, examined.sources, stopped=False, written=tuple(sorted(stage.written)), texts=tuple(job.texts))
