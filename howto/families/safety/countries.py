"""Limits that belong to a country, each with who set it; two countries' limits are never averaged."""

from dataclasses import dataclass
from typing import Literal

from howto.families.safety import references as by
from howto.model.reference import Reference

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
FALL_MM = 2000.0  # Victoria: from there the law asks for a written order of controls
FALLS: dict[Country, Reference] = {"Victoria": by.VICTORIA_FALLS}


@dataclass(frozen=True, slots=True)
class Zone:
    """How near an untrained worker may come to a line: never within `no_go_mm`, with a spotter to `spotter_mm`."""

    no_go_mm: float
    reference: Reference
    spotter_mm: float | None = None
    note: str = ""


QLD_MIDDLE_KV, QLD_TOP_KV = 132.0, 330.0


def line_zone(country: Country, kind: LineKind, kv: float | None, *, consent: bool) -> Zone | None:
    """Return the zone round a line where the country has one on record, else None: then ask the line's owner."""
    if country == "New Zealand":
        return _new_zealand(kind, kv, consent=consent)
    if country == "Queensland":
        return _queensland(kind, kv)
    if country == "Victoria":
        if kind == "on towers":
            return Zone(8000.0, by.VIC_LINES, 10_000.0, "lines on towers")
        return Zone(3000.0, by.VIC_LINES, 6400.0, "lines on poles") if kind == "on poles" else None
    return None


def _new_zealand(kind: LineKind, kv: float | None, *, consent: bool) -> Zone | None:
    """Return New Zealand's zone: low voltage only, up to 1 kV."""
    if kind != "low voltage" or (kv is not None and kv > 1):
        return None
    if consent:
        return Zone(500.0, by.NZ_LINES, note="low voltage, with the owner's written consent")
    return Zone(4000.0, by.NZ_LINES, note="low voltage, without consent")


def _queensland(kind: LineKind, kv: float | None) -> Zone | None:
    """Return Queensland's zone for the untrained, by voltage; low voltage is within the first band."""
    if kv is None and kind != "low voltage":
        return None
    if (kv or 0.0) <= QLD_MIDDLE_KV:
        return Zone(3000.0, by.QLD_LINES, note="up to 132 kV, untrained")
    return Zone(6000.0, by.QLD_LINES, note="up to 330 kV, untrained") if (kv or 0.0) <= QLD_TOP_KV else None
