"""The figures of the wires: how strong they are, how far they sag, and how hard they may be pulled."""

from collections.abc import Iterator
from typing import NamedTuple

from howto.families.espalier import formulae, frame
from howto.families.espalier import references as by
from howto.families.espalier.frame import T
from howto.families.espalier.measures import EspalierMeasures
from howto.families.espalier.parts import figure
from howto.model.figure import Figure
from howto.model.reference import GEOMETRY, PRACTICE, Reference
from howto.quantities.amounts import Name, Words, bare, mm, percent, qty

GIVEN = Reference(title="as the maker or the crew gives it", grade=PRACTICE.grade)
G = bare(formulae.GRAVITY_M_PER_S2, 6)
# The folding rule, as it is said: so many millimetres in so many metres for each so many percent.
GROWN, OVER = mm(formulae.STRETCH_MM), qty(formulae.STRETCH_OVER_MM / 1000, "m", 3)
EACH_PERCENT = formulae.STRETCH_SHARE * 100


class Wire(NamedTuple):
    """One span of one wire, ready to be reckoned with: newtons and metres, the set pull where there is one."""

    m: EspalierMeasures
    span_m: float
    bare: float
    load: float | None
    set_n: float | None
    breaking: float | None

    @property
    def span(self) -> Words:
        """The span as it stands in a sum."""
        return f"{bare(self.span_m, 4)}"

    @property
    def load_sum(self) -> Words:
        """How the weight of a metre comes about."""
        own = f"{bare(self.bare)} + " if self.bare else ""
        return f"carries {own}{bare(self.m.load_kg_per_m or 0, 4)} kg/m x {G} = {bare(self.load or 0, 4)} N/m"

    def sag_sum(self, load: float, pull: float, sag: float) -> Words:
        """Return how a sag in metres comes about."""
        return f"{bare(load, 4)} x {self.span}² / (8 x {qty(pull, 'N', 5)}) = {qty(sag, 'm', 3)} = {mm(sag * 1000, 3)}"


def wire_figures(work: T) -> Iterator[Figure]:
    """Yield what can be said of one span of one wire."""
    m = work.measures
    breaking = frame.breaking_n(m)
    if breaking is not None:
        yield _strength(m, breaking)
    span = frame.span_mm(m)
    if span is None:
        return
    wire = Wire(m, span / 1000, frame.bare_n_per_m(m), frame.load_n_per_m(m), frame.tension_n(m), breaking)
    yield from _pull(wire)
    yield from _sags(wire)
    yield from _weight(wire)
    yield from _ends(wire)
    yield from _loaded(wire)
    yield from _share(wire)
    yield from _guide(wire)


def _strength(m: EspalierMeasures, breaking: float) -> Figure:
    said, who = [f"as written: {qty(breaking, 'N', 6)}"], [GIVEN]
    if m.breaking_load_n is None and m.wire_diameter_mm is not None and m.lay is not None:
        each = formulae.wire_diameter_mm(m.wire_diameter_mm, m.lay)
        wires, factor = bare(formulae.WIRES[m.lay]), bare(formulae.LAY_FACTORS[m.lay])
        said = [
            f"one wire: {bare(m.wire_diameter_mm)} / {bare(formulae.WIRES_ACROSS[m.lay])} = {mm(each, 3)} across",
            f"{wires} x π x {bare(each / 2, 4)}² mm² x {qty(formulae.GRADE_N_PER_MM2, 'N/mm²', 4)} x {factor} = "
            f"{qty(breaking, 'N', 4)}, or {bare(breaking / formulae.GRAVITY_M_PER_S2)} kgf",
        ]
        who = [by.STRENGTH, by.SUPPLIER_LOADS]
    return figure("strength", "Wire breaks at", breaking, "N", said, *who, digits=4)


def _pull(wire: Wire) -> Iterator[Figure]:
    """Yield the pull found from how much the wire grew, or how much it should grow for the pull."""
    if wire.set_n is None or wire.breaking is None or wire.m.lay != "1x19":
        return
    share = formulae.share_of_breaking(wire.set_n, wire.breaking)
    part, breaks = f"{percent(share * 100)} of the breaking load", qty(wire.breaking, "N", 4)
    if wire.m.tension_n is None and wire.m.stretch_mm_per_m is not None:
        grown = wire.m.stretch_mm_per_m * formulae.STRETCH_OVER_MM / 1000
        working = (
            f"{mm(grown, 3)} in {OVER} x {percent(EACH_PERCENT)} a millimetre = {part}",
            f"{bare(share)} x {breaks} = {qty(wire.set_n, 'N', 4)}",
        )
        yield figure("pull", "Pull, from how much it grew", wire.set_n, "N", working, by.STRETCH)
        return
    grown = formulae.stretch_mm(share, formulae.STRETCH_OVER_MM)
    working = (
        f"{qty(wire.set_n, 'N', 5)} / {breaks} = {part}",
        f"{GROWN} in {OVER} is {percent(EACH_PERCENT)}: {bare(share * 100)} / {bare(EACH_PERCENT)} = {mm(grown, 3)}",
    )
    yield figure("growth in two metres", f"Two marks {OVER} apart move apart by", grown, "mm", working, by.STRETCH)


def _sags(wire: Wire) -> Iterator[Figure]:
    if wire.set_n is None:
        return
    if wire.bare:
        sag = formulae.sag(wire.bare, wire.span_m, wire.set_n)
        working = (
            f"bare wire: {bare(wire.bare / formulae.GRAVITY_M_PER_S2)} kg/m x {G} = {bare(wire.bare)} N/m",
            f"{wire.sag_sum(wire.bare, wire.set_n, sag)}, the pull held as set",
        )
        who = by.CABLES, by.STEEL_MASS
        yield figure("bare sag", "Sag of the bare wire", sag * 1000, "mm", working, *who, digits=2)
    if wire.load is None:
        return
    sag = formulae.sag(wire.load, wire.span_m, wire.set_n)
    working = (wire.load_sum, f"{wire.sag_sum(wire.load, wire.set_n, sag)}, the pull held as set")
    yield figure("sag", "Sag with leaf and crop", sag * 1000, "mm", working, by.CABLES, headline=True)
    length, span = formulae.wire_length(wire.span_m, sag), bare(wire.span_m, 5)
    line = f"{span} + 8 x {bare(sag)}² / (3 x {span}) = {qty(length, 'm', 6)}"
    yield figure("hanging length", "Wire from eye to eye, hanging", length, "m", [line], by.CABLES, digits=6)


def _weight(wire: Wire) -> Iterator[Figure]:
    kg, pull = wire.m.hung_weight_kg, wire.set_n
    if kg is None or pull is None:
        return
    newton = kg * formulae.GRAVITY_M_PER_S2
    sag = formulae.point_sag(newton, wire.span_m, pull)
    working = (
        f"{qty(kg, 'kg', 3)} x {G} = {qty(newton, 'N', 3)}",
        f"{bare(newton)} x {wire.span} / (4 x {qty(pull, 'N', 5)}) = {qty(sag, 'm', 3)} = {mm(sag * 1000, 3)}",
    )
    yield figure("sag under a weight", "Sag under the weight half way", sag * 1000, "mm", working, by.CABLES)


def _ends(wire: Wire) -> Iterator[Figure]:
    """Yield the pull that keeps the limit, and the pull on an end eye: at the set pull, or else at that one."""
    if not wire.load:
        return
    pull, limit, load = wire.set_n, wire.m.sag_limit_mm, bare(wire.load, 4)
    if limit is not None:
        keeps = formulae.tension_for_sag(wire.load, wire.span_m, limit / 1000)
        sum_ = f"{load} x {wire.span}² / (8 x {qty(limit / 1000, 'm', 3)}) = {qty(keeps, 'N', 5)}"
        yield figure(
            "pull for the limit", "Pull that keeps the sag within the limit", keeps, "N", [wire.load_sum, sum_],
            by.CABLES, digits=_digits(keeps),
        )  # fmt: skip
        pull = keeps if pull is None else pull
    if pull is None:
        return
    force, half = formulae.end_force(wire.load, wire.span_m, pull), wire.load * wire.span_m / 2
    working = (
        f"half a span hangs on the eye: {load} x {wire.span} / 2 = {qty(half, 'N', 4)}",
        f"√({bare(pull, 5)}² + {bare(half, 4)}²) = {qty(force, 'N', 5)}",
    )
    yield figure("end pull", "Pull on each end eye", force, "N", working, by.CABLES, digits=_digits(force))


def _digits(force: float) -> int:
    return 5 if force >= 1000 else 3


def _loaded(wire: Wire) -> Iterator[Figure]:
    loaded = frame.loaded_n(wire.m)
    if loaded is None or wire.load is None or wire.set_n is None or wire.breaking is None:
        return
    stiff = formulae.stiffness_n(wire.breaking)
    found = wire.set_n + stiff * (wire.load * wire.span_m) ** 2 / 24 / loaded**2
    working = (
        f"{GROWN} in {OVER} is {percent(EACH_PERCENT)} of the breaking load, so EA = {bare(formulae.STIFF_TIMES)} x "
        f"{bare(wire.breaking, 4)} = {qty(stiff, 'N', 4)}",
        "T = set pull + EA x (w x L)² / (24 x T²), tried until both sides agree:",
        f"{bare(wire.set_n, 5)} + {bare(stiff, 4)} x ({bare(wire.load, 4)} x {wire.span})² / "
        f"(24 x {bare(loaded, 5)}²) = {qty(found, 'N', 5)}",
    )
    label = "Pull once it is loaded, ends held fast"
    yield figure("pull when loaded", label, loaded, "N", working, by.STRETCH, GEOMETRY)
    sag = formulae.sag(wire.load, wire.span_m, loaded)
    yield figure("sag when loaded", "Sag then", sag * 1000, "mm", [wire.sag_sum(wire.load, loaded, sag)], by.CABLES)


def _share(wire: Wire) -> Iterator[Figure]:
    if wire.set_n is None or wire.breaking is None:
        return
    loaded = frame.loaded_n(wire.m)
    pull = max(wire.set_n, loaded or 0.0)
    share = formulae.share_of_breaking(pull, wire.breaking) * 100
    when = "once loaded" if loaded else "as set"
    line = (
        f"{when}: {qty(pull, 'N', 5)} / {qty(wire.breaking, 'N', 5)} = {percent(share)}; "
        f"over {percent(formulae.MOST_SHARE * 100)} leaves lasting damage"
    )
    yield figure(
        "share of strength", "Share of the breaking load", share, "%", [line], by.STRENGTH, headline=True, digits=2
    )


def _guide(wire: Wire) -> Iterator[Figure]:
    across, lay = wire.m.wire_diameter_mm, wire.m.lay
    if across is None or lay is None:
        return
    guide = formulae.barrier_tension_n(across, lay, wire.span_m * 1000)
    if guide is None:
        return
    row = formulae.barrier_row_mm(across)
    read_as = "" if row == across else f", {mm(across, 3)} read as {mm(row, 3)}"
    working = (
        f"table for {mm(across, 3)} {Name(lay)}{read_as}, posts {mm(wire.span_m * 1000, 5)} apart, in proportion "
        f"between two columns: {qty(guide, 'N', 4)}",
        "a barrier must not let a child through; an espalier needs no more than that (our judgement)",
    )
    label = "Pull of a barrier wire, an upper guide"
    yield figure("published pull", label, guide, "N", working, by.BARRIERS, PRACTICE, digits=4)
