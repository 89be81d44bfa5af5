"""Finds the scale and the size of words at which a drawing and its labels are worth most in a box.

A trial that is too wide tells how much smaller the next may be at most, so scales that are too large are left in a few
steps; what leaders cost at least tells when no smaller scale can be worth more.
"""

from dataclasses import dataclass, replace
from functools import cached_property
from itertools import groupby
from math import inf, sqrt

from howto.layout.drawing.callouts import PlacedCallout, shifted
from howto.layout.drawing.columns import Deal, deal, least_cost
from howto.layout.drawing.core import Core
from howto.layout.drawing.look import Look
from howto.layout.drawing.outlines import outlines_of
from howto.layout.drawing.plane import Box, joined
from howto.shapes import Drawing

# the scales on the faces of scale rules: common practice, no source
SCALES = (
    *(5, 2, 1, 1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 25, 1 / 50, 1 / 75, 1 / 100, 1 / 125, 1 / 200, 1 / 250, 1 / 400),
    *(1 / 500, 1 / 1000),
)
SMALLEST = 0.08  # of the largest scale: a drawing smaller still shows nothing
STEP = 0.965  # from a scale that does not hold to the next smaller, where any scale will do
LEAP = 0.75  # the most that is left out where width alone is in the way
STRIDE = 0.93  # from one that holds to the next smaller, which may have shorter leaders
HALVES = 2  # how often the gap above the best scale is halved
WANDER = 0.7  # how dear long leaders are, against a smaller drawing
COLUMNS = (0.22, 0.28, 0.36, 0.46)  # how wide a label's lines may be, in widths of the box


@dataclass(frozen=True)
class Fitted:
    """One way of fitting the drawing that holds: a large drawing with large words is worth most, and short leaders."""

    core: Core
    callouts: tuple[PlacedCallout, ...]
    worth: float

    @property
    def box(self) -> Box:
        """The room all of it takes."""
        return joined((self.core.box, *(each.box for each in self.callouts)))

    def moved(self, across: float, down: float) -> "Fitted":
        """Return the same, moved."""
        x, y = self.core.origin
        callouts = tuple(shifted(each, across, down) for each in self.callouts)
        return replace(self, core=replace(self.core, origin=(x + across, y + down)), callouts=callouts)


@dataclass(frozen=True)
class Search:
    """A drawing, the width and height of the box it is to fill, and how it is to look there."""

    drawing: Drawing
    box: tuple[float, float]
    look: Look

    @cached_property
    def extent(self) -> tuple[float, float]:
        """The drawing's width and height in mm."""
        left, bottom, right, top = outlines_of(self.drawing).extent
        return (max(right - left, 1e-6), max(top - bottom, 1e-6))

    @cached_property
    def largest(self) -> float:
        """The scale at which the shapes alone fill the box."""
        return min(room / reach for room, reach in zip(self.box, self.extent, strict=True))

    @property
    def ruled(self) -> bool:
        """Whether the scale is one that a scale rule shows."""
        return self.look.page and self.drawing.true

    def below(self, scale: float) -> float:
        """Return the largest scale that may be drawn to and is no larger than one; 0 where there is none."""
        if self.ruled:
            return next((each for each in SCALES if each <= scale), 0.0)
        return scale

    def best(self, least: float) -> Fitted | None:
        """Return the fit of most worth, if it is worth more than `least`: with large words, else with smaller ones."""
        found: Fitted | None = None
        above = self.largest
        for size in (self.look.size, (self.look.size + self.look.small) / 2, self.look.small):
            trial, larger = self.at_size(size, least)
            if trial:
                found, above, least = trial, larger, trial.worth * 1.001
        return self.nearer(found, above) if found else None

    def at_size(self, size: float, least: float) -> tuple[Fitted | None, float]:
        """Return the best fit with words of one size at a few scales from the largest down, and the next larger one."""
        found: Fitted | None = None
        scale, last, dear, failed = self.below(self.largest), self.largest, 0.0, 0
        above, smallest = last, scale * SMALLEST
        while scale > smallest and self.worth(scale * size, dear) > least:
            trial = self.at(scale, size, least)
            if isinstance(trial, Fitted):
                found, least, above = trial, trial.worth, last
                dear = least_cost(each.callout for each in trial.callouts)
                smaller = scale * STRIDE
            elif trial < scale:
                smaller = min(max(trial, scale * LEAP), scale * STEP) if trial > -inf else 0.0
            elif least:
                break  # too dear: leaders shorten no faster than the drawing
            else:
                failed += 1
                smaller = scale * STEP ** min(failed, 4)
            last, scale = scale, self.below(smaller)
        return found, above

    def nearer(self, found: Fitted, above: float) -> Fitted:
        """Return a fit at a scale between one that holds and a larger, if one is worth more."""
        size, least = found.core.size, found.worth
        dear = least_cost(each.callout for each in found.callouts)
        for _ in range(HALVES):
            middle = self.below(sqrt(found.core.scale * above))
            if middle <= found.core.scale or self.worth(above * size, dear) <= least:
                break
            trial = self.at(middle, size, least)
            if isinstance(trial, Fitted):
                found, least = trial, trial.worth
            else:
                above = middle
        return found

    def worth(self, large: float, cost: float) -> float:
        """Return what a fit is worth, by how large it is and what its leaders cost."""
        return large / (1 + WANDER * cost / sum(self.box))

    def at(self, scale: float, size: float, least: float) -> Fitted | float:
        """Return the best fit at one scale if it is worth more than `least`, else the next scale that may hold."""
        core = Core(self.drawing, scale, size, self.look)
        left, top, right, bottom = core.box
        over = (right - left - self.box[0], bottom - top - self.box[1])
        if core.discs is None or max(over) > 0:
            return min(scale, *(scale - more / reach for more, reach in zip(over, self.extent, strict=True)))
        ground = core.ground(self.box[0], top + over[1] / 2, bottom - over[1] / 2)
        most = (scale * size / least - 1) * sum(self.box) / WANDER if least else inf
        best: Deal | None = None
        narrowest = inf
        for callouts, _ in groupby(core.callouts(self.box[0] * share) for share in COLUMNS):
            dealt = deal(callouts, ground, best.cost if best else most)
            if isinstance(dealt, Deal):
                best = dealt
                continue
            narrowest = min(narrowest, dealt)
            if best or (least and not dealt):
                break  # wider lines no longer help
        if best is None:
            return scale - narrowest / self.extent[0]
        return Fitted(core, best.placed, self.worth(scale * size, best.cost))
