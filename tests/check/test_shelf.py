"""Rules over all files of a shelf."""

from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from howto.check.shelf import check_shelf
from howto.findings import Finding
from howto.model.figure import Figure
from howto.model.plants import Plant, PlantBook
from howto.model.prose import prose
from howto.model.reference import GEOMETRY
from howto.model.shelf import Person, Shelf, SignOff
from howto.model.technique import AnyTechnique, Picture, Step
from howto.model.visit import Job, Visit
from howto.span import SourceText, Span
from tests.support import sample
from tests.support.builders import DIGGING, technique

BOOK = PlantBook(plants=(Plant(botanical="Fagus sylvatica", common=("beech", "common beech"), kind="deciduous"),))


def made(name: str, having: Mapping[str, Any] | None = None, /, **measures: Any) -> AnyTechnique:
    """Return a technique in a file of that name, its title made from the name."""
    folder, _, file = f"digging/{name}".rpartition("/")
    path = f"techniques/{folder.removeprefix('digging/') or 'digging'}/{file}.md"
    parts = {"id": file, "title": f"Do {file}", "path": path, **(having or {})}
    return technique(DIGGING, parts, book=BOOK, **measures).technique


def findings(*techniques: AnyTechnique, figures: Mapping[str, Any] | None = None, **parts: Any) -> tuple[Finding, ...]:
    shelf = Shelf(**{"root": "nowhere", "techniques": techniques, "book": BOOK, **parts})
    return check_shelf(shelf, figures or {})


def found(*techniques: AnyTechnique, **parts: Any) -> list[tuple[str, str, str, str]]:
    return [(each.rule, each.span.path, each.what, each.mend) for each in findings(*techniques, **parts)]


def test_a_sound_shelf_has_no_findings() -> None:
    assert found(made("a"), made("b", {"needs": ("a",)})) == []


def test_two_files_of_one_name() -> None:
    here, there = made("one/dig"), made("two/dig", {"title": "Dig again"})
    (one,) = findings(here, there)
    assert (one.rule, str(one.severity), one.span.path) == ("shelf.same-name", "error", "techniques/two/dig.md")
    assert one.what == "`dig.md` is the name of `techniques/one/dig.md` too"
    assert one.mend == "rename this file, such as to `dig-2.md`"
    assert one.also == Span("techniques/one/dig.md")


def test_two_visits_of_one_name() -> None:
    first, second = sample.visit(path="visits/a.MD"), sample.visit(path="visits/a.md", site="Mill")
    (one,) = check_shelf(Shelf(root="techniques", visits=(first, second)), {})
    assert (one.rule, one.span, one.also) == ("shelf.same-name", Span("visits/a.md"), Span("visits/a.MD"))
    assert one.mend == "rename this file, such as to `2026-10-14-orchard-end-2.md`"


def test_two_files_of_one_title() -> None:
    (one,) = findings(made("a", {"title": "Dig a hole"}), made("b", {"title": "dig a  Hole"}))
    assert (one.rule, str(one.severity)) == ("shelf.same-title", "warning")
    assert one.what == "`dig a  Hole` is the title of `techniques/digging/a.md` too"


def test_a_need_that_is_no_technique() -> None:
    assert found(made("sharpen-shears"), made("b", {"needs": ("sharpen-shear", "sharpen-shears")})) == [
        (
            "shelf.needs",
            "techniques/digging/b.md",
            "`sharpen-shear` is no technique of this shelf",
            "write `needs: [sharpen-shears]`",
        )
    ]


def test_a_need_like_no_technique() -> None:
    (one,) = findings(made("a"), made("b", {"needs": ("a", "zzzzzz")}))
    assert one.mend == "write `needs: [a]`, or add a file `zzzzzz.md`"
    assert found(made("a"), made("b", {"needs": ("a",)})) == []


def test_needs_that_run_in_a_circle_are_told_once_with_the_ring() -> None:
    ring = (made("a", {"needs": ("x", "b")}), made("b", {"needs": ("c",)}), made("c", {"needs": ("a",)}), made("x"))
    (one,) = findings(*ring)
    assert (one.rule, str(one.severity), one.span.path) == ("shelf.circle", "error", "techniques/digging/a.md")
    assert one.what == "needs run in a circle"
    assert one.why == "`a` needs `b`, `b` needs `c`, `c` needs `a`"
    assert one.mend == "write `needs: [x]` here, or break the circle in one of the others"
    assert found(made("a", {"needs": ("x",)}), *ring[1:]) == []


def test_two_circles_are_two_findings() -> None:
    both = findings(
        made("a", {"needs": ("b",)}),
        made("b", {"needs": ("a",)}),
        made("c", {"needs": ("d",)}),
        made("d", {"needs": ("c",)}),
    )
    assert [(each.rule, each.why) for each in both] == [
        ("shelf.circle", "`a` needs `b`, `b` needs `a`"),
        ("shelf.circle", "`c` needs `d`, `d` needs `c`"),
    ]


def test_a_technique_outside_the_ring_is_not_blamed() -> None:
    paths = [
        each.span.path
        for each in findings(made("a", {"needs": ("b",)}), made("b", {"needs": ("c",)}), made("c", {"needs": ("b",)}))
    ]
    assert paths == ["techniques/digging/b.md"]


def test_a_level_under_what_it_needs() -> None:
    needed = (made("a", {"level": 2}), made("b", {"level": 3}))
    (one,) = findings(*needed, made("c", {"level": 1, "needs": ("a", "b")}))
    assert (one.rule, str(one.severity)) == ("shelf.level", "warning")
    assert (one.what, one.mend) == ("level 1, and it needs `b` of level 3", "write `level: 3`")
    assert found(*needed, made("c", {"level": 3, "needs": ("a", "b")})) == []


BEECH = {"plants": ("beech",)}
FAGUS = {"plants": ("Fagus sylvatica",)}


def test_a_rate_of_one_plant_said_twice_warns() -> None:
    here, there = made("a", BEECH, settling_mm_per_year=12.0), made("b", FAGUS, settling_mm_per_year=20.0)
    (one,) = findings(here, there)
    assert (one.rule, str(one.severity), one.span.path) == ("shelf.same-plant", "warning", "techniques/digging/b.md")
    assert one.what == ("`settling` of Fagus sylvatica is 20 mm/year here and 12 mm/year in `techniques/digging/a.md`")
    assert one.why == "one plant cannot have two rates"
    assert one.mend.startswith("write `settling: 12 mm/year` here")


def test_a_size_of_one_plant_said_twice_only_advises() -> None:
    (one,) = findings(made("a", BEECH), made("b", BEECH, hole_width_mm=700.0, hole_depth_mm=350.0))
    assert str(one.severity) == "advice"
    assert one.what == ("`hole width` of beech is 700 mm here and 500 mm ± 20 mm in `techniques/digging/a.md`")
    assert one.why.endswith("they differ in `hole depth` 350 mm and 300 mm too")


@pytest.mark.parametrize(
    ("here", "measures"),
    [
        (BEECH, {"hole_width_mm": 515.0}),  # within the ± of the other
        (BEECH, {"shape": "square", "hole_width_mm": 700.0}),  # another shape is another job
        ({"plants": ("yew",)}, {"hole_width_mm": 700.0}),
        ({}, {"hole_width_mm": 700.0}),
        ({**BEECH, "family": "guarding"}, {"hole_width_mm": 700.0}),
    ],
)
def test_what_may_differ(here: dict[str, Any], measures: dict[str, Any]) -> None:
    parts = {name: value for name, value in here.items() if name != "family"}
    second = made("b", parts, **measures).model_copy(update={"family": here.get("family", "digging")})
    assert found(made("a", BEECH), second) == []


def rate(value: float, unit: str = "mm/year") -> tuple[Figure, ...]:
    return (Figure(name="growth", label="Growth", value=value, unit=unit, working=("a",), references=(GEOMETRY,)),)


@pytest.mark.parametrize(
    ("first", "second", "count"),
    [(rate(100), rate(120), 1), (rate(100), rate(109), 0), (rate(100, "mm"), rate(120, "mm"), 0), (rate(100), (), 0)],
)
def test_rates_worked_out_for_one_plant(first: tuple[Figure, ...], second: tuple[Figure, ...], count: int) -> None:
    both = findings(made("a", BEECH), made("b", BEECH), figures={"a": first, "b": second})
    assert len(both) == count
    if count:
        assert both[0].what == ("`growth` of beech is 120 mm/year here and 100 mm/year in `techniques/digging/a.md`")
        assert both[0].mend.startswith("give both files the same measures, the other number there, or waive")


def test_a_waiver_covers_a_finding_of_the_shelf() -> None:
    waive = {**BEECH, "waive": {"shelf.same-plant": "a bigger tree"}}
    assert found(made("a", BEECH), made("b", waive, hole_width_mm=700.0)) == []
    assert [(rule, what) for rule, _, what, _ in found(made("a", BEECH), made("b", waive))] == [
        ("technique.waiver", "`shelf.same-plant` is waived, and nothing here breaks it")
    ]


def test_a_second_language_is_no_second_technique() -> None:
    twin = made("a.es", {"title": "Do a", "language": "es", "plants": ("beech",)})
    assert found(made("a", BEECH), twin) == []


def test_a_second_language_says_the_same_work() -> None:
    twin = made("a.es", {"language": "es", "cautions": (), "finish": (prose("uno"), prose("dos"))}, hole_depth_mm=350.0)
    first = made("a")
    assert found(first, twin) == [
        (
            "shelf.twin",
            "techniques/digging/a.es.md",
            "0 cautions here and 1 in `techniques/digging/a.md`",
            "write 1 here, the same ones in the same order",
        ),
        (
            "shelf.twin",
            "techniques/digging/a.es.md",
            "2 things to tick at the finish here and 1 in `techniques/digging/a.md`",
            "write 1 here, the same ones in the same order",
        ),
        (
            "shelf.twin",
            "techniques/digging/a.es.md",
            "`hole depth` is 350 mm here and 300 mm in `techniques/digging/a.md`",
            "write `hole depth: 300 mm`",
        ),
    ]


def test_a_measure_that_only_one_language_has() -> None:
    here = found(made("a"), made("a.es", {"language": "es"}, settling_mm_per_year=5.0, mulch=True))
    assert [(what, mend) for _, _, what, mend in here] == [
        ("`mulch` is yes here and no in `techniques/digging/a.md`", "write `mulch: no`"),
        ("`settling` is 5 mm/year here and not given in `techniques/digging/a.md`", "take `settling` out"),
    ]


def test_a_second_language_without_the_first() -> None:
    assert found(made("a.es")) == [
        (
            "shelf.twin",
            "techniques/digging/a.es.md",
            "no `a.md` stands beside this file",
            "write `a.md` too, or name this file `a.md`",
        )
    ]


def shown(*files: str) -> dict[str, Any]:
    return {"steps": (Step(title="Look.", pictures=tuple(Picture(file=file) for file in files)),)}


@pytest.fixture
def pictures(tmp_path: Path) -> Path:
    folder = tmp_path / "pictures"
    (folder / "site").mkdir(parents=True)
    for name in ("ball.jpg", "site/gate.PNG", "draw.py", "notes.txt"):
        (folder / name).write_bytes(b"x")
    return tmp_path


def test_pictures_that_are_there(pictures: Path) -> None:
    assert found(made("a", shown("ball.jpg", "site/gate.PNG")), root=str(pictures)) == []


def test_a_picture_whose_name_differs_in_capitals(pictures: Path) -> None:
    (one,) = findings(made("a", shown("Ball.JPG", "site/gate.PNG")), root=str(pictures))
    assert (one.rule, str(one.severity)) == ("shelf.picture", "error")
    assert (one.what, one.mend) == ("`Ball.JPG` is `ball.jpg` on the disk", "write `ball.jpg`")


def test_a_picture_that_is_missing(pictures: Path) -> None:
    spans = {"steps[0].pictures[0]": Span("techniques/digging/a.md", 20, 12, 20)}
    which = made("a", {**shown("bal.jpg", "zzz", "ball.jpg", "site/gate.PNG"), "spans": spans})
    near, none = sorted(findings(which, root=str(pictures)), key=lambda each: each.what)
    assert near.what == f"`bal.jpg` is not in `{pictures}/pictures`"
    assert near.mend == f"write `ball.jpg`, or put the picture at `{pictures}/pictures/bal.jpg`"
    assert near.span == Span("techniques/digging/a.md", 20, 12, 20)
    assert none.mend == f"put the picture at `{pictures}/pictures/zzz`, or take the line out"


def test_an_ending_alone_makes_no_name_near(pictures: Path) -> None:
    (one,) = findings(made("a", shown("nope.jpg", "ball.jpg", "site/gate.PNG")), root=str(pictures))
    assert one.mend == f"put the picture at `{pictures}/pictures/nope.jpg`, or take the line out"


def test_a_file_that_is_there_and_no_photograph(pictures: Path) -> None:
    (pictures / "pictures" / "plan.svg").write_bytes(b"<svg/>")
    (one,) = findings(made("a", shown("ball.jpg", "site/gate.PNG", "plan.svg")), root=str(pictures))
    assert (one.rule, one.what) == ("shelf.picture", "`plan.svg` is no photograph by its name")
    assert one.mend == "open `plan.svg`, save or export it as JPEG, and write the new name"


def test_a_folder_named_as_a_picture(pictures: Path) -> None:
    (one,) = findings(made("a", shown("ball.jpg", "site/gate.PNG", "site")), root=str(pictures))
    assert (one.what, one.mend) == ("`site` is a folder", "write the name of a picture in it, or take the line out")


def test_a_picture_whose_name_no_disk_can_hold_is_missing(pictures: Path) -> None:
    (one,) = findings(made("a", shown("ball.jpg", "site/gate.PNG", "x" * 300 + ".jpg")), root=str(pictures))
    assert one.what.endswith(f"is not in `{pictures}/pictures`")


def test_a_picture_without_a_name_was_told_while_it_was_read(pictures: Path) -> None:
    assert findings(made("a", shown("ball.jpg", "site/gate.PNG", "")), root=str(pictures)) == ()


def test_no_picture_is_called_unused_while_a_file_could_not_be_read(pictures: Path) -> None:
    sources = {"techniques/digging/b.md": SourceText("techniques/digging/b.md", "---")}
    assert findings(made("a", shown("ball.jpg")), root=str(pictures), sources=sources) == ()
    (pictures / "digging").mkdir()
    (pictures / "digging" / "_draft.md").write_bytes(b"")
    assert [each.rule for each in findings(made("a", shown("ball.jpg")), root=str(pictures))] == [
        "shelf.picture-unused"
    ]
    (pictures / "digging" / "c.md").write_bytes(b"\xff")
    assert findings(made("a", shown("ball.jpg")), root=str(pictures)) == ()


def test_a_picture_that_nothing_shows(pictures: Path) -> None:
    (one,) = findings(made("a", shown("./pictures/ball.jpg")), root=str(pictures))
    assert (one.rule, str(one.severity)) == ("shelf.picture-unused", "advice")
    assert one.span.path == f"{pictures}/pictures/site/gate.PNG"
    assert one.what == "`site/gate.PNG` is shown by no technique and no visit"


def visit(**parts: Any) -> Visit:
    whole: dict[str, Any] = {
        "id": "2026-10-14-orchard-end",
        "site": "Orchard end",
        "date": date(2026, 10, 14),
        "jobs": (Job(technique=made("a")),),
        "path": "techniques/visits/2026-10-14-orchard-end.md",
        "spans": {"next_visit": Span("techniques/visits/2026-10-14-orchard-end.md", 4, 13, 23)},
    }
    return Visit(**{**whole, **parts})


def test_a_next_visit_on_the_last_day_of_all_is_told() -> None:
    last = Visit(id="v", site="Orchard end", date=date.max, next_visit=date.max, jobs=(Job(technique=made("a")),))
    (one,) = findings(made("a"), visits=(last,))
    assert one.rule == "shelf.next-visit"


def test_pictures_of_a_visit_are_looked_for_too(pictures: Path) -> None:
    kept = visit(before=(Picture(file="site/gate.PNG"),), after=(Picture(file="gone.jpg"),))
    (one,) = findings(made("a", shown("ball.jpg")), root=str(pictures), visits=(kept,))
    assert (one.span.path, one.what) == (
        "techniques/visits/2026-10-14-orchard-end.md",
        f"`gone.jpg` is not in `{pictures}/pictures`",
    )


@pytest.mark.parametrize("next_visit", [date(2026, 10, 13), date(2026, 10, 14)])
def test_a_next_visit_that_does_not_come_after(next_visit: date) -> None:
    (one,) = findings(made("a"), visits=(visit(next_visit=next_visit),))
    assert (one.rule, str(one.severity)) == ("shelf.next-visit", "error")
    assert one.span == Span("techniques/visits/2026-10-14-orchard-end.md", 4, 13, 23)
    assert one.what == f"the next visit, {next_visit}, is not after this one, 2026-10-14"
    assert one.mend == "write a later day, such as `next visit: 2026-11-25`, or take the line out"


@pytest.mark.parametrize("next_visit", [None, date(2026, 10, 15), date(2026, 11, 25)])
def test_a_next_visit_that_does(next_visit: date | None) -> None:
    assert found(made("a"), visits=(visit(next_visit=next_visit),)) == []


PEOPLE = SourceText(
    "techniques/people.yaml",
    "- name: Ash Rowe\n  signed off:\n    - technique: dig\n- name: Fern Low\n  signed off:\n    - technique: dig\n",
)


def person(technique: str, version: str = "") -> Person:
    return Person(name="Fern Low", signed_off=(SignOff(technique=technique, on=date(2026, 3, 1), version=version),))


def test_people_signed_off_for_an_old_version() -> None:
    which = made("dig", {"version": "bbb222"})
    (one,) = findings(which, people=(person("dig", "aaa111"),), sources={PEOPLE.path: PEOPLE})
    assert (one.rule, str(one.severity)) == ("shelf.sign-off", "advice")
    assert one.span == Span("techniques/people.yaml", 6, 18, 21)
    assert one.what == "Fern Low was shown version aaa111 of `dig`; it is now bbb222"
    assert one.mend == "show them what changed, then write `version: bbb222` and the day"


def test_people_signed_off_for_nothing_on_the_shelf() -> None:
    (near,) = findings(made("dig"), people=(person("digg"),))
    assert near.what == "Fern Low is signed off for `digg`, which is not on the shelf"
    assert (near.mend, near.span) == ("write `dig`", Span("nowhere/people.yaml"))
    (far,) = findings(made("dig"), people=(person("zzzz"),))
    assert far.mend == "take the line out, or add the technique"


@pytest.mark.parametrize("version", ["", "bbb222"])
def test_people_signed_off_as_things_stand(version: str) -> None:
    assert found(made("dig", {"version": "bbb222"}), people=(person("dig", version),)) == []
