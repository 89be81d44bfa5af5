"""The rules of picture files: looked for while a picture is opened, so they have no check of their own."""

from typing import Any, Final

from howto.findings import Severity
from howto.model.family import Rule
from howto.model.reference import FORMAT


def _rule(name: str, statement: str, why: str) -> Rule[Any]:
    return Rule(
        name=f"file.{name}",
        severity=Severity.ERROR,
        statement=statement,
        why=why,
        references=(FORMAT,),
        applies="pictures of steps and visits",
    )


MISSING: Final = _rule(
    "picture-missing", "A picture that is named is in the pictures folder.", "the step would be published without it"
)
OUTSIDE: Final = _rule(
    "picture-outside",
    "Pictures are taken from the pictures folder and from nowhere else.",
    "only pictures kept with the shelf are published, so that nothing else can slip out",
)
KIND: Final = _rule(
    "picture-kind",
    "A picture is a JPEG, PNG or WebP file, whatever its name ends in.",
    "these are what every phone and computer can show",
)
DAMAGED: Final = _rule(
    "picture-damaged", "A picture is whole.", "one that breaks off or makes no sense would be published grey"
)
TOO_LARGE: Final = _rule(
    "picture-too-large",
    "A picture has no more pixels than a small computer can open.",
    "it is unpacked in memory: a plain JPEG of up to 178 megapixels fits, other kinds are smaller",
)
PHOTO_RULES: Final[tuple[Rule[Any], ...]] = (MISSING, OUTSIDE, KIND, DAMAGED, TOO_LARGE)
