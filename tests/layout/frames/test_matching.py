import pytest

from howto.layout.frames.matching import matched
from howto.model.prose import prose
from howto.model.technique import Step
from howto.shapes import Drawing, Label, Line, Role

EDGE = (Line(((0.0, 0.0), (10.0, 0.0)), Role.GROUND),)
BLADE = Drawing(EDGE, caption="Blade in section: bevel 30°", alt="A blade seen from its tip.")
JUG = Drawing(
    (*EDGE, Label((5.0, 0.0), "bleach 50 mL")), caption="The mix: 1 part to 9 of water", alt="A jug seen from the side."
)


def step(title: str, text: str = "", check: str = "") -> Step:
    return Step(title=title, text=prose(text), checks=(prose(check),) if check else ())


@pytest.mark.parametrize(
    ("asked", "at"),
    [
        (step("Black the bevel."), 0),
        (step("Wash.", "Use 50 mL in a bucket."), 1),
        (step("Mixing."), 1),
        (step("Try it.", "A drop of oil.", check="One part of water is left."), 1),
        (step("Join.", "Oil the blade."), None),
        (step("Take off the burr.", "Lay it on the stone and draw it once."), None),
    ],
    ids=["title", "amount on a label", "another ending", "check", "one word of the text", "nothing"],
)
def test_a_step_is_shown_the_drawing_that_speaks_of_it(asked: Step, at: int | None) -> None:
    others = (step("File the blade's bevel to 30°."),)
    assert matched((asked, *others), (BLADE, JUG))[0] == at


def test_a_drawing_shown_before_gives_way_to_one_that_says_as_much() -> None:
    both = step("Soak the blade in the mix.")
    assert matched((both, both), (BLADE, JUG)) == (0, 1)


def test_a_step_with_a_picture_is_shown_no_drawing() -> None:
    assert matched((None, step("File the bevel.")), (BLADE, JUG)) == (None, 0)


def test_where_nothing_is_said_of_any_drawing_they_stand_in_the_order_of_the_work() -> None:
    strange = step("Lavar y secar.", "Con agua limpia.")
    assert matched((strange, strange, None, strange), (BLADE, JUG)) == (0, 0, None, 1)
    assert matched((strange, None), ()) == (None, None)
