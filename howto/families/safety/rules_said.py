"""Rules over techniques of every family: the standard that a caution names belongs to what is worn."""

import re
from collections.abc import Iterator
from typing import Any, Final

from howto.families.safety import references as by
from howto.findings import Severity
from howto.languages.tags import is_english
from howto.model.family import Breach, Rule, rule
from howto.model.reference import CEILING
from howto.model.work import AnyWork

# A number of a standard, the words of what it is for, and that in full.
STANDARDS: Final = (
    (r"EN ?(?:ISO )?11393-4", r"glove", "chain-saw gloves", by.SAW_OTHERS),
    (r"EN ?(?:ISO )?11393-5", r"gaiter", "chain-saw gaiters", by.SAW_OTHERS),
    (r"EN ?(?:ISO )?11393-6", r"jacket|upper|sleeve", "chain-saw jackets", by.SAW_OTHERS),
    (
        r"EN ?(?:ISO )?11393(?:-2)?|EN ?381(?:-5)?",
        r"trouser|\bleg|chap|glove|boot|jacket|gaiter",
        "chain-saw trousers",
        by.SAW_LEGS,
    ),
    (r"EN ?(?:ISO )?17249", r"boot", "chain-saw boots", by.SAW_OTHERS),
    (r"EN ?388", r"glove|gauntlet", "gloves", by.GLOVES),
    (r"EN ?(?:ISO )?374", r"glove|gauntlet", "chemical-resistant gloves", by.SAW_OTHERS),
    (r"EN ?1731", r"mesh|visor|face|eye|shield", "mesh visors", by.MESH),
    (r"EN ?166", r"eye|glasses|spectacle|goggle|visor|face|shield", "eye protection", by.EYES),
    (r"EN ?352", r"\bears?\b|muff|plug|defender|hearing|helmet", "ear muffs and plugs", by.EARS),
    (r"EN ?149", r"mask|respirator|FFP", "dust masks", by.DUST_MASK),
    (r"EN ?397|EN ?12492", r"helmet|hard hat", "helmets", by.SAW_OTHERS),
)


@rule(
    "safety.standard-number",
    Severity.WARNING,
    by.GLOVES,
    by.EYES,
    by.EARS,
    by.SAW_LEGS,
    by.SAW_OTHERS,
    by.MESH,
    by.DUST_MASK,
    applies="techniques whose cautions name a standard after the arrow",
)
def standard_fits(work: AnyWork) -> Iterator[Breach]:
    """A standard's number stands beside the thing it is a standard for.

    EN 388 gloves, EN 166 eyes, EN 352 ears, EN 1731 mesh, EN ISO 11393 chain-saw clothing: the wrong number
    buys the wrong thing.
    """
    if not is_english(work.technique.language):
        return
    for at, hazard in enumerate(work.technique.cautions):
        for piece in hazard.wear:
            found = [
                (number[0], full, words, source)
                for pattern, words, full, source in STANDARDS
                if (number := re.search(rf"\b{pattern}\b", piece, re.IGNORECASE))
            ]
            if not found or any(re.search(words, piece, re.IGNORECASE) for _, _, words, _ in found):
                continue
            written, full, _, source = found[0]
            bare = re.sub(rf"\s*\(?{re.escape(written)}\)?\s*", " ", piece).strip(" ,")
            yield Breach(
                field=f"cautions[{at}]",
                what=f"`{piece}` after the arrow",
                why=f"{written} is the standard of {full}",
                mend=f"write `{bare}` in place of `{piece}`" if bare else f"write what is worn before `{written}`",
                severity=CEILING[source.grade],
                reference=source,
            )


SAID: Final[tuple[Rule[Any], ...]] = (standard_fits,)
