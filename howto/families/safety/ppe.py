"""What to wear by task, each piece with the number of its standard and who says so."""

from dataclasses import dataclass
from typing import Literal

from howto.families.safety import references as by
from howto.model.reference import PRACTICE, Reference

Task = Literal[
    "hand clipping", "hedge trimming", "brush cutting", "mowing", "blowing", "chainsaw", "spraying", "potting",
    "lifting", "ladder work", "thorny pruning", "feeding",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Piece:
    """One thing to wear: what, the standard it is made to, the level to ask for, and who says so."""

    worn: str
    standard: str
    level: str
    reference: Reference


SPECTACLES_F = Piece("safety spectacles with side cover", "EN 166", "F, 45 m/s", by.CLIPPING_EYES)
GOGGLES_B = Piece("goggles or shield", "EN 166", "B, 120 m/s", by.CLIPPING_EYES)
SPLASH_GOGGLES = Piece("goggles", "EN 166", "3, droplets; never mesh", by.MESH)
MUFFS_ON = Piece("ear muffs or plugs", "EN 352-1, EN 352-2", "by SNR, see the noise figures", by.EARS)
WORK_GLOVES = Piece("work gloves", "EN 388", "abrasion 2 or more", by.GLOVES)
THORN_GLOVES = Piece("long leather gloves", "EN 388", "puncture 3 or more; no level is thorn-proof", by.GLOVES)
BOOTS = Piece("boots with a firm sole", "EN ISO 20345", "steel or composite toe", PRACTICE)
CHEMICAL_GLOVES = Piece("chemical-resistant gloves", "EN ISO 374-1", "as the label says", by.LABEL_TRAINING)
DUST = Piece("dust mask", "EN 149", "FFP2", by.DUST_MASK)
SLEEVES = Piece(
    "long sleeves and trousers, socks and shoes", "none", "as the label says, at the least", by.LABEL_TRAINING
)

WEAR: dict[Task, tuple[Piece, ...]] = {
    "hand clipping": (WORK_GLOVES, SPECTACLES_F),
    "hedge trimming": (WORK_GLOVES, SPECTACLES_F, MUFFS_ON, BOOTS),
    "brush cutting": (WORK_GLOVES, GOGGLES_B, MUFFS_ON, BOOTS),
    "mowing": (MUFFS_ON, SPECTACLES_F, BOOTS),
    "blowing": (MUFFS_ON, SPECTACLES_F, DUST),
    "chainsaw": (
        Piece("chain-saw trousers", "EN ISO 11393-2", "class over the chain's speed; C for unusual work", by.SAW_LEGS),
        Piece("helmet with visor and muffs", "EN 397, EN 1731, EN 352-3", "mesh for chips alone", by.SAW_OTHERS),
        Piece("chain-saw gloves", "EN ISO 11393-4", "class over the chain's speed", by.SAW_OTHERS),
        Piece("chain-saw boots", "EN ISO 17249", "class over the chain's speed", by.SAW_OTHERS),
    ),
    "spraying": (CHEMICAL_GLOVES, SPLASH_GOGGLES, SLEEVES),
    "potting": (
        Piece("mask", "EN 149", "FFP2; on before the bag is opened", by.LEGIONELLA),
        Piece("gloves", "EN 388", "on before the bag is opened", by.LEGIONELLA),
    ),
    "lifting": (WORK_GLOVES, BOOTS),
    "ladder work": (Piece("shoes with a heel and a grip", "EN ISO 20347", "clean soles", PRACTICE),),
    "thorny pruning": (THORN_GLOVES, SPECTACLES_F, Piece("long sleeves", "none", "close woven", PRACTICE)),
    "feeding": (Piece("gloves", "EN 388", "dry", PRACTICE), DUST),
}
