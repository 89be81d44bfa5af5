"""A visit's file read: what was done, each technique with this garden's own measures in it."""

from collections.abc import Callable
from collections.abc import Mapping as Table
from dataclasses import dataclass, field
from typing import Any, Final

from howto.findings import Finding
from howto.model.family import AnyFamily
from howto.model.technique import AnyTechnique, Picture
from howto.model.visit import Job, Visit
from howto.read.assemble import LOSING, check_name, prose_of, version_of
from howto.read.body import located_in, read_words
from howto.read.front_matter import split_front_matter
from howto.read.header import language_in
from howto.read.measures import measures_from
from howto.read.nodes import KeyNode, Mapping, Node, Scalar, Sequence, is_blank, scalars_located
from howto.read.notes import Notes, listed, nearest, short, whole_line
from howto.read.steps import file_inside, focus_of
from howto.read.values import (
    as_mapping,
    choice_in,
    date_in,
    note_bound,
    place_of,
    printed_in,
    quantity_in,
    sentence_in,
    text_in,
    unknown_keys,
    whole_in,
    words_in,
    yes_in,
)
from howto.span import SourceText, Span

KEYS: Final = ("site", "date", "next visit", "done", "language", "print", "may publish", "revision", "before", "after")
JOB_KEYS: Final = ("technique", "what", "count", "area", "plant", "measures", "leave out")
PICTURE_KEYS: Final = ("picture", "focus", "alt", "credit")
_READERS: Final[Table[str, Callable[[Notes, KeyNode], Any]]] = {
    "site": lambda notes, entry: printed_in(notes, entry, 60),
    "date": date_in,
    "next visit": date_in,
    "language": language_in,
    "may publish": yes_in,
}
MOST: Final = 10_000  # of one thing on one visit
MOST_REVISIONS: Final = 999
MOST_AREA_M2: Final = 1_000_000.0  # a hundred hectares


@dataclass(frozen=True, slots=True)
class Known:
    """The techniques a visit may name: those that could be read, and the ids of those that could not.

    `language` is the crew's: what a leaflet is in that says none itself.
    """

    techniques: Table[str, AnyTechnique]
    families: Table[str, AnyFamily]
    unread: frozenset[str] = frozenset()
    language: str = "en"

    def told_in(self, id_: str, language: str) -> AnyTechnique | None:
        """Return the telling of a technique in a language where there is one, else the first, else the one named."""
        first = id_.partition(".")[0]
        tags = dict.fromkeys((language, language.partition("-")[0]))
        ids = (*(f"{first}.{tag}" for tag in tags), first, id_)
        return next((found for each in ids if (found := self.techniques.get(each))), None)

    def named(self, text: str) -> str | None:
        """Return the id that a text names: an id, or a title in any capitals."""
        wanted = text.casefold().strip()
        ids = (*self.techniques, *self.unread)
        found = next(
            (id_ for id_ in ids if id_ in (wanted, wanted.removesuffix(".md"), wanted.replace(" ", "-"))), None
        )
        return found or next((id_ for id_, each in self.techniques.items() if each.title.casefold() == wanted), None)


@dataclass(slots=True)
class _Found:
    """What was read of a visit so far."""

    values: dict[str, Any] = field(default_factory=dict)
    spans: dict[str, Span] = field(default_factory=dict)


def read_visit(source: SourceText, known: Known) -> tuple[Visit | None, tuple[Finding, ...]]:
    """Return the visit a file holds, and findings; None where its site, date or jobs cannot be read."""
    notes = Notes(source)
    node, first_line, front = split_front_matter(source)
    top = whole_line(source, 1)
    meant: frozenset[str] = frozenset()
    words_at = whole_line(source, min(first_line, len(source.lines)))
    found = _Found(values={"language": known.language}, spans={"words": words_at})
    keys = as_mapping(notes, node, "the front matter", "`site: Orchard end`", top)
    if keys is not None:
        meant = unknown_keys(notes, keys, KEYS, "a visit")
        for entry in sorted(keys, key=lambda each: each.name != "language"):  # the jobs are told in it
            _read(notes, entry, found, known)
    if (keys or node is None) and not any(finding.rule in LOSING for finding in front):
        _note_missing(notes, keys or Mapping((), top), top, meant)
    words, more = read_words(source, first_line)
    check_name(notes, source, "visit")
    findings = (*front, *notes.findings, *more)
    found.spans.update({f"words[{at}]": each.span for at, each in enumerate(words)})
    if not all(found.values.get(name) for name in ("site", "date", "jobs")):
        return None, findings
    visit = Visit(
        id=source.stem,
        words=tuple(prose_of(each) for each in words),
        version=version_of(source),
        path=source.path,
        spans=found.spans,
        located={**scalars_located(node), **located_in(words)},
        **found.values,
    )
    return visit, findings


def _read(notes: Notes, entry: KeyNode, found: _Found, known: Known) -> None:
    """Read one key of a visit."""
    name = {"next visit": "next_visit", "done": "jobs", "print": "large_print", "may publish": "may_publish"}.get(
        entry.name, entry.name
    )
    found.spans[name] = place_of(entry)
    if is_blank(entry.value) and entry.name in ("next visit", "before", "after"):
        return
    value: Any = None
    if entry.name in _READERS:
        value = _READERS[entry.name](notes, entry)
    elif entry.name == "done":
        value = _jobs(notes, entry, found, known)
    elif entry.name == "print":
        size = choice_in(notes, entry, ("large", "normal"))
        value = None if size is None else size == "large"
    elif entry.name == "revision":
        value = whole_in(notes, entry, 0, MOST_REVISIONS)
    elif entry.name in ("before", "after"):
        value = _pictures(notes, entry, found, name)
    if value is not None:
        found.values[name] = value


def _note_missing(notes: Notes, keys: Mapping, top: Span, meant: frozenset[str]) -> None:
    """Note the keys that a visit must have."""
    home = keys.entries[0].key.span if keys.entries else top
    needed = (
        ("site", "the leaflet says which garden it is for, by a label and never by an address", "site: Orchard end"),
        ("date", "every date on the leaflet is counted from the day of the visit", "date: 2026-10-14"),
        ("done", "the leaflet is made from what was done", "done:` and under it a line `  - technique: clip-a-ball"),
    )
    for key, why, line in needed:
        if keys.entry(key) is None and key not in meant:
            notes.add(
                "missing-key",
                home,
                f"the front matter has no `{key}`",
                why,
                f"write a line `{line}` between the two lines of `---`",
            )


def _jobs(notes: Notes, entry: KeyNode, found: _Found, known: Known) -> tuple[Job, ...]:
    """Return the jobs that could be read."""
    items = entry.value.items if isinstance(entry.value, Sequence) else (entry.value,)
    jobs: list[Job] = []
    for item in items:
        node = item
        if isinstance(node, Scalar) and node.text:  # a bare name is a technique and nothing more
            key = Scalar("technique", node.span)
            node = Mapping((KeyNode(key, node),), node.span)
        if is_blank(node) or not isinstance(node, Mapping):
            notes.add(
                "value",
                entry.key.span,
                "nothing is listed under `done:`" if is_blank(node) else "a job under `done:` holds no `key: value`",
                "the leaflet is made from what was done",
                "write a line `  - technique:` and the name of a technique file under `done:`",
            )
            continue
        spans: dict[str, Span] = {}
        job = _job(notes, node, known, spans, found.values["language"])
        if job is not None:
            place = f"jobs[{len(jobs)}]"
            found.spans[place] = spans["technique"]
            found.spans.update({f"{place}.{name}": span for name, span in spans.items()})
            jobs.append(job)
    return tuple(jobs)


def _job(notes: Notes, node: Mapping, known: Known, spans: dict[str, Span], language: str) -> Job | None:
    """Return one job; None, noted, where its technique is not known."""
    meant = unknown_keys(notes, node, JOB_KEYS, "a job")
    technique = None if "technique" in meant else _technique(notes, node, known, spans, language)
    values: dict[str, Any] = {}
    for entry in node:
        spans.setdefault({"area": "area_m2"}.get(entry.name, entry.name), place_of(entry))
        if entry.name in ("what", "plant"):
            read = sentence_in if entry.name == "what" else printed_in
            values[entry.name] = read(notes, entry, 80) or ""
        elif entry.name == "count":
            values["count"] = whole_in(notes, entry, 1, MOST) or 1
        elif entry.name == "area":
            values["area_m2"] = _area(notes, entry)
        elif entry.name == "leave out":
            values["leave_out"] = tuple(each.text for each in words_in(notes, entry))
    if technique is None:
        return None
    area = node.entry("area") if values.get("area_m2") else None
    technique = _with_measures(notes, node, area, technique, known, spans)
    if technique is not None and values.get("plant"):
        technique = _with_plant(technique, values["plant"], spans["plant"])
    return None if technique is None else Job(technique=technique, **values)


def _with_plant(technique: AnyTechnique, plant: str, span: Span) -> AnyTechnique:
    """Return the technique about this garden's plant, so that its growth and months are those used."""
    moved = {**technique.spans, "plants": span, "plants[0]": span}
    return technique.model_copy(update={"plants": (plant,), "spans": moved})


def _technique(notes: Notes, node: Mapping, known: Known, spans: dict[str, Span], language: str) -> AnyTechnique | None:
    """Return the technique a job names, told in the leaflet's language where it can be."""
    entry = node.entry("technique")
    if entry is None:
        notes.add(
            "missing-key",
            node.entries[0].key.span if node.entries else node.span,
            "this job names no technique",
            "the leaflet takes its aftercare from the technique",
            "write a line `technique:` and the name of its file in this job",
        )
        return None
    spans["technique"] = place_of(entry)
    text = text_in(notes, entry)
    if text is None:
        return None
    id_ = known.named(text)
    if id_ is not None:
        return known.told_in(id_, language)  # None: its own file says why it cannot be read
    ids = sorted({*known.techniques, *known.unread})
    near = nearest(text, ids)
    notes.add(
        "unknown-technique",
        place_of(entry),
        f"`{short(text)}` is not a technique of this shelf",
        f"the shelf has {listed(ids).replace(' or ', ' and ')}" if ids else "the shelf has no techniques yet",
        f"write `technique: {near}`" if near else "write the name of a technique's file without `.md`",
    )
    return None


def _with_measures(
    notes: Notes, job: Mapping, area: KeyNode | None, technique: AnyTechnique, known: Known, spans: dict[str, Span]
) -> AnyTechnique | None:
    """Return the technique with this garden's measures in place of its own, the job's area among them."""
    family = known.families[technique.family]
    entry = job.entry("measures")
    node: Mapping | None = Mapping((), job.span)
    if entry is not None and not is_blank(entry.value):
        key, text = family.starter[0] if family.starter else ("finished width", "700 mm")
        node = as_mapping(notes, entry.value, "`measures`", f"`measures: {{{key}: {text}}}`", entry.key.span)
    if node is None:
        return None
    if area is not None and "area_m2" in family.measures.model_fields and node.entry("area") is None:
        node = Mapping((*node.entries, area), node.span)
    if not node.entries:
        return technique
    home = entry.key.span if entry else job.span
    measures, places = measures_from(notes, node, family, home, technique.measures)
    spans.update({f"measures.{name}": span for name, span in places.items()})
    if measures is None:
        return None
    moved = {**technique.spans, **{f"measures.{name}": span for name, span in places.items()}}
    return technique.model_copy(update={"measures": measures, "spans": moved})


def _area(notes: Notes, entry: KeyNode) -> float | None:
    """Return an area in m²."""
    found = quantity_in(notes, entry, "m2")
    if found is None:
        return None
    if 0 < found[0] <= MOST_AREA_M2:
        return found[0]
    text = entry.value.text if isinstance(entry.value, Scalar) else ""
    note_bound(notes, place_of(entry), entry.key.text, short(text), ("more than 0 m2 and at most 100 ha", "140 m2"))
    return None


def _pictures(notes: Notes, entry: KeyNode, found: _Found, name: str) -> tuple[Picture, ...]:
    """Return pictures by file name, each alone or with its focus, description and credit."""
    items = entry.value.items if isinstance(entry.value, Sequence) else (entry.value,)
    pictures: list[Picture] = []
    for item in items:
        picture = _picture(notes, entry, item)
        if picture is not None:
            place = f"{name}[{len(pictures)}]"
            found.spans[place] = item.span
            if isinstance(item, Mapping):
                found.spans.update({f"{place}.{each.name}": place_of(each) for each in item})
            pictures.append(picture)
    return tuple(pictures)


def _picture(notes: Notes, entry: KeyNode, node: Node) -> Picture | None:
    """Return one picture of a visit."""
    if isinstance(node, Scalar) and node.text:
        return Picture(file=file_inside(notes, node.text, node.span))
    file = node.entry("picture") if isinstance(node, Mapping) else None
    name = text_in(notes, file) if file else None
    if not isinstance(node, Mapping) or file is None or name is None:
        notes.add(
            "picture",
            node.span,
            f"`{entry.key.text}` names no picture here",
            "a picture is named by its file in the folder `pictures`",
            f"write `{entry.key.text}: name.jpg`, or `{entry.key.text}: {{picture: name.jpg, alt: what it shows}}`",
        )
        return None
    unknown_keys(notes, node, PICTURE_KEYS, "a picture")
    values: dict[str, Any] = {"file": file_inside(notes, name, file.value.span)}
    for each in node:
        if each.name not in PICTURE_KEYS[1:]:
            continue
        text = sentence_in(notes, each) if each.name == "credit" else text_in(notes, each)
        if text is None:
            continue
        if each.name == "focus":
            point = focus_of(notes, text, place_of(each))
            values.update({"focus_percent": point} if point else {})
        else:
            values[each.name] = text
    return Picture(**values)
