import pytest

from howto.findings import Finding, Severity
from howto.model.prose import Run, plain
from howto.model.technique import AnyTechnique, Mark, Picture
from howto.read.assemble import version_of
from howto.span import SourceText, Span
from tests.support.reading import FAMILIES, TEXT, read, source, swapped, told

WAIVED = "waive: {technique.steps: shown twice in the yard}"
MINUTES = "or another number more than 0 min and at most 2400 min"


def right() -> AnyTechnique:
    technique, findings = read()
    assert findings == ()
    assert technique is not None
    return technique


def one(old: str, new: str) -> Finding:
    """Return the one finding of the right text with one part changed."""
    (finding,) = read(swapped(old, new))[1]
    return finding


def test_a_right_file_becomes_a_technique() -> None:
    found = right()
    assert (found.id, found.title, found.family, found.level, found.minutes) == (
        "clip-a-ball",
        "Clip a ball",
        "clipping",
        2,
        25.0,
    )
    assert (found.needs, found.plants) == (("sharpen-hand-shears",), ("Ilex crenata", "box"))
    assert (found.season, found.language) == ("late spring to early autumn", "en")
    assert found.waive == {"technique.steps": "shown twice in the yard"}
    assert found.path == "techniques/clipping/clip-a-ball.md"
    assert plain(found.intro[0]) == "A ball that reads as round from the gate. It is worth an hour."
    assert [(kit.name, plain(kit.note)) for kit in (*found.tools, *found.materials)] == [
        ("Hand shears", "sharp, wiped clean"),
        ("Gauge stick", ""),
        ("Drop sheet", "2"),
    ]


def test_measures_are_in_the_units_of_their_fields() -> None:
    measures = right().measures
    assert (measures.shape, measures.finished_width_mm) == ("ball", 900.0)
    assert measures.tolerances == {"finished_width_mm": 20.0}
    assert measures.written == {"shape": "ball", "finished_width_mm": "900 mm ± 20 mm"}


def test_steps_keep_their_parts_and_styles() -> None:
    first, second = right().steps
    assert first.title == "Find the circle from above."
    assert first.key_points == ((Run(text="Start at the "), Run(text="widest", emphasis=True), Run(text=" ring.")),)
    assert [plain(each) for each in (*first.reasons, *first.checks)] == [
        "Every cut is measured from it.",
        "{finished width} twice.",
    ]
    assert first.pictures == (
        Picture(
            file="ball.jpg",
            focus_percent=(60.0, 40.0),
            marks=(Mark(x_percent=52.0, y_percent=38.0, text="widest ring"),),
            alt="A ball from above",
            credit="the crew",
        ),
    )
    assert (second.title, plain(second.text)) == ("Clip the ring.", "Then clip the crown.")


def test_cautions_finish_and_aftercare_are_read() -> None:
    found = right()
    assert [(each.title, plain(each.text), each.wear) for each in found.cautions] == [
        ("Blades.", "Keep the free hand behind.", ("gloves", "eye protection"))
    ]
    assert [plain(each) for each in found.finish] == ["The outline is round"]
    assert [(each.when.kind, each.when.days, plain(each.text), each.never) for each in found.aftercare] == [
        ("within", 2, "water once.", False),
        ("always", 0, "mow against it.", True),
    ]


@pytest.mark.parametrize(
    ("field", "line", "text"),
    [
        ("title", 2, "Clip a ball"),
        ("family", 3, "clipping"),
        ("needs[0]", 6, "sharpen-hand-shears"),
        ("plants[1]", 7, "box"),
        ("season", 8, "late spring to early autumn"),
        ("measures", 9, "measures"),
        ("measures.finished_width_mm", 11, "900 mm ± 20 mm"),
        ("measures.slope_fraction", 9, "measures"),
        ("language", 2, "title"),
        ("waive.technique.steps", 12, "technique.steps"),
        ("intro[0]", 15, "A ball that reads as round from the gate."),
        ("tools", 18, "## Tools"),
        ("tools[1]", 20, "Gauge stick"),
        ("materials[0]", 23, "Drop sheet: 2"),
        ("steps", 25, "## Steps"),
        ("steps[0].text", 26, "**Find the circle from above.** Stand over the plant."),
        ("steps[0].key_points[0]", 27, "Key point: Start at the *widest* ring."),
        ("steps[0].reasons[0]", 28, "Reason: Every cut is measured from it."),
        ("steps[0].checks[0]", 29, "Check: {finished width} twice."),
        ("steps[0].pictures[0]", 30, "Picture: ball.jpg"),
        ("steps[0].pictures[0].marks[0]", 34, "52 38: widest ring"),
        ("steps[1].key_points[0]", 35, "Clip the ring. Then clip the crown."),
        ("cautions[0]", 38, "**Blades.** Keep the free hand behind. → gloves, eye protection"),
        ("finish[0]", 41, "[ ] The outline is round"),
        ("aftercare[0]", 44, "Within 2 days: water once."),
        ("aftercare[0].when", 44, "Within 2 days"),
    ],
)
def test_every_part_knows_its_place(field: str, line: int, text: str) -> None:
    span = right().spot(field)
    assert (span.line, TEXT.split("\n")[line - 1][span.column - 1 : span.end_column - 1]) == (line, text)


def test_a_section_that_is_missing_stands_at_the_end() -> None:
    technique, _ = read(TEXT[: TEXT.index("\n## Aftercare")])
    assert technique is not None
    assert technique.spot("aftercare").line == 41


def test_a_version_is_six_digits_of_the_text() -> None:
    # `printf 'a\n' | sha256sum` begins with these six.
    assert version_of(SourceText("a.md", "a")) == "87428f"
    assert version_of(SourceText("a.md", "\na  \n\n\n")) == "87428f"
    assert version_of(SourceText("a.md", "b")) != "87428f"
    assert right().version == version_of(source())


@pytest.mark.parametrize(
    ("old", "new", "place", "mend"),
    [
        ("level: 2", "levle: 2", (4, 1, 6), "write `level:`"),
        (
            "  shape: ball",
            "  shpae: ball\n  shape: ball",
            (10, 3, 8),
            "take this line out: `shape:` already stands on line 11",
        ),
        ("level: 2", "price: 2", (4, 1, 6), "take this line out, or write one of the keys"),
    ],
)
def test_an_unknown_key_is_offered_the_nearest(old: str, new: str, place: tuple[int, int, int], mend: str) -> None:
    finding = one(old, new)
    assert told((finding,)) == [("file.unknown-key", *place)]
    assert finding.mend == mend


@pytest.mark.parametrize(
    ("old", "new", "rule", "columns", "mend"),
    [
        ("level: 2", "level: 4", "bound", (8, 9), "write `level: 3`, or another number from 1 to 3"),
        ("level: 2", "level: 0", "bound", (8, 9), "write `level: 1`, or another number from 1 to 3"),
        ("level: 2", "level: high", "value", (8, 12), "write a number from 1 to 3, such as `level: 1`"),
        ("level: 2", "level:", "value", (1, 6), "write it after the colon, or take the line `level:` out"),
        ("level: 2", "level: [2]", "value", (1, 6), "write one text after the colon"),
        ("minutes: 25", "minutes: 0", "bound", (10, 11), "write `minutes: 25`, " + MINUTES),
        ("minutes: 25", "minutes: -5", "bound", (10, 12), "write `minutes: 25`, " + MINUTES),
        ("minutes: 25", "minutes: 1:30", "quantity", (10, 14), "write `90` if it is hours and minutes"),
        ("title: Clip a ball", "title:", "value", (1, 6), "write it after the colon"),
        ("minutes: 25", "minutes: 50 h", "bound", (10, 14), "write `minutes: 2400`, " + MINUTES),
        ("family: clipping", "family: cliping", "unknown-word", (9, 16), "write `family: clipping`"),
        ("family: clipping", "family: topiary", "unknown-word", (9, 16), "write `clipping` or `hedging`"),
        (
            "needs: [sharpen-hand-shears]",
            "needs: {a: b}",
            "value",
            (1, 6),
            "write them with commas between: `needs: [one, two]`",
        ),
        (
            WAIVED,
            "waive: {technique.steps: }",
            "waive",
            (9, 24),
            "write the reason after the colon, or take `technique.steps` out",
        ),
        (WAIVED, "waive: {technique.steps: [a]}", "value", (9, 24), "write one text after the colon"),
        (
            WAIVED,
            "waive: all",
            "value",
            (1, 6),
            "write a rule, a colon and the reason, such as `waive: {mowing.one-third: renovation, agreed}`",
        ),
    ],
)
def test_a_key_with_a_slip_is_explained(old: str, new: str, rule: str, columns: tuple[int, int], mend: str) -> None:
    finding = one(old, new)
    assert (finding.rule, finding.span.column, finding.span.end_column) == (f"file.{rule}", *columns)
    assert finding.mend == mend


@pytest.mark.parametrize(
    ("old", "new", "rule", "mend"),
    [
        ("title: Clip a ball\n", "", "missing-key", "write a line `title: Clip a ball` between the two lines of `---`"),
        ("family: clipping\n", "", "missing-key", "write a line `family: clipping` between the two lines of `---`"),
        ("title: Clip", "titel: Clip", "unknown-key", "write `title:`"),
        ("family: cl", "famly: cl", "unknown-key", "write `family:`"),
        ("  shape", "  shpae", "unknown-key", "write `shape:`"),
        (
            "  shape: ball\n",
            "",
            "missing-measure",
            "write a line such as `  shape: ball` under `measures:`, with your own after the colon",
        ),
        (
            "  finished width: 900 mm ± 20 mm\n",
            "",
            "missing-measure",
            "write a line such as `  finished width: 900 mm ± 20 mm` under `measures:`, with your own after the colon",
        ),
        (
            "  shape: ball\n  finished width: 900 mm ± 20 mm\n",
            "  - ball\n",
            "value",
            "write a line such as `  shape: ball` under `measures:`",
        ),
    ],
)
def test_what_must_be_there_is_missed_once(old: str, new: str, rule: str, mend: str) -> None:
    finding = one(old, new)
    assert (finding.rule, finding.mend) == (f"file.{rule}", mend)


def test_a_family_without_a_starter_is_shown_a_line_all_the_same() -> None:
    text = swapped("  shape: ball\n  finished width: 900 mm ± 20 mm\n", "").replace(
        "family: clipping", "family: hedging"
    )
    assert [each.mend for each in read(text, "case.md")[1]] == [
        "write a line such as `  shape: ball` under `measures:`, with your own after the colon",
        "write a line such as `  finished width: 1 mm` under `measures:`, with your own after the colon",
    ]


def test_measures_left_blank_miss_each_that_must_be_there() -> None:
    _, findings = read(swapped("  shape: ball\n  finished width: 900 mm ± 20 mm\n", ""))
    assert [each.what for each in findings] == [
        "`shape` is not among the measures",
        "`finished width` is not among the measures",
    ]
    assert {each.span.line for each in findings} == {9}
    assert findings[1].why == "clipping is worked out from it: across the widest part when done"


def test_no_measures_key_at_all_is_one_finding_that_shows_them() -> None:
    finding = one("measures:\n  shape: ball\n  finished width: 900 mm ± 20 mm\n", "")
    assert told((finding,)) == [("file.missing-key", 2, 1, 6)]
    assert finding.mend == (
        "write above the second `---` a line `measures:` and under it `  shape: ball`, "
        "`  finished width: 900 mm ± 20 mm`"
    )


@pytest.mark.parametrize(
    ("path", "mend"),
    [
        ("techniques/clipping/Clip a Ball.md", "rename the file to `clip-a-ball.md`"),
        ("techniques/clipping/clip_a_ball.md", "rename the file to `clip-a-ball.md`"),
        ("techniques/clipping/Élague la boule.md", "rename the file to `elague-la-boule.md`"),
        ("techniques/clipping/…md", "rename the file to `md.md`"),
    ],
)
def test_a_file_name_that_is_no_id_is_renamed(path: str, mend: str) -> None:
    (finding,) = read(path=path)[1]
    assert (finding.rule, finding.mend) == ("file.name", mend)


def test_a_file_name_may_say_its_language() -> None:
    technique, findings = read(path="techniques/clipping/clip-a-ball.es.md")
    assert findings == ()
    assert technique is not None
    assert (technique.id, technique.language) == ("clip-a-ball.es", "es")


@pytest.mark.parametrize(
    ("folder", "mend"),
    [
        ("hedging", "move the file to the folder `clipping`, or write `family: hedging`"),
        ("cliping", "move the file to a folder `clipping`"),
    ],
)
def test_a_folder_that_is_another_familys_is_a_finding(folder: str, mend: str) -> None:
    (finding,) = read(path=f"techniques/{folder}/clip-a-ball.md")[1]
    assert (finding.rule, finding.span.line, finding.mend) == ("file.folder", 3, mend)


def test_a_folder_of_no_family_may_hold_any() -> None:
    assert read(path="cases/clip-a-ball.md")[1] == ()
    assert read(path="clip-a-ball.md")[1] == ()


def test_without_a_family_the_folders_is_taken_to_read_on() -> None:
    text = swapped("family: clipping\n", "").replace("shape: ball", "shape: bal")
    assert [each.rule for each in read(text)[1]] == ["file.missing-key", "file.unknown-word"]


@pytest.mark.parametrize(
    ("written", "minutes"), [("25", 25.0), ("25 min", 25.0), ("1 h", 60.0), ("1 h 30 min", 90.0), ("2.5", 2.5)]
)
def test_minutes_may_have_a_unit(written: str, minutes: float) -> None:
    technique, _ = read(swapped("minutes: 25", f"minutes: {written}"))
    assert technique is not None
    assert technique.minutes == minutes


def test_keys_left_blank_or_out_have_their_defaults() -> None:
    text = TEXT
    for old in ("level: 2\n", "minutes: 25\n", "[sharpen-hand-shears]", "[Ilex crenata, box]", WAIVED[7:]):
        text = text.replace(old, "")
    text = text.replace("late spring to early autumn", "")
    technique, findings = read(text)
    assert findings == ()
    assert technique is not None
    assert (technique.level, technique.minutes, technique.needs, technique.plants) == (1, None, (), ())
    assert (technique.season, technique.waive) == ("", {})


def test_needs_may_be_titles_or_file_names() -> None:
    technique, _ = read(swapped("[sharpen-hand-shears]", "Sharpen hand shears, oil-blades.md"))
    assert technique is not None
    assert technique.needs == ("sharpen-hand-shears", "oil-blades")


@pytest.mark.parametrize(
    ("written", "mend"),
    [("English", "write `language: en`"), ("spanisch", "write `language: es`"), ("?!", "write `language: en`")],
)
def test_a_language_is_written_by_its_letters(written: str, mend: str) -> None:
    finding = one("level: 2", f'language: "{written}"')
    assert (finding.rule, finding.mend) == ("file.unknown-word", mend)


def test_a_language_in_the_front_matter_is_kept() -> None:
    technique, findings = read(swapped("level: 2", "language: es"))
    assert findings == ()
    assert technique is not None
    assert technique.language == "es"


def test_an_aftercare_time_that_is_not_understood_is_pointed_at() -> None:
    technique, (finding,) = read(swapped("Within 2 days", "Soon"))
    assert (finding.rule, finding.span.line, finding.span.column, finding.span.end_column) == ("file.when", 44, 3, 7)
    assert finding.text == "- Soon: water once."
    assert technique is not None
    assert len(technique.aftercare) == 1


def test_findings_of_front_matter_measures_and_body_come_in_one_run() -> None:
    text = swapped("level: 2", "level: 9").replace("shape: ball", "shape: bal").replace("1. **Find", "- **Find")
    text = text.replace("title: Clip a ball", "title: Clip: a ball").replace("Within 2 days", "Soon")
    rules = [each.rule for each in read(text)[1]]
    assert sorted(rules) == ["file.bound", "file.quotes", "file.steps-numbered", "file.unknown-word", "file.when"]


def test_front_matter_that_cannot_be_read_gives_one_finding() -> None:
    for old, new in (("title: Clip a ball", "title Clip a ball"), ("family: clipping", "family: 'clipping")):
        assert [each.rule for each in read(swapped(old, new))[1]] == ["file.front-matter"]


def test_a_file_of_plain_words_is_told_to_start_with_dashes() -> None:
    findings = read("Clip it round.\n")[1]
    assert findings[0].rule == "file.front-matter-start"
    assert {each.severity for each in findings[1:]} == {Severity.ERROR, Severity.WARNING}


def test_every_family_is_named_where_one_is_missing() -> None:
    assert one("family: clipping\n", "").why.endswith(", ".join(FAMILIES))


def test_each_letter_has_its_place_through_stars_lines_and_spaces() -> None:
    text = TEXT.replace(
        "## Tools", "A *fine* ball, and  a\nsecond **line** with \\* a star\u200b and `code`.\n\n## Tools", 1
    )
    technique, _ = read(text)
    assert technique is not None
    row = text[: text.index("A *fine* ball")].count("\n") + 1
    where = next(span for span in technique.located if span.line == row)
    path = technique.path
    for words, span in (
        ("fine ball", Span(path, row, 4, 14)),
        ("and a", Span(path, row, 16, 22)),
        ("line with", Span(path, row + 1, 10, 21)),
        ("* a star and", Span(path, row + 1, 23, 36)),
        ("code", Span(path, row + 1, 38, 42)),
        ("a second", None),
        ("nothing", None),
        ("", None),
    ):
        assert technique.located[where].span_of(words) == span, words
