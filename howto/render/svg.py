"""Writes a fitted drawing as SVG, the same inside a web page and inside a typeset one.

Text stays text. Letters the head face lacks are set in the text face by name, since one reader of SVG would
otherwise change the whole line; `Barlow` stands second because that reader drops width words from a family.
"""

from collections.abc import Iterator
from hashlib import sha256
from itertools import groupby
from xml.sax.saxutils import escape, quoteattr

from howto.fonts import CUTS, HEAD_FAMILY, TYPST_HEAD_FAMILY, Face, runs
from howto.fonts.letters import settable
from howto.model.sheet import Area, Art, Dot, PaintMark, Point, Stroke, TextMark

ANCHORS = {"left": "start", "middle": "middle", "right": "end"}


def svg(art: Art) -> str:
    """Return the drawing as an SVG element with a title and a description; millimetres are its user units."""
    name = f"art-{sha256(art.model_dump_json().encode()).hexdigest()[:10]}"
    width, height = _number(art.width), _number(art.height)
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
        f'viewBox="0 0 {width} {height}" role="img" aria-labelledby="{name}-title {name}-desc">',
        f'<title id="{name}-title">{escape(art.caption)}</title>',
        f'<desc id="{name}-desc">{escape(art.alt)}</desc>',
        *_elements(art.marks),
        "</svg>",
    ]
    return "\n".join(lines) + "\n"


def _elements(marks: tuple[PaintMark, ...]) -> Iterator[str]:
    for style, group in groupby(marks, key=_style):
        if style:
            strokes = " ".join(_path(mark) for mark in group if isinstance(mark, Stroke))
            yield f'<path d="{strokes}" {style}/>'
            continue
        for mark in group:
            yield _element(mark)


def _element(mark: PaintMark) -> str:
    if isinstance(mark, Area):
        veil = f' fill-opacity="{_number(mark.opacity)}"' if mark.opacity < 1 else ""
        return f'<path d="{_path(mark)}" fill={quoteattr(mark.colour)} fill-rule="evenodd"{veil}/>'
    if isinstance(mark, Dot):
        return _dot(mark)
    if isinstance(mark, TextMark):
        return _words(mark)
    raise TypeError("a drawing on a page holds no photograph")


def _style(mark: PaintMark) -> str:
    """Return the attributes of a line, "" for all else; lines that follow each other and share them share a path."""
    if not isinstance(mark, Stroke):
        return ""
    dash = f' stroke-dasharray="{" ".join(map(_number, mark.dash))}"' if mark.dash else ""
    return (
        f'fill="none" stroke={quoteattr(mark.colour)} stroke-width="{_number(mark.width)}" '
        f'stroke-linejoin="round"{dash}'
    )


def _path(mark: Stroke | Area) -> str:
    close = "Z" if isinstance(mark, Area) or mark.closed else ""
    return "M" + "L".join(_pair(point) for point in mark.points) + close


def _dot(dot: Dot) -> str:
    x, y = dot.centre
    reach = dot.radius + dot.ring_width / 2
    ring = f' stroke={quoteattr(dot.ring_colour)} stroke-width="{_number(dot.ring_width)}"' if dot.ring_width else ""
    return (
        f'<circle cx="{_number(x)}" cy="{_number(y)}" r="{_number(reach if ring else dot.radius)}" '
        f"fill={quoteattr(dot.colour)}{ring}/>"
    )


def _words(words: TextMark) -> str:
    x, y = words.at
    turn = f' transform="rotate({_number(-words.angle)} {_pair(words.at)})"' if words.angle else ""
    anchor = f' text-anchor="{ANCHORS[words.align]}"' if words.align != "left" else ""
    spans = "".join(
        escape(part) if face == words.face else f"<tspan {_face(face)}>{escape(part)}</tspan>"
        for part, face in runs(settable(words.text, words.face), words.face)
    )
    return (
        f'<text x="{_number(x)}" y="{_number(y)}" font-size="{_number(words.size)}" {_face(words.face)} '
        f"fill={quoteattr(words.colour)}{anchor}{turn}>{spans}</text>"
    )


def _face(face: Face) -> str:
    cut = CUTS[face]
    families = [cut.family, TYPST_HEAD_FAMILY] if cut.family == HEAD_FAMILY else [cut.family]
    style = ' font-style="italic"' if cut.italic else ""
    return f'font-family="{", ".join(families)}" font-weight="{cut.weight}"{style}'


def _pair(point: Point) -> str:
    return f"{_number(point[0])} {_number(point[1])}"


def _number(value: float) -> str:
    """Return a number to a thousandth, with no zeros to spare and no minus before a zero."""
    written = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if written == "-0" else written
