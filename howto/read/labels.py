"""The words of a technique file by language: section names, step labels, and words of time; one table to grow."""

from dataclasses import dataclass
from typing import Final

from howto.languages.tags import base
from howto.languages.time_words import folded
from howto.read.nodes import tidy_key


@dataclass(frozen=True, slots=True)
class Labels:
    """The words of one language, the one that mends write first, others that are understood after it.

    `forms` are the times of aftercare as mends show them; `time_words` tells how they are read.
    """

    sections: dict[str, tuple[str, ...]]
    notes: dict[str, tuple[str, ...]]
    never: tuple[str, ...]
    yes: tuple[str, ...]
    no: tuple[str, ...]
    forms: tuple[str, ...]


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
    forms=(
        "Within 2 days",
        "After 6 weeks",
        "Every 3 days",
        "Every week for 12 weeks",
        "In spring",
        "In late summer",
        "In March",
        "Next visit",
        "Always",
        "Never",
    ),
)
SPANISH: Final = Labels(
    sections={
        "tools": ("Herramientas", "Herramienta"),
        "materials": ("Materiales", "Material"),
        "steps": ("Pasos", "Paso"),
        "cautions": ("Precauciones", "Precaución", "Advertencias", "Seguridad"),
        "finish": ("Acabado", "Acabado final", "Terminado"),
        "aftercare": ("Cuidados posteriores", "Cuidados"),
    },
    notes={
        "key point": ("Punto clave", "Puntos clave"),
        "reason": ("Razón", "Razones", "Motivo", "Por qué"),
        "check": ("Comprobación", "Comprobar", "Compruebe"),
        "picture": ("Imagen", "Foto", "Fotografía"),
        "focus": ("foco",),
        "alt": ("texto alternativo",),
        "credit": ("autoría", "fotógrafo"),
    },
    never=("Nunca", "No"),
    yes=("sí", "si"),
    no=("no",),
    forms=(
        "En 2 días",
        "Después de 6 semanas",
        "Cada 3 días",
        "Cada semana durante 12 semanas",
        "En primavera",
        "A finales de verano",
        "En marzo",
        "Próxima visita",
        "Siempre",
        "Nunca",
    ),
)
VIETNAMESE: Final = Labels(
    sections={
        "tools": ("Dụng cụ",),
        "materials": ("Vật liệu",),
        "steps": ("Các bước", "Bước"),
        "cautions": ("Chú ý", "Cẩn thận", "An toàn"),
        "finish": ("Tiêu chuẩn hoàn thành", "Hoàn thành"),
        "aftercare": ("Chăm sóc sau đó", "Chăm sóc"),
    },
    notes={
        "key point": ("Điểm chính",),
        "reason": ("Lý do", "Lí do", "Vì sao"),
        "check": ("Kiểm tra",),
        "picture": ("Ảnh", "Hình"),
        "focus": ("tiêu điểm",),
        "alt": ("mô tả ảnh", "mô tả"),
        "credit": ("người chụp",),
    },
    never=("Không bao giờ", "Đừng", "Không"),
    yes=("có",),
    no=("không",),
    forms=(
        "Trong 2 ngày",
        "Sau 6 tuần",
        "Mỗi 3 ngày",
        "Mỗi tuần trong 12 tuần",
        "Vào mùa xuân",
        "Cuối mùa hè",
        "Vào tháng 3",
        "Lần đến tiếp theo",
        "Luôn luôn",
        "Đừng",
    ),
)
MAORI: Final = Labels(
    sections={
        "tools": ("Ngā taputapu", "Taputapu"),
        "materials": ("Ngā rauemi", "Rauemi"),
        "steps": ("Ngā hipanga", "Hipanga"),
        "cautions": ("Kia tūpato",),
        "finish": ("Te paerewa whakaoti", "Whakaoti"),
        "aftercare": ("Te tiaki i muri mai", "Te tiaki"),
    },
    notes={
        "key point": ("Mea nui",),
        "reason": ("Take", "Te take"),
        "check": ("Tirohia",),
        "picture": ("Whakaahua", "Pikitia"),
        "focus": ("arotahi",),
        "alt": ("kupu mō te whakaahua",),
        "credit": ("kaiwhakaahua",),
    },
    never=("Kaua e", "Kaua"),
    yes=("āe",),
    no=("kāo", "kāore"),
    forms=(
        "I roto i te 2 rā",
        "I muri i te 6 wiki",
        "Ia 3 rā",
        "Ia wiki mō te 12 wiki",
        "I te kōanga",
        "I te mutunga o te raumati",
        "I a Māehe",
        "Te haerenga mai e whai ake nei",
        "I ngā wā katoa",
        "Kaua",
    ),
)
LANGUAGES: Final = {"en": ENGLISH, "es": SPANISH, "vi": VIETNAMESE, "mi": MAORI}
PICTURE_NOTES: Final = ("focus", "alt", "credit")


def labels_for(language: str) -> Labels:
    """Return the words of a language, English where there is no table for it."""
    return LANGUAGES.get(base(language), ENGLISH)


def section_named(text: str, language: str) -> str | None:
    """Return which section a heading names, in its own language or in English, or None."""
    return _named(text, *(table.sections for table in (labels_for(language), ENGLISH)))


def note_named(text: str, language: str) -> str | None:
    """Return which step note a label names, in its own language or in English, or None."""
    return _named(text, *(table.notes for table in (labels_for(language), ENGLISH)))


def _named(text: str, *tables: dict[str, tuple[str, ...]]) -> str | None:
    """Return the first name in the tables that `text` is a word for, its accents left aside."""
    wanted = folded(tidy_key(text))
    for table in tables:
        for name, words in table.items():
            if wanted in {folded(tidy_key(word)) for word in words}:
                return name
    return None
