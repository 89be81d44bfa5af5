from datetime import date
from functools import cache
from io import BytesIO
from pathlib import Path
from shutil import copyfile, which
from subprocess import run
from tempfile import TemporaryDirectory
from typing import Any

import numpy as np
import pikepdf
import pytest
import typst
import zxingcpp
from PIL import Image
from pypdf import PdfReader

from howto.compute.tasks import plan_of
from howto.fonts import typst_fonts
from howto.layout.pages.card import card_sheet
from howto.layout.pages.leaflet import leaflet_sheet
from howto.model.prose import Run, prose
from howto.model.sheet import Photo, Section, Sheet
from howto.model.technique import Step
from howto.render import pdf as module
from howto.render.pdf import pdf
from tests.support import sample

MARKUP = "50 % #off $5 *all* _done_ @you [x] <y> `z` \\n // /* = + - ~ \"q\" 'a' {b} end"


needs_pdftoppm = pytest.mark.skipif(which("pdftoppm") is None, reason="pdftoppm is not installed")


def card(**changes: Any) -> Sheet:
    """Return the sample card, with some fields of the technique changed."""
    return card_sheet(sample.ready(**changes), (sample.art(),), sample.TODAY)


def leaflet(**changes: Any) -> Sheet:
    """Return the sample leaflet, with some fields of the visit changed."""
    ready = sample.ready_visit(sample.visit(**changes))
    return leaflet_sheet(ready, plan_of(ready)[0], sample.TODAY)


@cache
def card_bytes() -> bytes:
    """Return the sample card's PDF."""
    return pdf(card(), sample.TODAY)[0]


def words(data: bytes) -> str:
    """Return the words of a PDF, with single spaces."""
    return " ".join(" ".join(page.extract_text() for page in PdfReader(BytesIO(data)).pages).split())


def elements(data: bytes) -> list[pikepdf.Dictionary]:
    """Return every element of the structure tree, in reading order."""
    found: list[pikepdf.Dictionary] = []

    def walk(node: Any) -> None:
        if isinstance(node, pikepdf.Array):
            for child in list(node):
                walk(child)
        elif isinstance(node, pikepdf.Dictionary):
            if "/S" in node:
                found.append(node)
            if "/K" in node:
                walk(node["/K"])

    with pikepdf.open(BytesIO(data)) as document:
        walk(document.Root.StructTreeRoot["/K"])
        return [pikepdf.Dictionary({"/S": str(e["/S"]), "/Alt": str(e.get("/Alt", ""))}) for e in found]


def kinds(data: bytes) -> list[str]:
    """Return the kinds of the elements, in reading order."""
    return [str(element["/S"]) for element in elements(data)]


def test_a_card_is_two_sides_of_a5() -> None:
    data, pages = pdf(card(), sample.TODAY)
    reader = PdfReader(BytesIO(data))
    assert pages == len(reader.pages) == 2
    for page in reader.pages:
        # ISO 216 A5 in points of 1/72 in: 419.53 × 595.28, ± 0.01
        assert float(page.mediabox.width) == pytest.approx(419.53, abs=0.01)
        assert float(page.mediabox.height) == pytest.approx(595.28, abs=0.01)


def test_a_leaflet_is_one_sheet_of_a4() -> None:
    data, pages = pdf(leaflet(), sample.TODAY)
    page = PdfReader(BytesIO(data)).pages[0]
    assert pages == 1
    # ISO 216 A4 in points: 595.28 × 841.89
    assert float(page.mediabox.width) == pytest.approx(595.28, abs=0.01)
    assert float(page.mediabox.height) == pytest.approx(841.89, abs=0.01)


def test_the_pdf_is_tagged_and_says_its_language_and_title() -> None:
    with pikepdf.open(BytesIO(card_bytes())) as document:
        assert str(document.Root.Lang) == "en"
        assert bool(document.Root.MarkInfo.Marked)
        assert "/StructTreeRoot" in document.Root
        assert bool(document.Root.ViewerPreferences.DisplayDocTitle)
        with document.open_metadata() as metadata:
            assert metadata["dc:title"] == "Clip a ball"
            assert metadata["pdfuaid:part"] == "1"


def test_the_language_is_that_of_the_sheet() -> None:
    with pikepdf.open(BytesIO(pdf(card(language="es-MX"), sample.TODAY)[0])) as document:
        assert str(document.Root.Lang) == "es-MX"


def test_headings_lists_and_table_headers_are_real() -> None:
    found = kinds(card_bytes())
    assert found.count("/H1") == 1
    assert found.count("/H3") == 6  # one a step
    assert [kind for kind in found if kind in {"/H1", "/H2", "/H3"}][:2] == ["/H1", "/H2"]
    assert found.count("/L") == 3  # tools, materials, finish
    assert found.count("/LI") == 10
    assert "/Table" in found
    assert found.count("/TH") == 6


def test_every_figure_says_what_it_shows() -> None:
    figures = [element for element in elements(card_bytes()) if element["/S"] == "/Figure"]
    alts = [str(figure["/Alt"]) for figure in figures]
    assert alts[0] == "Opens https://lantern-field.example/t/clip-a-ball"
    assert alts[1].startswith("Section of a ball 900 mm across standing on the ground")
    assert all(alts)


def test_reading_order_is_that_of_the_work() -> None:
    text = words(card_bytes())
    places = [
        text.index(part)
        for part in (
            "Clip a ball",
            "Setting out",
            "Tools",
            "Blades.",
            "Find the circle",
            "Step back and clear",
            "Aftercare",
        )
    ]
    assert places == sorted(places)


def test_the_words_of_the_technique_are_all_there() -> None:
    text = words(card_bytes()).replace("\u00a0", " ")
    for part in (
        "Clipping · Level 1 · 25 minutes",
        "900 mm ± 20 mm",
        "Start at the widest ring, never at the top.",
        "A tilted belt gives an egg.",
        "cut-resistant gloves · eye protection",
        "Scale 1:20 on this sheet",
        "Version 7f3a91c2 · 14 October 2026",
        "Side 1 of 2",
        "Follow local codes and the product label.",
    ):
        assert part in text


def test_the_same_sheet_on_the_same_day_gives_the_same_bytes() -> None:
    assert pdf(card(), sample.TODAY)[0] == card_bytes()


def test_the_date_in_the_file_is_the_day_it_was_asked_for() -> None:
    created = PdfReader(BytesIO(pdf(card(), date(2025, 3, 1))[0])).metadata
    assert created is not None
    assert created.creation_date is not None
    assert created.creation_date.isoformat() == "2025-03-01T00:00:00+00:00"


def test_only_our_faces_are_embedded() -> None:
    names = set()
    with pikepdf.open(BytesIO(card_bytes())) as document:
        for item in document.objects:
            if isinstance(item, pikepdf.Dictionary) and "/FontName" in item:
                names.add(str(item["/FontName"]).partition("+")[2])
    assert names <= {"SourceSansPro-Regular", "SourceSansPro-Bold", "BarlowCondensed-SemiBold", "BarlowCondensed-Bold"}
    assert len(names) == 4


def test_what_an_author_types_is_never_read_as_markup() -> None:
    step = Step(
        title=MARKUP,
        text=(Run(text=MARKUP), Run(text=" bold", strong=True), Run(text=" slanted", emphasis=True)),
        key_points=(prose(MARKUP),),
    )
    changes = {"title": MARKUP, "steps": (step,), "version": "#1$", "intro": (prose(MARKUP),)}
    text = words(pdf(card(**changes), sample.TODAY)[0])
    assert text.count(" ".join(MARKUP.split())) >= 2
    assert "#off $5 *all* _done_ @you [x] <y>" in text


def test_letters_beyond_ascii_come_out() -> None:
    text = words(pdf(card(intro=(prose("½ ⅓ ≤ ≥ × ° ² ā é ñ ạ “quoted” → …"),)), sample.TODAY)[0])
    assert "½ ⅓ ≤ ≥ × ° ² ā é ñ ạ “quoted” → …" in text


def test_text_is_as_large_as_fits_and_never_below_the_floor() -> None:
    short = card(steps=sample.STEPS[:2], cautions=sample.CAUTIONS[:1])
    long = card(steps=sample.STEPS)
    assert sizes(short)[0] == 10.0
    assert 8.5 <= sizes(long)[0] < 10.0


def sizes(sheet: Sheet) -> list[float]:
    """Return the sizes of the words of the introduction, the commonest first."""
    found: dict[float, int] = {}

    def note(text: str, _: Any, matrix: list[float], __: Any, size: float) -> None:
        if "gate" in text or "window" in text:
            found[round(abs(size * matrix[0]), 2)] = found.get(round(abs(size * matrix[0]), 2), 0) + 1

    PdfReader(BytesIO(pdf(sheet, sample.TODAY)[0])).pages[0].extract_text(visitor_text=note)
    return sorted(found, key=lambda size: -found[size])


def test_a_card_that_cannot_fit_returns_the_sides_it_runs_to() -> None:
    steps = tuple(step.model_copy(update={"text": sample.long_prose(120)}) for step in (*sample.STEPS, *sample.STEPS))
    data, pages = pdf(card(steps=steps), sample.TODAY)
    assert pages == len(PdfReader(BytesIO(data)).pages) > 2


def test_numbers_to_spare_are_left_off_before_the_card_overflows_and_the_card_says_so() -> None:
    said = "More worked numbers stand on the card's page."
    full = words(card_bytes())
    steps = tuple(step.model_copy(update={"text": sample.long_prose(19)}) for step in sample.STEPS)
    data, pages = pdf(card(steps=steps), sample.TODAY)
    assert pages == 2
    assert "More numbers" in full
    assert said not in full
    assert "More numbers" not in words(data)
    assert said in words(data)


def test_steps_start_a_new_side_where_they_fit() -> None:
    pages = PdfReader(BytesIO(card_bytes())).pages
    assert "Find the circle" not in pages[0].extract_text()
    assert "Find the circle" in pages[1].extract_text()


def test_a_sheet_without_parts_still_prints_its_footer() -> None:
    bare = card().model_copy(update={"sections": ()})
    data, pages = pdf(bare, sample.TODAY)
    assert pages == 1
    assert "Follow local codes" in words(data)


def test_a_photograph_is_shown_with_its_words() -> None:
    out = BytesIO()
    Image.new("RGB", (40, 30), "#5e7a4f").save(out, "JPEG")
    photo = Photo(jpeg=out.getvalue(), width=40, height=30, alt="The pair, clipped round", caption="After")
    sheet = leaflet()
    section = Section(heading="Before and after", blocks=(photo, photo))
    data, _ = pdf(sheet.model_copy(update={"sections": (section, *sheet.sections)}), sample.TODAY)
    assert [str(e["/Alt"]) for e in elements(data)].count("The pair, clipped round") == 2
    assert "After" in words(data)


@pytest.mark.parametrize("large", [False, True])
def test_a_leaflet_says_dates_and_whom_to_call(large: bool) -> None:
    data, pages = pdf(leaflet(large_print=large), sample.TODAY)
    text = words(data).replace("\u00a0", " ")
    assert pages == (2 if large else 1)
    for part in ("16 October 2026", "25 November 2026", "01632 960 014", "Please do not", "Do not clip"):
        assert part in text


def side(tmp_path: Path, dpi: int) -> Image.Image:
    """Return the card's first side as a picture."""
    file = tmp_path / "card.pdf"
    file.write_bytes(card_bytes())
    run(["pdftoppm", "-r", str(dpi), "-png", "-f", "1", "-l", "1", str(file), str(tmp_path / "side")], check=True)
    (picture,) = tmp_path.glob("side*.png")
    return Image.open(picture).convert("RGB")


@needs_pdftoppm
def test_the_code_reads_off_the_printed_card(tmp_path: Path) -> None:
    found = [code.text for code in zxingcpp.read_barcodes(side(tmp_path, 150))]
    assert found == ["https://lantern-field.example/t/clip-a-ball"]


@needs_pdftoppm
def test_the_drawing_is_printed_at_its_scale(tmp_path: Path) -> None:
    # 900 mm at 1:20 is 45 mm, and 45 mm at 254 dots an inch is 450 dots: the belt's accent line runs so far
    pixels = np.asarray(side(tmp_path, 254)).astype(int)
    accent = np.abs(pixels - (0xA6, 0x3D, 0x1F)).sum(axis=2) < 40
    assert 448 <= int(accent.sum(axis=1).max()) <= 452


def test_a_word_wider_than_the_paper_breaks_and_takes_its_room() -> None:
    _, sides = pdf(card(intro=(prose("x" * 5000),)), sample.TODAY)
    assert sides == 4
    data, _ = pdf(card(intro=(prose(f"{'y' * 60} and an end"),)), sample.TODAY)
    assert words(data).replace("\u200b", "").replace(" ", "").count("y" * 60) == 1


def test_no_word_of_a_page_is_written_anywhere_while_it_is_set(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    faces = TemporaryDirectory()  # as a new program makes it
    monkeypatch.setattr(module, "_folder", lambda: faces)
    for face in typst_fonts():
        copyfile(face, Path(faces.name) / face.name)
    monkeypatch.setattr(module, "_fonts", module._fonts.__wrapped__)
    seen: list[str] = []
    compiled = typst.compile

    def looked(*given: Any, **named: Any) -> bytes:
        seen.extend(path.suffix for path in tmp_path.rglob("*") if path.is_file())
        return bytes(compiled(*given, **named))

    monkeypatch.setattr("howto.render.pdf.typst.compile", looked)
    pdf(leaflet(), sample.TODAY)
    assert set(seen) == {".ttf"}
    faces.cleanup()
    assert not list(tmp_path.iterdir())
