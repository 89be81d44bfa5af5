"""A technique that still says what a new file says where the author's own words belong."""

from collections.abc import Iterator

from howto.fill_in import is_to_fill_in
from howto.model.family import Breach
from howto.model.passages import written
from howto.model.technique import AnyTechnique


def to_write(technique: AnyTechnique) -> Iterator[Breach]:
    """The words of a new file are written over before they are printed."""
    left = [(each.field, each.text) for each in written(technique) if is_to_fill_in(each.text)]
    if not left:
        return
    field, text = left[0]
    others = len(left) - 1
    more = f", and so do{'es' if others == 1 else ''} {others} more" if others else ""
    yield Breach(
        field=field,
        what=f"`{' '.join(text.split())}` stands as in a new file{more}",
        why="these words would be printed as they are on the card, in the pictures and in the client's leaflet",
        mend="write your own words in place of each text that starts with `Say`, or take its line out",
    )
