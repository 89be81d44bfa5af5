"""Figures and rules as text for people and JSON for programs."""

import json
import textwrap
from collections.abc import Iterable
from datetime import date
from typing import Any

from howto.languages.reader import Reader
from howto.model.family import Rule
from howto.model.figure import Cell, Figure
from howto.model.reference import Grade, Reference

PLAIN = Reader()
GRADES = {
    Grade.A: "university, government, standards body, learned society or published study",
    Grade.B: "a column by an officer of one, or a reprint",
    Grade.C: "trade supplier, contractor or general page",
    Grade.PRACTICE: "common practice, no source",
    Grade.MEMORY: "from memory; advises only",
    Grade.OURS: "a rule of this project's file format",
}


def figures_as_text(groups: Iterable[tuple[str, tuple[Figure, ...]]], reader: Reader, width: int) -> str:
    """Return each figure with its working and sources, under a heading a group."""
    parts: list[str] = []
    for heading, figures in groups:
        parts.append(f"{heading}\n{'=' * min(len(heading), width)}")
        parts.extend(_figure(figure, reader, width) for figure in figures)
    return "\n\n".join(parts)


def _figure(figure: Figure, reader: Reader, width: int) -> str:
    lines = [
        f"{reader.tell(figure.label)}: {cell(figure.value, figure.unit, reader, figure.digits)}   {{{figure.name}}}"
    ]
    for line in figure.working:
        lines.extend(textwrap.wrap(reader.worked(line), width, initial_indent="    ", subsequent_indent="      "))
    if figure.table is not None:
        lines.append(_table(figure, reader))
    sources = dict.fromkeys(_source(reference) for reference in figure.references)
    for source in sources:
        lines.extend(textwrap.wrap(source, width, initial_indent="    source: ", subsequent_indent="            "))
    return "\n".join(lines)


def _table(figure: Figure, reader: Reader) -> str:
    table = figure.table
    if table is None:
        return ""
    rows = [
        tuple(map(reader.tell, table.columns)),
        *(
            tuple(cell(value, unit, reader, None) for value, unit in zip(row, table.units, strict=True))
            for row in table.rows
        ),
    ]
    widths = [max(len(row[at]) for row in rows) for at in range(len(table.columns))]
    return "\n".join(
        "      " + "  ".join(text.ljust(wide) for text, wide in zip(row, widths, strict=True)).rstrip() for row in rows
    )


def cell(value: Cell, unit: str, reader: Reader, digits: int | None) -> str:
    """Return one value as a reader sees it: a date as 2026-10-14, a number in their units, a word as it is."""
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, str):
        return reader.tell(value)
    return reader.value(value, unit, digits)


def _source(reference: Reference) -> str:
    return f"{reference} [{reference.grade}]" if reference.grade in "ABC" else str(reference)


def figures_as_json(groups: Iterable[tuple[str, tuple[Figure, ...]]], reader: Reader) -> str:
    """Return the figures as a JSON list of groups, values in the unit each names."""
    data = [{"of": heading, "figures": [_plain(figure, reader) for figure in figures]} for heading, figures in groups]
    return json.dumps(data, indent=2, ensure_ascii=False)


def _plain(figure: Figure, reader: Reader) -> dict[str, Any]:
    data = figure.model_dump(mode="json")
    data["label"] = reader.plain(figure.label)
    data["working"] = [reader.worked(line) for line in figure.working]
    if isinstance(figure.value, str):
        data["value"] = reader.plain(figure.value)
    if figure.table is not None:
        rows = [
            [reader.plain(cell) if isinstance(cell, str) else cell for cell in row] for row in data["table"]["rows"]
        ]
        data["table"] |= {"columns": [reader.plain(each) for each in figure.table.columns], "rows": rows}
    data["references"] = [str(reference) for reference in figure.references]
    return data


def _told(value: object, reader: Reader) -> object:
    """Return words as they are told, and any other value as it is."""
    return reader.plain(value) if isinstance(value, str) else value


def rules_as_text(rules: Iterable[Rule[Any]], width: int) -> str:
    """Return each rule in full: what it asks, of what, why, how much it weighs and who says so."""
    return "\n\n".join(_rule(rule, width) for rule in rules)


def _rule(rule: Rule[Any], width: int) -> str:
    def part(lead: str, text: str) -> list[str]:
        return textwrap.wrap(text, width, initial_indent=f"  {lead:<9}", subsequent_indent=" " * 11)

    lines = [f"{rule.name} ({rule.severity})", *part("asks", PLAIN.plain(rule.statement))]
    lines += part("of", PLAIN.plain(rule.applies)) + part("why", PLAIN.plain(rule.why))
    for reference in rule.references:
        lines += part(
            "source", f"{_source(reference)}: {GRADES[reference.grade]}" if reference.grade in "ABC" else str(reference)
        )
    return "\n".join(lines)


def rulebook_as_text(rules: tuple[Rule[Any], ...], width: int) -> str:
    """Return the whole rulebook, a family at a time, and a last line that counts it."""
    parts = []
    for family in dict.fromkeys(rule.name.split(".")[0] for rule in rules):
        mine = [rule for rule in rules if rule.name.split(".")[0] == family]
        parts.append(f"{family.upper()}: {len(mine)} rules\n\n{rules_as_text(mine, width)}")
    return "\n\n\n".join(parts) + f"\n\n{len(rules)} rules."


def rules_as_json(rules: Iterable[Rule[Any]]) -> str:
    """Return the rules as a JSON list."""
    data = [
        {
            "name": rule.name,
            "severity": rule.severity,
            "statement": PLAIN.plain(rule.statement),
            "why": PLAIN.plain(rule.why),
            "applies": PLAIN.plain(rule.applies),
            "references": [{"source": str(ref), "grade": ref.grade} for ref in rule.references],
        }
        for rule in rules
    ]
    return json.dumps(data, indent=2, ensure_ascii=False)
