"""The watering can that people are likely to own, where nobody wrote how large theirs is."""

from typing import Final

from howto.quantities.units import convert

USUAL: Final = {"metric": (9, "L"), "us": (2, "US gal"), "uk": (2, "UK gal")}


def usual_can_l(system: str) -> float:
    """Return the can that people who measure so are likely to own."""
    return convert(*USUAL[system], "L")
