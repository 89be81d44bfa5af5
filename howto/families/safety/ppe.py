"""What to wear by task, each piece with its standard and who says so, and how the marks on it are read."""

import re
from dataclasses import dataclass
from typing import Literal

from howto.families.safety import references as by
from howto.model.reference import PRACTICE, Reference
from howto.quantities.amounts import Words, qty

Task = Literal[
    "hand clipping", "hedge trimming", "brush cutting", "mowing", "blowing", "chainsaw", "spraying", "potting",
    "lifting", "ladder work", "thorny pruning", "feeding",
]  # fmt: skip


CHAIN_SPEED_M_PER_S = {"0": 16.0, "1": 20.0, "2": 24.0, "3": 28.0}  # EN ISO 11393, tested within 0.2 m/s
IMPACT_M_PER_S = {"S": 12.0, "F": 45.0, "B": 120.0, "A": 190.0}  # EN 166, a 6 mm ball
_ANY = ("spectacles", "goggles", "shield")
IMPACT_WORN_AS = {"S": _ANY, "F": _ANY, "B": ("goggles", "shield"), "A": ("shield",)}


@dataclass(frozen=True, slots=True)
class Garment:
    """One thing to wear: what, the standard it is made to, the level to ask for, and who says so."""

    worn: str
    standard: str
    level: Words
    reference: Reference


SPECTACLES_F = Garment(
    "safety spectacles with side cover", "EN 166", f"F, {qty(IMPACT_M_PER_S['F'], 'm/s', 3)}", by.CLIPPING_EYES
)
GOGGLES_B = Garment("goggles or shield", "EN 166", f"B, {qty(IMPACT_M_PER_S['B'], 'm/s', 3)}", by.CLIPPING_EYES)
SPLASH_GOGGLES = Garment("goggles", "EN 166", "3, droplets; never mesh", by.MESH)
MUFFS_ON = Garment("ear muffs or plugs", "EN 352-1, EN 352-2", "by SNR, see the noise figures", by.EARS)
WORK_GLOVES = Garment("work gloves", "EN 388", "abrasion 2 or more", by.GLOVES)
THORN_GLOVES = Garment("long leather gloves", "EN 388", "puncture 3 or more; no level is thorn-proof", by.GLOVES)
BOOTS = Garment("boots with a firm sole", "EN ISO 20345", "steel or composite toe", PRACTICE)
CHEMICAL_GLOVES = Garment("chemical-resistant gloves", "EN ISO 374-1", "as the label says", by.LABEL_TRAINING)
DUST = Garment("dust mask", "EN 149", "FFP2", by.DUST_MASK)
SLEEVES = Garment(
    "long sleeves and trousers, socks and shoes", "none", "as the label says, at the least", by.LABEL_TRAINING
)

WEAR: dict[Task, tuple[Garment, ...]] = {
    "hand clipping": (WORK_GLOVES, SPECTACLES_F),
    "hedge trimming": (WORK_GLOVES, SPECTACLES_F, MUFFS_ON, BOOTS),
    "brush cutting": (WORK_GLOVES, GOGGLES_B, MUFFS_ON, BOOTS),
    "mowing": (MUFFS_ON, SPECTACLES_F, BOOTS),
    "blowing": (MUFFS_ON, SPECTACLES_F, DUST),
    "chainsaw": (
        Garment(
            "chain-saw trousers", "EN ISO 11393-2", "class over the chain's speed; C for unusual work", by.SAW_LEGS
        ),
        Garment("helmet with visor and muffs", "EN 397, EN 1731, EN 352-3", "mesh for chips alone", by.SAW_OTHERS),
        Garment("chain-saw gloves", "EN ISO 11393-4", "class over the chain's speed", by.SAW_OTHERS),
        Garment("chain-saw boots", "EN ISO 17249", "class over the chain's speed", by.SAW_OTHERS),
    ),
    "spraying": (CHEMICAL_GLOVES, SPLASH_GOGGLES, SLEEVES),
    "potting": (
        Garment("mask", "EN 149", "FFP2; on before the bag is opened", by.LEGIONELLA),
        Garment("gloves", "EN 388", "on before the bag is opened", by.LEGIONELLA),
    ),
    "lifting": (WORK_GLOVES, BOOTS),
    "ladder work": (Garment("shoes with a heel and a grip", "EN ISO 20347", "clean soles", PRACTICE),),
    "thorny pruning": (THORN_GLOVES, SPECTACLES_F, Garment("long sleeves", "none", "close woven", PRACTICE)),
    "feeding": (Garment("gloves", "EN 388", "dry", PRACTICE), DUST),
}


def class_for(chain_m_per_s: float) -> str | None:
    """Return the lowest class of chain-saw trousers that covers a chain speed, or None past the highest."""
    return next((name for name in CHAIN_SPEED_M_PER_S if name != "0" and covers(name, chain_m_per_s)), None)


def covers(class_: str, chain_m_per_s: float) -> bool:
    """Tell whether a class of chain-saw clothing covers a chain speed."""
    return CHAIN_SPEED_M_PER_S[class_] >= chain_m_per_s


# -- the marks under the hammer of a glove: EN 388:2016 + A1:2018 --

ABRASION_CYCLES = {1: 100, 2: 500, 3: 2000, 4: 8000}
COUP_INDEX = {1: 1.2, 2: 2.5, 3: 5.0, 4: 10.0, 5: 20.0}
TEAR_N = {1: 10, 2: 25, 3: 50, 4: 75}
PUNCTURE_N = {1: 20, 2: 60, 3: 100, 4: 150}
CUT_N = {"A": 2, "B": 5, "C": 10, "D": 15, "E": 22, "F": 30}
_MARKS = re.compile(r"(?:EN ?388\s*:?\s*)?([0-4X])([0-5X])([0-4X])([0-4X])([A-FX])?([PX])?", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Marks:
    """The levels of a glove as marked; None where it was not tested."""

    abrasion: int | None
    coup_cut: int | None
    tear: int | None
    puncture: int | None
    cut: str | None = None
    impact: bool = False


def read_marks(text: str) -> Marks | None:
    """Return the levels of marks such as `4X43DP`, or None where the text is no such mark."""
    found = _MARKS.fullmatch(re.sub(r"[\s\u00a0]+", "", text.replace("EN 388", "EN388")))
    if found is None:
        return None
    abrasion, coup, tear, puncture = (None if found[at] in "Xx" else int(found[at]) for at in range(1, 5))
    cut = found[5].upper() if found[5] and found[5] not in "Xx" else None
    return Marks(abrasion, coup, tear, puncture, cut, (found[6] or "").upper() == "P")


def cut_newtons(marks: Marks) -> int | None:
    """Return the cut force that a glove stands in newtons by the ISO 13997 letter, or None where it has none."""
    return CUT_N[marks.cut] if marks.cut else None
