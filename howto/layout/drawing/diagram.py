"""Fits a drawing to a box: chooses its scale and deals its labels to the columns beside it.

On paper the scale is one that a scale rule shows; in a picture it is the largest that leaves the words room.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

from howto.layout.drawing.callouts import Callout, PlacedCallout, shifted
from howto.layout.drawing.columns import Ground, cost, place_columns
from howto.layout.drawing.core import Core
from howto.layout.drawing.look import Look
from howto.layout.drawing.plane import Box, joined
from howto.layout.text import length
from howto.model.sheet import Art
from howto.shapes import Dimension, Disc, Drawing, Label, Level, Line, Polygon, extent, higher

# the scales on the faces of scale rules: common practice, no source
SCALES = (
    *(5, 2, 1, 1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 25, 1 / 50, 1 / 75, 1 / 100, 1 / 125, 1 / 200, 1 / 250, 1 / 400),
    *(1 / 500, 1 / 1000),
)
STEP = 0.965  # from one trial scale to the next smaller, where any scale will do
TRIALS = 70
WANDER = 0.7  # how dear long leaders are, against a smaller drawing
STRETCHES = (1.2, 1.4, 1.6, 1.8, 2.0)  # how much higher an elastic drawing may be
KEPT_WORTH = 0.95  # what it keeps of its worth at least when it is stretched
COLUMNS = (0.22, 0.28, 0.36, 0.46)  # how wide a label's lines may be, in widths of the box


@dataclass(frozen=True)
class Fitted:
    """One way of fitting the drawing that holds: what it costs in leaders, and what it is made of."""

    core: Core
    callouts: tuple[PlacedCallout, ...]
    cost: float

    room: float  # width and height of the box together

    @property
    def worth(self) -> float:
        """How good it is: a large drawing with large words, and leaders that do not wander over it."""
        return self.core.scale * self.core.size / (1 + WANDER * self.cost / self.room)

    @property
    def box(self) -> Box:
        """The room all of it takes."""
        return joined((self.core.box, *(each.box for each in self.callouts)))

    def moved(self, across: float, down: float) -> "Fitted":
        """Return the same, moved."""
        x, y = self.core.origin
        callouts = tuple(shifted(each, across, down) for each in self.callouts)
        return replace(self, core=replace(self.core, origin=(x + across, y + down)), callouts=callouts)


@lru_cache(maxsize=256)  # frames of one carousel ask for the same drawing again
def fit(drawing: Drawing, width: float, height: float, look: Look) -> tuple[Art, tuple[str, ...]]:
    """Return the drawing fitted to a box, and the reasons why its words would not fit, if they would not.

    In a picture the art fills the box; on a page it is no higher than it needs. With a reason, the art holds
    the shapes alone: words never overlap and are never cut.
    """
    best = _stretched(drawing, width, height, look) if drawing.elastic else fitted(drawing, width, height, look)
    if best is None:
        return _bare(drawing, width, height, look)
    if not look.page:
        return _art(best, width, height), ()
    _, top, _, bottom = best.box
    return _art(best.moved(0.0, -top), width, bottom - top), ()


def _stretched(drawing: Drawing, width: float, height: float, look: Look) -> Fitted | None:
    """Return the best way of fitting an elastic drawing, higher than it is where that costs it no width."""
    best = fitted(drawing, width, height, look)
    if best is None:
        return None
    least = best.worth * KEPT_WORTH
    for factor in STRETCHES:
        tried = fitted(higher(drawing, factor), width, height, look)
        if tried is None or tried.worth < least:
            break
        best = tried
    return best


def fitted(drawing: Drawing, width: float, height: float, look: Look) -> Fitted | None:
    """Return the best way of fitting the drawing, or None where its words find no place."""
    best: Fitted | None = None
    for size in (look.size, (look.size + look.small) / 2, look.small):
        found = _best_scale(drawing, (width, height), size, look, best.worth * 1.001 if best else 0.0)
        best = found or best
    return best


def _scales(drawing: Drawing, width: float, height: float, look: Look) -> list[float]:
    """Return the scales to try, the largest first."""
    left, bottom, right, top = extent(drawing.shapes)
    most = min(width / max(right - left, 1e-6), height / max(top - bottom, 1e-6))
    if look.page and drawing.true:
        return [scale for scale in SCALES if scale <= most]
    return [most * STEP**trial for trial in range(TRIALS)]


def _best_scale(drawing: Drawing, box: tuple[float, float], size: float, look: Look, least: float) -> Fitted | None:
    """Return the fit of most worth, if it is worth more than `least`.

    Every fourth scale is tried until one holds, then two smaller ones, since a little less size may buy much
    shorter leaders; last the scales between the best of them and the next larger.
    """
    scales = [scale for scale in _scales(drawing, *box, look) if scale * size > least]
    stride = 1 if look.page and drawing.true else 4
    found: dict[int, Fitted] = {}
    for at in range(0, len(scales), stride):
        if found and at > min(found) + (2 * stride if stride > 1 else 1):
            break
        trial = _at_scale(drawing, box, size, look, scales[at])
        if trial:
            found[at] = trial
    if not found:
        return None
    start = max(found, key=lambda at: (found[at].worth, -at))
    nearer = (_at_scale(drawing, box, size, look, scales[at]) for at in range(max(start - stride + 1, 0), start))
    best = max((trial for trial in (found[start], *nearer) if trial), key=lambda trial: trial.worth)
    return best if best.worth > least else None


def _at_scale(drawing: Drawing, box: tuple[float, float], size: float, look: Look, scale: float) -> Fitted | None:
    core = Core(drawing, scale, size, look)
    if core.discs is None or core.box[2] - core.box[0] > box[0] or core.box[3] - core.box[1] > box[1]:
        return None
    return _dealt(core, box)


def _dealt(core: Core, box: tuple[float, float]) -> Fitted | None:
    """Return the cheapest way to deal the callouts to two columns beside the core, or None."""
    origin = (0.0, (box[1] - core.box[3] + core.box[1]) / 2 - core.box[1])
    core = replace(core, origin=origin)
    ground = core.ground(box)
    best: Fitted | None = None
    for callouts in dict.fromkeys(tuple(core.callouts(box[0] * share)) for share in COLUMNS):
        trials = (_columns(core, callouts, cut, ground, box) for cut in range(len(callouts) + 1))
        found = min((trial for trial in trials if trial), key=lambda each: each.cost, default=None)
        if best and (found is None or found.cost >= best.cost):
            return best  # wider lines no longer help
        best = found or best
    return best


def _columns(
    core: Core, callouts: tuple[Callout, ...], cut: int, ground: Ground, box: tuple[float, float]
) -> Fitted | None:
    """Return the core with its first `cut` callouts in the left column and the others in the right, or None."""
    left, right = callouts[:cut], callouts[cut:]
    if left and right and left[-1].level and right[0].level and left[-1].at[0] == right[0].at[0]:
        return None  # levels over one another stay on one side
    placed = place_columns(left, right, ground)
    if placed is None:
        return None
    found = Fitted(core, placed, cost(placed, ground), box[0] + box[1])
    low, _, high, _ = found.box
    return found.moved((box[0] - high - low) / 2, 0.0) if high - low <= box[0] else None


def _art(found: Fitted, width: float, height: float) -> Art:
    core = found.core
    return Art(
        width=width,
        height=height,
        marks=tuple(core.marks(found.callouts)),
        caption=core.drawing.caption,
        alt=core.drawing.alt,
        scale=_named(core.scale) if core.look.page and core.drawing.true else "",
    )


def _named(scale: float) -> str:
    """Return a scale as a drawing prints it: 1:20, 2:1."""
    return f"{scale:g}:1" if scale > 1 else f"1:{1 / scale:g}"


def _bare(drawing: Drawing, width: float, height: float, look: Look) -> tuple[Art, tuple[str, ...]]:
    """Return the shapes alone, at any scale that fits, with the reason why the words would not."""
    shapes = tuple(shape for shape in drawing.shapes if isinstance(shape, Line | Polygon))
    bare = replace(drawing, shapes=shapes, true=False)
    found = fitted(bare, width, height, look) or Fitted(Core(bare, 0.0, look.small, look), (), 0.0, 1.0)
    words = [shape.text for shape in drawing.shapes if isinstance(shape, Dimension | Level | Label)]
    discs = sum(isinstance(shape, Disc) for shape in drawing.shapes)
    return _art(found, width, height), (_reason(words, discs, f"{width:.0f} × {height:.0f}", look),)


def _reason(words: list[str], discs: int, box: str, look: Look) -> str:
    parts = [
        f"{count} {name}{'s' if count > 1 else ''}"
        for count, name in ((len(words), "label"), (discs, "numbered mark"))
        if count
    ]
    finds = "finds" if len(words) + discs == 1 else "find"
    said = f"{' and '.join(parts)} {finds} no place without touching in {box} {'mm' if look.page else 'px'}"
    longest = max(words, key=lambda text: length(text, "text", look.small), default="")
    return f"{said}; the longest is “{longest}”" if longest else said
