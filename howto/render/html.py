"""A sheet, or the list of all cards, as one self-contained page: fonts and drawings in it, nothing fetched."""

from base64 import b64encode
from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from functools import cache
from hashlib import sha256
from importlib.resources import files
from itertools import groupby
from typing import Any, Final

from jinja2 import Environment, FunctionLoader, StrictUndefined
from markupsafe import Markup

from howto.colour import SAFETY_YELLOW, on_paper
from howto.fonts import CUTS, Face, path
from howto.languages import language_of
from howto.languages.form import Labels
from howto.languages.reader import day_told
from howto.model.crew import Colours, Crew
from howto.model.prose import Run, capital, plain
from howto.model.sheet import ArtBlock, Block, Code, Grid, Photo, Section, Sheet
from howto.model.technique import AnyTechnique
from howto.model.value import Value
from howto.render.code import symbol
from howto.render.svg import svg

POLICY: Final = (
    "default-src 'none'; img-src data:; font-src data:; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'"
)
FACES: Final[tuple[Face, ...]] = ("text", "text-bold", "head", "head-bold")
A4_MM: Final = (210.0, 297.0)
LISTED_PT: Final = 11.0


class ShelfEntry(Value):
    """One card in the list of all cards: where it stands beside the list, and what it is looked for by."""

    id: str
    title: str
    family: str
    level: int = 1
    minutes: float | None = None
    season: str = ""
    plants: tuple[str, ...] = ()
    about: str = ""
    language: str = "en"

    @classmethod
    def of(cls, technique: AnyTechnique) -> "ShelfEntry":
        """Return the line of a technique."""
        return cls(
            id=technique.id,
            title=technique.title,
            family=technique.family,
            level=technique.level,
            minutes=technique.minutes,
            season=technique.season,
            plants=technique.plants,
            about=plain(technique.intro[0]) if technique.intro else "",
            language=technique.language,
        )


def page(sheet: Sheet) -> str:
    """Return the sheet as a page that needs no network, no script and nothing beside it."""
    template = environment().get_template(f"{sheet.template}.html.jinja")
    italic = any(run.emphasis for run in _runs(sheet))
    return template.render(
        **frame(sheet.language, (sheet.ink, sheet.ground, sheet.accent), italic=italic),
        width_mm=sheet.width_mm,
        height_mm=sheet.height_mm,
        print_pt=sheet.text_pt,
        sheet=sheet,
        rows=_rows(sheet.sections),
        home=sheet.home,
    )


def shelf_page(crew: Crew, entries: Sequence[ShelfEntry], today: date) -> str:
    """Return the list of all cards by family, with a search box that works offline and is hidden without script."""
    say = language_of(crew.language).labels
    return environment().get_template("shelf.html.jinja").render(
        **scripted(crew.language, crew.colours, "search.js"),
        crew=crew,
        say=say,
        groups=_groups(entries, say),
        stamp=day_told(today, crew.language),
    )  # fmt: skip


@cache
def environment() -> Environment:
    """Return the templates: everything escaped, and a missing name stops the page."""
    return Environment(
        loader=FunctionLoader(template_text),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def template_text(name: str) -> str:
    """Return a template's text."""
    return (files("howto.render") / "templates" / name).read_text(encoding="utf-8")


def frame(language: str, colours: tuple[str, str, str], *, italic: bool) -> dict[str, Any]:
    """Return what every page is given: language, colours, faces and the policy that forbids fetching."""
    ink, ground, accent = colours
    faces = (*FACES, "text-italic") if italic else FACES
    return {
        "language": language or "en",
        "policy": POLICY,
        "ink": ink,
        "ground": ground,
        "accent": accent,
        "paper": on_paper(ink, ground, accent),
        "yellow": SAFETY_YELLOW,
        "faces": [_face(face) for face in faces],
    }


def scripted(language: str, colours: Colours, name: str) -> dict[str, Any]:
    """Return what a page of A4 with a script of ours is given; its policy lets that script run and no other."""
    script = template_text(name)
    digest = b64encode(sha256(script.encode()).digest()).decode()
    return {
        **frame(language, (colours.ink, colours.ground, colours.accent), italic=False),
        "policy": f"{POLICY}; script-src 'sha256-{digest}'",
        "width_mm": A4_MM[0],
        "height_mm": A4_MM[1],
        "print_pt": LISTED_PT,
        "script": Markup(script),  # noqa: S704 - our own file
    }


@cache
def _face(name: Face) -> Mapping[str, Any]:
    """Return a face as a page holds it, its file in base 64."""
    cut = CUTS[name]
    return {
        "family": cut.family,
        "weight": cut.weight,
        "style": "italic" if cut.italic else "normal",
        "data": b64encode(path(name).read_bytes()).decode("ascii"),
    }


def _runs(value: object) -> Iterator[Run]:
    """Yield every run of text in a sheet."""
    if isinstance(value, Run):
        yield value
    elif isinstance(value, tuple):
        for each in value:
            yield from _runs(each)
    elif isinstance(value, Value):
        for name in type(value).model_fields:
            yield from _runs(getattr(value, name))


def _rows(sections: Sequence[Section]) -> list[dict[str, Any]]:
    """Return the sections in rows of one, or of two where the first may stand beside the next."""
    rows: list[dict[str, Any]] = []
    waiting = False
    for at, section in enumerate(sections):
        part = _part(section, at)
        if waiting:
            rows[-1]["parts"].append(part)
        else:
            rows.append({"parts": [part], "art": any(isinstance(block, ArtBlock) for block in section.blocks)})
        waiting = section.side and not waiting
    return rows


def _part(section: Section, at: int) -> dict[str, Any]:
    """Return a section as the template reads it, its blocks grouped so that lists are lists."""
    groups = [
        (kind, [_block(block) for block in blocks])
        for kind, blocks in groupby(section.blocks, key=lambda block: block.kind)
    ]
    return {"heading": section.heading, "tone": section.tone, "groups": groups, "at": at, "yellow": SAFETY_YELLOW}


def _block(block: Block) -> Mapping[str, Any]:
    """Return a block's fields, with the pictures it shows as a page holds them."""
    shown = {name: getattr(block, name) for name in type(block).model_fields}
    if isinstance(block, ArtBlock):
        return {**shown, "svg": Markup(svg(block.art))}  # noqa: S704 - our own painter, which escapes
    if isinstance(block, Grid):
        table = block.upright
        return {**shown, "columns": table.columns, "rows": table.rows, "left": table.left}
    if isinstance(block, Photo):
        return {**shown, "data": f"data:image/jpeg;base64,{b64encode(block.jpeg).decode('ascii')}"}
    if isinstance(block, Code):
        return {**shown, "svg": Markup(symbol(block.url).svg)}  # noqa: S704 - a drawing of squares
    return shown


def _groups(entries: Sequence[ShelfEntry], say: Labels) -> list[tuple[str, list[dict[str, Any]]]]:
    """Return the families in the order given, their cards by name: each before its tellings in other languages."""
    families = dict.fromkeys(entry.family for entry in entries)
    ordered = sorted(entries, key=lambda entry: entry.id)
    return [
        (capital(family), [_entry(entry, say) for entry in ordered if entry.family == family]) for family in families
    ]


def _entry(entry: ShelfEntry, say: Labels) -> dict[str, Any]:
    """Return a card's line in the list, and the words it is found by."""
    parts = [say["level"].format(level=entry.level)]
    if entry.minutes is not None:
        parts.append(say["minutes"].format(minutes=f"{entry.minutes:g}"))
    parts.extend(part for part in (entry.season, ", ".join(entry.plants)) if part)
    words = " ".join((entry.title, entry.family, entry.season, *entry.plants, entry.about, entry.id))
    return {
        "title": entry.title,
        "href": f"cards/{entry.id}.html",
        "line": " · ".join(parts),
        "about": entry.about,
        "language": entry.language,
        "words": words,
    }
