import re

import pytest

from howto.findings import Severity
from howto.languages import language_of
from howto.read.body import read_body, read_words
from howto.span import SourceText
from tests.support.bodies import RIGHT, body, rules, within
from tests.support.reading import told


def test_a_right_body_has_no_findings() -> None:
    found, findings = body(RIGHT)
    assert findings == ()
    assert [each.text for each in found.intro] == ["A ball that reads as round."]
    assert [(each.name, each.note and each.note.text) for each in found.tools] == [("Hand shears", "sharp")]
    assert [(each.title, each.text.text) for each in found.steps] == [("Look.", "Stand over it.")]
    assert [(each.title, each.text.text, each.wear) for each in found.cautions] == [
        ("Blades.", "Mind them.", ("gloves",))
    ]
    assert [each.text for each in found.finish] == ["Round"]
    assert [(each.when, each.text.text) for each in found.aftercare] == [("Always", "water.")]


# CommonMark 0.31.2 (2024) through markdown-it-py: with front matter of four lines, items on lines 7 and 8.
def test_lines_count_from_the_top_of_the_file() -> None:
    text = "---\na: 1\nb: 2\n---\n\n## Finish\n- [ ] one\n- [ ] two\n  and more\n"
    found, _ = read_body(SourceText("a.md", text), 5)
    assert [(each.span.line, each.span.column, each.text) for each in found.finish] == [
        (7, 3, "one"),
        (8, 3, "two and more"),
    ]
    assert (found.headings["finish"].line, found.end.line) == (6, 9)


@pytest.mark.parametrize("heading", ["## tools", "## TOOLS:", "##Tools", "## Tool", "## **Tools**", "Tools\n---"])
def test_a_section_is_known_in_any_capitals(heading: str) -> None:
    found, findings = body(RIGHT.replace("## Tools", heading))
    assert (findings, len(found.tools)) == ((), 1)


@pytest.mark.parametrize(
    ("old", "new", "rule", "mend"),
    [
        ("## Tools", "## Tooles", "unknown-section", "write `## Tools`"),
        ("## Tools", "# Tools", "heading", "write `## Tools`"),
        ("## Tools", "### Tools", "heading", "write `## Tools`"),
        ("## Tools", "### Toolz", "heading", "take this line out, or write `## Tools` if a section starts here"),
        ("## Tools", "**Tools**\n", "heading", "write `## Tools`"),
        ("## Tools", "Tools:\n", "heading", "write `## Tools`"),
    ],
)
def test_a_heading_with_a_slip_is_explained_and_read_on(old: str, new: str, rule: str, mend: str) -> None:
    found, findings = body(RIGHT.replace(old, new))
    assert (rules(findings), findings[0].mend) == ([rule], mend)
    assert len(found.tools) == 1


def test_a_title_in_the_body_is_a_finding_and_opens_no_section() -> None:
    found, findings = body("# Clip a ball\n\n" + RIGHT)
    assert told(findings) == [("file.heading", 1, 1, 14)]
    assert findings[0].mend.startswith("take this line out")
    assert [each.text for each in found.intro] == ["A ball that reads as round."]


def test_a_section_of_another_name_is_a_finding_and_its_lines_are_left_out() -> None:
    found, findings = body(RIGHT + "## History\nWords.\n")
    assert rules(findings) == ["unknown-section"]
    assert findings[0].why == ("the sections are `Tools`, `Materials`, `Steps`, `Cautions`, `Finish` and `Aftercare`")
    assert len(found.aftercare) == 1


def test_a_section_that_starts_twice_names_both_lines() -> None:
    found, findings = body(RIGHT + "## Tools\n- Rake\n")
    (finding,) = findings
    assert (finding.rule, finding.span.line, finding.also and finding.also.line) == ("file.repeated-section", 13, 3)
    assert [each.name for each in found.tools] == ["Hand shears", "Rake"]


@pytest.mark.parametrize("name", ["Tools", "Steps", "Cautions", "Finish"])
def test_a_section_that_must_be_there_is_missed_at_the_end(name: str) -> None:
    head, _, rest = RIGHT.partition(f"## {name}\n")
    _, findings = body(head + rest[rest.index("## ") :])
    (finding,) = findings
    assert (finding.rule, finding.severity, finding.span.line) == ("file.missing-section", Severity.ERROR, 10)
    assert f"write a line `## {name}` below the last line" in finding.mend
    line = finding.mend.rpartition("such as `")[2].rstrip("`")
    assert body(head + rest[rest.index("## ") :] + f"## {name}\n{line}\n")[1] == ()


def test_materials_may_be_left_out_and_aftercare_only_warns() -> None:
    _, findings = body(RIGHT[: RIGHT.index("## Aftercare")])
    assert [(each.rule, each.severity) for each in findings] == [("file.missing-section", Severity.WARNING)]


NOTHING = (
    "",
    "\n",
    "   \n\t\n",
    "<!-- to come -->\n",
    "-\n",
    "1.\n",
    "- [ ]\n",
    "> \n",
    "\u200b\n",
    "- \u00a0\n",
    "|a|\n|-|\n",
)


@pytest.mark.parametrize("nothing", NOTHING)
def test_a_section_with_nothing_in_it_is_a_finding_wherever_it_stands(nothing: str) -> None:
    for heading in (each[0] for each in language_of("en").file.sections.values()):
        empty = f"\n## {heading}\n{nothing}"
        there = "".join(part for part in re.split(r"(?m)^(?=## )", RIGHT) if not part.startswith(f"## {heading}"))
        intro, *sections = re.split(r"(?m)^(?=## )", there)
        for at in range(len(sections) + 1):
            _, findings = body("".join((intro, *sections[:at], empty.lstrip(), "\n", *sections[at:])))
            assert findings, (heading, at)
        assert rules(body(f"{RIGHT}\n{empty}\n{empty}")[1]).count("repeated-section") >= 1


def test_an_empty_section_is_pointed_at() -> None:
    _, findings = within("Tools", "")
    assert told(findings) == [("file.empty-section", 3, 1, 9)]
    assert findings[0].mend == "write a line under it, such as `- Hand shears: sharp, wiped clean`"


def test_an_empty_aftercare_may_be_taken_out() -> None:
    assert within("Aftercare", "")[1][0].mend.endswith(", or take the heading out")


def test_a_technique_without_words_above_its_sections_is_told_where_to_write() -> None:
    _, findings = body(RIGHT.partition("\n\n")[2])
    assert told(findings) == [("file.intro", 1, 1, 9)]


def test_a_list_above_the_first_section_is_a_finding() -> None:
    found, findings = body("- round\n- tidy\n\n" + RIGHT.partition("\n\n")[2])
    assert rules(findings) == ["list"]
    assert [each.text for each in found.intro] == ["round", "tidy"]


def test_nothing_at_all_misses_each_section_once() -> None:
    assert rules(body("")[1]) == [
        "intro",
        "missing-section",
        "missing-section",
        "missing-section",
        "missing-section",
        "missing-section",
    ]


@pytest.mark.parametrize(
    ("block", "line", "mend"),
    [
        ("> quoted", 1, "take out the `>` at the start of the line"),
        ("```\ncode\n```", 1, "take out the lines of ``` round these words"),
        ("    code", 1, "take the spaces away, or set an item that belongs to a step in by three spaces"),
        ("***", 1, "take this line out; a new `## ` heading parts one section from the next"),
        ("See `x` here.", 1, "take out the backquotes round `x`"),
        ("See [this](https://x.example) here.", 1, "write the words alone: `this`"),
        ("See <https://x.example> here.", 1, "write the words alone: `https://x.example`"),
        ("One\ntwo ![ball](img/ball.jpg).", 2, "write `- Picture: ball.jpg` under the step, set in by three spaces"),
        ("A <b>bold</b> word.", 1, "take out `<b>`"),
        ("A <!-- hidden --> word.", 1, "take out `<!-- hidden -->`"),
    ],
)
def test_what_paper_cannot_carry_is_a_finding(block: str, line: int, mend: str) -> None:
    _, findings = body(f"{block}\n\nWords.\n\n{RIGHT.partition(chr(10) * 2)[2]}")
    assert {finding.rule for finding in findings} == {"file.block"}
    assert (findings[0].span.line, findings[0].mend) == (line, mend)


def test_words_in_a_line_are_pointed_at() -> None:
    _, findings = body(RIGHT.replace("reads as round", "reads `as` round"))
    assert told(findings) == [("file.block", 1, 19, 20)]


def test_styles_entities_and_breaks_are_words() -> None:
    found, _ = body("One *two*\n**three** &deg; four  \nfive\n\n" + RIGHT)
    assert [(p.text, p.strong, p.emphasis) for p in found.intro[0].pieces] == [
        ("One ", False, False),
        ("two", False, True),
        (" ", False, False),
        ("three", True, False),
        (" ° four five", False, False),
    ]


PASTED = [
    "·",
    "∙",
    "⁃",
    "\uf0b7",
    "\uf0a7",
    "•\t",
    "·\t",
    "o\t",
    "§\t",
    "o\u00a0\u00a0",
    "·       ",
    "–",
    "—",
    "–\t",
    "−",
]


@pytest.mark.parametrize("sign", ["-", "*", "+", "•", "1.", "\u00a0-", "☐", "-\u00a0", *PASTED])
def test_a_list_may_start_its_lines_in_several_ways(sign: str) -> None:
    found, findings = within("Tools", f"{sign} Rake: fine")
    assert (findings, found.tools[0].name) == ((), "Rake")


def test_a_long_dash_in_running_words_stays_a_dash() -> None:
    words, findings = read_words(SourceText("v.md", "All is well.\n\n— The crew\n"), 1)
    assert ([each.text for each in words], findings) == (["All is well.", "— The crew"], ())
    found, findings = within("Finish", "- [ ] Round from two sides\n  and level — no flat spot\n  — anywhere")
    assert ([each.text for each in found.finish], findings) == (
        ["Round from two sides and level — no flat spot — anywhere"],
        (),
    )


def test_a_paragraph_where_a_list_should_be_is_shown_its_first_line() -> None:
    found, findings = within("Tools", "Hand shears: sharp")
    assert told(findings) == [("file.list", 4, 1, 19)]
    assert findings[0].mend == "start each line with `- `: the first is `- Hand shears: sharp`"
    assert found.tools[0].name == "Hand shears"


def test_a_paragraph_under_finish_is_shown_its_box() -> None:
    assert within("Finish", "Round")[1][0].mend == "start each line with `- [ ] `: the first is `- [ ] Round`"


def test_a_table_where_a_list_should_be_is_shown_its_first_row() -> None:
    found, findings = within("Tools", "| Tool | Note |\n|---|---|\n| **Shears** | sharp |\n| Rake | |")
    assert told(findings) == [("file.table", 4, 1, 16)]
    assert findings[0].mend == "start each line with `- `: the first is `- **Shears**: sharp`"
    assert [(each.name, each.note and each.note.text) for each in found.tools] == [("Shears", "sharp"), ("Rake", None)]


def test_a_line_under_a_tool_is_a_finding_and_is_read() -> None:
    found, findings = within("Tools", "- Shears\n  - Stone: fine")
    assert told(findings) == [("file.list", 5, 5, 16)]
    assert findings[0].mend == "start this line at the left edge: `- Stone: fine`"
    assert [each.name for each in found.tools] == ["Shears", "Stone"]


def test_a_heading_in_a_list_is_a_finding() -> None:
    assert rules(within("Tools", "- Shears\n  ## More")[1]) == ["heading"]


def test_a_name_with_figures_in_braces_keeps_its_colon() -> None:
    found, _ = within("Tools", "- {gauge every}: marked")
    assert found.tools[0].name == "{gauge every}: marked"


SPANISH = """Una bola.

## Herramientas
- Tijeras
## Pasos
1. **Mira.**
   - Punto clave: bajo
## Precauciones
- **Filos.** Cuidado.
## Acabado
- [ ] Redonda
## Aftercare
- Nunca: cortar
"""


def test_sections_and_labels_of_another_language_are_known() -> None:
    found, findings = body(SPANISH, "es")
    assert findings == ()
    assert ([each.text for each in found.steps[0].key_points], found.aftercare[0].never) == (["bajo"], True)


def test_a_language_without_a_table_is_read_by_the_english_words() -> None:
    assert body(RIGHT, "mi")[1] == ()


def test_words_to_a_client_are_paragraphs() -> None:
    words, findings = read_words(SourceText("v.md", "---\n---\nOne.\n\n- two\n- three\n\n## Four\n"), 3)
    assert [each.text for each in words] == ["One.", "two", "three"]
    assert told(findings) == [("file.heading", 8, 1, 8)]
