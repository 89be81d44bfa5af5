"""Makes what a client is given after a visit: a leaflet on paper and phone, a calendar file, a message."""

from collections.abc import Callable, Mapping
from datetime import date
from pathlib import Path
from typing import Any, Final, NamedTuple

from howto.check.place import AUTHOR
from howto.compute.tasks import plan_of
from howto.findings import Finding, Severity
from howto.layout.pages.leaflet import leaflet_sheet
from howto.layout.pages.leaflet_photos import photo_frames
from howto.layout.pages.page_words import leaflet_words
from howto.layout.pages.plain import LONGEST, message
from howto.layout.unset_letters import letter_findings
from howto.model.family import Rule
from howto.model.photo import Photograph
from howto.model.ready import ReadyVisit
from howto.model.reference import FORMAT
from howto.model.sheet import Frame, Photo
from howto.read.photo import read_photo
from howto.render.calendar import calendar
from howto.render.html import page
from howto.render.image import jpeg
from howto.render.pdf import pdf
from howto.span import Span

LEAFLET: Final[Rule[Any]] = Rule(
    name="fit.leaflet",
    severity=Severity.ERROR,
    statement="A leaflet fits on one sheet of A4, both sides, at its text size; in large print on two.",
    why="a client keeps one sheet",
    references=(FORMAT,),
    applies="every leaflet",
)
Write = Callable[[str, bytes], None]


class Made(NamedTuple):
    """The words of a leaflet as a message, and what was found."""

    text: str = ""
    findings: tuple[Finding, ...] = ()


def leaflet(ready: ReadyVisit, root: Path, today: date, write: Write | None = None) -> Made:
    """Lay out a visit's leaflet, and where `write` is given render it and hand over each file."""
    visit, (plan, _) = ready.visit, plan_of(ready)
    photos, found = _photos(ready, root)
    sheet = leaflet_sheet(ready, plan, today, photos)
    found = (*found, *leaflet_words(ready), *letter_findings((sheet,), Span(visit.path)))
    data, pages = pdf(sheet, today)
    text = message(sheet, min(ready.crew.caption_limit, LONGEST))
    if pages > sheet.most_pages:
        what = f"the leaflet runs to {pages} pages"
        mend = "shorten the words to the client, or put some of the jobs on a second visit file"
        return Made(text, (*found, fit_finding(LEAFLET, Span(visit.path), visit.site, what, mend)))
    if write is not None:
        write(f"leaflets/{visit.id}.pdf", data)
        write(f"leaflets/{visit.id}.html", page(sheet).encode())
        write(f"leaflets/{visit.id}.ics", calendar(ready, plan, today))
        write(f"leaflets/{visit.id}.txt", f"{text}\n".encode())
    return Made(text, found)


def fit_finding(rule: Rule[Any], span: Span, text: str, what: str, mend: str) -> Finding:
    """Return the finding of a page that will not fit."""
    return rule.finding(span, what, AUTHOR.plain(f"{rule.statement.rstrip('.')}: {rule.why}"), mend, text)


def _photos(ready: ReadyVisit, root: Path) -> tuple[tuple[Photo, ...], tuple[Finding, ...]]:
    """Return the visit's own pictures as a page shows them, cleaned of all but their pixels; and what was found."""
    visit, ground = ready.visit, ready.crew.colours.ground
    read: dict[str, Photograph] = {}
    found: list[Finding] = []
    for name, pictures in (("before", visit.before), ("after", visit.after)):
        for at, picture in enumerate(pictures):
            span = visit.spans.get(f"{name}[{at}]", Span(visit.path))
            photo, notes = read_photo(root / "pictures", picture.file, span, picture.file, ground)
            found += notes
            if photo is not None:
                read[picture.file] = photo
    shown = [_photo(frame, caption, read) for frame, caption in photo_frames(visit, read)]
    return tuple(shown), tuple(found)


def _photo(frame: Frame, caption: str, read: Mapping[str, Photograph]) -> Photo:
    """Return a picture as a page shows it, with whom to thank for it."""
    told = f"{caption} ({frame.credit})" if frame.credit else caption
    return Photo(jpeg=jpeg(frame, read), width=frame.width, height=frame.height, alt=frame.alt, caption=told)
