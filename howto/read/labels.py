"""The words of a technique file by language: section names, step labels, and words of time; one table to grow."""

from dataclasses import dataclass
from typing import Final

from howto.read.nodes import tidy_key


@dataclass(frozen=True, slots=True)
class Labels:
    """The words of one language, the one that mends write first, others that are understood after it."""

    sections: dict[str, tuple[str, ...]]
    notes: dict[str, tuple[str, ...]]
    never: tuple[str, ...]
    yes: tuple[str, ...]
    no: tuple[str, ...]


ENGLISH: Final = Labels(
    sections={
        "tools": ("Tools", "Tool", "Tools needed"),
        "materials": ("Materials", "Material"),
        "steps": ("Steps", "Step", "Method"),
        "cautions": ("Cautions", "Caution", "Warnings", "Safety"),
        "finish": ("Finish", "Finish standard", "Finished"),
        "aftercare": ("Aftercare", "After care", "Care"),
    },
    notes={
        "key point": ("Key point", "Key points", "Keypoint"),
        "reason": ("Reason", "Reasons", "Why"),
        "check": ("Check", "Checks"),
        "picture": ("Picture", "Pictures", "Photo", "Photograph"),
        "focus": ("focus",),
        "alt": ("alt", "alt text"),
        "credit": ("credit", "photographer"),
    },
    never=("Never", "Do not", "Don't", "Don’t"),
    yes=("yes", "true", "y", "on"),
    no=("no", "false", "n", "off"),
)
SPANISH: Final = Labels(
    sections={
        "tools": ("Herramientas",),
        "materials": ("Materiales",),
        "steps": ("Pasos",),
        "cautions": ("Precauciones",),
        "finish": ("Acabado",),
        "aftercare": ("Cuidados posteriores", "Cuidados"),
    },
    notes={
        "key point": ("Punto clave",),
        "reason": ("Razón", "Motivo"),
        "check": ("Comprobación", "Comprobar"),
        "picture": ("Imagen", "Foto"),
        "focus": ("foco",),
        "alt": ("texto alternativo",),
        "credit": ("autoría",),
    },
    never=("Nunca", "No"),
    yes=("sí", "si"),
    no=("no",),
)
LANGUAGES: Final = {"en": ENGLISH, "es": SPANISH}
PICTURE_NOTES: Final = ("focus", "alt", "credit")


def labels_for(language: str) -> Labels:
    """Return the words of a language, English where there is no table for it."""
    return LANGUAGES.get(language.partition("-")[0].casefold(), ENGLISH)


def section_named(text: str, language: str) -> str | None:
    """Return which section a heading names, in its own language or in English, or None."""
    return _named(text, *(table.sections for table in (labels_for(language), ENGLISH)))


def note_named(text: str, language: str) -> str | None:
    """Return which step note a label names, in its own language or in English, or None."""
    return _named(text, *(table.notes for table in (labels_for(language), ENGLISH)))


def _named(text: str, *tables: dict[str, tuple[str, ...]]) -> str | None:
    """Return the first name in the tables that `text` is a word for."""
    wanted = tidy_key(text)
    for table in tables:
        for name, words in table.items():
            if wanted in {tidy_key(word) for word in words}:
                return name
    return None
