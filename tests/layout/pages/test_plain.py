from howto.layout.pages.plain import message
from howto.model.prose import prose
from howto.model.sheet import Bullets, Dated, Entry, Facts, Grid, Paragraph, Photo, Section, Sheet

TASKS = tuple(Dated(when=f"By day {n}", text=prose(f"Do the thing numbered {n}."), number=n) for n in range(1, 6))
SECTIONS = (
    Section(name="done", heading="What we did", blocks=(Bullets(items=(prose("Clipped."),)),)),
    Section(name="pictures", heading="Pictures", blocks=(Photo(jpeg=b"", width=1, height=1, alt="a"),)),
    Section(name="first", heading="To do", blocks=TASKS),
    Section(name="later", heading="After that", blocks=(Dated(when="In March", text=prose("Feed."), note="the pear"),)),
    Section(
        name="numbers", heading="Numbers", blocks=(Facts(entries=(Entry(label="Water", value="9 L", note="each"),)),)
    ),
    Section(heading="", blocks=(Grid(columns=("a", "b"), rows=(("one", ""), ("two", "three"))),)),
    Section(name="call", heading="When to call", tone="call", blocks=(Paragraph(text=prose("Call if in doubt.")),)),
)


def sheet(**changes: object) -> Sheet:
    """Return a small leaflet."""
    fields = {
        "id": "a", "title": "Orchard end", "over": "Care leaflet", "under": prose("All is well."),
        "width_mm": 210.0, "height_mm": 297.0, "text_pt": 14.0, "small_pt": 12.0, "least_pt": 9.0, "most_pages": 2,
        "ink": "#000000", "ground": "#ffffff", "accent": "#000000", "sections": SECTIONS,
        "footer": "Follow the label.", "stamp": "1",
    }  # fmt: skip
    return Sheet.model_validate({**fields, **changes})


def test_the_words_stand_in_reading_order_without_pictures() -> None:
    assert message(sheet()) == (
        "Orchard end\nCare leaflet\n\nAll is well.\n\nWHAT WE DID\n- Clipped.\n\n"
        "TO DO\n1. By day 1: Do the thing numbered 1.\n2. By day 2: Do the thing numbered 2.\n"
        "3. By day 3: Do the thing numbered 3.\n4. By day 4: Do the thing numbered 4.\n"
        "5. By day 5: Do the thing numbered 5.\n\nAFTER THAT\n- In March: Feed. (the pear)\n\n"
        "NUMBERS\n- Water: 9 L (each)\n\none\ntwo · three\n\nWHEN TO CALL\nCall if in doubt.\n\nFollow the label."
    )


def test_what_matters_least_is_left_out_first_and_told() -> None:
    whole = len(message(sheet()))
    shorter = message(sheet(), whole + 5)
    assert shorter == message(sheet())
    shorter = message(sheet(), whole - 1)
    assert "NUMBERS" not in shorter
    assert "All is well." in shorter
    assert shorter.endswith("\n\nThe rest is on your leaflet.")
    assert len(shorter) < whole


def test_the_first_task_and_when_to_call_always_stand() -> None:
    for limit in range(60, 500, 7):
        text = message(sheet(), limit)
        assert "1. By day 1" in text
        assert "Call if in doubt." in text
        assert "Follow the label." in text
        if limit >= 260:
            assert len(text) <= limit
    assert "2. By day 2" not in message(sheet(), 100)


def test_a_leaflet_without_tasks_is_cut_too() -> None:
    text = message(sheet(sections=SECTIONS[:2]), 40)
    assert text == "Orchard end\nCare leaflet\n\nFollow the label.\n\nThe rest is on your leaflet."


def test_the_language_of_the_sheet_says_that_there_is_more() -> None:
    assert message(sheet(language="es"), 40).endswith("El resto está en su hoja.")
