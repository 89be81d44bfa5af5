"""What only a browser can tell; skipped where none is installed."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import sync_playwright

from howto.compute.tasks import plan_of
from howto.layout.pages.card import card_sheet
from howto.layout.pages.leaflet import leaflet_sheet
from howto.render.html import ShelfEntry, page, shelf_page
from tests.support import sample
from tests.support.browser import FLAGS, chromium

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def browser() -> Iterator[Any]:
    """Return a headless Chromium."""
    with sync_playwright() as play:
        launched = play.chromium.launch(executable_path=chromium(), args=FLAGS)
        yield launched
        launched.close()


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a folder with one page of each kind."""
    card = card_sheet(sample.ready(), (sample.art(),), sample.TODAY)
    visit = sample.ready_visit(sample.visit())
    leaflet = leaflet_sheet(visit, plan_of(visit)[0], sample.TODAY)
    entries = (
        ShelfEntry.of(sample.technique()),
        ShelfEntry(id="mow-by-thirds", title="Mow by thirds", family="mowing"),
        ShelfEntry(id="espalier", title="Train a péar", family="espalier"),
    )
    where = tmp_path_factory.mktemp("pages")
    (where / "card.html").write_text(page(card), encoding="utf-8")
    (where / "leaflet.html").write_text(page(leaflet), encoding="utf-8")
    (where / "shelf.html").write_text(shelf_page(sample.CREW, entries, sample.TODAY), encoding="utf-8")
    return where


def opened(browser: Any, file: Path, **options: Any) -> Any:
    """Return a page at 360 px wide, with what it asked the network for and what it complained of."""
    context = browser.new_context(viewport={"width": 360, "height": 740}, **options)
    tab = context.new_page()
    tab.asked, tab.complaints = [], []
    tab.on("request", lambda request: tab.asked.append(request.url))
    tab.on("console", lambda message: tab.complaints.append(message.text))
    tab.on("pageerror", lambda error: tab.complaints.append(str(error)))
    tab.goto(file.as_uri())
    return tab


@pytest.mark.parametrize("name", ["card", "leaflet", "shelf"])
def test_a_phone_360_wide_needs_no_sideways_scrolling_and_no_network(browser: Any, folder: Path, name: str) -> None:
    tab = opened(browser, folder / f"{name}.html")
    assert tab.evaluate("document.documentElement.scrollWidth") == 360
    assert [url for url in tab.asked if not url.startswith(("file:", "data:"))] == []
    assert tab.complaints == []
    assert tab.evaluate("document.fonts.check('16px \"Source Sans Pro\"')")
    tab.context.close()


def test_boxes_to_tick_are_44_pixels_and_keep_their_tick(browser: Any, folder: Path) -> None:
    tab = opened(browser, folder / "card.html")
    boxes = tab.locator("input[type=checkbox]")
    assert boxes.count() == 16
    for at in range(16):
        size = boxes.nth(at).bounding_box()
        assert size["width"] >= 44  # W3C, Web Content Accessibility Guidelines 2.2, 2.5.5 target size (enhanced)
        assert size["height"] >= 44
    tab.get_by_label("Tick off: Cut the belt.").check()
    assert tab.locator("input:checked").count() == 1
    tab.context.close()


def test_a_card_can_be_ticked_from_the_keyboard(browser: Any, folder: Path) -> None:
    tab = opened(browser, folder / "card.html")
    tab.locator("input[type=checkbox]").first.focus()
    tab.keyboard.press("Space")
    assert tab.locator("input:checked").count() == 1
    tab.context.close()


def test_searching_leaves_the_cards_that_fit(browser: Any, folder: Path) -> None:
    tab = opened(browser, folder / "shelf.html")
    assert tab.get_by_role("status").inner_text() == "3 cards"
    tab.get_by_role("searchbox").fill("Mow thirds")
    assert tab.locator("[data-words]:visible").all_inner_texts()[0].startswith("Mow by thirds")
    assert tab.locator("[data-words]:visible").count() == 1
    assert tab.locator("h2:visible").all_inner_texts() == ["Mowing"]
    assert tab.get_by_role("status").inner_text() == "1 card"
    tab.context.close()


def test_searching_does_not_mind_accents(browser: Any, folder: Path) -> None:
    tab = opened(browser, folder / "shelf.html")
    tab.get_by_role("searchbox").fill("PEAR")
    assert tab.locator("[data-words]:visible").count() == 1
    tab.context.close()


def test_without_script_every_card_is_there_and_no_dead_search_box(browser: Any, folder: Path) -> None:
    tab = opened(browser, folder / "shelf.html", java_script_enabled=False)
    assert tab.locator("[data-words]:visible").count() == 3
    assert tab.locator("#find:visible").count() == 0
    tab.context.close()


def test_a_card_prints_on_a5_in_black_on_white(browser: Any, folder: Path) -> None:
    tab = opened(browser, folder / "card.html")
    tab.emulate_media(media="print")
    assert tab.evaluate("getComputedStyle(document.documentElement).backgroundColor") == "rgb(255, 255, 255)"
    assert not tab.locator("nav").is_visible()
    tab.context.close()
