import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from howto.layout.frames.crop import cropped, lost, pixels_needed
from howto.model.photo import Photograph
from howto.model.technique import Mark, Picture
from tests.support.photos import photograph

WIDE = photograph(Image.new("RGB", (400, 300)), full=10)  # a file of 4000 × 3000


def picture(focus: tuple[float, float] = (50.0, 50.0), *marks: tuple[float, float]) -> Picture:
    return Picture(
        file="p.jpg", focus_percent=focus, marks=tuple(Mark(x_percent=x, y_percent=y, text="it") for x, y in marks)
    )


# A picture of 4 to 3 cut to 4:5, 1:1 and 9:16 about its middle: 2400, 3000 and 1688 of 4000 columns.
@pytest.mark.parametrize(
    ("box", "part"),
    [
        ((0.0, 0.0, 1080.0, 1350.0), (80.0, 0.0, 320.0, 300.0)),
        ((0.0, 0.0, 1080.0, 1080.0), (50.0, 0.0, 350.0, 300.0)),
        ((0.0, 0.0, 1080.0, 1920.0), (115.625, 0.0, 284.375, 300.0)),
    ],
)
def test_a_cut_is_as_large_as_the_ratio_allows(box: tuple[float, ...], part: tuple[float, ...]) -> None:
    found = cropped(WIDE, picture(), (box[0], box[1], box[2], box[3]), 0)
    assert found.part == pytest.approx(part)


def test_the_cut_follows_the_focus_to_the_edge_and_no_further() -> None:
    box = (0.0, 0.0, 1080.0, 1080.0)
    assert cropped(WIDE, picture((60.0, 50.0)), box, 0).part[0] == pytest.approx(90)
    assert cropped(WIDE, picture((100.0, 50.0)), box, 0).part == pytest.approx((100, 0, 400, 300))


def test_the_cut_moves_to_keep_a_mark() -> None:
    box = (0.0, 0.0, 1080.0, 1080.0)
    found = cropped(WIDE, picture((90.0, 50.0), (10.0, 50.0)), box, 36.0)
    assert found.part[0] == pytest.approx(30)  # 40 less the 10 that 36 frame pixels are here
    assert lost(WIDE, picture((90.0, 50.0), (10.0, 50.0)), found) is None


def test_marks_too_far_apart_lose_the_first_that_falls_out() -> None:
    marks = picture((50.0, 50.0), (50.0, 50.0), (2.0, 50.0), (98.0, 50.0))
    found = cropped(WIDE, marks, (0.0, 0.0, 1080.0, 1920.0), 20.0)
    assert lost(WIDE, marks, found) == 2


def test_a_point_falls_where_the_cut_puts_it() -> None:
    found = cropped(WIDE, picture(), (100.0, 200.0, 400.0, 500.0), 0)
    assert found.at(WIDE, (50.0, 50.0)) == pytest.approx((250, 350))
    assert found.at(WIDE, (12.5, 0.0)) == pytest.approx((100, 200))


def test_pixels_are_counted_in_the_file_and_not_in_what_is_held() -> None:
    box = (0.0, 0.0, 1080.0, 1350.0)
    assert pixels_needed(WIDE, cropped(WIDE, picture(), box, 0)) is None
    small = photograph(Image.new("RGB", (400, 300)))
    assert pixels_needed(small, cropped(small, picture(), box, 0)) == (1800, 1350)


@given(
    st.tuples(st.integers(20, 3000), st.integers(20, 3000)),
    st.tuples(st.floats(0, 100), st.floats(0, 100)),
    st.lists(st.tuples(st.floats(0, 100), st.floats(0, 100)), max_size=4),
    st.sampled_from([(1080.0, 560.0), (1080.0, 1350.0), (540.0, 600.0)]),
)
def test_a_cut_stays_inside_the_photograph_and_keeps_the_shape(
    size: tuple[int, int], focus: tuple[float, float], marks: list[tuple[float, float]], box: tuple[float, float]
) -> None:
    photo = Photograph(file="p.jpg", width=size[0], height=size[1], rgb=b"", full_width=size[0], full_height=size[1])
    left, top, right, bottom = cropped(photo, picture(focus, *marks), (0.0, 0.0, *box), 19.0).part
    assert left >= -1e-6
    assert top >= -1e-6
    assert right <= size[0] + 1e-6
    assert bottom <= size[1] + 1e-6
    assert (right - left) / (bottom - top) == pytest.approx(box[0] / box[1])
