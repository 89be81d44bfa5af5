"""A small shelf with a mark in every place where an author writes words, so that anything can be put there."""

import re
from pathlib import Path
from typing import Final

from PIL import Image

SLOT: Final = re.compile(r"«([a-z ]+)»")
FILES: Final = {
    "crew.yaml": """name: «crew name»
place: «place»
soil: «soil»
currency: €
language: en
contact: «contact»
words:
  es: {finished width: "«crew words»"}
""",
    "people.yaml": """- name: «person»
  signed off:
    - {technique: clip-a-ball, on: 2026-05-01, by: "«signed by»"}
""",
    "plants.yaml": """- botanical: «botanical»
  common: ["«common»"]
  kind: evergreen
  cautions: «plant caution»
""",
    "clipping/clip-a-ball.md": """---
title: Clip a ball «title»
family: clipping
plants: [Ilex crenata, "«plant»"]
season: early summer to late summer «season»
measures:
  shape: ball
  finished width: 700 mm ± 15 mm
  standing width: 780 mm
  passes: 2
---

A ball that reads as round «intro».

## Tools
- Hand shears «tool»: sharp, wiped clean «tool note»

## Materials
- Drop sheet «material»: 2 «material note»

## Steps
1. **Find the widest ring «step».** Stand over the plant and look straight down «text».
   - Key point: Work from the ring «key point».
   - Reason: The ring is the one line you can see whole «reason».
   - Check: Round to the eye «check».
   - Picture: ball.jpg
     - alt: A clipped ball «alt»
     - credit: the crew «credit»
     - 50 16: widest ring «mark»

## Cautions
- **Blades «caution».** Keep the free hand behind the handles «caution text». → gloves «wear», eye protection

## Finish
- [ ] The outline is round «finish»

## Aftercare
- Within 2 days: water once «care».
- Never: feed in the week of a clip «never».
""",
    "visits/2026-10-14-orchard-end.md": """---
site: Orchard end «site»
date: 2026-10-14
done:
  - technique: clip-a-ball
    what: the ball «what»
    plant: Ilex crenata «visit plant»
after:
  - {picture: done.jpg, alt: "a ball «visit alt»", credit: "the crew «visit credit»"}
---
The ball is round again «words».
""",
}
SLOTS: Final = tuple(name for text in FILES.values() for name in SLOT.findall(text))
NOT_PRINTED: Final = frozenset({"alt", "visit alt"})  # read aloud, and set by no typeface
NAMES: Final = frozenset(  # no sentence may stand there
    {"crew name", "place", "soil", "contact", "crew words", "person", "signed by", "botanical", "common"}
    | {"plant caution", "title", "plant", "season", "site", "visit plant"}
)


def put_up(root: Path) -> None:
    """Make the shelf's folders and pictures."""
    for name in ("clipping", "visits", "pictures"):
        (root / name).mkdir(parents=True)
    for name, colour in (("ball.jpg", "#447744"), ("done.jpg", "#887744")):
        Image.new("RGB", (1600, 1600), colour).save(root / "pictures" / name)


def fill(root: Path, put: dict[str, str]) -> None:
    """Write every file of the shelf with these words in these slots, and plain ones in the others."""
    plain = {"botanical": "Ilex parva", "common": "small holly", "plant": "Ilex crenata"}
    given = plain | {"place": "vale", "soil": "loam", "visit plant": "", "season": ""} | put
    for name, text in FILES.items():
        told = SLOT.sub(lambda found: given.get(found[1], found[1] if found[1] in NAMES else ""), text)
        (root / name).write_text(told.replace(" .", ".").replace(" :", ":"), encoding="utf-8", errors="surrogatepass")


def place_of(slot: str) -> tuple[str, int]:
    """Return the file of a slot, and its line."""
    name, text = next((name, text) for name, text in FILES.items() if f"«{slot}»" in text)
    return name, text[: text.index(f"«{slot}»")].count("\n") + 1
