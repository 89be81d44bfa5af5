"""Finds what a technique works with: tools and materials by name, and how a machine is driven.

A name counts where it is what the item is, not what the item is for (`Grease for the mower`), nor part of another
name (`mower blade`, `compost bin`), nor denied (`no ladder`). Notes after the colon only tell how a machine is
driven, unless the item is a bare `Power tools:`.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, Literal

from howto.model.prose import plain
from howto.model.work import AnyWork

Drive = Literal["petrol", "battery", "mains", "unknown"]


@dataclass(frozen=True, slots=True)
class KitItem:
    """A tool or material that was found: its field, its name as written, and its note."""

    field: str
    name: str
    note: str

    @property
    def drive(self) -> Drive:
        """How it is driven, as far as its name and note say."""
        words = f"{self.name} {self.note}"
        if PETROL.search(words):
            return "petrol"
        if BATTERY.search(words):
            return "battery"
        return "mains" if MAINS.search(words) else "unknown"


def words(pattern: str) -> re.Pattern[str]:
    """Return what finds whole words in any case."""
    return re.compile(rf"\b(?:{pattern})\b", re.IGNORECASE)


PETROL: Final = words(
    r"petrol|gasoline|gas[- ](?:powered|engined?|driven)|gas (?=(?:lawn ?)?mowers?|trimmers?|blowers?|hedge)|diesel|"
    r"(?:two|four|2|4)[- ]?(?:stroke|cycle)|unleaded|jerr(?:y|i)[- ]?cans?|fuel (?:can|mix|jug)s?"
)
BATTERY: Final = words(r"batter(?:y|ies)|cordless|lithium|li-?ion|[0-9]+ ?V pack")
MAINS: Final = words(r"corded|mains|plug[- ]in|electric|extension (?:leads?|cables?|cords?)|[12][0-9]0 ?V")
EXTENSION: Final = words(r"extension (?:leads?|cables?|cords?)|cable reels?")
_GENERIC: Final = words(r"power tools?|machines?|machinery|equipment|kit|tools?")
_FOR: Final = re.compile(
    r"\b(?:for|to fit|from|off|into|under|beside|on)\s+(?:the|a|an|your|each|our)?\s*(?:\w+\s)?$", re.IGNORECASE
)
_DENIED: Final = re.compile(
    r"\b(?:no|not|never|without|instead of|in place of|rather than|nor|neither|don't|do not|avoid)\b[^.;:,]*$",
    re.IGNORECASE,
)
_UNUSED: Final = re.compile(
    r"\s*(?:is |are )?(?:not (?:needed|used|wanted|allowed)|none|left (?:in|at)|unused)\b", re.IGNORECASE
)
_PART: Final = re.compile(
    r"[\s-]+(?:sheds?|racks?|manuals?|keys?|covers?|blades?|bins?|heaps?|bays?|forks?|caddy|caddies|thermometers?|mats?|"
    r"fabrics?|films?|sheets?|membranes?|files?|oils?|trailers?|spares?|parts?|guards?|sheaths?|scabbards?|holsters?|"
    r"shelf|shelves|stays?|stabilisers?|stabilizers?|decks?|wheels?|belts?|cords?|lines?|spools?|heads?|store|stores|"
    r"containers?|labels?|stickers?|tests?|kits?|paths?|rings?|depths?|plugs?|turners?|aerators?|activators?|accelerators?|"
    r"trousers?|boots?|gloves?|helmets?|chaps|certificates?|tickets?|licen[cs]es?)\b",
    re.IGNORECASE,
)


def items(work: AnyWork) -> Iterator[KitItem]:
    """Yield every tool, then every material."""
    for part, kits in (("tools", work.technique.tools), ("materials", work.technique.materials)):
        for at, kit in enumerate(kits):
            yield KitItem(f"{part}[{at}]", kit.name, plain(kit.note))


def named(work: AnyWork, pattern: re.Pattern[str], but: re.Pattern[str] | None = None) -> Iterator[KitItem]:
    """Yield the items that are what `pattern` says, leaving out those that are also what `but` says."""
    for item in items(work):
        text = item.name
        if _GENERIC.fullmatch(item.name.strip()):
            text = f"{item.name}: {item.note}"
        if but is not None and but.search(item.name):
            continue
        if is_named(text, pattern) and not _UNUSED.match(item.note):
            yield item


def is_named(text: str, pattern: re.Pattern[str]) -> bool:
    """Tell whether a name is of that kind: neither denied, nor for it, nor a part of it."""
    return any(
        not _DENIED.search(text[: found.start()])
        and not _FOR.search(text[: found.start()])
        and not _PART.match(text, found.end())
        for found in pattern.finditer(text)
    )


def mentioned(text: str, pattern: re.Pattern[str]) -> str:
    """Return the words of a text that a pattern finds and that are not denied; else an empty text."""
    for found in pattern.finditer(text):
        if not _DENIED.search(text[: found.start()]):
            return found[0]
    return ""


def first(work: AnyWork, pattern: re.Pattern[str], but: re.Pattern[str] | None = None) -> KitItem | None:
    """Return the first item of that kind, or None."""
    return next(named(work, pattern, but), None)


# -- the machines and tools that ask for something --

HAND: Final = words(r"hand(?![- ]?held)|reel|manual|robot(?:ic)?|toy|unpowered")
HEDGE_TRIMMER: Final = words(
    r"(?:hedge|pole|long[- ]reach)[ -]?(?:trimmers?|cutters?)|"
    r"(?<!line )(?<!string )(?<!grass )(?<!lawn )(?<!weed )trimmers?"
)
LINE_TRIMMER: Final = words(
    r"(?:line|string|grass|lawn|weed)[ -]?(?:trimmers?|whackers?)|brush[ -]?cutters?|strimmers?|"
    r"(?:power|stick|petrol|battery) edgers?"
)
CHAINSAW: Final = words(r"chain[ -]?saws?|power(?:ed)? pole[ -]?saws?|powered pruners?")
MOWER: Final = words(r"(?:lawn[ -]?)?mowers?|ride[- ]on")
BLOWER: Final = words(r"(?:leaf[ -]?)?blowers?|blower[- ]vacs?")
CHIPPER: Final = words(r"(?:wood[ -]?)?chippers?|(?:garden )?shredders?")
TILLER: Final = words(r"rotavators?|rototillers?|(?:power )?tillers?|rotary hoes?|scarifiers?|stump grinders?")
GRINDER: Final = words(r"angle grinders?|disc cutters?|cut[- ]off saws?|generators?|leaf vacs?")
SWINGING: Final = (HEDGE_TRIMMER, LINE_TRIMMER, CHAINSAW, MOWER, CHIPPER, TILLER)
LOUD: Final = (*SWINGING, BLOWER, GRINDER)
THROWING: Final = (LINE_TRIMMER, MOWER, BLOWER, CHIPPER, CHAINSAW)
HAND_BLADES: Final = words(
    r"secateurs|pruners?|loppers?|shears|saws?|kni(?:fe|ves)|sickles?|bill ?hooks?|scythes?|axes?|hatchets?|machetes?|"
    r"snips|hedge clippers?"
)
LADDER: Final = words(r"(?:step)?ladders?")
STEPLADDER: Final = words(r"step[- ]?ladders?|tripod[- ]ladders?|orchard ladders?|platform ladders?")
PLATFORM: Final = words(
    r"(?:work(?:ing)? |mobile |access )?platforms?(?! ladders?)|scaffold(?:ing|s)?|tower scaffolds?|"
    r"trestles?(?! tables?)|"
    r"hop[ -]?ups?|cherry[ -]?pickers?|MEWPs?|mobile towers?"
)
TALL: Final = words(
    r"long[- ]reach\b.*|pole[ -]?(?:saws?|pruners?|trimmers?|hedge ?trimmers?|loppers?)|telescopic .*|"
    r"extension ladders?|extending ladders?|cherry[ -]?pickers?|MEWPs?|tower scaffolds?|tripod ladders?"
)


def machine(work: AnyWork, *kinds: re.Pattern[str]) -> KitItem | None:
    """Return the first powered machine of these kinds, or None; what is pushed by hand or runs alone is none."""
    return next((item for kind in kinds for item in named(work, kind, HAND)), None)
