"""Reads the cases: a file each, with what it changes in a base and the exact text reported, and follows their mends.

tests/cases/README.md says how a case is written.
"""

import re
from collections.abc import Sequence
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
from howto.read.crew import crew_of
from howto.read.plants import read_book
from howto.read.text import text_of
from howto.span import SourceText

FOLDER = Path(__file__).parent.parent / "cases"
BASES = FOLDER / "bases"
TODAY = date(2026, 10, 14)
_HEADING = re.compile(r"^--- (\w+)\n", re.MULTILINE)
_PARTS = ("base", "crew", "changed", "says", "mended")
_CHANGE = re.compile(r"(?P<sign>[-+ ])(?: (?P<line>.*))?")


@dataclass(frozen=True)
class Case:
    """One case, by the path of its file: `<family>/<rule>--<slug>.case`."""

    path: Path

    @property
    def name(self) -> str:
        """Its rule and its slug."""
        return f"{self.path.parent.name}.{self.path.stem}"

    @property
    def rule(self) -> str:
        """The rule it is about."""
        return self.name.partition("--")[0]

    @cached_property
    def parts(self) -> dict[str, str]:
        """What stands under each heading, in the order of the file."""
        text = self.path.read_text(encoding="utf-8")
        opening, *rest = _HEADING.split(text.removeprefix("base: "))
        parts = {"base": opening.strip(), **dict(zip(rest[::2], rest[1::2], strict=True))}
        if odd := [each for each in parts if each not in _PARTS]:
            raise AssertionError(f"{self.name}: no case says {odd}")
        return parts

    @property
    def said(self) -> str:
        """The exact text reported, empty where it passes."""
        return self.parts.get("says", "")

    @property
    def crew(self) -> Crew:
        """The crew of the case, or one that says nothing."""
        return crew_of(SourceText("crew.yaml", self.parts["crew"]))[0] if "crew" in self.parts else Crew()

    @cached_property
    def text(self) -> str:
        """The base with the case's changes."""
        base = (BASES / f"{self.parts['base']}.md").read_text(encoding="utf-8")
        return changed(base, self.parts.get("changed", "").splitlines())

    @cached_property
    def checked(self) -> "Checked":
        """What is found in the case."""
        return check_text(shown(self.text), self.crew)

    @cached_property
    def mended_text(self) -> str | None:
        """The text after its mends, where a person has to follow them."""
        return changed(self.text, self.parts["mended"].splitlines()) if "mended" in self.parts else None

    @property
    def mended(self) -> "Checked | None":
        """What is found after its mends, where a person has to follow them."""
        return check_text(shown(self.mended_text), self.crew) if self.mended_text is not None else None

    def accept(self, report: str) -> None:
        """Write another text reported into the file, and leave the rest of it."""
        self.parts["says"] = report
        rest = "".join(f"--- {heading}\n{text}" for heading, text in self.parts.items() if heading != "base")
        self.path.write_text(f"base: {self.parts['base']}\n{rest}", encoding="utf-8")


def changed(text: str, changes: Sequence[str]) -> str:
    """Return a text after changes, made from its top down.

    `- line` takes out the next such line, `+ line` puts one in, and a line set in by two spaces passes over the
    next such line, to reach a place further on.
    """
    done: list[str] = []
    rest = text.split("\n")
    for change in filter(None, changes):
        said = _CHANGE.fullmatch(change)
        sign, line = (said["sign"], said["line"] or "") if said else ("", "")
        if sign == "+":
            done.append(line)
            continue
        if not sign or line not in rest:
            raise AssertionError(f"no change, or no such line from here on: {change!r}")
        at = rest.index(line)
        done += rest[:at] if sign == "-" else rest[: at + 1]
        rest = rest[at + 1 :]
    return "\n".join([*done, *rest])


def shown(text: str) -> SourceText:
    """Return a technique file's text, named as if it stood in the folder of its family."""
    said = re.search(r"^family:\s*([a-z]+)", text, re.MULTILINE)
    source, findings = text_of(text.encode("utf-8"), f"techniques/{said[1] if said else 'clipping'}/case.md")
    if source is None:
        raise AssertionError(f"this cannot be read as text: {findings}")
    return source


def all_cases() -> list[Case]:
    """Return every case by name."""
    return [Case(path) for path in sorted(FOLDER.glob("*/*.case"))]


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
