from datetime import date

import pytest

from howto.layout.pages.leaflet import leaflet_sheet
from howto.layout.unset_letters import letter_findings
from howto.model.prose import prose
from howto.model.sheet import Code, Frame, Section, Sheet, TextMark
from howto.model.task import Plan
from howto.model.visit import Job, Visit
from howto.span import Span
from tests.support import sample
from tests.support.builders import DIGGING, technique


@pytest.fixture
def sheet() -> Sheet:
    day = date(2026, 10, 14)
    visit = Visit(
        id="v", site="Orchard end", date=day, language="vi", jobs=(Job(technique=technique(DIGGING).technique),)
    )
    return leaflet_sheet(sample.ready_visit(visit, ((),)), Plan(), day)


def frame(text: str) -> Frame:
    words = TextMark(text=text, at=(0, 9), size=9, face="head", colour="#000000")
    return Frame(name="01", width=9, height=9, ground="#ffffff", marks=(words,), alt="木", credit="木")


def test_a_letter_no_typeface_has_is_named(sheet: Sheet) -> None:
    assert letter_findings((sheet,), Span("v.md")) == ()
    odd = sheet.model_copy(update={"under": prose("Xin chào 草 và 木")})
    (one,) = letter_findings((odd,), Span("v.md", 3))
    assert (one.rule, str(one.severity), one.span.line) == ("fit.letter", "error", 3)
    assert one.what == "“草”, “木” cannot be printed, and “■” would stand there"
    assert one.mend == "take “草”, “木” out of its file and of crew.yaml, or say it in words"


def test_letters_of_all_frames_are_named_once_and_those_of_a_fallback_face_are_none() -> None:
    (one,) = letter_findings((frame("a 草"), frame("草 ⅓ b")), Span("t.md"))
    assert one.what == "“草” cannot be printed, and “■” would stand there"


def test_what_nobody_sees_what_is_read_aloud_and_what_a_code_opens_are_not_set(sheet: Sheet) -> None:
    assert letter_findings((frame("soft\u00ad wipe\u200b"),), Span("t.md")) == ()
    code = Section(heading="", blocks=(Code(url="https://example.org/草", label="Newest card"),))
    assert letter_findings((sheet.model_copy(update={"sections": (code,)}),), Span("v.md")) == ()
