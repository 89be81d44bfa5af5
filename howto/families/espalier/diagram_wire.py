"""One span of a wire, its sag drawn deeper than it is so that it can be seen."""

from howto.families.espalier import formulae, frame
from howto.families.espalier.frame import T
from howto.quantities.amounts import bare, mm, qty
from howto.shapes import DimensionLine, Drawing, Label, Line, Point, Polygon, Role, Shape, arc, rectangle

DRAWN_SHARE = 0.26  # of the span: about how deep the deepest sag is drawn
MOST_SHARE = 0.5  # of the span: a wire that hangs deeper is not drawn
TIMES = (1, 2, 5, 10, 15, 20, 50, 100, 200, 500, 1000)


def sag(work: T) -> Drawing | None:
    """Return one span bare and loaded, with its limit.

    None where load, span or pull is missing, or where the wire would hang past half its span: no parabola then.
    """
    m = work.measures
    deep, span, set_n = frame.sag_m(m), frame.span_mm(m), frame.tension_n(m)
    if not deep or span is None or set_n is None:
        return None
    deep *= 1000
    if deep > span * MOST_SHARE:
        return None
    limit = m.sag_limit_mm if m.sag_limit_mm is not None and m.sag_limit_mm <= span * MOST_SHARE else None
    deepest = max(deep, limit or 0.0)
    times = max((each for each in TIMES if deepest * each <= span * DRAWN_SHARE), default=1)
    own = formulae.sag(frame.bare_n_per_m(m), span / 1000, set_n) * 1000
    shapes: list[Shape] = [*_walls(span), Line(((0, 0), (span, 0)), Role.CENTRE)]
    if limit is not None:
        shapes.append(Line(_curve(span, limit * times), Role.GUIDE))
        shapes.append(Label(_at(span, limit * times, 0.72), f"limit {mm(limit)}"))
    shapes.append(Line(_curve(span, own * times), Role.WIRE))
    shapes.append(Line(_curve(span, deep * times), Role.ACCENT))
    shapes += _load(span, deep * times)
    for x in (0.0, span):
        shapes.append(Polygon(arc((x, 0), span * 0.009, steps=16)[:-1], Role.WOOD))
    shapes += [
        Label((span, 0), f"{qty(set_n, 'N')}" + (f": bare, it sags {mm(own)}" if own else "")),
        DimensionLine((0, 0), (span, 0), f"{mm(span)}", offset=span * 0.14),
        DimensionLine((span / 2, 0), (span / 2, -deep * times), f"{mm(deep)}", offset=span * 0.03),
    ]
    drawn = "true to scale" if times == 1 else f"drawn {bare(times)} times too deep"
    return Drawing(
        shapes=tuple(shapes),
        caption=f"One span, tightened to {qty(set_n, 'N')}: the sag is {drawn}",
        alt=f"One span of {mm(span)} between two eyes, tightened to {qty(set_n, 'N')}. Under "
        f"{qty(m.load_kg_per_m or 0.0, 'kg/m')} of leaf and crop it sags {mm(deep)} in the middle; the sag is {drawn}."
        + ("" if limit is None else f" The limit is {mm(limit)}."),
        true=times == 1,
    )


def _walls(span: float) -> tuple[Shape, ...]:
    """Return the two supports in section, one at each end."""
    thick, high = span * 0.05, span * 0.09
    return (
        Polygon(rectangle(-thick, -high, 0, high), Role.WALL),
        Polygon(rectangle(span, -high, span + thick, high), Role.WALL),
    )


def _curve(span: float, deep: float) -> tuple[Point, ...]:
    """Return the parabola of a wire that sags so deep in the middle."""
    return tuple(_at(span, deep, at / 32) for at in range(33))


def _at(span: float, deep: float, share: float) -> Point:
    """Return the point of that parabola at a share of the span."""
    return (span * share, -4 * deep * share * (1 - share))


def _load(span: float, deep: float) -> list[Shape]:
    """Return the load as short strokes that hang from the wire, with their heads."""
    long, head = span * 0.06, span * 0.012
    found: list[Shape] = []
    for at in range(1, 16):
        if at == 8:  # the middle is where the sag is dimensioned
            continue
        x, y = _at(span, deep, at / 16)
        low = y - long
        found.append(Line(((x, y), (x, low)), Role.WIRE))
        found.append(Line(((x - head * 0.6, low + head), (x, low), (x + head * 0.6, low + head)), Role.WIRE))
    x, y = _at(span, deep, 3 / 16)
    found.append(Label((x, y - long), "leaf and crop"))
    return found
