import pytest

from howto.findings import Severity
from howto.layout.frames.carousel import FRAME_RULES, RATIOS, legible_accent
from howto.layout.frames.look import Ratio
from howto.model.crew import Colours
from howto.model.prose import prose
from howto.model.technique import Hazard, Kit, Step
from tests.support import sample
from tests.support.carousels import SPEAKING, laid, pictures, with_picture
from tests.support.frames import collisions, outside, smallest, text_of, words_of

KINDS = ["cover", "numbers", "1", "2", "3", "4", "5", "6", "cautions", "finish"]


@pytest.mark.parametrize("ratio", RATIOS)
def test_a_carousel_runs_from_cover_to_finish(ratio: Ratio) -> None:
    made, findings = laid(ratio)
    assert findings == ()
    assert [frame.name for frame in made] == [f"{number:02d}" for number in range(1, len(KINDS) + 1)]
    heads = [words_of(frame)[0].text if number < 2 else text_of(frame) for number, frame in enumerate(made)]
    assert "Clip a ball" in text_of(made[0])
    assert "Tools and numbers" in heads[1]
    assert all(step.title.rstrip(".") in text_of(frame) for step, frame in zip(sample.STEPS, made[2:8], strict=True))
    assert "Take care" in heads[8]
    assert "It is done when" in heads[9]


@pytest.mark.parametrize(("ratio", "size"), [("4x5", (1080, 1350)), ("1x1", (1080, 1080)), ("9x16", (1080, 1920))])
def test_every_ratio_has_its_own_size(ratio: Ratio, size: tuple[int, int]) -> None:
    made, _ = laid(ratio)
    assert {(frame.width, frame.height) for frame in made} == {size}


@pytest.mark.parametrize("ratio", RATIOS)
def test_words_are_whole_apart_and_large_enough(ratio: Ratio) -> None:
    free = 269 if ratio == "9x16" else 0
    for frame in (*laid(ratio)[0], *laid(ratio, pictures(), steps=with_picture((30, 40), (60, 60)))[0]):
        assert smallest(frame) >= 28
        assert collisions(frame) == []
        assert outside(frame, top=free, bottom=free) == []


@pytest.mark.parametrize("ratio", RATIOS)
def test_every_frame_says_whose_it_is_and_which_version(ratio: Ratio) -> None:
    for frame in laid(ratio)[0]:
        assert "Lantern Field crew" in text_of(frame)
        assert "Clip a ball · 7f3a91c2" in text_of(frame)


def test_the_tape_moves_along_with_the_frames() -> None:
    made, _ = laid()
    # the one area that touches the tape's upper edge from below: a division of 1080 / 10
    starts = []
    for frame in made:
        top = 1350 - 62 - 58
        solid = [mark for mark in frame.marks if mark.__class__.__name__ == "Area" and mark.points[0][1] == top]  # type: ignore[union-attr]
        starts.append([mark.points[0][0] for mark in solid])  # type: ignore[union-attr]
    assert starts == [[108.0 * number] for number in range(10)]


@pytest.mark.parametrize("ratio", RATIOS)
def test_every_caution_stands_whole(ratio: Ratio) -> None:
    many = tuple(
        Hazard(
            title=f"Danger {n}",
            text=prose(f"Keep well away from number {n} at all times of the working day."),
            wear=("boots",),
        )
        for n in range(1, 10)
    )
    made, findings = laid(ratio, cautions=many)
    assert findings == ()
    told = " ".join(text_of(frame) for frame in made if frame.ground == "#f9a800")
    for number in range(1, 10):
        assert f"Danger {number}" in told
        assert f"number {number} at all times" in told.replace("  ", " ") or f"number {number}" in told
    assert told.count("Wear boots") == 9
    for frame in made:
        assert collisions(frame) == []
        assert smallest(frame) >= 28


def test_cautions_are_black_on_safety_yellow_and_say_who_may_do_what() -> None:
    (panel,) = [frame for frame in laid()[0] if frame.ground == "#f9a800"]
    assert {mark.colour for mark in words_of(panel)} == {"#000000", "#f9a800"}
    assert "Follow local codes and the product label." in text_of(panel)


def test_numbers_that_matter_less_give_way_to_tools() -> None:
    tools = tuple(Kit(name=f"Tool number {n}") for n in range(1, 21))
    made, findings = laid(tools=tools, materials=())
    assert findings == ()
    told = text_of(made[1])
    assert all(f"Tool number {n}" in told for n in range(1, 21))
    assert all(label in told for label in ("Off each side", "Share of the ball taken off", "Finished width"))
    assert "Shape" not in told


def test_tools_beyond_one_frame_go_on_to_the_next() -> None:
    tools = tuple(
        Kit(name=f"Tool {n}", note=prose("sharp, wiped clean, and laid out before you start")) for n in range(40)
    )
    made, findings = laid(tools=tools, materials=())
    assert findings == ()
    told = " ".join(text_of(frame) for frame in made)
    assert all(f"Tool {n}: sharp" in told for n in range(40))
    assert all(collisions(frame) == [] for frame in made)


def test_text_has_one_size_on_all_steps() -> None:
    made, _ = laid(drawings=(SPEAKING,))
    sizes = {mark.size for frame in made[2:8] for mark in words_of(frame) if mark.face == "text-bold"}
    assert sizes == {44.0}


def test_a_busy_step_makes_all_steps_a_size_smaller_and_keeps_every_word() -> None:
    busy = Step(title="Do the ball whole.", text=prose("word " * 70 + "end"), key_points=(prose("Keep this."),))
    made, findings = laid(drawings=(SPEAKING,), steps=(busy, *sample.STEPS[1:]))
    assert findings == ()
    assert text_of(made[2]).count("word") == 70
    assert "Keep this." in text_of(made[2])
    sizes = {mark.size for frame in made[2:8] for mark in words_of(frame) if mark.face == "text-bold"}
    assert len(sizes) == 1
    assert 34 <= sizes.pop() < 44


@pytest.mark.parametrize("ratio", RATIOS)
def test_a_step_with_too_many_words_is_a_finding_whose_mend_mends(ratio: Ratio) -> None:
    long = "growing " * 150
    step = Step(title="Grow.", text=prose(long.strip()))
    _, (found,) = laid(ratio, steps=(step,))
    assert (found.rule, found.severity) == ("fit.frame", Severity.ERROR)
    assert found.what == f"step 1 has more words than the {ratio.replace('x', ':')} frame has room for"
    over = int(found.mend.split()[3])
    shorter = Step(title="Grow.", text=prose(long[: len(long) - over].strip()))
    assert laid(ratio, steps=(shorter,))[1] == ()


def test_a_title_too_long_for_a_step_is_a_finding() -> None:
    step = Step(title="Unconstitutionalisations-" * 5, text=prose("Do it."))
    _, (found,) = laid(steps=(step,))
    assert (found.rule, found.what) == ("fit.frame", "the title of step 1 is too long for the 4:5 frame")


def test_a_title_too_long_for_the_cover_is_a_finding() -> None:
    _, found = laid(title="Supercalifragilisticexpialidocious antidisestablishmentarianism " * 3)
    assert ("fit.frame", "write a title of at most 40 characters, none of its words longer than 18") in [
        (each.rule, each.mend) for each in found
    ]


def test_a_finish_standard_too_long_for_its_frame_is_a_finding() -> None:
    _, (found,) = laid(finish=tuple(prose("It is even all round and level at the top. " * 3) for _ in range(12)))
    assert (found.rule, found.what) == ("fit.frame", "the finish standard has more words than its frame has room for")


def test_a_caution_longer_than_a_frame_is_a_finding() -> None:
    _, found_all = laid(cautions=(Hazard(title="All of it", text=prose("mind this " * 160)),))
    (found,) = [each for each in found_all if each.rule == "fit.frame"]
    assert (found.rule, found.mend) == ("fit.frame", "make two cautions of it, or write it in at most 300 characters")


def test_a_technique_without_tools_cautions_finish_or_drawings_still_has_its_frames() -> None:
    made, findings = laid(drawings=(), tools=(), materials=(), cautions=(), finish=(), aftercare=(), intro=())
    assert findings == ()
    assert len(made) == 9
    assert "Finish" in text_of(made[-1])


# -- in words --


def test_alternative_texts_tell_what_is_shown_within_the_limit() -> None:
    made, _ = laid(photos=pictures(), steps=with_picture((20, 20), (80, 80), alt="A ball seen from above."))
    assert made[2].alt.startswith(
        "3 of 10: 1. Find the circle from above. A ball seen from above. Mark 1, top left: spot 1."
    )
    assert "Mark 2, bottom right: spot 2." in made[2].alt
    crew = sample.CREW.model_copy(update={"alt_limit": 125})
    short, _ = laid(crew=crew)
    assert all(len(frame.alt) <= 125 for frame in short)
    assert all(frame.alt for frame in short)


def test_a_cover_says_its_drawing_and_numbers_in_words() -> None:
    cover = laid()[0][0]
    assert cover.alt.startswith("1 of 10: Clip a ball.")
    assert "Off each side: 40 mm." in cover.alt


def test_a_pale_accent_is_darkened_until_it_can_be_read() -> None:
    assert legible_accent(Colours()) == "#a63d1f"
    assert legible_accent(Colours(accent="#e08a6b")) == "#9c604b"
    assert legible_accent(Colours(ground="#777777", accent="#777777")) == "#060606"


def test_the_same_technique_gives_the_same_frames() -> None:
    assert laid(photos=pictures(), steps=with_picture((40, 40))) == laid(
        photos=pictures(), steps=with_picture((40, 40))
    )


def test_every_rule_of_fit_has_a_name_of_its_own() -> None:
    names = [rule.name for rule in FRAME_RULES]
    assert names == ["fit.frame", "fit.mark", "fit.drawing", "fit.picture-small", "fit.letter", "fit.caption"]
