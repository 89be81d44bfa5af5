import pytest

from tests.support.bodies import rules, within


@pytest.mark.parametrize(
    ("line", "title", "text", "wear"),
    [
        ("**Blades.** Mind them. → gloves, eye protection", "Blades.", "Mind them.", ("gloves", "eye protection")),
        ("**Blades.** Mind them. -> Gloves; boots.", "Blades.", "Mind them.", ("Gloves", "boots")),
        ("Blades. Mind them.", "Blades.", "Mind them.", ()),
        ("Blades: mind them => gloves", "Blades:", "mind them", ("gloves",)),
        ("**Blades** → gloves", "Blades", "", ("gloves",)),
    ],
)
def test_a_caution_is_parted_into_what_hurts_and_what_to_wear(
    line: str, title: str, text: str, wear: tuple[str, ...]
) -> None:
    found, findings = within("Cautions", f"- {line}")
    assert findings == ()
    assert [(each.title, each.text.text, each.wear) for each in found.cautions] == [(title, text, wear)]


def test_a_caution_without_its_first_words_is_shown_how_to_start() -> None:
    found, findings = within("Cautions", "- keep your free hand well behind the handles → gloves")
    assert (rules(findings), found.cautions) == (["caution"], ())
    assert findings[0].mend == (
        "write what can hurt in front, such as `- **Blades.** keep your free hand well behind the handles → gloves`"
    )


def test_an_arrow_that_points_at_nothing_is_a_finding() -> None:
    found, findings = within("Cautions", "- **Blades.** Mind them. →")
    assert (rules(findings), found.cautions[0].wear) == (["caution"], ())


@pytest.mark.parametrize("box", ["[ ]", "[]", "[x]", "[X]", ""])
def test_a_box_may_be_written_in_several_ways(box: str) -> None:
    found, findings = within("Finish", f"- {box} Round")
    assert (findings, [each.text for each in found.finish]) == ((), ["Round"])


def test_a_box_alone_is_left_out() -> None:
    assert within("Finish", "- [ ] Round\n- [ ]")[0].finish[0].text == "Round"


@pytest.mark.parametrize(
    ("line", "when", "text", "never"),
    [
        ("Within 2 days: water once", "Within 2 days", "water once", False),
        ("Do not: mow", "Do not", "mow", True),
        ("Do not mow: it hurts", "Do not", "mow: it hurts", True),
        ("Don’t mow yet", "Don’t", "mow yet", True),
        ("NEVER feed", "Never", "feed", True),
    ],
)
def test_aftercare_is_parted_at_its_time(line: str, when: str, text: str, *, never: bool) -> None:
    found, findings = within("Aftercare", f"- {line}")
    assert findings == ()
    assert [(each.when, each.text.text, each.never) for each in found.aftercare] == [(when, text, never)]


def test_aftercare_without_a_time_lists_the_forms() -> None:
    _, findings = within("Aftercare", "- Water it")
    assert rules(findings) == ["when"]
    assert findings[0].mend == (
        "write when, a colon, and what to do: `Within 2 days: water once`; the forms are `Within 2 days`, "
        "`After 6 weeks`, `Every 3 days`, `Every week for 12 weeks`, `In spring`, `In late summer`, `In March`, "
        "`Next visit`, `Always`, `Never`"
    )


def test_a_time_alone_is_a_finding() -> None:
    assert within("Aftercare", "- In March:")[1][0].mend == "write what to do after `In March:`"
