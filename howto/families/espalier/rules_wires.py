"""The rules of the wires: steel, strength, sag and pull."""

from collections.abc import Callable, Iterator
from math import sqrt
from typing import NamedTuple

from howto.families.espalier import formulae, frame
from howto.families.espalier import references as by
from howto.families.espalier.figures_wires import EACH_PERCENT, GROWN, OVER
from howto.families.espalier.frame import T
from howto.families.espalier.measures import EspalierMeasures
from howto.families.espalier.parts import to_write, wires
from howto.findings import Severity
from howto.model.family import SHARE, Breach, Limit, Rule, rule, typed
from howto.model.reference import GEOMETRY, PRACTICE
from howto.quantities import round_down, round_up
from howto.quantities.amounts import Count, Name, Words, bare, mm, percent, qty

HALF = Limit(high=formulae.MOST_SHARE, unit=SHARE, of="of the breaking load", reference=by.STRENGTH)
SHALLOW = Limit(high=formulae.MOST_SAG_SHARE, unit=SHARE, of="of the span", reference=GEOMETRY)
SEA_STEEL = "316 stainless"
LEAST_SPAN_MM = 300.0  # ours: eyes closer than this are no mend
MOST_N = 5_000_000.0  # the most that `tension` takes
STRETCH_APART = 0.25  # ours: the folding rule is read with a rule and by eye
DAMAGED = f"over {percent(formulae.MOST_SHARE * 100)} the wire is damaged for good"


class Strung(NamedTuple):
    """One span that carries a load at a pull: newtons and metres."""

    load: float
    span_m: float
    set_n: float

    @property
    def sag_mm(self) -> float:
        """How far it sags."""
        return formulae.sag(self.load, self.span_m, self.set_n) * 1000


def _strung(m: EspalierMeasures) -> Strung | None:
    """Return a span with its load and its pull, or None where one of them is not known."""
    load, span, set_n = frame.load_n_per_m(m), frame.span_mm(m), frame.tension_n(m)
    return None if not load or span is None or set_n is None else Strung(load, span / 1000, set_n)


@rule(
    "espalier.coast",
    Severity.WARNING,
    PRACTICE,
    applies="wires of crews on the coast (`coast: yes` in crew.yaml)",
    steel=f"{Name(SEA_STEEL)}",
)
def coast(work: T) -> Iterator[Breach]:
    """Near the sea the wire is {steel}.

    salt pits 304 and eats zinc, and a wire that fails drops ten years of tree
    """
    m = work.measures
    wired = m.wire is not None or m.job == "wiring"
    if not work.crew.coast or not wired or m.wire == SEA_STEEL:
        return
    what = f"{m.wire} wire by the sea" if m.wire else "nothing says what the wire by the sea is made of"
    yield to_write("wire", SEA_STEEL, what, then=", and take eyes and tensioners of the same")


@rule(
    "espalier.half-of-breaking",
    Severity.WARNING,
    by.STRENGTH,
    applies="wires whose pull and strength are known",
    limit=HALF,
)
def half_of_breaking(work: T) -> Iterator[Breach]:
    """A wire is set to no more than {limit.most} of its breaking load.

    loads over {limit.most} of the breaking load leave lasting damage
    """
    m = work.measures
    set_n, breaking = frame.tension_n(m), frame.breaking_n(m)
    if set_n is None or breaking is None or HALF.allows(formulae.share_of_breaking(set_n, breaking)):
        return
    part = percent(formulae.share_of_breaking(set_n, breaking) * 100)
    why = f"{qty(set_n, 'N', 5)} / {qty(breaking, 'N', 5)} = {part}; {DAMAGED}"
    if m.tension_n is None:
        most = typed(round_down(formulae.stretch_mm(formulae.MOST_SHARE, 1000), 0.01), "mm/m", down=True)
        yield to_write("stretch_mm_per_m", most, f"the wire grew by {qty(m.stretch_mm_per_m or 0, 'mm/m', 3)}", why)
        return
    most = _newtons(breaking * formulae.MOST_SHARE, round_down)
    yield to_write("tension_n", most, f"the wire is pulled to {part} of what breaks it", why)


@rule(
    "espalier.half-when-loaded",
    Severity.WARNING,
    by.STRENGTH,
    by.STRETCH,
    GEOMETRY,
    applies="1x19 wires whose pull, load and span are known",
    limit=HALF,
)
def half_when_loaded(work: T) -> Iterator[Breach]:
    """With its leaf and crop on, a wire pulls no more than {limit.most} of its breaking load.

    a tight wire held at both ends pulls harder as it is loaded: it can only sag by stretching
    """
    m = work.measures
    loaded, breaking, wire = frame.loaded_n(m), frame.breaking_n(m), _strung(m)
    if loaded is None or breaking is None or wire is None:
        return
    most = breaking * formulae.MOST_SHARE
    if HALF.allows(loaded / breaking) or wire.set_n >= most:
        return
    # T²·(T - T0) = EA·(w·L)²/24 solved for w·L at the most T
    carried = sqrt(most**2 * (most - wire.set_n) * 24 / formulae.stiffness_n(breaking))
    what = f"its load draws the wire past {HALF.most} of what breaks it"
    why = (
        f"set to {qty(wire.set_n, 'N', 5)} it is drawn to {qty(loaded, 'N', 5)} by {bare(wire.load, 4)} N/m over "
        f"{mm(wire.span_m * 1000, 5)}: {percent(loaded / breaking * 100)} of {qty(breaking, 'N', 5)}; {DAMAGED}"
    )
    closer = carried / wire.load * 1000
    if closer >= LEAST_SPAN_MM:
        yield to_write("eye_spacing_mm", typed(round_down(closer, 1), "mm", down=True), what, why)
        return
    light = (carried / wire.span_m - frame.bare_n_per_m(m)) / formulae.GRAVITY_M_PER_S2
    kept = typed(round_down(max(light, 0.0), 0.01), "kg/m", down=True)
    first = "take a thicker wire, or share the crop among more wires and "
    yield to_write("load_kg_per_m", kept, what, why, first=first, also="measures.wire_diameter_mm")


@rule("espalier.sag-limit", Severity.WARNING, by.CABLES, applies="wires with a sag limit")
def sag_limit(work: T) -> Iterator[Breach]:
    """The wire sags no more than its limit, the pull held as set.

    sag is w x L² / (8 x T): half the span is a quarter of the sag, twice the pull is half of it
    """
    m, wire = work.measures, _strung(work.measures)
    if m.sag_limit_mm is None or wire is None or wire.sag_mm <= m.sag_limit_mm * (1 + 1e-9):
        return
    limit = m.sag_limit_mm / 1000
    why = (
        f"{bare(wire.load, 4)} N/m x {bare(wire.span_m, 4)}² / (8 x {qty(wire.set_n, 'N', 5)}) = {mm(wire.sag_mm, 3)}, "
        f"and the limit is {mm(m.sag_limit_mm, 3)}"
    )
    pull = formulae.tension_for_sag(wire.load, wire.span_m, limit)
    closer = formulae.span_for_sag(wire.load, wire.set_n, limit) * 1000
    yield _tauter(m, f"the wire sags {mm(wire.sag_mm, 3)}", why, pull, closer)


def _tauter(m: EspalierMeasures, what: Words, why: Words, pull: float, closer_mm: float) -> Breach:
    """Return a breach mended by a harder pull while the wire bears it, else by eyes closer together."""
    breaking = frame.breaking_n(m)
    if round_up(pull, _step(pull)) <= (MOST_N if breaking is None else min(breaking * formulae.MOST_SHARE, MOST_N)):
        return to_write("tension_n", _newtons(pull, round_up), what, why)
    why += f"; {qty(pull, 'N', 5)} would hold it, past {HALF.most} of what breaks the wire"
    if closer_mm >= LEAST_SPAN_MM:
        return to_write("eye_spacing_mm", typed(round_down(closer_mm, 1), "mm", down=True), what, why)
    mend = "look at the load, the pull and the spacing again: no wire of this size holds it over this span"
    return Breach(field="measures.load_kg_per_m", also="measures.eye_spacing_mm", what=what, why=why, mend=mend)


@rule(
    "espalier.shallow-sag",
    Severity.WARNING,
    GEOMETRY,
    by.CABLES,
    applies="wires whose pull, load and span are known",
    limit=SHALLOW,
)
def shallow(work: T) -> Iterator[Breach]:
    """A wire sags no more than {limit.most} of its span, as far as the sums hold.

    past {limit.most} of the span the sums for sag, pull and length no longer hold
    """
    wire = _strung(work.measures)
    if wire is None or SHALLOW.allows(part := wire.sag_mm / wire.span_m / 1000):
        return
    off = percent(formulae.curve_error(part) * 100, 2)
    at_most = percent(formulae.curve_error(formulae.MOST_SAG_SHARE) * 100, 1)
    # w·L²/(8T) = L/8 at T = w·L
    pull = wire.load * wire.span_m / 8 / formulae.MOST_SAG_SHARE
    yield _tauter(
        work.measures,
        f"the wire would sag {mm(wire.sag_mm, 3)}, {percent(part * 100)} of its span",
        f"the sum takes the curve for a parabola, which may be {off} off here; at {SHALLOW.most} it is {at_most} "
        f"off, and a wire that hangs so deep carries no frame. Load x span = {bare(wire.load, 4)} x "
        f"{bare(wire.span_m, 4)} = {qty(pull, 'N', 5)} is the least pull for {SHALLOW.most}",
        pull,
        closer_mm=wire.set_n / wire.load * 8 * formulae.MOST_SAG_SHARE * 1000,
    )


@rule(
    "espalier.published-pull",
    Severity.ADVICE,
    by.BARRIERS,
    by.ORCHARD_SPRING,
    applies="1x19 and 7x7 wires of 2.5 to 4 mm over spans of 0.6 to 2 m",
)
def published_pull(work: T) -> Iterator[Breach]:
    """A wire is pulled no harder than the published table pulls barrier wires of its size and span.

    barrier wires are pulled so hard that a child cannot part them; a frame needs no more
    """
    m = work.measures
    span = frame.span_mm(m)
    if m.tension_n is None or span is None or m.wire_diameter_mm is None or m.lay is None:
        return
    guide = formulae.barrier_tension_n(m.wire_diameter_mm, m.lay, span)
    if guide is None or m.tension_n <= guide * (1 + 1e-9):
        return
    yield to_write(
        "tension_n",
        _newtons(guide, round_down),
        f"the pull, {qty(m.tension_n, 'N', 5)}, is harder than a barrier wire's",
        f"the table gives {qty(guide, 'N', 4)} for {mm(m.wire_diameter_mm, 3)} {Name(m.lay)} over {mm(span, 5)}; an "
        "espalier wants some spring in its wires, and each eye less to hold (our judgement)",
    )


@rule(
    "espalier.stretch",
    Severity.WARNING,
    by.STRETCH,
    applies="1x19 wires that write both the pull and how much the wire grew",
    folding=f"{GROWN} in {OVER} for each {percent(EACH_PERCENT)} of its breaking load",
)
def stretch_agrees(work: T) -> Iterator[Breach]:
    """How much the wire grew agrees with the pull it is set to: {folding}.

    1x19 grows by {folding}, whatever its diameter
    """
    m = work.measures
    breaking = frame.breaking_n(m)
    if m.stretch_mm_per_m is None or m.tension_n is None or breaking is None or m.lay != "1x19":
        return
    if m.tension_n > breaking:
        return
    wanted = formulae.stretch_mm(m.tension_n / breaking, 1000)
    if abs(m.stretch_mm_per_m - wanted) <= STRETCH_APART * wanted * (1 + 1e-9):
        return
    part, each = m.tension_n / breaking * 100, bare(formulae.STRETCH_STRAIN * 1000)
    yield to_write(
        "stretch_mm_per_m",
        typed(float(f"{wanted:.3g}"), "mm/m"),
        f"the wire grew by {qty(m.stretch_mm_per_m, 'mm/m', 3)}",
        f"a pull of {qty(m.tension_n, 'N', 5)} is {percent(part)} of {qty(breaking, 'N', 5)}, which draws 1x19 out by "
        f"{bare(part)} / {bare(EACH_PERCENT)} x {each} = {qty(wanted, 'mm/m', 3)}",
    )


@rule("espalier.tensioners", Severity.WARNING, PRACTICE, applies="techniques that write how many tensioners there are")
def tensioners(work: T) -> Iterator[Breach]:
    """Every wire has a means of tightening it.

    wires settle and sag in their first years, and each is tightened by itself
    """
    m = work.measures
    if m.tensioners is not None and m.tensioners < m.tiers:
        what = f"{Count(m.tensioners, 'tensioner', 'tensioners')} for {wires(m.tiers)}"
        yield to_write("tensioners", str(m.tiers), what)


def _newtons(value: float, towards: Callable[[float, float], float]) -> str:
    """Return a pull rounded inwards to what a gauge can show, as it is written."""
    return f"{towards(value, _step(value)):.12g} N"


def _step(value: float) -> float:
    return 10.0 if value >= 1000 else 1.0 if value >= 10 else 0.01


WIRE_RULES: tuple[Rule[EspalierMeasures], ...] = (
    coast, half_of_breaking, half_when_loaded, sag_limit, shallow, published_pull, stretch_agrees, tensioners,
)  # fmt: skip
