"""The sentences of a new technique file that are there to be written over."""

from typing import Final

GOOD: Final = "Say in a sentence or two what good looks like, and why it is worth the trouble."
KEY_POINT: Final = "Say the one thing that makes or breaks this step."
WHY: Final = "Say why."
WORK: Final = "Say what to do, in one sentence."
HOW: Final = "Say how."
CHECK: Final = "Say what to measure or look at."
PLACE: Final = "Say how the place is left."
DONE: Final = "Say what is true when it is done."
CLIENT_DOES: Final = "say what the client does first."
CLIENT_LOOKS: Final = "say what they look for."
PICTURE: Final = "say what the picture shows"  # as the page on which a photograph is marked writes it
TO_FILL_IN: Final = frozenset(
    each.casefold().rstrip(".")
    for each in (GOOD, KEY_POINT, WHY, WORK, HOW, CHECK, PLACE, DONE, CLIENT_DOES, CLIENT_LOOKS, PICTURE)
)


def is_to_fill_in(text: str) -> bool:
    """Tell whether a text is still what a new file says in its place."""
    return " ".join(text.split()).casefold().rstrip(".") in TO_FILL_IN
