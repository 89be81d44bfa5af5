"""Whether a wound from the garden asks for a tetanus booster, by the Merck Manual's table."""

from typing import Literal

Wound = Literal["clean", "dirty"]
CLEAN_YEARS, DIRTY_YEARS = 10.0, 5.0
FULL_COURSE = 3


def tetanus(wound: Wound, doses: int | None, last_years: float | None) -> str:
    """Return `none due`, `booster due`, `vaccine due` or `vaccine and immune globulin due`.

    Soil, thorns and depth make a wound dirty. `doses` is None where nobody knows them; with three or more, a
    booster is due when the last one lies over 10 years back for a clean wound, over 5 for a dirty one; a last
    dose that nobody can date counts as too long ago.
    """
    if doses is None or doses < FULL_COURSE:
        return "vaccine due" if wound == "clean" else "vaccine and immune globulin due"
    most = CLEAN_YEARS if wound == "clean" else DIRTY_YEARS
    return "booster due" if last_years is None or last_years > most else "none due"
