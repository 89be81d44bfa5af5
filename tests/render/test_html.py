import re
from functools import cache
from html.parser import HTMLParser
from io import BytesIO
from itertools import pairwise
from typing import Any

import pytest
from jinja2 import UndefinedError
from PIL import Image

from howto.colour import SAFETY_YELLOW
from howto.compute.tasks import plan_of
from howto.layout.pages.card import card_sheet
from howto.layout.pages.leaflet import leaflet_sheet
from howto.model.prose import Run, prose
from howto.model.sheet import Photo, Section, Sheet
from howto.render.html import ShelfEntry, environment, page, shelf_page
from tests.support import sample

VOID = {"meta", "input", "br", "img", "path", "circle"}
MARKUP = "<b>bold</b> & \"quoted\" 'single' {{ 7*7 }} {% raw %} </style></script>"


class Page(HTMLParser):
    """Reads a page and notes what stands in it; an element closed out of turn is noted too."""

    def __init__(self, text: str) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[str] = []
        self.tags: list[tuple[str, dict[str, str]]] = []
        self.crossed: list[str] = []
        self.words = ""
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, {name: value or "" for name, value in attrs}))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, {name: value or "" for name, value in attrs}))

    def handle_endtag(self, tag: str) -> None:
        if self.open and self.open[-1] == tag:
            self.open.pop()
        elif tag not in VOID:
            self.crossed.append(tag)

    def handle_data(self, data: str) -> None:
        if self.open and self.open[-1] not in {"style", "script", "title"}:
            self.words += data

    def all(self, tag: str) -> list[dict[str, str]]:
        """Return the attributes of every element of a kind."""
        return [attrs for name, attrs in self.tags if name == tag]


def card(**changes: Any) -> Sheet:
    """Return the sample card, with some fields of the technique changed."""
    return card_sheet(sample.ready(**changes), (sample.art(),), sample.TODAY)


def leaflet(**changes: Any) -> Sheet:
    """Return the sample leaflet, with some fields of the visit changed."""
    ready = sample.ready_visit(sample.visit(**changes))
    return leaflet_sheet(ready, plan_of(ready)[0], sample.TODAY)


def shelf(*entries: ShelfEntry) -> str:
    """Return the page of all cards."""
    return shelf_page(sample.CREW, entries or (ShelfEntry.of(sample.technique()),), sample.TODAY)


@cache
def pages() -> dict[str, str]:
    """Return one page of each kind."""
    return {"card": page(card()), "leaflet": page(leaflet()), "shelf": shelf()}


KINDS = ("card", "leaflet", "shelf")


@pytest.mark.parametrize("kind", KINDS)
def test_a_page_is_well_formed_and_says_its_language(kind: str) -> None:
    found = Page(pages()[kind])
    assert found.crossed == []
    assert found.open == []
    assert found.all("html") == [{"lang": "en"}]
    assert len(found.all("main")) == 1
    assert found.all("title").count({}) == 1


@pytest.mark.parametrize("kind", KINDS)
def test_nothing_is_fetched(kind: str) -> None:
    text = pages()[kind]
    found = Page(text)
    sources = [attrs[name] for _, attrs in found.tags for name in ("src", "srcset", "data", "action") if name in attrs]
    assert all(source.startswith("data:") for source in sources)
    assert all(url.startswith("data:") for url in re.findall(r"url\(([^)]*)\)", text))
    assert found.all("link") == []
    assert "@import" not in text
    (policy,) = (meta["content"] for meta in found.all("meta") if "http-equiv" in meta)
    assert policy.startswith("default-src 'none'; img-src data:; font-src data:;")


@pytest.mark.parametrize("kind", ["card", "leaflet"])
def test_a_sheets_page_has_no_script(kind: str) -> None:
    assert "<script" not in pages()[kind]


@pytest.mark.parametrize("kind", KINDS)
def test_a_page_stays_under_a_megabyte_and_a_half(kind: str) -> None:
    assert len(pages()[kind].encode()) < 1_500_000


@pytest.mark.parametrize("kind", KINDS)
def test_headings_go_down_a_step_at_a_time(kind: str) -> None:
    levels = [int(tag[1]) for tag, _ in Page(pages()[kind]).tags if re.fullmatch(r"h[1-6]", tag)]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))


def test_ids_are_not_repeated() -> None:
    ids = [attrs["id"] for _, attrs in Page(pages()["card"]).tags if "id" in attrs]
    assert len(ids) == len(set(ids)) > 5


def test_every_box_to_tick_has_words() -> None:
    text = pages()["card"]
    assert text.count('type="checkbox"') == 4 + 2 + 6 + 4  # tools, materials, steps, finish
    assert text.count("<label") == 16
    assert "Tick off: Find the circle from above." in text


def test_the_words_of_the_technique_are_all_there() -> None:
    words = " ".join(Page(pages()["card"]).words.replace("\u00a0", " ").split())
    for part in (
        "Clipping · Level 1 · 25 minutes",
        "Start at the widest ring, never at the top.",
        "Take 40 mm off each side.",
        "cut-resistant gloves · eye protection",
        "Version 7f3a91c2 · 14 October 2026",
        "Follow local codes and the product label.",
        "Within 2 days:",
    ):
        assert part in words


def test_a_card_leads_back_to_all_cards_and_a_leaflet_does_not() -> None:
    assert [link["href"] for link in Page(pages()["card"]).all("a")] == [
        "../index.html",
        "https://lantern-field.example/t/clip-a-ball",
    ]
    assert Page(pages()["leaflet"]).all("a") == []


def test_what_an_author_types_is_never_read_as_markup() -> None:
    # a value `<b>` must come out as `&lt;b&gt;` whatever the template is called (Jinja2 3.1.6)
    text = page(card(title=MARKUP, intro=(prose(MARKUP),), finish=(prose(MARKUP),)))
    assert "<b>" not in text
    assert "&lt;b&gt;bold&lt;/b&gt; &amp; &#34;quoted&#34; &#39;single&#39; {{ 7*7 }} {% raw %}" in text
    assert Page(text).words.count(MARKUP) == 3


def test_a_name_the_sheet_does_not_have_stops_the_page() -> None:
    # StrictUndefined: a template that uses a missing field fails with the field's name (Jinja2 3.1.6)
    with pytest.raises(UndefinedError, match="pocket"):
        environment().from_string("{{ sheet.pocket }}").render(sheet=card())


def test_the_slanted_face_comes_along_only_where_it_is_used() -> None:
    slanted = page(card(intro=((Run(text="so", emphasis=True),),)))
    assert pages()["card"].count("@font-face") == 4
    assert slanted.count("@font-face") == 5
    assert "<em>so</em>" in slanted


def test_a_photograph_is_inside_the_page_with_its_words() -> None:
    out = BytesIO()
    Image.new("RGB", (40, 30), "#5e7a4f").save(out, "JPEG")
    photo = Photo(jpeg=out.getvalue(), width=40, height=30, alt='The "pair"', caption="After")
    sheet = leaflet().model_copy(update={"sections": (Section(heading="Before and after", blocks=(photo,)),)})
    (image,) = Page(page(sheet)).all("img")
    assert image["alt"] == 'The "pair"'
    assert image["src"].startswith("data:image/jpeg;base64,/9j/")


def test_a_table_stands_upright_and_names_its_rows_and_columns() -> None:
    scopes = [attrs["scope"] for attrs in Page(pages()["card"]).all("th")]
    assert scopes == ["col"] * 2 + ["row"] * 5


def test_the_same_sheet_gives_the_same_page() -> None:
    assert page(card()) == pages()["card"]


def luminance(colour: str) -> float:
    """Return relative luminance as W3C, Web Content Accessibility Guidelines 2.2 defines it."""
    channels = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    lights = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * lights[0] + 0.7152 * lights[1] + 0.0722 * lights[2]


def ratio(one: str, other: str) -> float:
    """Return the contrast of two colours by the same source."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_contrast_in_this_file_is_the_published_one() -> None:
    # #767676 on white is 4.5422, a published near pass
    assert ratio("#767676", "#ffffff") == pytest.approx(4.5422, abs=0.0005)


@pytest.mark.parametrize(
    ("text", "ground"),
    [
        ("#1d2a26", "#f6f3ea"),  # ink on the ground
        ("#a63d1f", "#f6f3ea"),  # accent on the ground
        ("#1d2a26", "#ffffff"),  # ink on paper
        ("#a63d1f", "#ffffff"),  # accent on paper
        ("#ffffff", "#1d2a26"),  # a number in its disc
        ("#000000", SAFETY_YELLOW),
        ("#000000", "#ffffff"),
    ],
)
def test_every_pair_of_colours_passes_aa(text: str, ground: str) -> None:
    assert ratio(text, ground) >= 4.5  # 1.4.3, text of any size


def test_the_pages_name_no_other_colours() -> None:
    style = pages()["card"].partition("<style>")[2].partition("</style>")[0]
    style = re.sub(r"url\([^)]*\)", "", style)
    assert set(re.findall(r"#[0-9a-fA-F]{3,6}\b", style)) == {
        "#1d2a26",
        "#f6f3ea",
        "#a63d1f",
        "#f9a800",
        "#000",
        "#fff",
    }


def test_the_shelf_lists_cards_by_family_with_a_link_each() -> None:
    text = shelf(
        ShelfEntry(id="clip-a-ball", title="Clip a ball", family="clipping", minutes=25.0, plants=("ilex crenata",)),
        ShelfEntry(id="mow-by-thirds", title="Mow by thirds", family="mowing", season="spring"),
        ShelfEntry(id="clip-a-cone", title="Clip a cone", family="clipping", level=2),
    )
    found = Page(text)
    assert [link["href"] for link in found.all("a")] == [
        "cards/clip-a-ball.html", "cards/clip-a-cone.html", "cards/mow-by-thirds.html",
    ]  # fmt: skip
    assert re.findall(r"<h2[^>]*>(\w+)", text) == ["Clipping", "Mowing"]
    assert "Level 1 · 25 minutes · ilex crenata" in found.words


def test_the_search_waits_for_its_script_and_the_policy_allows_that_script_alone() -> None:
    text = pages()["shelf"]
    assert '<div class="search" role="search" hidden>' in text
    (policy,) = (meta["content"] for meta in Page(text).all("meta") if "http-equiv" in meta)
    assert re.search(r"script-src 'sha256-[A-Za-z0-9+/]{43}='$", policy)
    assert "unsafe-inline" not in policy.partition("script-src")[2]


def test_a_shelf_without_cards_says_so() -> None:
    assert "No cards yet." in shelf_page(sample.CREW, (), sample.TODAY)


def test_an_entry_takes_its_words_from_the_technique() -> None:
    entry = ShelfEntry.of(sample.technique())
    assert entry.about.startswith("A ball that reads as one round line from the gate")
    assert ShelfEntry.of(sample.technique(intro=())).about == ""


def test_a_card_stands_before_its_telling_in_another_language_which_says_which_it_is() -> None:
    entries = [
        ShelfEntry(id="clip-a-ball.es", title="Recortar una bola", family="clipping", language="es"),
        ShelfEntry(id="clip-a-ball", title="Clip a ball", family="clipping"),
    ]
    page = shelf_page(sample.CREW, entries, sample.TODAY)
    assert page.index(">Clip a ball<") < page.index('lang="es">Recortar una bola<')
