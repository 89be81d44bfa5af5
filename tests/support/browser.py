"""A real browser for pages: Chromium from the machine, driven by playwright; skipped where there is none."""

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from playwright.sync_api import Page, sync_playwright

NAMES = ("chromium", "chromium-browser", "google-chrome")
FLAGS = [
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
]  # fmt: skip


def chromium() -> str:
    """Return where Chromium is; skip the test where there is none, fail it where CI promised one."""
    found = next((path for name in NAMES if (path := shutil.which(name))), None)
    if found is None and os.environ.get("HOWTO_NEEDS_BROWSER"):
        pytest.fail("CI promises Chromium, and it is not here")
    if found is None:
        pytest.skip("no Chromium on this machine: pip alone cannot bring one")
    return found


@contextmanager
def opened(url: str, width: int = 390, height: int = 844) -> Iterator[Page]:
    """Yield a page as a phone shows it; any word on the console or request off the page fails the test."""
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=chromium(), args=FLAGS)
        try:
            context = browser.new_context(viewport={"width": width, "height": height}, has_touch=True)
            page = context.new_page()
            trouble: list[str] = []
            page.on("console", lambda message: trouble.append(message.text))
            page.on("pageerror", lambda error: trouble.append(str(error)))
            page.on(
                "request",
                lambda request: None if request.url.startswith(("file:", "data:")) else trouble.append(request.url),
            )
            page.goto(url)
            yield page
            assert trouble == []
        finally:
            browser.close()
