"""A person drawn at true size from the side, to stand beside a ladder, a line or a load."""

from howto.shapes import Line, Point, Polygon, Role, Shape, ellipse

TALL_MM = 1750.0
SHOULDER_MM = 1430.0
HIP_MM = 900.0


def person(foot: Point, hands: Point, *, facing: float = 1.0) -> list[Shape]:
    """Return somebody standing at `foot`, arms to `hands`; `facing` is 1 to the right and -1 to the left."""
    x, y = foot

    def at(across: float, up: float) -> Point:
        return x + facing * across, y + up

    outline = (
        at(-120, 0), at(150, 0), at(150, 50), at(60, 70), at(70, 480), at(80, HIP_MM), at(110, 1150),
        at(100, SHOULDER_MM - 60), at(55, SHOULDER_MM), at(40, 1500), at(-45, 1500), at(-85, SHOULDER_MM),
        at(-130, SHOULDER_MM - 120), at(-125, 1100), at(-120, HIP_MM), at(-90, 480), at(-85, 70), at(-120, 40),
    )  # fmt: skip
    head = ellipse(at(10, 1625), 95, 125, steps=24)[:-1]
    shoulder = at(0, SHOULDER_MM - 50)
    return [
        Polygon(outline, Role.MULCH),
        Polygon(head, Role.MULCH),
        Line((*outline, outline[0]), Role.WOOD),
        Line((*head, head[0]), Role.WOOD),
        Line((shoulder, elbow(shoulder, hands, facing), hands), Role.WOOD),
    ]


def elbow(shoulder: Point, hands: Point, facing: float) -> Point:
    """Return where the arm bends: below the middle, a little towards the back."""
    across, up = (shoulder[0] + hands[0]) / 2, (shoulder[1] + hands[1]) / 2
    span = abs(shoulder[0] - hands[0]) + abs(shoulder[1] - hands[1])
    slack = max(0.0, 620.0 - span) / 2
    return across - facing * slack * 0.5, up - slack
