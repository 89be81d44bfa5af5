import pytest

from howto.findings import Severity
from howto.layout.frames import picture as frame_picture
from howto.layout.frames.carousel import RATIOS
from howto.layout.frames.look import Ratio
from howto.model.prose import prose
from howto.model.technique import Picture, Step
from tests.support.carousels import Empty, laid, pictures, with_picture
from tests.support.frames import collisions, discs_apart, photo_discs, photo_of, text_of, veil_of, words_of
from tests.support.photos import photograph, shipped


@pytest.mark.parametrize("ratio", RATIOS)
@pytest.mark.parametrize("number", range(8))
def test_a_photograph_shows_its_marks_and_explains_them(ratio: Ratio, number: int) -> None:
    made, findings = laid(ratio, pictures(number), steps=with_picture((40, 35), (60, 62), (50, 50)))
    assert findings == ()
    step = made[2]
    discs = photo_discs(step)
    assert len(discs) == 3
    assert discs_apart(discs)
    assert all(f"spot {n}" in text_of(step) for n in (1, 2, 3))
    assert collisions(step) == []


def test_a_cover_whose_photograph_is_pale_has_dark_words_and_no_veil() -> None:
    pale = {"p.jpg": photograph(shipped(0).point([value // 6 + 212 for value in range(256)] * 3), full=2)}
    cover = laid(photos=pale, steps=with_picture())[0][0]
    assert veil_of(cover) is None
    assert words_of(cover)[0].colour == "#1d2a26"


def test_a_cover_whose_photograph_is_dark_has_pale_words_and_no_veil() -> None:
    dark = {"p.jpg": photograph(shipped(0).point([value // 8 for value in range(256)] * 3), full=2)}
    cover = laid(photos=dark, steps=with_picture())[0][0]
    assert veil_of(cover) is None
    assert words_of(cover)[0].colour == "#f6f3ea"


def test_a_busy_photograph_gets_a_veil_of_ink() -> None:
    cover = laid(photos=pictures(), steps=with_picture())[0][0]
    veil = veil_of(cover)
    assert veil is not None
    assert veil.colour == "#1d2a26"
    assert 0.4 < veil.opacity < 0.8


def test_a_cover_without_numbers_runs_down_to_the_tape() -> None:
    made, findings = laid(photos=pictures(), drawings=(), figures=(), steps=with_picture(), measures=Empty())
    assert findings == ()
    shown = photo_of(made[0])
    assert shown is not None
    assert shown.box == (0.0, 0.0, 1080.0, 1230.0)


def test_marks_without_a_free_place_for_their_numbers_are_a_finding(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(frame_picture, "place", lambda *_: None)
    _, (found,) = laid(photos=pictures(), steps=with_picture((30, 30), (60, 60)))
    assert found.what == "there is no free place for the numbers of the 2 marks in the 4:5 frame"
    assert found.mend == "take out mark 2"


def test_a_legend_with_a_long_text_beside_a_picture_is_refused_like_any_other() -> None:
    step = with_picture((30, 30), (60, 60))[0].model_copy(update={"text": prose("growing " * 160)})
    _, (found,) = laid(photos=pictures(), steps=(step,))
    assert found.what == "step 1 has more words than the 4:5 frame has room for"


def test_the_cover_takes_the_last_picture_without_marks() -> None:
    plain = Picture(file="q.jpg", credit="A. Nother")
    steps = (*with_picture((50, 50)), Step(title="Look.", pictures=(plain,)), Step(title="Go."))
    photos = pictures() | {"q.jpg": photograph(shipped(1), "q.jpg", full=2)}
    made, _ = laid(photos=photos, steps=steps)
    shown = photo_of(made[0])
    assert shown is not None
    assert (shown.source, made[0].credit) == ("q.jpg", "A. Nother")


def test_a_mark_that_no_cut_can_keep_names_the_mark_and_the_ratio() -> None:
    wide = {"p.jpg": photograph(shipped(0).crop((0, 400, 2000, 700)), full=6)}
    _, findings = laid("9x16", wide, steps=with_picture((2, 50), (98, 50)))
    (found,) = [each for each in findings if each.rule == "fit.mark"]
    assert found.what == "mark 1 (spot 1) falls outside the 9:16 frame"
    assert found.why.startswith("the marks of `p.jpg` are spread over 96 % of its width and 0 % of its height")
    assert found.mend.startswith("take out mark 1, or take the photograph from further back")
    kept = laid("9x16", wide, steps=with_picture((98, 50)))[1]
    assert [each.rule for each in kept if each.rule == "fit.mark"] == []


def test_two_marks_on_one_spot_are_a_finding() -> None:
    _, (found,) = laid(photos=pictures(), steps=with_picture((50, 50), (50.4, 50)))
    assert found.what == "marks 1 (spot 1) and 2 (spot 2) point at the same spot"
    assert found.mend == "take out mark 2, or move it away from mark 1"


def test_more_marks_than_there_is_room_for_are_a_finding() -> None:
    marks = tuple((20.0 + 5 * across, 20.0 + 8 * down) for across in range(12) for down in range(7))
    _, found = laid(photos=pictures(), steps=with_picture(*marks[:40]))
    assert {each.rule for each in found} <= {"fit.frame", "fit.mark"}
    assert found


def test_a_small_picture_says_how_many_pixels_it_needs() -> None:
    small = {"p.jpg": photograph(shipped(0).resize((400, 267)))}
    _, findings = laid(photos=small, steps=with_picture())
    assert [(each.rule, each.severity) for each in findings] == [("fit.picture-small", Severity.WARNING)] * 2
    found = max(findings, key=lambda each: int(each.mend.split()[6]))
    assert found.what == "`p.jpg`, 400 × 267 px, is small for the 4:5 frame"
    needed = found.mend.removeprefix("use a picture of at least ").removesuffix(" pixels").split(" × ")
    enough = {"p.jpg": photograph(shipped(0).resize((int(needed[0]), int(needed[1]))))}
    assert laid(photos=enough, steps=with_picture())[1] == ()
