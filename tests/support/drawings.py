"""Drawings to test layout and painting with: a ball in section, a hedge in section, a grass blade, and more."""

from howto.shapes import DimensionLine, Disc, Drawing, Label, Level, Line, Polygon, Role, Shape, arc, leafy, rectangle


def words_of(drawing: Drawing) -> list[str]:
    """Return what dimensions, levels and labels say, in order, with plain spaces."""
    said = (each.text for each in drawing.shapes if isinstance(each, DimensionLine | Level | Label))
    return [text.replace("\u00a0", " ") for text in said]


def ball() -> Drawing:
    """A ball in section: 980 mm standing, 900 mm finished, three gauge rings."""
    centre = (0.0, 520.0)
    shapes = (
        Polygon(rectangle(-700, -120, 700, 0), Role.SOIL),
        Line(((-700, 0), (700, 0)), Role.GROUND),
        Polygon(rectangle(-18, 0, 18, 200), Role.WOOD),
        Polygon(leafy(arc(centre, 490)[:-1], 22, 60), Role.REMOVE),
        Polygon(arc(centre, 450), Role.KEEP),
        Line(((0, -60), (0, 1090)), Role.CENTRE),
        Line(((-450, 520), (450, 520)), Role.GUIDE),
        Line(((-390, 745), (390, 745)), Role.GUIDE),
        Line(((-390, 295), (390, 295)), Role.GUIDE),
        DimensionLine((-450, 520), (450, 520), "900 mm", -620),
        DimensionLine((-490, 520), (490, 520), "980 mm", -800),
        DimensionLine((-390, 745), (390, 745), "779 mm"),
        Level((450, 520), "520 mm"),
        Level((390, 745), "745 mm"),
        Level((390, 295), "295 mm"),
        Label((-340, 870), "40 mm off all round, in two light passes"),
        Label((-300, 520), "Widest ring: set it first, from above"),
        Label((0, 100), "Stem"),
        Disc((0, 970), 1),
        Disc((200, 620), 2),
        Disc((-200, 400), 3),
    )
    return Drawing(shapes, "Ball in section", "A ball clipped from 980 to 900 mm with rings at three heights.")


def hedge() -> Drawing:
    """A hedge in section: base 700 mm, top 500 mm, this year's line over the last."""
    now = ((-350.0, 0.0), (350.0, 0.0), (250.0, 1500.0), (-250.0, 1500.0))
    tall = ((-390.0, 0.0), (390.0, 0.0), (290.0, 1640.0), (-290.0, 1640.0))
    shapes = (
        Polygon(rectangle(-800, -160, 800, 0), Role.SOIL),
        Line(((-800, 0), (800, 0)), Role.GROUND),
        Polygon(leafy(tall, 24, 80), Role.REMOVE),
        Polygon(now, Role.KEEP),
        Line(((-320, 0), (-225, 1420), (225, 1420), (320, 0)), Role.LAST),
        Line(((0, -80), (0, 1760)), Role.CENTRE),
        Polygon(rectangle(-20, 0, 20, 420), Role.WOOD),
        DimensionLine((-350, 0), (350, 0), "700 mm", -260),
        DimensionLine((-250, 1500), (250, 1500), "500 mm", 300),
        DimensionLine((-350, 0), (-350, 1500), "1500 mm", 500),
        DimensionLine((-290, 1500), (-290, 1640), "140 mm", 600),
        Level((250, 1500), "1.50 m finished"),
        Level((225, 1420), "1.42 m last year"),
        Label((270, 1590), "What comes off this year"),
        Label((300, 700), "Lean 3.8° from upright, so light reaches the foot"),
        Label((0, 200), "Stems"),
    )
    return Drawing(shapes, "Hedge in section", "A hedge 700 mm wide at its foot and 500 mm at its top.")


def blade() -> Drawing:
    """A grass leaf 75 mm tall, cut to 50 mm: two thirds stay."""
    stay = ((-2.6, 0.0), (2.6, 0.0), (2.2, 50.0), (-2.2, 50.0))
    shapes = (
        Polygon(rectangle(-30, -14, 30, 0), Role.SOIL),
        Line(((-30, 0), (30, 0)), Role.GROUND),
        Polygon(stay, Role.BLADE),
        Polygon(((-2.2, 50.0), (2.2, 50.0), (0.4, 75.0), (-0.4, 75.0)), Role.REMOVE),
        Line(((-24, 50), (24, 50)), Role.ACCENT),
        DimensionLine((-2.6, 0), (-2.6, 50), "50 mm", 14),
        DimensionLine((-2.6, 50), (-2.6, 75), "25 mm", 14),
        Level((2.2, 50), "50 mm set height"),
        Level((0.4, 75), "75 mm standing"),
        Level((2.6, 25), "25 mm"),
        Label((0, 62), "⅓ comes off"),
        Label((0, 20), "⅔ stays to shade the soil"),
    )
    return Drawing(shapes, "Grass leaf in thirds", "A grass leaf 75 mm tall; 25 mm comes off and 50 mm stays.")


def wall() -> Drawing:
    """A wired wall in elevation with soil, mulch, water and a zone to stay out of: every role in one drawing."""
    shapes: tuple[Shape, ...] = (
        Polygon(rectangle(0, -600, 3000, 0), Role.SOIL),
        Polygon(rectangle(400, -350, 1200, 0), Role.WATER),
        Polygon(rectangle(1300, 0, 2600, 120), Role.MULCH),
        Polygon(rectangle(-200, -600, 0, 2200), Role.WALL),
        Polygon(rectangle(2300, 1300, 3000, 2100), Role.DANGER),
        Line(((0, 0), (3000, 0)), Role.GROUND),
        *(Line(((0, height), (2200, height)), Role.WIRE) for height in (450, 900, 1350)),
        Polygon(rectangle(980, 0, 1020, 1500), Role.WOOD),
        Line(((1000, 900), (1800, 900)), Role.ACCENT),
        Line(((1000, 1350), (1350, 1700)), Role.REMOVE),
        DimensionLine((0, 450), (0, 900), "450 mm", -1100),
        DimensionLine((0, 900), (0, 1350), "450 mm", -1100),
        DimensionLine((400, -350), (1200, -350), "800 mm", -500),
        Label((1800, 900), "Lateral tied down"),
        Label((1300, 1650), "Comes off: it grows forward"),
        Label((800, -200), "Wetted soil"),
        Label((2000, 60), "Mulch 120 mm, clear of the stem"),
        Label((2650, 1700), "Keep out"),
        Level((2200, 1350), "1350 mm"),
    )
    return Drawing(shapes, "Every mark", "A wall with three wires, wetted soil, mulch and a zone to stay out of.")


DRAWINGS = {"ball": ball, "hedge": hedge, "blade": blade, "wall": wall}
