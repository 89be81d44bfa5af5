"""Words in braces on a visit stand for one thing, or are told with what to write."""

from howto.check.visit_words import check_visit_words
from howto.findings import Finding
from howto.model.prose import Run, plain, prose
from howto.model.ready import ReadyVisit
from howto.model.technique import Picture
from howto.model.visit import Visit
from howto.span import SourceText, Span
from tests.support import sample
from tests.support.reading import words_of

PATH = "visits/v.md"
SOURCES = {PATH: SourceText(PATH, "---\nsite: x\n---\nOne.\nAll {finished width} of it, and {passes} { passes.\n")}
SPANS = {"words": Span(PATH, 4), "words[0]": Span(PATH, 4), "jobs[0]": Span(PATH, 2), "after[0]": Span(PATH, 2)}
LOCATED = {Span(PATH, 4): next(iter(words_of(SOURCES[PATH], 4).values()))}


def visit(words: str, **changes: object) -> Visit:
    """Return a visit of two jobs, one of 900 mm and one of 700 mm, two passes each."""
    (job,) = sample.visit().jobs
    small = sample.MEASURES.model_copy(update={"finished_width_mm": 700.0})
    jobs = tuple(
        job.model_copy(update={"technique": sample.technique(measures=each), "what": "the ball of {finished width}"})
        for each in (sample.MEASURES, small)
    )
    return sample.visit(
        **{"jobs": jobs, "words": (prose(words),), "spans": SPANS, "located": LOCATED, "path": PATH, **changes}
    )


def check(made: Visit) -> tuple[Finding, ...]:
    """Return what is found of a visit's words."""
    return check_visit_words(made, ready(made).meanings, SOURCES)


def ready(made: Visit) -> ReadyVisit:
    """Return the visit with its words filled from its jobs' measures alone."""
    return sample.ready_visit(made, ((), ()))


def found(words: str, **changes: object) -> list[tuple[str, str, str]]:
    """Return what is wrong, why, and what to write."""
    notes = check(visit(words, **changes))
    assert {each.rule for each in notes} <= {"visit.words"}
    return [tuple(text.replace("\u00a0", " ") for text in (each.what, each.why, each.mend)) for each in notes]  # type: ignore[misc]


def test_what_all_jobs_agree_on_is_filled_and_each_jobs_own_words_from_its_own_measures() -> None:
    told = ready(visit("In {passes} passes.", after=(Picture(file="a.jpg", credit="{passes}"),))).visit
    assert plain(told.words[0]) == "In 2 passes."
    assert told.after[0].credit == "2"
    assert [job.what.replace("\u00a0", " ") for job in told.jobs] == ["the ball of 900 mm", "the ball of 700 mm"]
    assert found("In {passes} passes.") == []


def test_what_jobs_differ_in_is_told_with_what_each_has() -> None:
    assert found("All {finished width} of it.") == [
        (
            "`{finished width}` stands for more than one thing here",
            "the jobs of this visit have 900 mm and 700 mm",
            "write `900 mm` or `700 mm`",
        )
    ]


def test_what_stands_for_nothing_is_told_with_the_nearest() -> None:
    nothing = "no measure or figure of its jobs has that name"
    assert found("In {pases}.") == [("`{pases}` stands for nothing here", nothing, "write `{passes}`")]
    assert found("At {noon}.") == [
        ("`{noon}` stands for nothing here", nothing, "write `noon` without braces, or take it out")
    ]
    pictures = (Picture(file="a.jpg", alt="{noon}"),)
    assert len(found("Fine.", after=pictures)) == 1


def test_braces_alone_and_torn_apart_are_told() -> None:
    alone = ("a `{` without its `}`", "braces stand round the name of a measure or a figure")
    assert found("In { passes.") == [(*alone, "write the `}`, or take the `{` out")]
    torn = (Run(text="In {pas"), Run(text="ses", strong=True), Run(text="}."))
    notes = check(visit("").model_copy(update={"words": (torn,)}))
    assert [each.what for each in notes] == [alone[0]]


def test_the_finding_stands_at_the_very_words() -> None:
    (one,) = check(visit("All {finished width} of it."))
    assert (one.span.line, one.span.column, one.text) == (5, 5, SOURCES[PATH].line(5))
