"""The rules of the wires: steel, strength, sag and pull."""

from collections.abc import Callable, Iterator
from math import sqrt

from howto.families.espalier import formulae, frame
from howto.families.espalier import references as by
from howto.families.espalier.frame import T
from howto.families.espalier.measures import EspalierMeasures
from howto.findings import Severity
from howto.model.family import SHARE, Breach, Edit, Limit, Rule, rule
from howto.model.reference import GEOMETRY, PRACTICE
from howto.quantities import round_down, round_up
from howto.quantities import show_number as num
from howto.quantities.amounts import bare, mm, percent, qty

HALF = Limit(high=0.5, unit=SHARE, of="of the breaking load", reference=by.STRENGTH)
SHALLOW = Limit(high=1 / 8, unit=SHARE, of="of the span", reference=GEOMETRY)
LEAST_SPAN_MM = 300.0  # ours: eyes closer than this are no mend
MOST_N = 5_000_000.0  # the most that `tension` takes
STRETCH_APART = 0.25  # ours: the folding rule is read with a rule and by eye


@rule("espalier.coast", Severity.WARNING, PRACTICE, applies="wires of crews on the coast (`coast: yes` in crew.yaml)")
def coast(work: T) -> Iterator[Breach]:
    """Near the sea the wire is 316 stainless.

    Marine-grade stainless (316) resists salt; 304 and zinc do not, for long.
    """
    m = work.measures
    wired = m.wire is not None or m.job == "wiring"
    if not work.crew.coast or not wired or m.wire == "316 stainless":
        return
    yield Breach(
        field="measures.wire",
        what=f"{m.wire} wire by the sea" if m.wire else "nothing says what the wire by the sea is made of",
        why="this crew works on the coast; salt pits 304 and eats zinc, and a wire that fails drops ten years of tree",
        mend="write `wire: 316 stainless`, and take eyes and tensioners of the same",
        edit=Edit(key="wire", text="316 stainless"),
    )


@rule("espalier.half-of-breaking", Severity.WARNING, by.STRENGTH, applies="wires whose pull and strength are known")
def half_of_breaking(work: T) -> Iterator[Breach]:
    """A wire is set to no more than half of its breaking load.

    Loads over half the breaking load leave lasting damage.
    """
    m = work.measures
    set_n, breaking = frame.tension_n(m), frame.breaking_n(m)
    if set_n is None or breaking is None or HALF.allows(formulae.share_of_breaking(set_n, breaking)):
        return
    share = formulae.share_of_breaking(set_n, breaking)
    why = f"{qty(set_n, 'N', 5)} / {qty(breaking, 'N', 5)} = {percent(share * 100)}; over 50 % the wire is damaged for good"
    if m.tension_n is None:
        most = f"{num(round_down(formulae.stretch_mm(0.5, 1000), 0.01))} mm/m"
        yield _one(
            "stretch", "stretch_mm_per_m", f"the wire grew by {qty(m.stretch_mm_per_m or 0, 'mm/m', 3)}", most, why
        )
        return
    most = f"{_newtons(breaking / 2, round_down)} N"
    yield _one("tension", "tension_n", f"the wire is pulled to {percent(share * 100)} of what breaks it", most, why)


@rule(
    "espalier.half-when-loaded",
    Severity.WARNING,
    by.STRENGTH,
    by.STRETCH,
    GEOMETRY,
    applies="1x19 wires whose pull, load and span are known",
)
def half_when_loaded(work: T) -> Iterator[Breach]:
    """With its leaf and crop on, a wire pulls no more than half of its breaking load.

    A tight wire held at both ends pulls harder as it is loaded: it can only sag by stretching.
    """
    m = work.measures
    loaded, set_n, breaking = frame.loaded_n(m), frame.tension_n(m), frame.breaking_n(m)
    load, span = frame.load_n_per_m(m), frame.span_mm(m)
    if loaded is None or set_n is None or breaking is None or load is None or span is None:
        return
    if HALF.allows(loaded / breaking) or set_n >= breaking / 2:
        return
    # T²·(T - T0) = EA·(w·L)²/24 solved for w·L at T = half
    carried = sqrt((breaking / 2) ** 2 * (breaking / 2 - set_n) * 24 / formulae.stiffness_n(breaking))
    closer = carried / load * 1000
    why = (
        f"set to {qty(set_n, 'N', 5)} it is drawn to {qty(loaded, 'N', 5)} by {bare(load, 4)} N/m over {mm(span, 5)}: "
        f"{percent(loaded / breaking * 100)} of {qty(breaking, 'N', 5)}; over 50 % the wire is damaged for good"
    )
    if closer >= LEAST_SPAN_MM:
        text = f"{num(round_down(closer, 1), 6)} mm"
        yield _one("eye spacing", "eye_spacing_mm", "its load draws the wire past half of what breaks it", text, why)
        return
    light = (carried / (span / 1000) - frame.bare_n_per_m(m)) / formulae.GRAVITY_M_PER_S2
    kept = round_down(max(light, 0.0), 0.01)
    yield Breach(
        field="measures.load_kg_per_m",
        also="measures.wire_diameter_mm",
        what="its load draws the wire past half of what breaks it",
        why=why,
        mend=f"take a thicker wire, or share the crop among more wires and write `load: {num(kept, 4)} kg/m`",
        edit=Edit(key="load", text=f"{bare(kept, 4)} kg/m"),
    )


@rule("espalier.sag-limit", Severity.WARNING, by.CABLES, applies="wires with a sag limit")
def sag_limit(work: T) -> Iterator[Breach]:
    """The wire sags no more than its limit, the pull held as set.

    Sag is w x L² / (8 x T): half the span is a quarter of the sag, twice the pull is half of it.
    """
    m = work.measures
    sag, load, span, set_n = frame.sag_m(m), frame.load_n_per_m(m), frame.span_mm(m), frame.tension_n(m)
    if m.sag_limit_mm is None or sag is None or not load or span is None or set_n is None:
        return
    limit = m.sag_limit_mm / 1000
    if sag <= limit * (1 + 1e-9):
        return
    why = (
        f"{bare(load, 4)} N/m x {bare(span / 1000, 4)}² / (8 x {qty(set_n, 'N', 5)}) = {mm(sag * 1000, 3)}, "
        f"and the limit is {mm(m.sag_limit_mm, 3)}"
    )
    pull = formulae.tension_for_sag(load, span / 1000, limit)
    closer = formulae.span_for_sag(load, set_n, limit) * 1000
    yield _tauter(m, f"the wire sags {mm(sag * 1000, 3)}", why, pull, closer)


def _tauter(m: EspalierMeasures, what: str, why: str, pull: float, closer_mm: float) -> Breach:
    """Return a breach mended by a harder pull while the wire bears it, else by eyes closer together."""
    breaking = frame.breaking_n(m)
    strong = round_up(pull, _step(pull)) <= (MOST_N if breaking is None else min(breaking / 2, MOST_N))
    if strong:
        return _one("tension", "tension_n", what, f"{_newtons(pull, round_up)} N", why)
    why += f"; {qty(pull, 'N', 5)} would hold it, past half of what breaks the wire"
    if closer_mm >= LEAST_SPAN_MM:
        return _one("eye spacing", "eye_spacing_mm", what, f"{mm(round_down(closer_mm, 1), 6)}", why)
    mend = "look at the load, the pull and the spacing again: no wire of this size holds it over this span"
    return Breach(field="measures.load_kg_per_m", also="measures.eye_spacing_mm", what=what, why=why, mend=mend)


@rule(
    "espalier.shallow-sag", Severity.WARNING, GEOMETRY, by.CABLES, applies="wires whose pull, load and span are known"
)
def shallow(work: T) -> Iterator[Breach]:
    """A wire sags no more than an eighth of its span, as far as the sums hold.

    Past an eighth of the span the sums for sag, pull and length no longer hold.
    """
    m = work.measures
    sag, load, span, set_n = frame.sag_m(m), frame.load_n_per_m(m), frame.span_mm(m), frame.tension_n(m)
    if sag is None or not load or span is None or set_n is None or SHALLOW.allows(sag * 1000 / span):
        return
    part = sag * 1000 / span
    yield _tauter(
        m,
        f"the wire would sag {mm(sag * 1000, 3)}, {percent(part * 100)} of its span",
        f"the sum takes the curve for a parabola, which may be {percent(formulae.curve_error(part) * 100, 2)} off here; "
        f"at an eighth it is 2 % off, and a wire that hangs so deep carries no frame. Load x span = {bare(load, 4)} x "
        f"{bare(span / 1000, 4)} = {qty(load * span / 1000, 'N', 5)} is the least pull for an eighth",
        pull=load * span / 1000,  # w·L²/(8T) = L/8 at T = w·L
        closer_mm=set_n / load * 1000,
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

    Barrier wires are pulled so hard that a child cannot part them; a frame needs no more.
    """
    m = work.measures
    set_n, span = frame.tension_n(m), frame.span_mm(m)
    if set_n is None or span is None or m.wire_diameter_mm is None or m.lay is None or m.tension_n is None:
        return
    guide = formulae.barrier_tension_n(m.wire_diameter_mm, m.lay, span)
    if guide is None or set_n <= guide * (1 + 1e-9):
        return
    yield _one(
        "tension",
        "tension_n",
        f"the pull, {qty(set_n, 'N', 5)}, is harder than a barrier wire's",
        f"{_newtons(guide, round_down)} N",
        f"the table gives {qty(guide, 'N', 4)} for {mm(m.wire_diameter_mm, 3)} {m.lay} over {mm(span, 5)}; an "
        "espalier wants some spring in its wires, and each eye less to hold (our judgement)",
    )


@rule(
    "espalier.stretch",
    Severity.WARNING,
    by.STRETCH,
    applies="1x19 wires that write both the pull and how much the wire grew",
)
def stretch_agrees(work: T) -> Iterator[Breach]:
    """How much the wire grew agrees with the pull it is set to: 1 mm in 2 m for each 5 % of its breaking load.

    1x19 grows by 1 mm in 2 m for each 5 % of its breaking load, whatever its diameter.
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
    grown = f"{num(wanted)} mm/m"
    yield _one(
        "stretch",
        "stretch_mm_per_m",
        f"the wire grew by {qty(m.stretch_mm_per_m, 'mm/m', 3)}",
        grown,
        f"a pull of {qty(m.tension_n, 'N', 5)} is {percent(m.tension_n / breaking * 100)} of {qty(breaking, 'N', 5)}, which "
        f"draws 1x19 out by {bare(m.tension_n / breaking * 100)} / 5 x 0.5 = {grown}",
    )


@rule("espalier.tensioners", Severity.WARNING, PRACTICE, applies="techniques that write how many tensioners there are")
def tensioners(work: T) -> Iterator[Breach]:
    """Every wire has a means of tightening it.

    Wires are pulled straight and taut, with a means of tightening when they sag.
    """
    m = work.measures
    if m.tensioners is None or m.tensioners >= m.tiers:
        return
    yield _one(
        "tensioners",
        "tensioners",
        f"{m.tensioners} tensioners for {m.tiers} wires",
        str(m.tiers),
        f"wires settle and sag in their first years, and each is tightened by itself: {m.tiers} wires, {m.tiers} "
        "tensioners (common practice, no source)",
    )


def _newtons(value: float, towards: Callable[[float, float], float]) -> str:
    """Return a pull rounded inwards to what a gauge can show, as it is written."""
    return num(towards(value, _step(value)), 8)


def _step(value: float) -> float:
    return 10.0 if value >= 1000 else 1.0 if value >= 10 else 0.01


def _one(key: str, field: str, what: str, text: str, why: str) -> Breach:
    """Return a breach whose mend writes one measure."""
    return Breach(
        field=f"measures.{field}", what=what, why=why, mend=f"write `{key}: {text}`", edit=Edit(key=key, text=text)
    )


WIRE_RULES: tuple[Rule[EspalierMeasures], ...] = (
    coast,
    half_of_breaking,
    half_when_loaded,
    sag_limit,
    shallow,
    published_pull,
    stretch_agrees,
    tensioners,
)
