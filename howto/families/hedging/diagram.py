"""A hedge drawn at true size: in section with its taper, and in plan; diagram_rise.py draws it over the seasons."""

from datetime import date

from howto.families.hedging import formulae
from howto.families.hedging.diagram_rise import rise
from howto.families.hedging.figures import sections_mm2, string_line_mm
from howto.families.hedging.measures import HedgingMeasures
from howto.model.work import Work
from howto.quantities.amounts import Count, Held, Word, mm, percent, qty
from howto.shapes import DimensionLine, Drawing, Label, Level, Line, Point, Polygon, Role, Shape, arc, leafy, rectangle

T = Work[HedgingMeasures]

LEAF_DEPTH_MM = 16.0  # how far a drawn leaf cluster stands proud of its outline
PLANTS_DRAWN, FEW_DRAWN = 5, 3  # in each row of the plan; of a single row fewer tell as much, and larger
FULL_WIDTH = 0.92  # of its spacing: how wide a plant is drawn in plan where no width is written


def drawings(work: T, today: date) -> tuple[Drawing, ...]:
    """Return the section; before it a young hedge's rise; after it a trim's batter board, and the plan of a row."""
    m = work.measures
    found = [*(rise(work, today) if m.job == "thicken" else []), section(m)]
    if m.job == "trim" and m.base_width_mm and m.top_width_mm and m.base_width_mm > m.top_width_mm:
        found.append(batter_board(m.cut_mm, m.base_width_mm, m.top_width_mm))
    if m.spacing_mm is not None:
        found.append(plan(m, m.spacing_mm))
    return tuple(found)


class _Sizes:
    """The sizes of a section: cut, standing and last, each with a width at the foot and at the top."""

    def __init__(self, m: HedgingMeasures) -> None:
        self.height = m.cut_mm
        self.top = m.top_width_mm or (m.base_width_mm or self.height * 0.4) * 0.75
        self.base = m.base_width_mm or formulae.base_for_mm(self.top)
        self.stands = max(m.standing_height_mm or self.height, self.height)
        self.wide = max(m.standing_base_width_mm or self.base, self.base)
        self.wide_top = max(m.standing_top_width_mm or self.top, self.top)
        self.last = m.last_cut_height_mm
        self.one_face = m.job == "renovate" and m.faces == 1
        self.inside = m.inside_mm if self.one_face else 0.0

    @property
    def grown(self) -> bool:
        """Tell whether anything stands outside the cut."""
        return self.stands > self.height or self.wide > self.base or self.wide_top > self.top

    def cut_outline(self) -> tuple[Point, ...]:
        """Return what stays, anticlockwise: one face where it stood and the other inside, in a renovation."""
        if not self.one_face:
            return trapezium(self.base, self.top, self.height)
        right, right_top = self.base / 2 - self.inside, self.top / 2 - self.inside
        top_left = formulae.width_at_mm(self.wide, self.wide_top, self.stands, self.height) / 2
        return ((-self.wide / 2, 0.0), (right, 0.0), (max(right_top, -top_left), self.height), (-top_left, self.height))


def trapezium(base: float, top: float, height: float) -> tuple[Point, ...]:
    """Return a tapered section as points, anticlockwise from the lower left."""
    return ((-base / 2, 0.0), (base / 2, 0.0), (top / 2, height), (-top / 2, height))


def section(m: HedgingMeasures) -> Drawing:
    """Return the hedge cut across: what comes off hatched, this year's line over the last, and the taper."""
    sizes = _Sizes(m)
    shapes: list[Shape] = _ground(sizes)
    if sizes.grown:
        corners = trapezium(sizes.wide, sizes.wide_top, sizes.stands)
        outline = tuple((x, max(y, LEAF_DEPTH_MM)) for x, y in corners)  # leaf clusters stop at the ground
        shapes.append(Polygon(leafy(outline, LEAF_DEPTH_MM, 16 + round(sizes.stands / 45)), Role.REMOVE))
    shapes.append(Polygon(sizes.cut_outline(), Role.KEEP))
    shapes += _stems(m, sizes)
    if sizes.one_face:
        shapes.append(Line(trapezium(sizes.base, sizes.top, sizes.height), Role.LAST, closed=True))
    elif sizes.last is not None and sizes.last < sizes.height:
        width = formulae.width_at_mm(sizes.base, sizes.top, sizes.height, sizes.last)
        shapes.append(Line((*trapezium(sizes.base, width, sizes.last)[1:], (-sizes.base / 2, 0.0)), Role.LAST))
    shapes += _section_words(m, sizes)
    angle = formulae.angle_deg(sizes.base, sizes.top, sizes.height)
    sections = sections_mm2(m)
    share = formulae.share_off(*sections) if sections else 0.0
    off = f"{percent(share * 100)} of the section comes off." if share > 0 else "What stands outside is hatched."
    face = f" {Word('One face is cut hard this year.')}" if sizes.one_face else ""
    return Drawing(
        shapes=tuple(shapes),
        caption="Section: this year's line over the last",
        alt=f"A hedge in section, {mm(sizes.base)} wide at its foot and {mm(sizes.top)} at its top, {mm(sizes.height)} "
        f"high when cut. Each side leans {qty(angle, '°', 2)}. {Word(off)}{face}",
    )


def _ground(sizes: _Sizes) -> list[Shape]:
    reach = sizes.wide * 0.8
    return [
        Polygon(rectangle(-reach, -sizes.stands * 0.07, reach, 0), Role.SOIL),
        Line(((-reach, 0), (reach, 0)), Role.GROUND),
        Line(((0, -sizes.stands * 0.05), (0, sizes.stands * 1.05)), Role.CENTRE),
    ]


def _stems(m: HedgingMeasures, sizes: _Sizes) -> list[Shape]:
    """Return a forked stem for each row."""
    gap = min(m.gap_between_rows_mm, sizes.base * 0.6)
    half, up, spread = sizes.base * 0.02, sizes.height * 0.5, sizes.base * 0.12
    low = up * 0.35
    found: list[Shape] = []
    for row in range(m.row_count):
        x = (row - (m.row_count - 1) / 2) * gap
        found.append(Polygon(rectangle(x - half, 0, x + half, low), Role.WOOD))
        for side in (-1, 1):
            tip = x + side * min(spread, sizes.top / 2)
            fork = ((x - half * 0.8, low), (x + half * 0.8, low), (tip + half * 0.5, up), (tip, up))
            found.append(Polygon(fork, Role.WOOD))
    return found


def _section_words(m: HedgingMeasures, sizes: _Sizes) -> list[Shape]:
    """Return the guides, dimensions, levels and labels of the section."""
    base, top, height = sizes.base, sizes.top, sizes.height
    side = formulae.in_each_side_mm(base, top)
    angle = formulae.angle_deg(base, top, height)
    half_way = formulae.width_at_mm(base, top, height, height / 2) / 2
    shapes: list[Shape] = [
        DimensionLine((-base / 2, 0), (base / 2, 0), f"{mm(base)}", offset=height * 0.1),
        DimensionLine((-top / 2, height), (top / 2, height), f"{mm(top)}", offset=-height * 0.2),
    ]
    if sizes.wide > base:
        left, right = (-sizes.wide / 2, 0), (sizes.wide / 2, 0)
        shapes.append(DimensionLine(left, right, f"{mm(sizes.wide)} now", offset=-sizes.stands * 0.12))
    shapes += [
        DimensionLine((-base / 2, 0), (-base / 2, height), f"{mm(height)}", offset=sizes.wide * 0.6),
        Level((sizes.wide_top / 2, sizes.stands), f"{mm(sizes.stands)} now")
        if sizes.stands > height
        else Level((top / 2, height), f"{mm(height)}"),
        Label((half_way, height / 2), f"leans {qty(angle, '°', 2)}"),
    ]
    if side > 0 and not sizes.one_face:
        shapes += [
            Line(((base / 2, 0), (base / 2, sizes.stands * 1.02)), Role.GUIDE),
            DimensionLine((top / 2, height), (base / 2, height), f"in by {mm(side)}", sizes.stands * 0.2),
        ]
    if sizes.stands > height:
        at = (sizes.wide_top * -0.3, (sizes.stands + height) / 2)
        shapes.append(Label(at, f"{mm(sizes.stands - height)} off"))
    if m.job == "trim":
        line = string_line_mm(m)
        shapes.append(Line(((-base * 0.62, line), (base * 0.62, line)), Role.ACCENT))
        shapes.append(Label((-base * 0.6, line), f"line {mm(line)}"))
    if sizes.last is not None and sizes.last < height and not sizes.one_face:
        last_half = formulae.width_at_mm(base, top, height, sizes.last) / 2
        shapes.append(Level((last_half, sizes.last), f"{mm(sizes.last)} last cut"))
    if sizes.one_face:
        shapes.append(Label((base / 2 - sizes.inside, height * 0.25), f"{mm(sizes.inside)} inside"))
    return shapes


def batter_board(height: float, base: float, top: float) -> Drawing:
    """Return one face with a plumb board against its foot: a block at the top, and how far in the leaf stands."""
    side = formulae.in_each_side_mm(base, top)
    thick, block = height * 0.02, height * 0.04
    back = side + top * 0.4
    face = ((0.0, 0.0), (back, 0.0), (back, height), (side, height))
    shapes: list[Shape] = [
        Polygon(rectangle(-top * 0.5, -height * 0.05, back, 0), Role.SOIL),
        Line(((-top * 0.5, 0), (back, 0)), Role.GROUND),
        Polygon(face, Role.KEEP),
        Polygon(rectangle(-thick, 0, 0, height), Role.WOOD),
        Polygon(rectangle(0, height - block, side, height), Role.WOOD),
        Line(((-thick * 2.5, -height * 0.02), (-thick * 2.5, height * 1.03)), Role.CENTRE),
        DimensionLine((0, height), (side, height), f"{mm(side)}", offset=height * 0.08),
        DimensionLine((-thick, 0), (-thick, height), f"{mm(height)}", offset=top * 0.55),
        Label((-thick * 2.5, height * 0.35), "plumb"),
        Label((side / 2, height - block / 2), "block"),
    ]
    inside: list[Word] = []
    for part in (0.25, 0.5, 0.75):
        up, at = height * part, side * part
        shapes.append(Line(((0, up), (at, up)), Role.GUIDE))
        shapes.append(Level((at, up), f"in by {mm(at)}"))
        inside.append(Word(f"{mm(at)} at {mm(up)}"))
    return Drawing(
        shapes=tuple(shapes),
        caption="Batter board: plumb at its outer edge",
        alt=f"A plumb board {mm(height)} long at the foot of one face, a block of {mm(side)} at its top. "
        f"The leaf stands in {', '.join(map(str, inside))} up.",
    )


def plan(m: HedgingMeasures, spacing: float) -> Drawing:
    """Return the first plants of the rows from above: staggered, the end plants half a spacing in."""
    rows, gap = m.row_count, m.gap_between_rows_mm
    drawn = FEW_DRAWN if rows == 1 else PLANTS_DRAWN
    length = spacing * drawn
    radius = min(m.plant_width_mm or spacing * FULL_WIDTH, spacing * FULL_WIDTH) / 2
    edge = max(radius, (m.base_width_mm or 0.0) / 2)
    low, high = -edge, gap * (rows - 1) + edge
    shapes: list[Shape] = [Line(rectangle(0, low, length, high), Role.LAST, closed=True)]
    for row in range(rows):
        y = row * gap
        shift = spacing / 2 if row % 2 == 0 else spacing
        middles = [shift + spacing * at for at in range(drawn - row % 2)]
        shapes.append(Line(((-spacing * 0.2, y), (length + spacing * 0.3, y)), Role.CENTRE))
        for x in middles:
            crown = arc((x, y), radius, steps=32)[:-1]
            shapes.append(Polygon(leafy(crown, radius * 0.06, 14), Role.KEEP))
            shapes.append(Polygon(arc((x, y), radius * 0.12, steps=12)[:-1], Role.WOOD))
    first, second = (spacing / 2, 0.0), (spacing * 1.5, 0.0)
    shapes.append(DimensionLine(first, second, f"{mm(spacing)}", offset=low - radius * 1.2))
    shapes.append(DimensionLine((0, 0), first, f"in by {mm(spacing / 2)}", offset=low - radius * 2.6))
    shapes.append(Label((0.0, (low + high) / 2 + edge * 0.6), "end of the hedge"))
    words = f"A plan of {_rows(rows)} of plants {mm(spacing)} apart"
    if rows > 1:
        near = formulae.neighbour_mm(spacing, gap)
        shapes.append(DimensionLine((0, 0), (0, gap), f"{mm(gap)}", offset=radius * 1.6))
        shapes.append(Line(((spacing * 2.5, 0), (spacing * 3, gap)), Role.ACCENT))
        shapes.append(Label((spacing * 2.75, gap / 2), f"{mm(near)} plant to plant"))
        words += f", {mm(gap)} from row to row and staggered, {mm(near)} plant to plant"
    dense = qty(formulae.plants_per_metre(spacing, rows), "/m")
    return Drawing(
        shapes=tuple(shapes),
        caption=f"Plan: {dense}, {_rows(rows)}",
        alt=f"{words}: {dense}. The end plants stand {mm(spacing / 2)} in.",
    )


def _rows(rows: int) -> Held:
    named = {1: Word("a single row"), 2: Word("a double row")}
    return named.get(rows, Count(rows, "row", "rows"))
