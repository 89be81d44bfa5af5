"""The page for marking photographs, in text and in a real browser."""

from pathlib import Path

import pytest
from PIL import Image

from howto.model.crew import Colours
from howto.model.photo import Photograph
from howto.render.marker import marker_page
from tests.support.browser import opened


def photo(width: int = 400, height: int = 300) -> Photograph:
    """Return a plain green photograph."""
    rgb = Image.new("RGB", (width, height), "#4a7a3a").tobytes()
    return Photograph(file="a b & c.jpg", width=width, height=height, rgb=rgb, full_width=width, full_height=height)


def test_the_page_stands_alone() -> None:
    page = marker_page(photo(), Colours())
    assert "a b &amp; c.jpg" in page
    assert "https://" not in page
    assert "http://" not in page
    assert 'src="data:image/jpeg;base64,' in page
    assert "default-src" in page


def test_a_large_photograph_is_made_as_small_as_a_screen_needs() -> None:
    small, large = marker_page(photo(), Colours()), marker_page(photo(4000, 3000), Colours())
    assert len(large) < len(small) + 400_000


@pytest.mark.browser
def test_marks_are_set_by_touch_and_by_keyboard(tmp_path: Path) -> None:
    path = tmp_path / "mark.html"
    path.write_text(marker_page(photo(), Colours()), encoding="utf-8")
    with opened(path.as_uri()) as page:
        box = page.locator("#photo").bounding_box()
        assert box is not None
        page.touchscreen.tap(box["x"] + box["width"] * 0.5, box["y"] + box["height"] * 0.3)
        page.locator("#points input").fill("widest  ring ")
        page.focus("#board")
        for _ in range(3):
            page.keyboard.press("Shift+ArrowDown")
        page.keyboard.press("ArrowRight")
        page.keyboard.press("Enter")
        page.click("#as-focus")
        page.focus("#board")
        page.keyboard.press("ArrowRight")
        page.keyboard.press("Enter")
        assert page.input_value("#lines") == (
            "   - Picture: a b & c.jpg\n     - focus: 52 60\n     - alt: say what the picture shows\n"
            "     - 50 30: widest ring\n     - 51 60: say what is here\n"
        )
        assert page.inner_text("#said") == "Focus at 52 60."
        page.locator("#points button").first.click()
        assert "widest ring" not in page.input_value("#lines")
        assert page.locator(".disc:not(.focus)").count() == 1


@pytest.mark.browser
@pytest.mark.parametrize("width", [320, 390, 1100])
def test_nothing_runs_off_the_side(tmp_path: Path, width: int) -> None:
    path = tmp_path / "mark.html"
    path.write_text(marker_page(photo(1600, 1200), Colours()), encoding="utf-8")
    with opened(path.as_uri(), width) as page:
        page.focus("#board")
        page.keyboard.press("Enter")
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        for box in (page.locator("#points button").bounding_box(), page.locator("#copy").bounding_box()):
            assert box is not None
            assert box["height"] >= 44
            assert box["x"] + box["width"] <= width
