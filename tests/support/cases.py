"""Reads the cases: a technique file each, with the exact text that is reported, and follows their mends.

`<rule>--<slug>.md` is the technique and `.findings` what is said of it, empty where it passes. A crew of its own
stands in `<rule>--<slug>.crew.yaml`. Where a mend is not one that a program can follow, the text after following
it to the letter stands in `<rule>--<slug>.mended.md`.
"""

import re
from dataclasses import dataclass
from datetime import date
from functools import cache, cached_property
from pathlib import Path

from howto.check.claims import check_claims
from howto.check.rules import check_technique, rules_over
from howto.cli.report import listed
from howto.compute.figures import figures_of
from howto.families import FAMILIES, family
from howto.findings import Finding, in_order
from howto.model.crew import Crew
from howto.model.family import Breach, Edit
from howto.model.plants import PlantBook
from howto.model.work import AnyWork, Work
from howto.read.assemble import assemble
from howto.read.crew import read_crew
from howto.read.plants import read_book
from howto.read.text import read_text
from howto.span import SourceText

FOLDER = Path(__file__).parent.parent / "cases"
TODAY = date(2026, 10, 14)
MENDED = ".mended.md"


@dataclass(frozen=True)
class Case:
    """One case, by the path of its technique file."""

    path: Path

    @property
    def name(self) -> str:
        """Its name without an ending."""
        return self.path.name.removesuffix(".md")

    @property
    def rule(self) -> str:
        """The rule it is about."""
        return self.name.partition("--")[0]

    @property
    def findings(self) -> Path:
        """The file of the exact text reported."""
        return self.path.with_name(f"{self.name}.findings")

    @property
    def mended(self) -> Path:
        """The file of the technique after its mends, where a person has to follow them."""
        return self.path.with_name(self.name + MENDED)

    @property
    def crew(self) -> Crew:
        """The crew of the case, or one that says nothing."""
        path = self.path.with_name(f"{self.name}.crew.yaml")
        return read_crew(path)[0] if path.exists() else Crew()

    @property
    def source(self) -> SourceText:
        """The technique file, named as if it stood in the folder of its family."""
        return shown(self.path)

    @cached_property
    def checked(self) -> "Checked":
        """What its file comes to, worked out once for all the tests that ask."""
        return check_text(self.source, self.crew)


def shown(path: Path) -> SourceText:
    """Return a case's file under the name that its findings give it."""
    said = re.search(rb"^family:\s*([a-z]+)", path.read_bytes(), re.MULTILINE)
    folder = said[1].decode("ascii") if said else "clipping"
    source, findings = read_text(path, f"techniques/{folder}/case.md")
    if source is None:
        raise AssertionError(f"{path.name} cannot be read: {findings}")
    return source


def all_cases() -> list[Case]:
    """Return every case by name."""
    files = sorted(path for path in FOLDER.glob("*.md") if not path.name.endswith(MENDED))
    return [Case(path) for path in files]


@cache
def book() -> PlantBook:
    """Return the plants and grasses that come with the package."""
    return read_book(FOLDER)[0]


@dataclass(frozen=True)
class Checked:
    """A text read and checked as one technique file: what was read, and all that was found."""

    source: SourceText
    work: AnyWork | None
    findings: tuple[Finding, ...]

    @property
    def report(self) -> str:
        """The findings as they are printed, without the line that counts them."""
        return listed(self.findings, {self.source.path: self.source})

    def breaking(self, rule: str) -> list[Finding]:
        """Return the findings of one rule."""
        return [finding for finding in self.findings if finding.rule == rule]


def check_text(source: SourceText, crew: Crew | None = None) -> Checked:
    """Read, check and compute one technique file, as the pipeline does for each file of a shelf."""
    crew = crew or Crew()
    technique, found = assemble(source, {each.name: each for each in FAMILIES}, crew.language)
    findings = list(found)
    trade = family(technique.family) if technique else None
    if technique is not None and trade is not None:
        sources = {source.path: source}
        work = Work(technique, crew, book())
        findings += check_technique(work, trade, FAMILIES, sources)
        findings += check_claims(work, figures_of(work, trade, TODAY), sources)
        return Checked(source, work, in_order(findings))
    return Checked(source, None, in_order(findings))


def edits_for(checked: Checked, rule: str) -> list[Edit | None]:
    """Return the edit of each breach behind the findings of one rule; None where a person has to follow it."""
    if checked.work is None:
        return []
    trade = family(checked.work.technique.family)
    assert trade is not None
    rules = [each for each in rules_over(trade, FAMILIES) if each.name == rule]
    found: list[Breach] = [breach for each in rules for breach in each(checked.work)]
    return [breach.edit for breach in found]


def followed(source: SourceText, edit: Edit) -> SourceText:
    """Return the file after a mend was followed: a key set in front matter, or a line added to a section."""
    lines = source.text.split("\n")
    lines = _with_line(lines, edit.section, edit.text) if edit.section else _with_key(lines, edit)
    return SourceText(source.path, "\n".join(lines))


def _with_key(lines: list[str], edit: Edit) -> list[str]:
    """Return the lines with one key of the front matter written anew, or added."""
    end = lines.index("---", 1)
    if edit.top:
        home, indent, last = 0, "", end
    else:
        home = next(at for at in range(end) if lines[at].rstrip() == "measures:")
        last = next((at for at in range(home + 1, end) if not lines[at].startswith(" ")), end)
        indent = re.match(r" *", lines[home + 1])[0] or "  "  # type: ignore[index]
    written = f"{indent}{edit.key}: {edit.text}"
    for at in range(home + 1, last):
        if re.match(rf"{indent}{re.escape(edit.key)}\s*:", lines[at]):
            after = next((to for to in range(at + 1, last) if not lines[to].startswith(f"{indent} ")), last)
            return [*lines[:at], written, *lines[after:]]
    return [*lines[: home + 1], written, *lines[home + 1 :]]


def _with_line(lines: list[str], section: str, line: str) -> list[str]:
    """Return the lines with one more at the end of a section, which is added where there is none."""
    headings = [at for at, text in enumerate(lines) if text.startswith("## ")]
    home = next((at for at in headings if lines[at].strip() == f"## {section}"), None)
    if home is None:
        return [*lines, f"## {section}", line, ""]
    last = next((at for at in headings if at > home), len(lines))
    while not lines[last - 1].strip():
        last -= 1
    return [*lines[:last], line, *lines[last:]]
