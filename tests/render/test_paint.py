from collections.abc import Sequence
from itertools import pairwise
from math import dist

import pytest
from PIL import Image, ImageChops

from howto.model.sheet import Area, Dot, PaintMark, Pixels, Stroke, TextMark
from howto.render.paint import dashes, paint

LETTERS = {"#ffffff": ".", "#000000": "#", "#ff0000": "r", "#0000ff": "b", "#800080": "v", "#7f7f7f": "-"}


def painted(width: int, height: int, marks: Sequence[PaintMark]) -> Image.Image:
    image = Image.new("RGB", (width, height), "#ffffff")
    paint(image, marks)
    return image


def pixels(image: Image.Image) -> list[tuple[int, int, int]]:
    raw = image.tobytes()
    return [(raw[at], raw[at + 1], raw[at + 2]) for at in range(0, len(raw), 3)]


def pixel_map(image: Image.Image) -> list[str]:
    """The picture as letters, one a pixel; `?` for a colour that has none."""
    letters = "".join(LETTERS.get("#{:02x}{:02x}{:02x}".format(*pixel), "?") for pixel in pixels(image))
    return [letters[row * image.width : (row + 1) * image.width] for row in range(image.height)]


def test_a_level_line_fills_whole_pixels() -> None:
    mark = Stroke(points=((1, 2), (5, 2)), width=2, colour="#000000")
    assert pixel_map(painted(6, 4, [mark])) == ["......", ".####.", ".####.", "......"]


def test_an_upright_line_fills_whole_pixels() -> None:
    mark = Stroke(points=((2, 3), (2, 1)), width=2, colour="#000000")
    assert pixel_map(painted(4, 4, [mark])) == ["....", ".##.", ".##.", "...."]


def test_a_slanting_line_is_as_dark_as_it_is_long_and_wide() -> None:
    mark = Stroke(points=((5, 5), (95, 45)), width=7, colour="#000000")
    dark = sum(255 - red for red, _, _ in pixels(painted(100, 50, [mark]))) / 255
    assert dark == pytest.approx(689.4, rel=0.05)  # 98.49 long, 7 wide


def test_a_bend_is_round_and_leaves_no_notch() -> None:
    mark = Stroke(points=((4, 20), (12, 4), (20, 20)), width=6, colour="#000000")
    rows = pixel_map(painted(24, 24, [mark]))
    assert rows[4][10:14] == "####"
    assert rows[0] == "." * 24


def test_a_line_without_length_leaves_no_mark() -> None:
    mark = Stroke(points=((2, 2), (2, 2)), width=2, colour="#000000")
    assert set(pixel_map(painted(4, 4, [mark]))) == {"...."}


def test_an_area_is_filled_to_its_edge() -> None:
    mark = Area(points=((1, 1), (4, 1), (4, 3), (1, 3)), colour="#ff0000")
    assert pixel_map(painted(5, 4, [mark])) == [".....", ".rrr.", ".rrr.", "....."]


def test_half_a_pixel_is_half_grey() -> None:
    mark = Area(points=((1, 0), (2.5, 0), (2.5, 1), (1, 1)), colour="#000000")
    assert pixel_map(painted(4, 1, [mark])) == [".#-."]


def test_a_see_through_area_mixes_with_what_is_under_it() -> None:
    under = Area(points=((0, 0), (2, 0), (2, 1), (0, 1)), colour="#ff0000")
    over = Area(points=((1, 0), (3, 0), (3, 1), (1, 1)), colour="#0000ff", opacity=0.5)
    red, mixed, thin = pixels(painted(3, 1, [under, over]))
    assert (red, mixed, thin) == ((255, 0, 0), (127, 0, 128), (127, 127, 255))


def test_two_see_through_areas_of_one_colour_add_up() -> None:
    once = Area(points=((0, 0), (2, 0), (2, 1), (0, 1)), colour="#000000", opacity=0.5)
    again = Area(points=((1, 0), (2, 0), (2, 1), (1, 1)), colour="#000000", opacity=0.5)
    assert pixels(painted(2, 1, [once, again])) == [(127, 127, 127), (63, 63, 63)]


def test_marks_are_painted_in_order() -> None:
    marks: list[PaintMark] = [
        Area(points=((0, 0), (3, 0), (3, 1), (0, 1)), colour="#ff0000"),
        Area(points=((1, 0), (4, 0), (4, 1), (1, 1)), colour="#0000ff"),
        Area(points=((2, 0), (3, 0), (3, 1), (2, 1)), colour="#ff0000"),
    ]
    assert pixel_map(painted(4, 1, marks)) == ["rbrb"]


def test_a_ring_stands_outside_its_dot() -> None:
    mark = Dot(centre=(12, 12), radius=6, colour="#000000", ring_width=3, ring_colour="#ff0000")
    middle = pixel_map(painted(24, 24, [mark]))[12]
    assert middle == "...rrr############rrr..."


def test_a_polygon_is_filled_by_the_even_odd_rule() -> None:
    outer, inner = ((0, 0), (8, 0), (8, 8), (0, 8), (0, 0)), ((2, 2), (6, 2), (6, 6), (2, 6), (2, 2))
    mark = Area(points=(*outer, *inner), colour="#000000")
    middle = pixel_map(painted(8, 8, [mark]))[4]
    assert (middle[:2], middle[3:5], middle[6:]) == ("##", "..", "##")  # the hole's own edges may be grey


def test_what_lies_outside_the_picture_is_left_out() -> None:
    marks: list[PaintMark] = [
        Stroke(points=((-50, 1), (50, 1)), width=2, colour="#000000"),
        Dot(centre=(-20, -20), radius=4, colour="#ff0000"),
        TextMark(text="away", at=(200, 200), size=20, colour="#ff0000"),
    ]
    assert pixel_map(painted(3, 3, marks)) == ["###", "###", "..."]


def test_a_large_mark_is_painted_in_bands_without_a_seam() -> None:
    mark = Area(points=((10, 10), (990, 10), (990, 1290), (10, 1290)), colour="#000000")
    image = painted(1000, 1300, [mark])
    assert image.getcolors() == [(45_600, (255, 255, 255)), (1_254_400, (0, 0, 0))]


def test_dashes_run_on_through_corners() -> None:
    stroke = Stroke(points=((0, 0), (4, 0), (4, 6)), width=1, colour="#000000", dash=(3, 2))
    assert dashes(stroke) == [[(0, 0), (3, 0)], [(4, 1), (4, 4)]]
    assert dashes(stroke.model_copy(update={"dash": (5, 2)})) == [[(0, 0), (4, 0), (4, 1)], [(4, 3), (4, 6)]]


def test_chain_dashes_and_closed_outlines() -> None:
    square = ((0.0, 0.0), (8.0, 0.0), (8.0, 8.0), (0.0, 8.0))
    stroke = Stroke(points=square, width=1, colour="#000000", dash=(6, 1, 2, 1), closed=True)
    inked = dashes(stroke)
    assert [sum(dist(a, b) for a, b in pairwise(line)) for line in inked] == pytest.approx([6, 2, 6, 2, 6, 2, 2])
    assert inked[-1][-1] == (0, 0)
    solid = dashes(stroke.model_copy(update={"dash": ()}))
    assert solid == [[*square, (0.0, 0.0), (8.0, 0.0)]]  # a closed line overlaps itself, so its corner is joined
    assert dashes(stroke.model_copy(update={"dash": (0.0, 0.0)})) == solid


def ink(image: Image.Image) -> tuple[int, int, int, int]:
    box = ImageChops.difference(image, Image.new("RGB", image.size, "#ffffff")).getbbox()
    assert box is not None
    return box


@pytest.mark.parametrize(("align", "start"), [("left", 100), ("middle", 61.88), ("right", 23.76)])
def test_words_stand_on_their_baseline_at_their_point(align: str, start: float) -> None:
    words = TextMark.model_validate({"text": "HEM", "at": (100, 60), "size": 40, "colour": "#000000", "align": align})
    # HEM is 1906 thousandths wide, 90 of them before the H and as many after the M: 76.24 px and 3.6 px
    left, top, right, bottom = ink(painted(220, 80, [words]))
    assert left == pytest.approx(start + 3.6, abs=1)
    assert right == pytest.approx(start + 76.24 - 3.6, abs=1)
    assert (top, bottom) == (34, 60)


def test_words_turned_by_a_quarter_are_the_same_words_turned() -> None:
    level = TextMark(text="900 mm", at=(60, 60), size=30, face="head", colour="#000000", align="middle")
    upright = level.model_copy(update={"angle": 90.0})
    straight = painted(121, 121, [level])
    turned = painted(121, 121, [upright])
    assert ImageChops.difference(straight.rotate(90), turned).getbbox() is None


def test_words_turned_aslant_keep_to_their_point() -> None:
    words = TextMark(text="000000", at=(80, 80), size=30, face="head", colour="#000000", align="middle", angle=45.0)
    left, top, right, bottom = ink(painted(161, 161, [words]))
    assert (left + right) / 2 == pytest.approx(80 - 30 * 0.35 * 0.7071, abs=2)
    assert (top + bottom) / 2 == pytest.approx(80 - 30 * 0.35 * 0.7071, abs=2)
    assert right - left == pytest.approx(bottom - top, abs=2)


def test_a_letter_the_head_face_lacks_is_painted_from_the_text_face() -> None:
    head = painted(60, 60, [TextMark(text="→", at=(5, 45), size=40, face="head", colour="#000000")])
    bold = painted(60, 60, [TextMark(text="→", at=(5, 45), size=40, face="text-bold", colour="#000000")])
    assert ImageChops.difference(head, bold).getbbox() is None


def test_a_photograph_fills_its_box_with_its_crop() -> None:
    photo = Image.new("RGB", (30, 4), "#ff0000")
    photo.paste("#0000ff", (10, 0, 30, 4))
    image = Image.new("RGB", (4, 3), "#ffffff")
    mark = Pixels(source="ball.jpg", crop=(20, 0, 24, 4), box=(1, 0, 3, 2))
    paint(image, [mark], {"ball.jpg": photo})
    assert pixel_map(image) == [".bb.", ".bb.", "...."]


def test_the_same_marks_paint_the_same_pixels() -> None:
    marks: list[PaintMark] = [
        Stroke(points=((3, 3), (70, 41)), width=2.5, colour="#1d2a26", dash=(9, 4)),
        TextMark(text="Clip to 900 mm", at=(4.3, 60.2), size=17.5, colour="#1d2a26"),
    ]
    assert painted(120, 80, marks).tobytes() == painted(120, 80, marks).tobytes()


@pytest.mark.parametrize("angle", [0, 30])
def test_a_letter_that_no_face_has_is_painted_as_a_block(angle: float) -> None:
    odd, block = (
        painted(60, 40, [TextMark(text=text, at=(8, 30), size=20, colour="#000000", angle=angle)])
        for text in ("a王\u200db", "a■b")
    )
    assert ImageChops.difference(odd, block).getbbox() is None
