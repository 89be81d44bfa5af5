"""What is printed on a bag: the three numbers of its label, and its price."""

import re
from typing import NamedTuple

from howto.families.feeding import formulae
from howto.families.feeding.measures import FeedingMeasures

_NUMBER = r"(\d+(?:\.\d+)?)\s*%?"
_LABEL = re.compile(rf"(?:n\s*[-:]?\s*p\s*[-:]?\s*k)?[:\s]*{_NUMBER}\s*[-–—−:/\s]\s*{_NUMBER}\s*[-–—−:/\s]\s*{_NUMBER}")
_PRICE = re.compile(r"[^\d\s.,-]{0,4} ?(\d{1,6}(?:[.,]\d{1,2})?) ?[^\d\s.,-]{0,4}")
_TRACES = re.compile(r"\s*(?:$|\+|[(\w%])")  # what may stand behind the three: `+ TE`, `(NPK)`, `with iron`


class BagLabel(NamedTuple):
    """Percent by weight: nitrogen, phosphate (P2O5) and potash (K2O)."""

    nitrogen: float
    phosphate: float
    potash: float

    @property
    def phosphorus(self) -> float:
        """Phosphorus (P), in percent."""
        return self.phosphate * formulae.P_IN_P2O5

    @property
    def potassium(self) -> float:
        """Potassium (K), in percent."""
        return self.potash * formulae.K_IN_K2O

    @property
    def total(self) -> float:
        """All three together, in percent."""
        return self.nitrogen + self.phosphate + self.potash

    def of(self, nutrient: str) -> float:
        """Return the percent of `nitrogen`, `phosphate` or `potash`."""
        return {"nitrogen": self.nitrogen, "phosphate": self.phosphate, "potash": self.potash}[nutrient]


def numbers_in(text: str) -> tuple[float, float, float] | None:
    """Return the three numbers of a label such as `10-10-10`, `8:4:10` or `NPK 12-4,5-8 + TE`, or None."""
    plain = re.sub(r"(?<=\d),(?=\d)", ".", text.replace("\u00a0", " ").casefold().strip())
    found = _LABEL.match(plain)
    if found is None or not _TRACES.match(plain, found.end()) or re.match(r"[\s]*[-–—−:/.]\s*\d", plain[found.end() :]):
        return None
    return float(found[1]), float(found[2]), float(found[3])


def price_of(text: str | None) -> float | None:
    """Return a price such as `24.50`, `€24,50` or `24 NZD`, or None where it cannot be read."""
    found = _PRICE.fullmatch((text or "").replace("\u00a0", " ").strip())
    return float(found[1].replace(",", ".")) if found else None


def as_oxides(numbers: tuple[float, float, float], basis: str) -> BagLabel:
    """Return the label with P and K as P2O5 and K2O, whichever way they were printed."""
    n, p, k = numbers
    return BagLabel(n, p, k) if basis == "oxide" else BagLabel(n, p / formulae.P_IN_P2O5, k / formulae.K_IN_K2O)


def label_of(m: FeedingMeasures) -> BagLabel | None:
    """Return the label of the product, or None where it cannot be one: unread, or more than 100 % in all."""
    numbers = numbers_in(m.analysis)
    if numbers is None:
        return None
    label = as_oxides(numbers, m.label_basis or "oxide")
    return label if label.total <= 100 + 1e-9 else None
