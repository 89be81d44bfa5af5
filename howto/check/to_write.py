"""A technique that still says what a new file says where the author's own words belong."""

from collections.abc import Iterator

from howto.findings import Severity
from howto.model.family import Breach, rule
from howto.model.passages import written
from howto.model.prompts import is_to_fill_in
from howto.model.reference import FORMAT
from howto.model.work import AnyWork


@rule("technique.to-write", Severity.WARNING, FORMAT, applies="every technique")
def to_write(work: AnyWork) -> Iterator[Breach]:
    """Nothing still says what a new file says in its place.

    words that are there to be written over would reach the crew, followers and clients
    """
    left = [(each.field, each.text) for each in written(work.technique) if is_to_fill_in(each.text)]
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
