"""Limits that belong to a country, each with who set it; two countries' limits are never averaged."""

from dataclasses import dataclass
from typing import Literal

from howto.families.safety import references as by
from howto.model.family import Limit
from howto.model.reference import Reference
from howto.quantities.amounts import Range, Words, qty

Country = Literal[
    "New Zealand", "Western Australia", "Queensland", "Victoria", "Alberta", "United States", "Denmark",
    "United Kingdom", "elsewhere",
]  # fmt: skip
LadderRule = Literal["by height", "by length", "75 degrees"]
LineKind = Literal["low voltage", "high voltage", "on poles", "on towers"]


@dataclass(frozen=True, slots=True)
class Ladder:
    """How a country sets a ladder's foot, and how far its rails pass a landing."""

    rule: LadderRule
    past_mm: float
    foot: Reference
    landing: Reference


LADDERS: dict[Country, Ladder] = {
    "New Zealand": Ladder("by height", 1000.0, by.NZ_LADDER, by.NZ_LADDER),
    "Western Australia": Ladder("by length", 900.0, by.WA_LADDER, by.WA_LADDER),
    "Alberta": Ladder("by height", 1000.0, by.ALBERTA_LADDER, by.ALBERTA_LADDER),
    "United States": Ladder("by length", 900.0, by.US_FOOT, by.US_LADDER),
    "Denmark": Ladder("75 degrees", 1000.0, by.DK_LADDER, by.DK_LADDER),
    "United Kingdom": Ladder("75 degrees", 1000.0, by.UK_LADDER, by.UK_LANDING),
    # no number of these was read: the flat 75° and the longer landing are the careful ones
    "Queensland": Ladder("75 degrees", 1000.0, by.DK_LADDER, by.NZ_LADDER),
    "Victoria": Ladder("75 degrees", 1000.0, by.DK_LADDER, by.NZ_LADDER),
    "elsewhere": Ladder("75 degrees", 1000.0, by.DK_LADDER, by.NZ_LADDER),
}
BORROWED: frozenset[Country] = frozenset({"Queensland", "Victoria", "elsewhere"})
FALL = Limit(high=2000, unit="mm", reference=by.VICTORIA_FALLS)  # over it the law asks for an order of controls


@dataclass(frozen=True, slots=True)
class Zone:
    """How near an untrained worker may come to a line: never within `no_go_mm`, with a spotter to `spotter_mm`."""

    no_go_mm: float
    reference: Reference
    note: Words
    spotter_mm: float | None = None


LOW_KV, QLD_MIDDLE_KV, QLD_TOP_KV = 1.0, 132.0, 330.0
NZ_CONSENT = Zone(500.0, by.NZ_LINES, "low voltage, with the owner's written consent")
NZ_ALONE = Zone(4000.0, by.NZ_LINES, "low voltage, without consent")
QLD_ZONES = (
    (QLD_MIDDLE_KV, Zone(3000.0, by.QLD_LINES, f"up to {qty(QLD_MIDDLE_KV, 'kV')}, untrained")),
    (QLD_TOP_KV, Zone(6000.0, by.QLD_LINES, f"up to {qty(QLD_TOP_KV, 'kV')}, untrained")),
)
VIC_ZONES: dict[LineKind, Zone] = {
    "on poles": Zone(3000.0, by.VIC_LINES, "lines on poles", 6400.0),
    "on towers": Zone(8000.0, by.VIC_LINES, "lines on towers", 10_000.0),
}
ALL_ZONES = Range(NZ_CONSENT.no_go_mm, VIC_ZONES["on towers"].no_go_mm, "mm")


def line_zone(country: Country, kind: LineKind, kv: float | None, *, consent: bool) -> Zone | None:
    """Return the zone round a line where the country has one on record, else None: then ask the line's owner.

    New Zealand has one for low voltage alone; Queensland by voltage, low voltage within its first band.
    """
    if country == "New Zealand" and kind == "low voltage" and (kv or 0.0) <= LOW_KV:
        return NZ_CONSENT if consent else NZ_ALONE
    if country == "Queensland" and (kv is not None or kind == "low voltage"):
        return next((zone for most_kv, zone in QLD_ZONES if (kv or 0.0) <= most_kv), None)
    return VIC_ZONES.get(kind) if country == "Victoria" else None
