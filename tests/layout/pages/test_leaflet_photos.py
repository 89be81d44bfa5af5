from howto.layout.pages.leaflet_photos import photo_frames
from howto.model.photo import Photograph
from howto.model.sheet import Pixels
from howto.model.technique import Picture
from tests.support import sample


def photo(file: str, width: int = 400, height: int = 200) -> Photograph:
    """Return a grey photograph."""
    rgb = bytes((128,)) * (width * height * 3)
    return Photograph(file=file, width=width, height=height, rgb=rgb, full_width=width, full_height=height)


def test_before_and_after_stand_by_turns_with_their_captions() -> None:
    visit = sample.visit(
        before=(Picture(file="a.jpg"), Picture(file="b.jpg")), after=(Picture(file="c.jpg", alt="Round again"),)
    )
    photos = {name: photo(name) for name in ("a.jpg", "b.jpg", "c.jpg")}
    found = [(frame.name, caption, frame.alt) for frame, caption in photo_frames(visit, photos)]
    assert found == [
        ("01", "Before", "Before: Orchard end"),
        ("02", "After", "Round again"),
        ("03", "Before", "Before: Orchard end"),
    ]


def test_every_picture_is_cut_to_one_shape_round_its_focus() -> None:
    visit = sample.visit(after=(Picture(file="a.jpg", focus_percent=(100.0, 50.0), credit="the crew"),))
    ((frame, _),) = photo_frames(visit, {"a.jpg": photo("a.jpg")})
    assert (frame.width, frame.height, frame.credit) == (1040, 780, "the crew")
    (mark,) = frame.marks
    assert isinstance(mark, Pixels)
    # 4 to 3 out of 400 × 200: 266.7 wide, against the right edge
    assert [round(each, 1) for each in mark.crop] == [133.3, 0.0, 400.0, 200.0]


def test_a_picture_that_could_not_be_read_is_left_out() -> None:
    visit = sample.visit(before=(Picture(file="a.jpg"),), after=(Picture(file="b.jpg"),))
    assert [caption for _, caption in photo_frames(visit, {"b.jpg": photo("b.jpg")})] == ["After"]
