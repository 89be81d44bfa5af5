"""The figures of the wires: how strong they are, how far they sag, and how hard they may be pulled."""

from collections.abc import Iterator
from typing import NamedTuple

from howto.families.espalier import formulae, frame
from howto.families.espalier import references as by
from howto.families.espalier.frame import T
from howto.families.espalier.measures import EspalierMeasures
from howto.model.figure import Figure
from howto.model.reference import GEOMETRY, PRACTICE, Reference
from howto.quantities.amounts import bare, mm, percent, qty

GIVEN = Reference(title="as the maker or the crew gives it", grade=PRACTICE.grade)


class Wire(NamedTuple):
    """One span of one wire, ready to be reckoned with: newtons and metres, the set pull where there is one."""

    m: EspalierMeasures
    span_m: float
    bare: float
    load: float | None
    set_n: float | None
    breaking: float | None


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
    yield from _limit(wire)
    yield from _ends(wire)
    yield from _loaded(wire)
    yield from _share(wire)
    yield from _guide(wire)


def _strength(m: EspalierMeasures, breaking: float) -> Figure:
    if m.breaking_load_n is not None or m.wire_diameter_mm is None or m.lay is None:
        return Figure(
            name="strength",
            label="Wire breaks at",
            value=breaking,
            unit="N",
            working=(f"as written: {qty(breaking, 'N', 6)}",),
            references=(GIVEN,),
            digits=4,
        )
    each = formulae.wire_diameter_mm(m.wire_diameter_mm, m.lay)
    wires, factor = formulae.WIRES[m.lay], formulae.LAY_FACTORS[m.lay]
    return Figure(
        name="strength",
        label="Wire breaks at",
        value=breaking,
        unit="N",
        working=(
            f"one wire: {bare(m.wire_diameter_mm)} / {formulae.WIRES_ACROSS[m.lay]} = {mm(each, 3)} across",
            f"{wires} x π x {bare(each / 2, 4)}² mm² x 1570 N/mm² x {factor} = {qty(breaking, 'N', 4)}, "
            f"or {bare(breaking / formulae.GRAVITY_M_PER_S2)} kgf",
        ),
        references=(by.STRENGTH, by.SUPPLIER_LOADS),
        digits=4,
    )


def _pull(wire: Wire) -> Iterator[Figure]:
    """Yield the pull found from how much the wire grew, and how much it should grow for the pull."""
    if wire.set_n is None or wire.breaking is None or wire.m.lay != "1x19":
        return
    share = formulae.share_of_breaking(wire.set_n, wire.breaking)
    if wire.m.tension_n is None and wire.m.stretch_mm_per_m is not None:
        grown = wire.m.stretch_mm_per_m * 2
        yield Figure(
            name="pull",
            label="Pull, from how much it grew",
            value=wire.set_n,
            unit="N",
            working=(
                f"{mm(grown, 3)} in 2 m x 5 % a millimetre = {percent(share * 100)} of the breaking load",
                f"{bare(share)} x {qty(wire.breaking, 'N', 4)} = {qty(wire.set_n, 'N', 4)}",
            ),
            references=(by.STRETCH,),
        )
        return
    grown = formulae.stretch_mm(share, 2000)
    yield Figure(
        name="growth in two metres",
        label="Two marks 2 m apart move apart by",
        value=grown,
        unit="mm",
        working=(
            f"{qty(wire.set_n, 'N', 5)} / {qty(wire.breaking, 'N', 4)} = {percent(share * 100)} of the breaking load",
            f"1 mm in 2 m is 5 %: {bare(share * 100)} / 5 = {mm(grown, 3)}",
        ),
        references=(by.STRETCH,),
    )


def _sags(wire: Wire) -> Iterator[Figure]:
    if wire.set_n is None:
        return
    if wire.bare:
        sag = formulae.sag(wire.bare, wire.span_m, wire.set_n)
        yield Figure(
            name="bare sag",
            label="Sag of the bare wire",
            value=sag * 1000,
            unit="mm",
            working=(
                f"bare wire: {bare(wire.bare / formulae.GRAVITY_M_PER_S2)} kg/m x 9.80665 = {bare(wire.bare)} N/m",
                _sag_sum(wire.bare, wire, sag),
            ),
            references=(by.CABLES, by.STEEL_MASS),
            digits=2,
        )
    if wire.load is None:
        return
    sag = formulae.sag(wire.load, wire.span_m, wire.set_n)
    yield Figure(
        name="sag",
        label="Sag with leaf and crop",
        value=sag * 1000,
        unit="mm",
        working=(_load_sum(wire), _sag_sum(wire.load, wire, sag)),
        references=(by.CABLES,),
        headline=True,
    )
    length = formulae.wire_length(wire.span_m, sag)
    yield Figure(
        name="hanging length",
        label="Wire from eye to eye, hanging",
        value=length,
        unit="m",
        working=(f"{bare(wire.span_m, 5)} + 8 x {bare(sag)}² / (3 x {bare(wire.span_m, 5)}) = {qty(length, 'm', 6)}",),
        references=(by.CABLES,),
        digits=6,
    )


def _load_sum(wire: Wire) -> str:
    """Return how the weight of a metre comes about."""
    own = f"{bare(wire.bare)} + " if wire.bare else ""
    return f"carries {own}{bare(wire.m.load_kg_per_m or 0, 4)} kg/m x 9.80665 = {bare(wire.load or 0, 4)} N/m"


def _sag_sum(load: float, wire: Wire, sag: float) -> str:
    return (
        f"{bare(load, 4)} x {bare(wire.span_m, 4)}² / (8 x {qty(wire.set_n or 0, 'N', 5)}) = {qty(sag, 'm', 3)} "
        f"= {mm(sag * 1000, 3)}, the pull held as set"
    )


def _weight(wire: Wire) -> Iterator[Figure]:
    kg = wire.m.hung_weight_kg
    if kg is None or wire.set_n is None:
        return
    newton = kg * formulae.GRAVITY_M_PER_S2
    sag = formulae.point_sag(newton, wire.span_m, wire.set_n)
    yield Figure(
        name="sag under a weight",
        label="Sag under the weight half way",
        value=sag * 1000,
        unit="mm",
        working=(
            f"{qty(kg, 'kg', 3)} x 9.80665 = {qty(newton, 'N', 3)}",
            f"{bare(newton)} x {bare(wire.span_m, 4)} / (4 x {qty(wire.set_n, 'N', 5)}) = {qty(sag, 'm', 3)} "
            f"= {mm(sag * 1000, 3)}",
        ),
        references=(by.CABLES,),
    )


def _limit(wire: Wire) -> Iterator[Figure]:
    limit = wire.m.sag_limit_mm
    if limit is None or not wire.load:
        return
    pull = formulae.tension_for_sag(wire.load, wire.span_m, limit / 1000)
    yield Figure(
        name="pull for the limit",
        label="Pull that keeps the sag within the limit",
        value=pull,
        unit="N",
        working=(
            _load_sum(wire),
            f"{bare(wire.load, 4)} x {bare(wire.span_m, 4)}² / (8 x {qty(limit / 1000, 'm', 3)}) = {qty(pull, 'N', 5)}",
        ),
        references=(by.CABLES,),
        digits=5 if pull >= 1000 else 3,
    )


def _ends(wire: Wire) -> Iterator[Figure]:
    """Yield the pull on an end eye, at the set pull, or at the one that keeps the limit."""
    if not wire.load:
        return
    pull = wire.set_n
    if pull is None and wire.m.sag_limit_mm is not None:
        pull = formulae.tension_for_sag(wire.load, wire.span_m, wire.m.sag_limit_mm / 1000)
    if pull is None:
        return
    force = formulae.end_force(wire.load, wire.span_m, pull)
    yield Figure(
        name="end pull",
        label="Pull on each end eye",
        value=force,
        unit="N",
        working=(
            f"half a span hangs on the eye: {bare(wire.load, 4)} x {bare(wire.span_m, 4)} / 2 = "
            f"{qty(wire.load * wire.span_m / 2, 'N', 4)}",
            f"√({bare(pull, 5)}² + {bare(wire.load * wire.span_m / 2, 4)}²) = {qty(force, 'N', 5)}",
        ),
        references=(by.CABLES,),
        digits=5 if force >= 1000 else 3,
    )


def _loaded(wire: Wire) -> Iterator[Figure]:
    loaded = frame.loaded_n(wire.m)
    if loaded is None or wire.load is None or wire.set_n is None or wire.breaking is None:
        return
    stiff = formulae.stiffness_n(wire.breaking)
    more = stiff * (wire.load * wire.span_m) ** 2 / 24
    yield Figure(
        name="pull when loaded",
        label="Pull once it is loaded, ends held fast",
        value=loaded,
        unit="N",
        working=(
            f"1 mm in 2 m is 5 % of the breaking load, so EA = 100 x {bare(wire.breaking, 4)} = {qty(stiff, 'N', 4)}",
            "T = set pull + EA x (w x L)² / (24 x T²), tried until both sides agree:",
            f"{bare(wire.set_n, 5)} + {bare(stiff, 4)} x ({bare(wire.load, 4)} x {bare(wire.span_m, 4)})² / "
            f"(24 x {bare(loaded, 5)}²) = {qty(wire.set_n + more / loaded**2, 'N', 5)}",
        ),
        references=(by.STRETCH, GEOMETRY),
    )
    sag = formulae.sag(wire.load, wire.span_m, loaded)
    yield Figure(
        name="sag when loaded",
        label="Sag then",
        value=sag * 1000,
        unit="mm",
        working=(
            f"{bare(wire.load, 4)} x {bare(wire.span_m, 4)}² / (8 x {qty(loaded, 'N', 5)}) = {qty(sag, 'm', 3)} "
            f"= {mm(sag * 1000, 3)}",
        ),
        references=(by.CABLES,),
    )


def _share(wire: Wire) -> Iterator[Figure]:
    if wire.set_n is None or wire.breaking is None:
        return
    loaded = frame.loaded_n(wire.m)
    most = max(wire.set_n, loaded or 0.0)
    share = formulae.share_of_breaking(most, wire.breaking)
    yield Figure(
        name="share of strength",
        label="Share of the breaking load",
        value=share * 100,
        unit="%",
        working=(
            f"{'once loaded' if loaded else 'as set'}: {qty(most, 'N', 5)} / {qty(wire.breaking, 'N', 5)} = "
            f"{percent(share * 100)}; over 50 % leaves lasting damage",
        ),
        references=(by.STRENGTH,),
        headline=True,
        digits=2,
    )


def _guide(wire: Wire) -> Iterator[Figure]:
    m = wire.m
    if m.wire_diameter_mm is None or m.lay is None:
        return
    guide = formulae.barrier_tension_n(m.wire_diameter_mm, m.lay, wire.span_m * 1000)
    if guide is None:
        return
    as_three = ", 3.2 mm read as 3 mm" if m.wire_diameter_mm == 3.2 else ""
    yield Figure(
        name="published pull",
        label="Pull of a barrier wire, an upper guide",
        value=guide,
        unit="N",
        working=(
            f"table for {mm(m.wire_diameter_mm, 3)} {m.lay}{as_three}, posts {mm(wire.span_m * 1000, 5)} apart, "
            f"in proportion between two columns: {qty(guide, 'N', 4)}",
            "a barrier must not let a child through; an espalier needs no more than that (our judgement)",
        ),
        references=(by.BARRIERS, PRACTICE),
        digits=4,
    )
