"""A sheet as a tagged PDF (PDF/UA-1), through Typst: no network, no system fonts, the same bytes each time."""

import json
from bisect import bisect_left
from collections.abc import Callable, Mapping, Sequence
from datetime import UTC, date, datetime, time
from functools import cache
from importlib.resources import files
from pathlib import Path
from shutil import copyfile
from tempfile import TemporaryDirectory
from typing import Any, Final, NamedTuple

import typst

from howto.colour import SAFETY_YELLOW, on_paper
from howto.fonts import typst_fonts
from howto.fonts.letters import settable
from howto.model.sheet import Art, ArtBlock, Block, Code, Grid, Photo, Sheet
from howto.render.code import printed_mm, symbol
from howto.render.svg import svg

STEP_PT: Final = 0.5  # how much smaller each try is
CODE_MM: Final = 21.0
NOT_SET: Final = frozenset({"alt", "url"})


class Source(NamedTuple):
    """What Typst is given: files by name, and the sheet's data still without its size."""

    files: Mapping[str, bytes]
    data: Mapping[str, Any]


def pdf(sheet: Sheet, today: date) -> tuple[bytes, int]:
    """Return the PDF and its pages: as large as fits, in steps from `text_pt` down to `small_pt`.

    Where even the smallest does not fit, the pages returned are more than `sheet.most_pages`.
    """
    source, fonts = _source(sheet), _fonts()

    def pages_of(attempt: Try) -> int:
        """Return how many pages the sheet comes to in one way of printing it."""
        compiler = typst.Compiler(_sized(source, attempt), font_paths=fonts)
        return int(json.loads(compiler.query("<pages>", field="value", one=True)))

    chosen, pages = _chosen(sheet, pages_of)
    made = typst.compile(
        _sized(source, chosen),
        font_paths=fonts,
        pdf_standards=["ua-1"],
        timestamp=datetime.combine(today, time(), tzinfo=UTC),
    )
    return bytes(made), pages


class Try(NamedTuple):
    """One way to print a sheet: its size, fresh sides where they are asked for, and which spare parts are left off."""

    text_pt: float
    left_off: int
    fresh: bool = False


def _chosen(sheet: Sheet, pages_of: Callable[[Try], int]) -> tuple[Try, int]:
    """Return how to print a sheet, and its pages: the most of its parts, on the fewest pages, as large as fits.

    A smaller size, a part less and no fresh side never take more pages, so each is found by halving.
    """
    steps = int((sheet.text_pt - sheet.small_pt) / STEP_PT + 1e-9)
    sizes = [sheet.text_pt - step * STEP_PT for step in range(steps + 1)]
    spares = sorted({0, *(section.spare for section in sheet.sections)})
    counted = cache(pages_of)
    most = sheet.most_pages
    asks = any(section.fresh for section in sheet.sections)
    if asks and counted(Try(sizes[0], 0, fresh=True)) <= (1 if sheet.saves_paper else most):
        return Try(sizes[0], 0, fresh=True), counted(Try(sizes[0], 0, fresh=True))
    spare = _first(spares, lambda each: counted(Try(sizes[-1], each)) <= most)
    least = counted(Try(sizes[-1], spare))
    goal = max(least, 1) if sheet.saves_paper else most
    size = _first(sizes, lambda each: counted(Try(each, spare)) <= goal)
    fresh = Try(size, spare, fresh=True)
    found = fresh if asks and counted(fresh) <= goal else Try(size, spare)
    return found, counted(found)


def _first(values: Sequence[float], holds: Callable[[Any], bool]) -> Any:
    """Return the first of some values from which on a condition holds; the last where it holds for none."""
    return values[min(bisect_left(values, 1, key=lambda value: int(holds(value))), len(values) - 1)]


def _sized(source: Source, attempt: Try) -> Any:
    """Return the files by name that Typst is given for one try; its types tell nothing of files in memory."""
    sections = [section for section in source.data["sections"] if not 0 < section["spare"] <= attempt.left_off]
    data = {
        **source.data,
        "sections": sections,
        "text_pt": attempt.text_pt,
        "fresh": attempt.fresh,
        "left_out": len(sections) < len(source.data["sections"]),
    }
    return {**source.files, "data.json": json.dumps(data, ensure_ascii=False).encode()}


@cache
def _folder() -> TemporaryDirectory[str]:
    """Return a folder of faces alone, kept until the program ends: a client's words never leave memory."""
    folder = TemporaryDirectory(prefix="howto-faces-")
    for face in typst_fonts():
        copyfile(face, Path(folder.name) / face.name)
    return folder


@cache
def _fonts() -> typst.Fonts:
    """Return the page's faces and no others, found once; Typst wants a folder of their own to look in."""
    return typst.Fonts(include_system_fonts=False, include_embedded_fonts=False, font_paths=[_folder().name])


@cache
def _template(name: str) -> bytes:
    """Return a template's text."""
    return (files("howto.render") / "templates" / name).read_bytes()


def _source(sheet: Sheet) -> Source:
    """Return the files and data of a sheet: templates, drawings, photographs, and all words as JSON."""
    given = {"main.typ": _template(f"{sheet.template}.typ"), "common.typ": _template("common.typ")}
    sections = [
        {
            **section.model_dump(include={"heading", "tone", "side", "fresh", "spare"}),
            "blocks": [_block(block, given, sheet) for block in section.blocks],
        }
        for section in sheet.sections
    ]
    language, _, region = sheet.language.partition("-")
    paper = on_paper(sheet.ink, sheet.ground, sheet.accent)
    data = {
        **sheet.model_dump(exclude={"sections", "text_pt"}),
        **paper._asdict(),
        "sections": sections,
        "caution_yellow": SAFETY_YELLOW,
        "lang": language.lower() or "en",
        "region": region.upper() if len(region) == 2 else None,
        "leaf_word": sheet.leaf,
    }
    return Source(given, {name: _set(each, name) for name, each in data.items()})


def _set(value: Any, name: str) -> Any:
    """Return data whose words the faces can set; what is read aloud or encoded keeps its own letters."""
    if isinstance(value, str):
        return value if name in NOT_SET else settable(value)
    if isinstance(value, Mapping):
        return {key: _set(each, key) for key, each in value.items()}
    return [_set(each, name) for each in value] if isinstance(value, list | tuple) else value


def _printed(art: Art, sheet: Sheet) -> Art:
    """Return a drawing with the sheet's own colours turned into those of paper, where it was not drawn for paper."""
    own = (sheet.ink, sheet.ground, sheet.accent)
    turned = dict(zip(own, on_paper(*own), strict=True))
    marks = (
        mark.model_copy(
            update={
                name: turned.get(getattr(mark, name), getattr(mark, name))
                for name in ("colour", "ring_colour")
                if hasattr(mark, name)
            }
        )
        for mark in art.marks
    )
    return art.model_copy(update={"marks": tuple(marks)})


def _block(block: Block, given: dict[str, bytes], sheet: Sheet) -> dict[str, Any]:
    """Return a block as data; what it shows is put among the files."""
    name = f"{block.kind}-{len(given)}"
    if isinstance(block, ArtBlock):
        given[f"{name}.svg"] = svg(block.printed or _printed(block.art, sheet)).encode()
        return {"kind": "art", "file": f"{name}.svg", **block.art.model_dump(exclude={"marks"})}
    if isinstance(block, Photo):
        given[f"{name}.json"] = json.dumps(list(block.jpeg)).encode()  # in memory Typst takes files of text alone
        return {"file": f"{name}.json", **block.model_dump(exclude={"jpeg"})}
    if isinstance(block, Code):
        code = symbol(block.url)
        given[f"{name}.svg"] = code.svg.encode()
        return {"file": f"{name}.svg", "mm": printed_mm(code.modules, CODE_MM), **block.model_dump()}
    if isinstance(block, Grid):
        return {**block.model_dump(), "left": block.left}
    return block.model_dump()
