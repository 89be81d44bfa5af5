from datetime import date

import pytest

from howto.findings import Finding
from howto.model.family import AnyFamily, Family
from howto.model.measures import Measures
from howto.model.prose import plain
from howto.model.technique import Picture
from howto.model.visit import Visit
from howto.read.visit import Known, read_visit
from howto.span import SourceText
from tests.support import sample
from tests.support.reading import FAMILIES, read, told

TEXT = """---
site: Orchard end
date: 2026-10-14
next visit: 25 November 2026
language: en
print: large
may publish: yes
revision: 2
before: old.jpg
after:
  - picture: new.jpg
    focus: 60 40
    alt: The pair by the step
    credit: the crew
done:
  - technique: clip-a-ball
    what: the pair by the front step
    count: 2
    area: 1500 sq ft
    plant: box
    measures: {finished width: 700 mm, passes: 3}
  - technique: Clip a ball
---
Thank you for the tea.

The hose is back on its hook.
"""


class Lawn(Measures):
    """The measures of a lawn."""

    area_m2: float | None = None


def known() -> Known:
    technique, _ = read()
    assert technique is not None
    return Known({technique.id: technique}, FAMILIES, frozenset({"mow-by-thirds"}))


def visit(text: str = TEXT) -> tuple[Visit | None, tuple[Finding, ...]]:
    return read_visit(SourceText("techniques/visits/2026-10-14-orchard-end.md", text), known())


def swapped(old: str, new: str) -> tuple[Visit | None, tuple[Finding, ...]]:
    assert TEXT.count(old) == 1
    return visit(TEXT.replace(old, new))


def test_a_right_visit_is_read() -> None:
    found, findings = visit()
    assert findings == ()
    assert found is not None
    assert (found.id, found.site) == ("2026-10-14-orchard-end", "Orchard end")
    assert (found.date, found.next_visit) == (date(2026, 10, 14), date(2026, 11, 25))
    assert (found.language, found.large_print, found.may_publish, found.revision) == ("en", True, True, 2)
    assert [plain(each) for each in found.words] == ["Thank you for the tea.", "The hose is back on its hook."]
    assert found.before == (Picture(file="old.jpg"),)
    assert found.after == (
        Picture(file="new.jpg", focus_percent=(60.0, 40.0), alt="The pair by the step", credit="the crew"),
    )
    assert len(found.version) == 6


def test_a_job_has_this_gardens_measures_over_the_techniques() -> None:
    found, _ = visit()
    assert found is not None
    first, second = found.jobs
    assert (first.what, first.count, first.plant) == ("the pair by the front step", 2, "box")
    # 1500 sq ft of 0.09290304 m2 each (NIST SP 811, 2008).
    assert first.area_m2 == pytest.approx(139.35456, abs=1e-9)
    measures = first.technique.measures
    assert (measures.shape, measures.finished_width_mm, measures.passes) == ("ball", 700.0, 3)
    assert measures.tolerances == {}
    assert measures.written == {"shape": "ball", "finished_width_mm": "700 mm", "passes": "3"}
    assert second.technique.measures.finished_width_mm == 900.0
    assert second.technique.measures.tolerances == {"finished_width_mm": 20.0}


@pytest.mark.parametrize(
    ("field", "line", "text"),
    [
        ("site", 2, "Orchard end"),
        ("date", 3, "2026-10-14"),
        ("next_visit", 4, "25 November 2026"),
        ("before[0]", 9, "old.jpg"),
        ("after", 10, "after"),
        ("after[0]", 11, "picture: new.jpg"),
        ("jobs[0]", 16, "clip-a-ball"),
        ("jobs[0].area_m2", 19, "1500 sq ft"),
        ("jobs[0].measures.finished_width_mm", 21, "700 mm"),
        ("words[1]", 26, "The hose is back on its hook."),
    ],
)
def test_every_part_knows_its_place(field: str, line: int, text: str) -> None:
    found, _ = visit()
    assert found is not None
    span = found.spans[field]
    assert (span.line, TEXT.split("\n")[line - 1][span.column - 1 : span.end_column - 1]) == (line, text)


@pytest.mark.parametrize(
    ("old", "new", "place", "mend"),
    [
        ("  - technique: Clip a ball\n", "  - technique: clip-a-bal\n", (22, 16, 26), "write `technique: clip-a-ball`"),
        (
            "  - technique: Clip a ball\n",
            "  - technique: sing\n",
            (22, 16, 20),
            "write the name of a technique's file without `.md`",
        ),
    ],
)
def test_an_unknown_technique_is_offered_the_nearest(
    old: str, new: str, place: tuple[int, int, int], mend: str
) -> None:
    _, (finding,) = swapped(old, new)
    assert told((finding,)) == [("file.unknown-technique", *place)]
    assert (finding.why, finding.mend) == ("the shelf has `clip-a-ball` and `mow-by-thirds`", mend)


def test_a_shelf_without_techniques_says_so() -> None:
    source = SourceText("v.md", "---\nsite: a\ndate: 2026-10-14\ndone: clip\n---\n")
    assert read_visit(source, Known({}, FAMILIES))[1][0].why == "the shelf has no techniques yet"


def test_a_technique_that_could_not_be_read_is_not_called_unknown() -> None:
    found, findings = swapped("  - technique: Clip a ball\n", "  - technique: mow-by-thirds.md\n")
    assert findings == ()
    assert found is not None
    assert len(found.jobs) == 1


@pytest.mark.parametrize(
    ("old", "new", "rule", "line", "mend"),
    [
        ("site: Orch", "siet: Orch", "unknown-key", 2, "write `site:`"),
        (
            "site: Orchard end\n",
            "",
            "missing-key",
            2,
            "write a line `site: Orchard end` between the two lines of `---`",
        ),
        ("date: 2026-10-14", "date: 10/14/2026", "date", 3, "write `date: 2026-10-14`"),
        ("date: 2026-10-14", "date: 0001-01-01", "date", 3, "write the year again, such as `date: 2028-01-01`"),
        ("date: 2026-10-14", "date: 9999-12-31", "date", 3, "write the year again, such as `date: 2028-12-31`"),
        ("site: Orchard end", f"site: {'Orchard ' * 8}", "too-long", 2, "write it in at most 60 characters"),
        ("print: large", "print: huge", "unknown-word", 6, "write `large` or `normal`"),
        (
            "may publish: yes",
            "may publish:",
            "value",
            7,
            "write it after the colon, or take the line `may publish:` out",
        ),
        ("may publish: yes", "may publish: ask", "value", 7, "write `may publish: yes` or `may publish: no`"),
        ("old.jpg", "../old.jpg", "picture", 9, "move the picture there and write its name alone: `old.jpg`"),
        (
            "  - picture: new.jpg\n    focus",
            "  - focus",
            "picture",
            11,
            "write `after: name.jpg`, or `after: {picture: name.jpg, alt: what it shows}`",
        ),
        ("focus: 60 40", "focus: 60 140", "focus", 12, "write `focus: 60 100`"),
        ("    alt:", "    atl:", "unknown-key", 13, "write `alt:`"),
        ("credit: the crew", "credit:", "value", 14, "write it after the colon, or take the line `credit:` out"),
        ("count: 2", "count: a few", "value", 18, "write a number from 1 to 10000, such as `count: 1`"),
        ("count: 2", f"count: 1{'0' * 40}", "bound", 18, "write `count: 10000`, or another number from 1 to 10000"),
        ("1500 sq ft", "1500 ft", "quantity", 19, "write an area, such as `140 m2`"),
        (
            "1500 sq ft",
            "0 m2",
            "bound",
            19,
            "write `area: 140 m2`, or another number more than 0 m2 and at most 100 ha",
        ),
        ("finished width: 700", "finished with: 700", "unknown-key", 21, "write `finished width:`"),
        ("finished width: 700 mm", "finished width: 700", "quantity", 21, "write `700 mm`"),
        ("passes: 3", "passes: 30", "bound", 21, "write `passes: 12`, or another amount at least 1 and at most 12"),
        ("{finished width: 700 mm, passes: 3}", "small", "value", 21, "write `measures: {shape: ball}`"),
        (
            "  - technique: Clip a ball\n",
            "  - count: 2\n",
            "missing-key",
            22,
            "write a line `technique:` and the name of its file in this job",
        ),
        ("  - technique: Clip a ball\n", "  - tecnique: clip-a-ball\n", "unknown-key", 22, "write `technique:`"),
        ("  - technique: Clip a ball\n", "  - technique:\n", "value", 22, "write it after the colon"),
        (
            "  - technique: Clip a ball\n",
            "  - [a]\n",
            "value",
            15,
            "write a line `  - technique:` and the name of a technique file under `done:`",
        ),
    ],
)
def test_a_key_with_a_slip_is_explained(old: str, new: str, rule: str, line: int, mend: str) -> None:
    _, (finding,) = swapped(old, new)
    assert (finding.rule, finding.span.line, finding.mend) == (f"file.{rule}", line, mend)


def test_a_job_may_be_a_name_alone_and_blank_keys_are_left_out() -> None:
    text = "---\nsite: a\ndate: 2026-10-14\nnext visit:\nbefore:\ndone: [clip-a-ball]\n---\n"
    found, findings = visit(text)
    assert findings == ()
    assert found is not None
    assert ([job.technique.id for job in found.jobs], found.next_visit, found.before) == (["clip-a-ball"], None, ())


def test_an_empty_visit_misses_what_it_must_have() -> None:
    found, findings = visit("---\n---\n")
    assert found is None
    assert [each.what for each in findings] == [
        "the front matter has no `site`",
        "the front matter has no `date`",
        "the front matter has no `done`",
    ]
    assert [each.what for each in visit("---\nsite: a\ndate: 2026-10-14\ndone:\n---\n")[1]] == [
        "nothing is listed under `done:`"
    ]


def test_front_matter_that_is_a_list_is_one_finding_of_form() -> None:
    assert [each.rule for each in visit("---\n- a\n---\n")[1]] == ["file.value"]


def test_a_visits_name_is_small_letters_and_dashes() -> None:
    source = SourceText("techniques/visits/Orchard.md", TEXT)
    (finding,) = read_visit(source, known())[1]
    assert (finding.rule, finding.mend) == ("file.name", "rename the file to `orchard.md`")


def with_area(job: str) -> Visit:
    """Return a visit to a lawn whose technique has an area of its own among its measures."""
    source = SourceText("v.md", f"---\nsite: a\ndate: 2026-10-14\ndone:\n  - technique: mow\n{job}---\n")
    changes = {"id": "mow", "measures": Lawn(area_m2=140.0), "family": "mowing", "plants": ("fescue",)}
    technique = sample.technique().model_copy(update=changes)
    family: AnyFamily = Family("mowing", "Mowing", "Lawns.", Lawn, lambda _t, _d: iter(()), (), lambda _t, _d: (), ())
    found, findings = read_visit(source, Known({"mow": technique}, {"mowing": family}))
    assert findings == ()
    assert found is not None
    return found


def test_the_jobs_area_is_the_techniques_measure_too_unless_that_is_written_beside_it() -> None:
    (job,) = with_area("    area: 95 m2\n").jobs
    assert (job.area_m2, job.technique.measures.area_m2) == (95.0, 95.0)
    assert job.technique.spans["measures.area_m2"].line == 6
    (job,) = with_area("    area: 95 m2\n    measures: {area: 60 m2}\n").jobs
    assert (job.area_m2, job.technique.measures.area_m2) == (95.0, 60.0)
    (job,) = with_area("    count: 2\n").jobs
    assert job.technique.measures.area_m2 == 140.0


def test_the_jobs_plant_takes_the_place_of_the_techniques() -> None:
    (job,) = with_area("    plant: rye grass\n").jobs
    assert (job.plant, job.technique.plants) == ("rye grass", ("rye grass",))
    assert job.technique.spot("plants[0]").line == 6


def test_words_of_aftercare_may_be_left_out() -> None:
    (job,) = with_area("    leave out: [feed in the week, water twice]\n").jobs
    assert job.leave_out == ("feed in the week", "water twice")
    assert with_area("    leave out: feed in the week\n").jobs[0].leave_out == ("feed in the week",)


def two_tellings(text: str, language: str = "en") -> Visit:
    technique, _ = read()
    assert technique is not None
    twin = technique.model_copy(update={"id": "clip-a-ball.es", "title": "Recortar una bola", "language": "es"})
    on_shelf = {"clip-a-ball": technique, "clip-a-ball.es": twin}
    source = SourceText("techniques/visits/v.md", text)
    found, findings = read_visit(source, Known(on_shelf, FAMILIES, frozenset(), language))
    assert (found is not None, findings) == (True, ())
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("said", "crew", "title"),
    [
        ("language: es\n", "en", "Recortar una bola"),
        ("language: es-MX\n", "en", "Recortar una bola"),
        ("language: vi\n", "en", "Clip a ball"),
        ("language: en\n", "es", "Clip a ball"),
        ("", "es", "Recortar una bola"),
        ("", "en", "Clip a ball"),
    ],
)
@pytest.mark.parametrize("named", ["clip-a-ball", "clip-a-ball.es", "Recortar una bola"])
def test_a_job_is_told_in_the_language_of_its_leaflet(said: str, crew: str, title: str, named: str) -> None:
    # the language may stand below the jobs
    found = two_tellings(f"---\nsite: Orchard end\ndate: 2026-10-14\ndone:\n  - technique: {named}\n{said}---\n", crew)
    assert [job.technique.title for job in found.jobs] == [title]
    assert found.jobs[0].technique.measures == two_tellings(TEXT_OF_NONE).jobs[0].technique.measures


TEXT_OF_NONE = "---\nsite: Orchard end\ndate: 2026-10-14\ndone: [clip-a-ball]\n---\n"
