from io import BytesIO
from pathlib import Path
from shutil import copy
from xml.etree import ElementTree as ET

import pytest
import typst
from PIL import Image, ImageChops, ImageStat

from howto.fonts import typst_fonts
from howto.layout.drawing.diagram import fit
from howto.layout.drawing.look import page_look
from howto.model.crew import Colours
from howto.model.sheet import Area, Art, Dot, PaintMark, Pixels, Stroke, TextMark
from howto.render.paint import paint
from howto.render.svg import svg
from tests.support.drawings import DRAWINGS

NAMES = {"svg": "http://www.w3.org/2000/svg"}


def art(*marks: PaintMark) -> Art:
    return Art(width=40, height=20.5, marks=marks, caption="Ball & ring", alt="A ball <900 mm> wide.")


def elements(*marks: PaintMark) -> list[str]:
    return svg(art(*marks)).splitlines()[3:-1]


def test_it_opens_with_a_title_and_a_description_that_name_it() -> None:
    root = ET.fromstring(svg(art()))  # noqa: S314 -- our own text
    title, desc = root.find("svg:title", NAMES), root.find("svg:desc", NAMES)
    assert title is not None
    assert desc is not None
    assert (title.text, desc.text) == ("Ball & ring", "A ball <900 mm> wide.")
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == f"{title.get('id')} {desc.get('id')}"
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("40mm", "20.5mm", "0 0 40 20.5")


def test_names_come_from_the_drawing_alone() -> None:
    assert svg(art()) == svg(art())
    dotted = art(Dot(centre=(1, 1), radius=1, colour="#000000"))
    assert svg(art()).splitlines()[1] != svg(dotted).splitlines()[1]


def test_lines_of_one_look_share_a_path() -> None:
    first = Stroke(points=((0, 0), (10, 0)), width=0.18, colour="#1d2a26")
    second = Stroke(points=((0, 5), (10, 5), (10, 9)), width=0.18, colour="#1d2a26", closed=True)
    assert elements(first, second) == [
        '<path d="M0 0L10 0 M0 5L10 5L10 9Z" fill="none" stroke="#1d2a26" stroke-width="0.18" stroke-linejoin="round"/>'
    ]


def test_dashes_and_areas() -> None:
    dashed = Stroke(points=((0, 0), (10, 0)), width=0.2, colour="#1d2a26", dash=(3, 1.5))
    veil = Area(points=((0, 0), (10, 0), (10, 5.1234)), colour="#a63d1f", opacity=0.25)
    solid = Area(points=((-0.0001, 0), (10, 0), (10, 5)), colour="#a63d1f")
    assert elements(dashed, veil, solid) == [
        '<path d="M0 0L10 0" fill="none" stroke="#1d2a26" stroke-width="0.2" stroke-linejoin="round" '
        'stroke-dasharray="3 1.5"/>',
        '<path d="M0 0L10 0L10 5.123Z" fill="#a63d1f" fill-rule="evenodd" fill-opacity="0.25"/>',
        '<path d="M0 0L10 0L10 5Z" fill="#a63d1f" fill-rule="evenodd"/>',
    ]


def test_a_ring_stands_outside_its_dot() -> None:
    plain = Dot(centre=(5, 5), radius=2, colour="#000000")
    ringed = Dot(centre=(5, 5), radius=2, colour="#000000", ring_width=0.4, ring_colour="#ffffff")
    assert elements(plain, ringed) == [
        '<circle cx="5" cy="5" r="2" fill="#000000"/>',
        '<circle cx="5" cy="5" r="2.2" fill="#000000" stroke="#ffffff" stroke-width="0.4"/>',
    ]


def test_words_stay_words() -> None:
    level = TextMark(text="900 mm", at=(5, 6), size=3, face="head", colour="#1d2a26", align="middle")
    upright = TextMark(text="a < b", at=(5, 6), size=3, face="text-italic", colour="#1d2a26", align="right", angle=90)
    assert elements(level, upright) == [
        '<text x="5" y="6" font-size="3" font-family="Barlow Condensed, Barlow" font-weight="600" '
        'fill="#1d2a26" text-anchor="middle">900 mm</text>',
        '<text x="5" y="6" font-size="3" font-family="Source Sans Pro" font-weight="400" font-style="italic" '
        'fill="#1d2a26" text-anchor="end" transform="rotate(-90 5 6)">a &lt; b</text>',
    ]


def test_a_letter_the_head_face_lacks_is_set_by_name_in_the_text_face() -> None:
    assert elements(TextMark(text="⅓ off", at=(5, 6), size=3, face="head", colour="#1d2a26")) == [
        '<text x="5" y="6" font-size="3" font-family="Barlow Condensed, Barlow" font-weight="600" fill="#1d2a26">'
        '<tspan font-family="Source Sans Pro" font-weight="700">⅓</tspan> off</text>'
    ]


def test_a_photograph_has_no_place_in_a_drawing() -> None:
    with pytest.raises(TypeError, match="no photograph"):
        svg(art(Pixels(source="a.jpg", crop=(0, 0, 1, 1), box=(0, 0, 1, 1))))


# -- both painters --

PX_PER_MM = 8


def enlarged(mark: PaintMark) -> PaintMark:
    """The same mark in pixels."""
    k = PX_PER_MM
    if isinstance(mark, Stroke):
        dash = tuple(each * k for each in mark.dash)
        points = tuple((x * k, y * k) for x, y in mark.points)
        return mark.model_copy(update={"points": points, "width": mark.width * k, "dash": dash})
    if isinstance(mark, Area):
        return mark.model_copy(update={"points": tuple((x * k, y * k) for x, y in mark.points)})
    if isinstance(mark, Dot):
        x, y = mark.centre
        sizes = {"radius": mark.radius * k, "ring_width": mark.ring_width * k}
        return mark.model_copy(update={"centre": (x * k, y * k), **sizes})
    assert isinstance(mark, TextMark)
    return mark.model_copy(update={"at": (mark.at[0] * k, mark.at[1] * k), "size": mark.size * k})


def typeset(tmp_path: Path, found: Art) -> Image.Image:
    """The drawing as a typesetter paints it, at the same size in pixels."""
    fonts = tmp_path / "fonts"
    fonts.mkdir()
    for file in typst_fonts():
        copy(file, fonts)
    (tmp_path / "art.svg").write_text(svg(found), encoding="utf-8")
    (tmp_path / "page.typ").write_text(
        f'#set page(width: {found.width}mm, height: {found.height}mm, margin: 0mm, fill: rgb("#f6f3ea"))\n'
        '#image("art.svg", width: 100%)\n',
        encoding="utf-8",
    )
    compiler = typst.Compiler(root=str(tmp_path), font_paths=[str(fonts)], ignore_system_fonts=True)
    png = compiler.compile(str(tmp_path / "page.typ"), format="png", ppi=PX_PER_MM * 25.4)
    assert isinstance(png, bytes)
    return Image.open(BytesIO(png)).convert("RGB")


@pytest.mark.parametrize("name", sorted(DRAWINGS))
def test_both_painters_show_the_same_drawing(name: str, tmp_path: Path) -> None:
    found, reasons = fit(DRAWINGS[name](), 124, 80, page_look(Colours()))
    assert reasons == ()
    one = typeset(tmp_path, found)
    other = Image.new("RGB", one.size, "#f6f3ea")
    paint(other, [enlarged(mark) for mark in found.marks])
    difference = ImageChops.difference(one, other).convert("L")
    assert ImageStat.Stat(difference).mean[0] < 2.5
    softened = difference.reduce(4)  # a quarter of a millimetre off would still show
    assert sum(softened.histogram()[90:]) < softened.width * softened.height * 0.002


def test_a_letter_that_no_face_has_is_set_as_a_block() -> None:
    (words,) = elements(TextMark(text="a王b", at=(1, 2), size=3, colour="#000000"))
    assert ">a■b</text>" in words
