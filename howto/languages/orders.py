"""Words in which aftercare asks or forbids, by language: verbs, how much, garden things, until when.

Patterns are matched on small letters without accents. A language that has no verbs here is not judged.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final

from howto.languages.tags import base

_NOTHING: Final = "(?!)"  # matches nowhere


@dataclass(frozen=True)
class OrderWords:
    """How one language orders and forbids; each text is a pattern.

    `lead` may stand before a verb, `no` forbids it. `kept` and `dry` are bans without a verb of their own: leave it
    uncut, keep it dry. `clause` parts a sentence. `long`, `week` and `until` say how long a ban holds, `free` are the
    words beside them that are no other condition. `bought` starts a line about a purchase, `each` says that an amount
    is for one of several, `same` starts a line that goes on from the one before.
    """

    verbs: Mapping[str, str] = field(default_factory=dict)
    things: Mapping[str, str] = field(default_factory=dict)
    light: frozenset[str] = frozenset()
    deep: frozenset[str] = frozenset()
    deep_verbs: tuple[str, ...] = ()
    lead: str = ""
    no: str = _NOTHING
    kept: str = _NOTHING
    dry: str = _NOTHING
    clause: str = r"[.;:!?]\s*"
    long: str = _NOTHING
    week: str = _NOTHING
    until: str = _NOTHING
    months_only: str = _NOTHING
    counts: Mapping[str, int] = field(default_factory=dict)
    days: Mapping[str, int] = field(default_factory=dict)
    free: frozenset[str] = frozenset()
    bought: str = _NOTHING
    each: str = _NOTHING
    same: str = _NOTHING


def _set(words: str) -> frozenset[str]:
    return frozenset(words.split())


ENGLISH: Final = OrderWords(
    verbs={
        "water": r"water(?:ing)?|soak(?:ing)?|irrigat(?:e|ing)|hos(?:e|ing)",
        "feed": r"feed(?:ing)?|fertili[sz](?:e|ing)",
        "cut": r"cut(?:ting)?|clip(?:ping)?|trim(?:ming)?|prun(?:e|ing)|mow(?:ing)?|shear(?:ing)?|shorten(?:ing)?",
        "mulch": r"mulch(?:ing)?",
        "rake": r"rak(?:e|ing)",
        "cover": r"cover(?:ing)?",
        "spray": r"spray(?:ing)?",
        "dig": r"dig(?:ging)?|fork(?:ing)?",
        "tie": r"t(?:ie|ying)",
    },
    things={
        "lawn": "lawn|lawns|grass|turf|sward|mow",
        "hedge": "hedge|hedges|hedging",
        "ball": "ball|balls|topiary|dome|domes|cone|cones|shape|shapes",
        "tree": "tree|trees|pear|pears|apple|apples|espalier|plum|plums|cherry",
        "rose": "rose|roses",
        "pot": "pot|pots|tub|tubs|container|containers",
        "bed": "bed|beds|border|borders|perennials",
        "climber": "climber|climbers|wisteria|vine|vines",
        "seed heads": "heads|seedheads",
        "blossom": "blossom|flowers|blooms",
        "bulbs": "bulb|bulbs|daffodils|tulips",
    },
    light=_set("lightly light little sparingly splash sip"),
    deep=_set("deeply deep thoroughly generously heavily well plenty"),
    deep_verbs=("soak",),
    lead=r"(?:(?:please|then|also|once|again|gently|only|just|always)\s+)*",
    no=r"(?:do not|don't|never|avoid|stop|no|hold off|hold back on|skip)\s+(?:any\s+|the\s+)?",
    kept=(
        r"leave\s+(?:.*?)\s*\b(?:uncut|unclipped|untrimmed|unpruned|unmown|alone|be|standing|to grow|on)\b"
        r"|let\s+(?:.*?)\s*\b(?:grow|run up|stand)\b"
    ),
    dry=r"keep\s+(?:.*?)\s*\bdry\b",
    clause=r"[.;:!?]\s*|,\s*|\s+\b(?:and then|and|but|then)\b\s+",
    long=r"\b(?:for|within|in)\s+(?:the\s+(?:first|next)\s+)?(?P<many>\d{1,3}|[a-z]+)\s+"
    r"(?P<unit>day|week|fortnight|month)s?\b",
    week=r"\b(?:this week|in the (?:first )?week(?: of \w+(?: \w+)?)?)\b",
    until=r"\b(?:until|before)\s+(?P<season>(?:early |mid |late )?[a-z]+)\b",
    months_only=r"\bin\s+(?P<season>(?:early |mid |late )?[a-z]+)\b",
    counts={"a": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "eight": 8, "twelve": 12},
    days={"day": 1, "week": 7, "fortnight": 14, "month": 30},
    free=_set("it them the a an your this these that again yet any all at more seed plants"),
    bought=r"(?:please )?(?:order|buy|get|fetch|keep|have|put by)\b",
    each=r"\b(?:each|every|per|apiece|a (?:plant|tree|pot|metre|meter|week|day))\b",
    same=r"the same\b",
)
SPANISH: Final = OrderWords(
    verbs={
        "water": r"rieg[aue]+[ns]?|reg(?:ar|ando|ueis)|empap(?:e|a|en|ar)",
        "feed": r"abon(?:e|a|en|es|ar|ando)|fertili(?:ce|za|cen|ces|zar|zando)",
        "cut": r"(?:re)?cort(?:e|a|en|es|ar|ando)|pod(?:e|a|en|es|ar|ando)|sieg(?:ue|a|uen|ues)|seg(?:ar|ando)",
        "mulch": r"acolch(?:e|a|en|es|ar|ando)",
        "rake": r"rastrill(?:e|a|en|es|ar|ando)",
        "cover": r"cubr(?:a|e|an|as|iendo)|cubrir|tap(?:e|a|en|es|ar|ando)",
        "spray": r"pulveri(?:ce|za|cen|ces|zar|zando)|fumig(?:ue|a|uen|ues|ar|ando)",
        "dig": r"cav(?:e|a|en|es|ar|ando)",
        "tie": r"at(?:e|a|en|es|ar|ando)",
    },
    things={
        "lawn": "cesped|hierba|prado|siegue",
        "hedge": "seto|setos",
        "ball": "bola|bolas|topiaria|cupula|cupulas|cono|conos|forma|formas",
        "tree": "arbol|arboles|peral|perales|manzano|manzanos|espaldera|ciruelo|ciruelos|cerezo|cerezos",
        "rose": "rosa|rosas|rosal|rosales",
        "pot": "maceta|macetas|tiesto|tiestos|jardinera|jardineras",
        "bed": "arriate|arriates|parterre|parterres|bancal|bancales|vivaces",
        "climber": "trepadora|trepadoras|glicinia|glicinias|parra|parras|vid|vides",
        "seed heads": "cabezas|cabezuelas",
        "blossom": "flor|flores",
        "bulbs": "bulbo|bulbos|narcisos|tulipanes",
    },
    light=_set("poco ligeramente ligero moderacion escasamente"),
    deep=_set("fondo abundante abundantemente abundancia profundamente bien mucho generosamente"),
    deep_verbs=("empap",),
    lead=r"(?:(?:por favor|luego|despues|tambien|otra vez|solo|siempre)[\s,]+)*",
    no=r"(?:no vuelvan? a|no|nunca|jamas|evite|evita|evitar|dej[ea] de|sin)\s+(?:(?:l[oae]s?|el)\s+)?",
    kept=r"dej[ea]n?(?:l[oa]s?)?\s*(?:.*?)\s*\b(?:sin (?:re)?(?:cortar|podar|segar|tocar)|crecer|en paz|en pie)\b",
    dry=r"mante(?:nga|n)(?:l[oa]s?)?\s*(?:.*?)\s*\bsec[oa]s?\b",
    clause=r"[.;:!?]\s*|,\s*|\s+\b(?:y luego|y despues|y|e|pero|luego)\b\s+",
    long=r"\b(?:durante|por|en|dentro de)\s+(?:l[oa]s\s+)?(?:(?:primer|proxim)[oa]s\s+)?(?P<many>\d{1,3}|[a-z]+)\s+"
    r"(?P<unit>dia|semana|quincena|mes)(?:es|s)?\b",
    week=r"\b(?:esta semana|(?:en|durante) la (?:primera )?semana(?: del? \w+(?: \w+)?)?)\b",
    until=r"\b(?:hasta|antes de)\s+(?:(?:el|la)\s+)?(?P<season>(?:(?:principios|mediados|finales) de )?[a-z]+)\b",
    months_only=r"\ben\s+(?P<season>(?:(?:principios|mediados|finales) de )?[a-z]+)\b",
    counts={
        "un": 1, "una": 1, "dos": 2, "tres": 3, "cuatro": 4, "cinco": 5, "seis": 6, "ocho": 8, "doce": 12,
    },
    days={"dia": 1, "semana": 7, "quincena": 14, "mes": 30},
    free=_set("el la los las lo le les un una su sus este esta estos estas otra vez mas todavia aun plantas de del a"),
    bought=r"(?:por favor,? )?(?:pid|compr|encarg|cons[ei]|busqu|tra[ei]|tenga|guard)\w*\b",
    each=r"\b(?:cada|todos los|todas las|por (?:planta|arbol|maceta|metro|semana|dia)|a la semana|al dia)\b",
    same=r"(?:lo mismo|igual)\b",
)  # fmt: skip
VIETNAMESE: Final = OrderWords(bought=r"(?:dat|mua|lay)\b", each=r"\b(?:moi|tung)\b", same=r"nhu tren\b")
MAORI: Final = OrderWords(bought=r"(?:hokona|otahia|tikina)\b", each=r"\b(?:ia|takitahi)\b", same=r"pera\b")
ORDERS: Final = {"en": ENGLISH, "es": SPANISH, "vi": VIETNAMESE, "mi": MAORI}


def order_words(language: str) -> OrderWords:
    """Return the words in which a language orders; none where we do not know it."""
    return ORDERS.get(base(language), OrderWords())
