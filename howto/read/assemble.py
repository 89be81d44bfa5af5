"""Front matter and body put together as a technique, with the place of every part."""

import hashlib
import re
from collections.abc import Iterable, Mapping
from pathlib import PurePosixPath
from typing import Any, Final

from howto.findings import Finding
from howto.languages.written_units import amounts_in
from howto.model.family import AnyFamily
from howto.model.names import file_name
from howto.model.prose import Prose, Run
from howto.model.technique import AnyTechnique, Care, Hazard, Kit, Mark, Picture, Step, Technique, TypedAmount, When
from howto.quantities.amounts import Typed
from howto.read.body import Body, read_body
from howto.read.front_matter import split_front_matter
from howto.read.header import Header, read_header
from howto.read.items import KitText
from howto.read.nodes import scalars_located
from howto.read.notes import Notes, line_of, nearest
from howto.read.passage import Passage
from howto.read.steps import PictureText, StepText
from howto.read.when import read_when
from howto.span import SourceText, Span

_ID: Final = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*(?:\.[a-z]{2,3})?")
_VERSION_LENGTH: Final = 6
LOSING: Final = tuple(  # findings after which a key may be missing from what was read, though it was written
    f"file.{name}" for name in ("front-matter-start", "front-matter-end", "front-matter", "two-documents", "shorthand")
)


def assemble(
    source: SourceText, families: Mapping[str, AnyFamily], language: str
) -> tuple[AnyTechnique | None, tuple[Finding, ...]]:
    """Return the technique a file holds, and findings.

    The technique is None where its title, family or measures cannot be read; the rest is looked at all the same.
    """
    notes = Notes(source)
    node, first_line, front = split_front_matter(source)
    header = read_header(notes, node, families, damaged=any(each.rule in LOSING for each in front), language=language)
    body, body_findings = read_body(source, first_line, header.language)
    spans = dict(header.spans)
    care = _aftercare(notes, body, spans, header.language)
    _place(body, spans)
    check_name(notes, source, "technique")
    if header.family is not None:
        _check_folder(notes, source, header, families)
    findings = (*front, *notes.findings, *body_findings)
    if not header.title or header.family is None or header.measures is None:
        return None, findings
    technique: AnyTechnique = Technique[Any](
        id=source.stem,
        title=header.title,
        family=header.family.name,
        level=header.level,
        minutes=header.minutes,
        needs=header.needs,
        plants=header.plants,
        season=header.season,
        language=header.language,
        measures=header.measures,
        intro=tuple(prose_of(each) for each in body.intro),
        tools=tuple(_kit(each) for each in body.tools),
        materials=tuple(_kit(each) for each in body.materials),
        steps=tuple(_step(each) for each in body.steps),
        cautions=tuple(Hazard(title=each.title, text=prose_of(each.text), wear=each.wear) for each in body.cautions),
        finish=tuple(prose_of(each) for each in body.finish),
        aftercare=care,
        waive=header.waive,
        version=version_of(source),
        path=source.path,
        spans=spans,
        located={**scalars_located(node), **body.located},
    )
    return technique, findings


def version_of(source: SourceText) -> str:
    """Return the name of a file's text: six hex digits that change with any word of it, not with idle spaces."""
    text = "\n".join(line.rstrip() for line in source.lines).strip("\n") + "\n"
    return hashlib.sha256(text.encode("utf-8", "replace")).hexdigest()[:_VERSION_LENGTH]


def prose_of(passage: Passage) -> Prose:
    """Return a passage as the model's prose."""
    return tuple(
        Run(text=piece.text, strong=piece.strong, emphasis=piece.emphasis) for piece in passage.pieces if piece.text
    )


def picture_of(picture: PictureText) -> Picture:
    """Return a picture as the model's."""
    return Picture(
        file=picture.file,
        focus_percent=picture.focus_percent or (50.0, 50.0),
        marks=tuple(Mark(x_percent=m.x_percent, y_percent=m.y_percent, text=m.text) for m in picture.marks),
        alt=picture.alt,
        credit=picture.credit,
    )


def check_name(notes: Notes, source: SourceText, kind: str) -> None:
    """Note a file whose name cannot be an id: anything but small letters, digits and dashes."""
    if _ID.fullmatch(source.stem):
        return
    plain = file_name(source.stem) or kind
    notes.add(
        "name",
        Span(source.path),
        f"the file is called `{PurePosixPath(source.path).name}`",
        "its name is what other files, cards and addresses call it: small letters, digits and dashes",
        f"rename the file to `{plain}.md`",
    )


def _check_folder(notes: Notes, source: SourceText, header: Header, families: Mapping[str, AnyFamily]) -> None:
    """Note a file whose folder is named for another family than it says."""
    folder = PurePosixPath(source.path).parent.name
    said = header.family.name if header.family else ""
    meant = folder if folder in families else nearest(folder, families) if folder else None
    if meant is None or folder == said:
        return
    notes.add(
        "folder",
        header.spans["family"],
        f"the family is `{said}` and the folder is `{folder}`",
        "techniques stand in the folder of their family, so that they are found there",
        f"move the file to a folder `{said}`"
        if meant == said
        else f"move the file to the folder `{said}`, or write `family: {meant}`",
    )


def _kit(kit: KitText) -> Kit:
    """Return a tool or material as the model's."""
    return Kit(name=kit.name, note=prose_of(kit.note) if kit.note else ())


def _step(step: StepText) -> Step:
    """Return a step as the model's."""
    return Step(
        title=step.title,
        text=prose_of(step.text),
        key_points=tuple(prose_of(each) for each in step.key_points),
        reasons=tuple(prose_of(each) for each in step.reasons),
        checks=tuple(prose_of(each) for each in step.checks),
        pictures=tuple(picture_of(each) for each in step.pictures),
    )


def _aftercare(notes: Notes, body: Body, spans: dict[str, Span], language: str) -> tuple[Care, ...]:
    """Return the care tasks with their times; a time that is not understood is noted."""
    tasks: list[Care] = []
    for each in body.aftercare:
        if each.never:
            when: When | None = When(text=each.when, kind="always")
        else:
            line = line_of(notes.source, each.when_span.line)
            when, findings = read_when(each.when, each.when_span, line, language)
            notes.found.extend(findings)
        if when is None:
            continue
        never = each.never or when.text.casefold() == "never"
        spans[f"aftercare[{len(tasks)}]"] = each.span
        spans[f"aftercare[{len(tasks)}].when"] = each.when_span
        tasks.append(Care(when=when, text=prose_of(each.text), never=never, amounts=typed_in(each.text.text, language)))
    return tuple(tasks)


def typed_in(text: str, language: str) -> tuple[TypedAmount, ...]:
    """Return the amounts that stand in a sentence as its author typed them."""
    return tuple(
        TypedAmount(start=start, end=end, amount=Typed(found.amount, found.dimension, found.written))
        for start, end, found in amounts_in(text, language)
    )


def _place(body: Body, spans: dict[str, Span]) -> None:
    """Add the place of every part of the body; a section that is missing stands at the end of the file."""
    for name in ("tools", "materials", "steps", "cautions", "finish", "aftercare"):
        spans[name] = body.headings.get(name, body.end)
    first = min(body.headings.values(), key=lambda span: span.line, default=body.end)
    spans["intro"] = body.intro[0].span if body.intro else first
    parts: tuple[tuple[str, Iterable[Any]], ...] = (
        ("tools", body.tools),
        ("materials", body.materials),
        ("cautions", body.cautions),
        ("finish", body.finish),
        ("intro", body.intro),
        ("steps", body.steps),
    )
    for name, found in parts:
        for at, each in enumerate(found):
            spans[f"{name}[{at}]"] = each.span
    for at, step in enumerate(body.steps):
        _place_step(f"steps[{at}]", step, spans)


def _place_step(field: str, step: StepText, spans: dict[str, Span]) -> None:
    """Add the place of everything under a step."""
    spans[f"{field}.title"] = step.span
    spans[f"{field}.text"] = step.text.span
    for name, found in (("key_points", step.key_points), ("reasons", step.reasons), ("checks", step.checks)):
        for at, each in enumerate(found):
            spans[f"{field}.{name}[{at}]"] = each.span
    for at, picture in enumerate(step.pictures):
        spans[f"{field}.pictures[{at}]"] = picture.span
        spans.update({f"{field}.pictures[{at}].{name}": span for name, span in picture.said_at})
        for number, mark in enumerate(picture.marks):
            spans[f"{field}.pictures[{at}].marks[{number}]"] = mark.span
