"""Rules over techniques of every family: what the plant book says of thorns, poison and sap reaches the cautions."""

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from howto.families.safety import kit
from howto.families.safety.chemicals import BOOSTER_YEARS
from howto.families.safety.needs import Ask, Need, cautions, rules_of, says
from howto.families.safety.references import TETANUS
from howto.findings import Severity
from howto.model.plants import VouchedWords
from howto.model.prose import capital
from howto.model.reference import CEILING, Grade, Reference, source
from howto.model.work import AnyWork
from howto.quantities.amounts import Count, bare

THORNS: Final = says(r"\bthorn|\bspin(?:e|es|y)\b|prickl|\bspik")
POISON: Final = says(r"poison|cyanide|\btoxic")
SAP: Final = says(r"\bsap\b|\boil and juice\b|irritat|blister|\brash\b")
POISON_SAID: Final = r"poison|\btoxic|cyanide|\bharm"
LEAD: Final = re.compile(r"^(?:thorns|poison|poisonous|sap):\s*", re.IGNORECASE)
KERNELS: Final = says(r"kernel|almond|inside the stone")
PLANT_BOOK: Final = source(
    Grade.A, "the plant book, where each caution names its own source: universities, institutes, and others by grade"
)
ORDER: Final = (Severity.ERROR, Severity.WARNING, Severity.ADVICE)


def _cautions_of(work: AnyWork) -> Iterator[tuple[int, str, VouchedWords]]:
    """Yield each caution of the plants written, with the plant's place and name."""
    for at, name in enumerate(work.technique.plants):
        plant = work.book.plant(name)
        for caution in plant.cautions if plant else ():
            yield at, name, caution


def _ask(work: AnyWork, about: re.Pattern[str], line: str, but: re.Pattern[str] | None = None) -> Ask | None:
    """Return the ask of the best vouched-for caution about something, where plants are cut."""
    if not (kit.first(work, kit.HAND_BLADES) or kit.machine(work, *kit.SWINGING)):
        return None
    found = [
        each for each in _cautions_of(work) if about.search(each[2].text) and not (but and but.search(each[2].text))
    ]
    if not found:
        return None
    at, name, caution = min(found, key=lambda each: (ORDER.index(CEILING[each[2].grade]), -len(each[2].text)))
    text = capital(LEAD.sub("", " ".join(caution.text.replace("→", ",").split())).rstrip("."))
    return Ask(
        f"plants[{at}]",
        f"`{name}` is cut here",
        f"the plant book says of it: {text}",
        line.format(text=text),
        CEILING[caution.grade],
        Reference(title=caution.source.removeprefix("from memory") or "the plant book", grade=caution.grade),
    )


def _thorns(work: AnyWork) -> Ask | None:
    return _ask(work, THORNS, "- **Thorns.** {text}. → thick gloves, eye protection")


def _poison(work: AnyWork) -> Ask | None:
    ask = _ask(work, POISON, "- **Poison.** {text}. Take every clipping away. → gloves", KERNELS)
    if ask is None or ask.line.count("clipping") == 1:
        return ask
    return replace(ask, line=ask.line.replace(" Take every clipping away.", ""))


def _sap(work: AnyWork) -> Ask | None:
    told = says(POISON_SAID).search(cautions(work))  # else the line about poison brings the same words
    return _ask(work, SAP, "- **Sap.** {text}. → gloves, long sleeves", None if told else POISON)


PLANTS: Final = rules_of(
    Need(
        "thorns", Severity.ERROR, (PLANT_BOOK, TETANUS),
        applies="techniques that cut a plant whose entry in the plant book names thorns or spines",
        must="Cutting a plant with thorns carries a caution about them.",
        why=f"a thorn is a deep, dirty wound: tetanus protection is asked for within "
        f"{Count(BOOSTER_YEARS['dirty'], 'year', 'years')} of it, not {bare(BOOSTER_YEARS['clean'])}",
        hazard="thorns",
        finds=_thorns,
        covers=(r"\bthorn|\bspin(?:e|es|y)\b|prickl|\bspik|puncture",),
    ),
    Need(
        "poisonous-plant", Severity.ERROR, (PLANT_BOOK,),
        applies="techniques that cut a plant whose entry in the plant book says it is poisonous",
        must="Cutting a poisonous plant carries a caution about it.",
        why="clippings reach children, pets and stock long after the crew has left",
        hazard="poison",
        finds=_poison,
        covers=(POISON_SAID,),
    ),
    Need(
        "sap", Severity.ERROR, (PLANT_BOOK,),
        applies="techniques that cut a plant whose entry in the plant book speaks of sap or skin",
        must="Cutting a plant whose sap harms skin carries a caution about it.",
        why="some saps irritate; fig and citrus blister skin in sunlight within a day",
        hazard="sap on skin",
        finds=_sap,
        covers=(r"\bsap\b|irritat|blister|\brash\b|\bskin\b|\bjuice",),
    ),
)  # fmt: skip
