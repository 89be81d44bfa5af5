import pytest

from tests.support.bodies import rules, steps
from tests.support.reading import told


def test_a_step_without_bold_words_takes_its_first_sentence_as_its_title() -> None:
    found, findings = steps("1. Clip the ring, e.g. at 40 cm. Then the crown.\n2. Look.")
    assert findings == ()
    assert [(each.title, each.text.text) for each in found.steps] == [
        ("Clip the ring, e.g. at 40 cm.", "Then the crown."),
        ("Look.", ""),
    ]


def test_what_stands_under_a_step_goes_where_its_label_says() -> None:
    found, findings = steps(
        "1. **Look.** Stand.\n\n   Walk round.\n   - key points: *Low* light\n   - WHY: so\n   - Check: twice\n"
        "   - Photo: “pictures/ball.jpg”\n     - Focus: 60, 40\n     - alt: A ball\n     - credit: us\n"
        "     - 52 38: widest ring\n"
        "     - (0%, 100%) – foot\n"
    )
    assert findings == ()
    (step,) = found.steps
    assert step.text.text == "Stand. Walk round."
    assert [each.text for each in (*step.key_points, *step.reasons, *step.checks)] == ["Low light", "so", "twice"]
    (picture,) = step.pictures
    assert (picture.file, picture.focus_percent, picture.alt, picture.credit) == ("ball.jpg", (60, 40), "A ball", "us")
    assert [(each.x_percent, each.y_percent, each.text) for each in picture.marks] == [
        (52, 38, "widest ring"),
        (0, 100, "foot"),
    ]


def test_lines_set_in_too_little_belong_to_the_step_above() -> None:
    found, findings = steps(
        "9. **One.** A.\n- Reason: r1\n10. **Two.** B.\n   - Key point: k2\n  - Picture: p.jpg\n    - 1 2: m\n\nMore."
    )
    assert findings == ()
    assert [(each.title, len(each.key_points), len(each.reasons), len(each.pictures)) for each in found.steps] == [
        ("One.", 0, 1, 0),
        ("Two.", 1, 0, 1),
    ]
    assert found.steps[1].text.text == "B. More."


def test_a_reason_under_a_key_point_is_a_reason_of_the_step() -> None:
    found, findings = steps("1. Look.\n   - Key point: low\n     - Reason: so\n")
    assert (findings, [each.text for each in found.steps[0].reasons]) == ((), ["so"])


@pytest.mark.parametrize(
    ("text", "what", "mend"),
    [
        (
            "- **Look.** Stand.\n- Clip.",
            "bullets stand where the numbered steps should",
            "start each step with its number: the first line is `1. **Look.** Stand.`, the next `2.`, and so on",
        ),
        (
            "Look at it.",
            "a paragraph stands where the numbered steps should",
            "start each step with its number: the first line is `1. Look at it.`",
        ),
    ],
)
def test_steps_that_are_not_numbered_are_shown_their_first_line(text: str, what: str, mend: str) -> None:
    found, findings = steps(text)
    assert (rules(findings), findings[0].what, findings[0].mend) == (["steps-numbered"], what, mend)
    assert found.steps


def test_several_paragraphs_of_steps_are_one_finding() -> None:
    found, findings = steps("First look.\n\nThen clip.\n\nThen sweep.")
    assert rules(findings) == ["steps-numbered"]
    assert [each.title for each in found.steps] == ["First look.", "Then clip.", "Then sweep."]


def test_a_table_of_steps_is_a_finding() -> None:
    found, findings = steps("| Step | How |\n|---|---|\n| Look | down |")
    assert (rules(findings), findings[0].what) == (["table"], "a table stands where the numbered steps should")
    assert [each.title for each in found.steps] == ["Look: down"]


def test_a_step_that_says_nothing_is_a_finding() -> None:
    found, findings = steps("1. Look.\n2.\n3. Clip.")
    assert told(findings) == [("file.step", 7, 1, 3)]
    assert len(found.steps) == 2


def test_a_hundred_steps_are_too_many() -> None:
    assert steps("\n".join(f"{number}. Clip row {number}." for number in range(1, 100)))[1] == ()
    found, (finding,) = steps("\n".join(f"{number}. Clip row {number}." for number in range(1, 103)))
    assert (finding.rule, finding.span.line, len(found.steps)) == ("file.too-many", 105, 99)
    assert finding.mend == ("move steps 100 to 102 into a file of their own; a card is best taught with seven")


@pytest.mark.parametrize(
    ("line", "mend"),
    [
        ("Key piont: low", "write `- Key point: low`"),
        ("Hold it low", "write `- Key point: Hold it low`"),
        ("Nota bene: low", "write `- Key point: Nota bene: low`"),
        ("Check:", "write the check after the colon, or take the line out"),
        ("focus: 60 40", "write a line `- Picture: name.jpg` above this one"),
        ("52 38: widest ring", "write a line `- Picture: name.jpg` above this one"),
        ("Picture: ../ball.jpg", "move the picture there and write its name alone: `ball.jpg`"),
    ],
)
def test_a_line_under_a_step_with_a_slip_is_explained(line: str, mend: str) -> None:
    _, findings = steps(f"1. Look.\n   - {line}\n")
    assert (len(findings), findings[0].span.line, findings[0].mend) == (1, 7, mend)


@pytest.mark.parametrize(
    ("line", "rule", "mend"),
    [
        ("101 38: ring", "mark", "write `100 38: ring`"),
        ("52 −1: ring", "mark", "write `52 0: ring`"),
        ("52 38", "mark", "write it as `52 38: widest ring`"),
        ("52: ring", "mark", "write it as `52 38: widest ring`"),
        ("focus: 60 400", "focus", "write `focus: 60 100`"),
        ("focus: left", "focus", "write two numbers from 0 to 100, such as `focus: 60 40`"),
    ],
)
def test_a_point_off_the_picture_is_brought_back(line: str, rule: str, mend: str) -> None:
    found, findings = steps(f"1. Look.\n   - Picture: a.jpg\n     - {line}\n")
    assert (rules(findings), findings[0].mend) == ([rule], mend)
    assert told(findings) == [(f"file.{rule}", 8, 8, 8 + len(line))]
    assert found.steps[0].pictures[0].marks == ()


def test_a_picture_without_a_name_is_one_finding_whatever_stands_under_it() -> None:
    text = "1. Look.\n   - Picture:\n     - alt: A ball.\n     - 52 38: ring\n     - focus: 60 40\n"
    found, findings = steps(text)
    assert [(each.what, each.mend) for each in findings] == [
        ("nothing stands after `Picture:`", "write the picture after the colon, or take the line out")
    ]
    assert (found.steps[0].pictures[0].file, found.steps[0].pictures[0].alt) == ("", "A ball.")


def test_marks_at_the_very_edge_are_on_the_picture() -> None:
    assert steps("1. Look.\n   - Picture: a.jpg\n     - 0 0: a\n     - 100 100: b\n     - focus: 0 100\n")[1] == ()
