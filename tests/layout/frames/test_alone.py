import pytest

from howto.layout.frames.carousel import RATIOS
from howto.layout.frames.look import Ratio
from howto.model.prose import prose
from howto.model.technique import Step
from tests.support.carousels import laid
from tests.support.frames import collisions, outside, text_of, words_of

ALONE = Step(
    title="Take off the burr.",
    text=prose("Lay the flat back on the stone and draw it once, dead flat."),
    key_points=(prose("Once only."),),
    reasons=(prose("Twice makes a new edge on the wrong side."),),
    checks=(prose("A fingernail drawn off the back catches on nothing."),),
)
MATCHED = Step(title="Draw the ball.", text=prose("It stands on the ground."))


@pytest.mark.parametrize("ratio", RATIOS)
def test_a_step_nothing_is_shown_of_fills_its_frame_with_all_its_words(ratio: Ratio) -> None:
    made, findings = laid(ratio, steps=(ALONE, MATCHED))
    assert findings == ()
    frame = made[2]
    assert all(word in text_of(frame) for word in ("dead flat", "Once only.", "Twice", "fingernail"))
    lead = max(mark.size for mark in words_of(frame) if mark.face == "text")
    assert lead >= 60
    assert collisions(frame) == []
    assert outside(frame) == []


def test_a_step_of_key_points_alone_leads_with_the_first() -> None:
    made, _ = laid(steps=(ALONE.model_copy(update={"text": ()}), MATCHED))
    sizes = {mark.size for mark in words_of(made[2]) if mark.face == "text-bold"}
    assert max(sizes) > 80


def test_a_step_with_no_words_but_its_title_still_has_a_frame() -> None:
    made, findings = laid(steps=(Step(title="Go home.", text=()), MATCHED))
    assert findings == ()
    assert "Go home" in text_of(made[2])
