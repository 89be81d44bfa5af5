"""What differs between a technique and its twin in another language."""

from collections.abc import Mapping
from typing import Any, Literal

import pytest

from howto.check.twins import in_first_words, twin_breaches
from howto.model.prose import prose
from howto.model.technique import AnyTechnique, Care, Hazard, Kit, Mark, Picture, Step, When
from howto.span import Span
from tests.support.builders import BASE, DIGGING, technique

FIRST = "techniques/digging/a.md"


def made(having: Mapping[str, Any] | None = None, /, language: str = "", **measures: Any) -> AnyTechnique:
    ending = f".{language}" if language else ""
    parts = {
        "id": f"a{ending}",
        "path": f"techniques/digging/a{ending}.md",
        "language": language or "en",
        "aftercare": (care(2, "Within 2 days"),),
        **(having or {}),
    }
    return technique(DIGGING, parts, **measures).technique


def care(days: int, text: str, *, never: bool = False, kind: Literal["within", "after"] = "within") -> Care:
    return Care(when=When(text=text, kind=kind, days=days), text=prose("water once"), never=never)


def told(
    twin: Mapping[str, Any], first: Mapping[str, Any] | None = None, language: str = "es"
) -> list[tuple[str, ...]]:
    found = twin_breaches(made(twin, language), made(first), "north")
    return [(each.field, each.what, each.mend) for each in found]


def test_the_same_work_in_another_language_passes() -> None:
    told_so = {
        "title": "Hacer el trabajo",
        "aftercare": (care(2, "En 2 días"),),
        "season": "de principios de verano a finales de verano",
        "cautions": (Hazard(title="Hojas.", text=prose("La mano libre detrás."), wear=("guantes",)),),
    }
    assert told(told_so, {"season": "early summer to late summer"}) == []


@pytest.mark.parametrize(
    ("twin", "first", "found"),
    [
        ({"level": 2}, {}, ("level", f"`level` is 2 here and 1 in `{FIRST}`", "write `level: 1`")),
        ({"minutes": 30.0}, {}, ("minutes", f"`minutes` is 30 here and 25 in `{FIRST}`", "write `minutes: 25`")),
        (
            {"minutes": 30.0},
            {"minutes": None},
            ("minutes", f"`minutes` is 30 here and not given in `{FIRST}`", "take `minutes` out"),
        ),
        (
            {},
            {"needs": ("dig-a-hole", "b")},
            ("needs", f"`needs` is not given here and dig-a-hole, b in `{FIRST}`", "write `needs: [dig-a-hole, b]`"),
        ),
        (
            {"plants": ("haya",)},
            {"plants": ("beech",)},
            ("plants", f"`plants` is haya here and beech in `{FIRST}`", "write `plants: [beech]`"),
        ),
        (
            {"season": "primavera"},
            {"season": "autumn"},
            (
                "season",
                f"the season is `primavera` here and `autumn` in `{FIRST}`",
                "write the months of `season: autumn` in this language, or those very words",
            ),
        ),
        (
            {"season": "primavera"},
            {},
            ("season", f"the season is `primavera` here and `not given` in `{FIRST}`", "take `season` out"),
        ),
        (
            {"language": "vi"},
            {},
            (
                "language",
                "`language` is `vi`, and the file's name says `es`",
                "write `language: es`, or rename the file to `a.vi.md`",
            ),
        ),
    ],
)
def test_the_front_matter_says_the_same(twin: dict[str, Any], first: dict[str, Any], found: tuple[str, ...]) -> None:
    assert told(twin, first) == [found]


def test_another_family_is_all_that_is_told() -> None:
    twin = made({"level": 3}, "es").model_copy(update={"family": "mowing"})
    (breach,) = twin_breaches(twin, made(), "north")
    assert (breach.field, breach.mend) == ("family", "write `family: digging`")
    assert breach.what == f"`family` is mowing here and digging in `{FIRST}`"


def test_every_part_has_as_many_lines() -> None:
    kit = (Kit(name="Pala"), Kit(name="Azada"))
    assert told({"tools": kit, "aftercare": ()}) == [
        ("tools", f"2 tools here and 1 in `{FIRST}`", "write 1 here, the same ones in the same order"),
        ("aftercare", f"0 aftercare tasks here and 1 in `{FIRST}`", "write 1 here, the same ones in the same order"),
    ]


def test_every_step_has_as_many_key_points_reasons_and_checks() -> None:
    bare, second, third = (Step(title=each) for each in ("Mirar.", "Hacer.", "Recoger."))
    assert told({"steps": (bare, second, third)}) == [
        (
            "steps[0]",
            f"0 key points in step 1 here and 1 in `{FIRST}`",
            "write 1 here, the same ones in the same order",
        ),
        ("steps[0]", f"0 reasons in step 1 here and 1 in `{FIRST}`", "write 1 here, the same ones in the same order"),
    ]


def test_another_number_of_steps_is_told_once() -> None:
    assert told({"steps": (Step(title="Mirar."),)}) == [
        ("steps", f"1 steps here and 3 in `{FIRST}`", "write 3 here, the same ones in the same order")
    ]


def pictured(file: str, *marks: tuple[float, float]) -> dict[str, Any]:
    put = tuple(Mark(x_percent=x, y_percent=y, text="aquí") for x, y in marks)
    return {"steps": (Step(title="Mirar.", pictures=(Picture(file=file, marks=put),)),)}


def test_both_show_the_same_pictures_with_the_same_marks() -> None:
    assert told(pictured("a.jpg", (52, 38)), pictured("a.jpg", (52, 38))) == []
    assert told(pictured("b.jpg"), pictured("a.jpg")) == [
        ("steps[0].pictures[0]", f"step 1 shows `b.jpg` here and `a.jpg` in `{FIRST}`", "write `a.jpg`")
    ]
    assert told(pictured("a.jpg", (38, 52)), pictured("a.jpg", (52, 38), (9.5, 1))) == [
        (
            "steps[0].pictures[0]",
            f"the marks on `a.jpg` stand elsewhere than in `{FIRST}`",
            "write the marks `52 38`, `9.5 1`, in that order",
        )
    ]
    assert told(pictured("a.jpg", (38, 52)), pictured("a.jpg"))[0][2] == "take the marks out"


def test_a_caution_has_as_many_things_to_wear() -> None:
    unworn = (Hazard(title="Hojas.", text=prose("La mano libre detrás.")),)
    assert told({"cautions": unworn}) == [
        ("cautions[0]", f"0 things to wear here and 1 in `{FIRST}`", "write after the arrow, in this language: gloves")
    ]
    assert told({}, {"cautions": unworn})[0][2] == "take the arrow and its words out"


@pytest.mark.parametrize(
    ("twin", "first", "what"),
    [
        (care(3, "En 3 días"), care(2, "Within 2 days"), f"`En 3 días` here is `Within 2 days` in `{FIRST}`"),
        (
            care(2, "A los 2 días", kind="after"),
            care(2, "Within 2 days"),
            f"`A los 2 días` here is `Within 2 days` in `{FIRST}`",
        ),
        (care(0, "Nunca", never=True), care(2, "Within 2 days"), f"`Nunca` here is `Within 2 days` in `{FIRST}`"),
    ],
)
def test_a_task_falls_due_on_the_same_day(twin: Care, first: Care, what: str) -> None:
    ((field, seen, mend),) = told({"aftercare": (twin,)}, {"aftercare": (first,)})
    assert (field, seen) == ("aftercare[0].when", what)
    assert mend == "write `Within 2 days:` in this language, or those very words"


def test_what_not_to_do_has_no_day() -> None:
    assert told({"aftercare": (care(0, "Nunca", never=True),)}, {"aftercare": (care(9, "Never", never=True),)}) == []


def finish(text: str) -> dict[str, Any]:
    return {"finish": (prose(text),)}


def test_both_print_the_same_figures_in_the_same_places() -> None:
    assert told(finish("Liso, a {hole depth}"), finish("Flat, {hole depth} down")) == []
    assert told(finish("Liso"), finish("Flat, {hole depth} down")) == [
        (
            "finish[0]",
            f"`{{hole depth}}` stands in finish line 1 of `{FIRST}` and not here",
            "write `{hole depth}` where the number belongs in finish line 1",
        )
    ]
    assert told(finish("Liso, a {hole-depth}"), finish("Flat")) == [
        (
            "finish[0]",
            f"`{{hole-depth}}` stands in finish line 1 here and not in `{FIRST}`",
            f"take `{{hole-depth}}` out of finish line 1, or write it in `{FIRST}` too",
        )
    ]


@pytest.mark.parametrize(
    ("language", "here", "there"),
    [
        ("es", "A más de 32 °C, 1,5 litros", "Over 32 °C, 1.5 L"),
        ("es", "Limpias con alcohol de 70 por ciento", "Wiped with 70 % alcohol"),
        ("es", "Espere 2 días", "Wait 2 days"),
        ("vi", "Tưới 9 lít, cách 30 xen-ti-mét", "Water 9 L, 30 cm off"),
        ("mi", "Riringihia te 9 rita", "Water 9 litres"),
    ],
)
def test_amounts_are_the_same_however_they_are_written(language: str, here: str, there: str) -> None:
    assert told(finish(here), finish(there), language) == []


def test_an_amount_that_differs_is_a_warning() -> None:
    (breach,) = twin_breaches(made(finish("A más de 35 °C"), "es"), made(finish("Over 32 °C")), "north")
    assert str(breach.severity) == "warning"
    assert breach.what == f"Finish line 1 says `35 °C` here and `32 °C` in `{FIRST}`"
    assert breach.mend == "write `32 °C` in finish line 1"
    assert told(finish("Con 35 °C"), finish("Hot")) == [
        (
            "finish[0]",
            f"Finish line 1 says `35 °C` here and no amount in `{FIRST}`",
            f"take `35 °C` out of finish line 1, or write it in `{FIRST}` too",
        )
    ]


def test_a_gardens_measures_are_judged_in_the_words_of_the_first_telling() -> None:
    first = made()
    there = Span("techniques/visits/v.md", 7, 5, 9)
    own = made({"spans": {"measures.hole_depth_mm": there, "steps": Span("techniques/digging/a.es.md", 9)}}, "es")
    own = own.model_copy(update={"measures": made(hole_depth_mm=450.0).measures})
    judged = in_first_words(own, (own, first))
    assert (judged.language, judged.path, judged.steps) == ("en", FIRST, BASE["steps"])
    assert judged.measures.given()["hole_depth_mm"] == 450.0
    assert judged.spot("measures.hole_depth_mm") == there
    assert judged.spot("steps") == Span(FIRST)
    assert in_first_words(first, (first,)) is first
    assert in_first_words(own, (own,)) is own
