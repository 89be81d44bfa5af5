"""What families say of their own accord, in other languages: labels of figures and measures, words and units.

Keys are English in small letters, with `{}` for each amount; a translation has as many. What a client reads and
what an apprentice reads of clipping is told in every language here; a crew adds its own under `words:`.
"""

from typing import Final

from howto.languages.phrases.es import SPANISH, SPANISH_UNITS
from howto.languages.phrases.mi import MAORI, MAORI_UNITS
from howto.languages.phrases.vi import VIETNAMESE, VIETNAMESE_UNITS

PHRASES: Final = {"es": SPANISH, "vi": VIETNAMESE, "mi": MAORI}
UNITS: Final = {"es": SPANISH_UNITS, "vi": VIETNAMESE_UNITS, "mi": MAORI_UNITS}
# Units that are words, and so are told in every language; symbols are the same in all of them.
UNIT_WORDS: Final = frozenset(SPANISH_UNITS)
