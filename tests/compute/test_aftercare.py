"""Two lines that cannot both be followed are told to the lead, and neither is printed."""

from typing import Any

import pytest

from howto.findings import Finding, Severity
from howto.model.prose import plain
from howto.span import Span
from tests.support.visits import care, job, planned


def found(
    one: str, two: str, *, what: tuple[str, str] = ("", ""), never: bool = False, language: str = "en", **changes: Any
) -> tuple[Finding, ...]:
    """Return the findings of two jobs, the second of which may say what never to do."""
    first = job(what[0], care(one, "within", 2), title="Do this", language=language)
    when: Any = "always" if never else "within"
    second = job(what[1], care(two, when, 2, never=never), title="Do that", language=language)
    return planned(first, second, **changes)[1]


@pytest.mark.parametrize(
    ("one", "two"),
    [
        ("Water lightly.", "Water deeply, at the foot."),
        ("Water a little every evening.", "Soak it once a week."),
        ("Feed with 35 g/m2.", "Do not feed."),
        ("Fertilise the lawn.", "Hold off feeding the lawn for 6 weeks."),
        ("Cut it again.", "Leave it uncut."),
        ("Please trim the hedge.", "Let the hedge grow until spring."),
        ("Water once.", "Keep it dry."),
        ("Mulch the bed.", "Don’t mulch the bed."),
        ("Look at it, then water the pots.", "Stop watering the pots."),
    ],
)
def test_opposite_orders_are_found(one: str, two: str) -> None:
    (finding,) = found(one, two)
    assert (finding.rule, finding.severity) == ("leaflet.contradiction", Severity.ERROR)
    (other_way,) = found(two, one)
    assert other_way.rule == "leaflet.contradiction"


@pytest.mark.parametrize(
    ("one", "ban"),
    [
        ("Feed the ball.", "feed in the week of a clip; soft shoots scorch."),
        ("Cut the grass.", "cut the lawn."),
        ("Water it lightly.", "water it lightly."),
        ("Prune the pear.", "prune the tree before winter"),
    ],
)
def test_an_order_against_a_ban_is_found(one: str, ban: str) -> None:
    assert [finding.rule for finding in found(one, ban, never=True)] == ["leaflet.contradiction"]


@pytest.mark.parametrize(
    ("one", "two", "never"),
    [
        ("Water lightly.", "Water lightly.", False),
        ("Water once.", "Water deeply.", False),
        ("Water the soil a finger deep.", "Water lightly.", False),
        ("Cut again when it reaches 90 mm.", "cut a lawn that is dry and grey; water it first and wait a day.", True),
        ("Water once.", "water at midday or every evening.", True),
        ("Water every day.", "water a wet root ball; it wants air.", True),
        ("Water it lightly.", "water it deeply.", True),
        ("Feed the lawn.", "feed the roses.", True),
        ("Mow it.", "cut the hedge.", True),
        ("Clip the ball.", "trim it upright to win room on the path.", True),
        ("Look at the leaves.", "look away.", True),
        ("Mulch it.", "mulch the bed in summer", True),
        ("Trim it.", "Leave the hedge uncut if a nest is in use.", False),
    ],
)
def test_what_can_be_followed_is_let_be(one: str, two: str, never: bool) -> None:
    assert found(one, two, never=never) == ()


def test_things_that_the_lead_named_apart_do_not_clash() -> None:
    assert found("Water lightly.", "Water deeply.", what=("the pots", "the new hedge")) == ()
    assert len(found("Water lightly.", "Water deeply.", what=("the pots", "The  pots"))) == 1
    assert len(found("Water lightly.", "Water deeply.", what=("the pots", ""))) == 1


def test_the_title_says_what_a_line_is_about_where_the_line_does_not() -> None:
    ball = job("", care("Feed.", "within", 2), title="Clip a ball")
    lawn = job("", care("Do not feed.", "within", 2), title="Sow a lawn")
    assert planned(ball, lawn)[1] == ()


def test_lines_on_days_that_do_not_meet_do_not_clash() -> None:
    first = job("", care("Water lightly.", "within", 2))
    assert planned(first, job("", care("Water deeply.", "after", 42)))[1] == ()
    assert len(planned(first, job("", care("Water deeply.", "after", 1)))[1]) == 1
    assert planned(first, job("", care("Water deeply.", "next visit")))[1] == ()
    after_a_fortnight = job("", care("Feed it.", "after", 15))
    assert planned(after_a_fortnight, job("", care("feed it for two weeks", "always", never=True)))[1] == ()
    assert len(planned(after_a_fortnight, job("", care("feed it for three weeks", "always", never=True)))[1]) == 1


def test_a_rhythm_clashes_for_as_long_as_it_lasts() -> None:
    often = job("", care("Water lightly.", "every", 1, until_days=14))
    assert len(planned(often, job("", care("Water deeply.", "after", 14)))[1]) == 1
    assert planned(often, job("", care("Water deeply.", "after", 15)))[1] == ()


def test_one_job_may_say_both() -> None:
    assert planned(job("", care("Water lightly.", "within", 2), care("Water deeply.", "within", 2)))[1] == ()


def test_other_languages_are_not_judged_by_english_words() -> None:
    assert found("Water lightly.", "Water deeply.", language="es") == ()
    assert found("Tưới ít.", "Tưới nhiều.", language="vi") == ()


@pytest.mark.parametrize(
    ("one", "two"),
    [
        ("Riegue poco.", "Riegue a fondo, al pie."),
        ("Abone con 35 g/m2.", "No abone el césped."),
        ("Recorte el seto.", "No vuelva a recortar el seto hasta la primavera."),
        ("Corte otra vez.", "Déjelo sin cortar."),
        ("Mire y luego riegue las macetas.", "Deje de regar las macetas durante dos semanas."),
        ("Riegue una vez.", "Manténgalo seco."),
    ],
)
def test_opposite_orders_are_found_in_spanish(one: str, two: str) -> None:
    assert [finding.rule for finding in found(one, two, language="es")] == ["leaflet.contradiction"]
    assert [finding.rule for finding in found(two, one, language="es-MX")] == ["leaflet.contradiction"]


@pytest.mark.parametrize(
    ("one", "two", "never"),
    [
        ("Riegue una vez.", "Riegue a fondo.", False),
        ("Riegue el seto.", "No riegue las rosas.", False),
        ("Riegue.", "riegue al mediodía", True),
        ("Corte el césped.", "corte un césped seco", True),
        ("Abone.", "No abone en verano.", False),
    ],
)
def test_what_can_be_followed_in_spanish_is_let_be(one: str, two: str, never: bool) -> None:
    assert found(one, two, never=never, language="es") == ()


def test_orders_are_read_from_the_authors_words_and_never_from_what_braces_stand_for() -> None:
    assert found("{water lightly} a day.", "Water deeply.") == ()
    assert len(found("Water {liters}, lightly.", "Water deeply.")) == 0
    assert len(found("Water lightly, {liters}.", "Water deeply.")) == 1


def test_neither_line_is_printed() -> None:
    keep = care("Sweep the path.", "within", 2)
    plan, _ = planned(job("", care("Water lightly.", "within", 2), keep), job("", care("Water deeply.", "within", 2)))
    assert [plain(task.sentence) for task in plan.tasks] == ["Sweep the path."]


def test_the_finding_shows_both_lines_and_mends_that_work() -> None:
    first = job("the pots", care("Water lightly, in the morning.", "within", 2), id="pot-up")
    second = job("the pots", care("Water deeply at the foot of each plant.", "within", 3), id="plant-out")
    spans = {"jobs[1]": Span("v.md", 9, 5, 10)}
    (finding,) = planned(first, second, spans=spans)[1]
    assert finding.span == Span("v.md", 9, 5, 10)
    assert finding.also == first.technique.spot("aftercare[0]")
    assert finding.what == "two jobs ask opposite things of the pots"
    assert finding.why.startswith(
        "`pot-up` says `within: Water lightly, in the morning.`, "
        "and `plant-out` says `within: Water deeply at the foot of each plant.`"
    )
    assert finding.mend == "write `leave out: Water deeply at the foot` under this job, or the like under the other"
    mended = second.model_copy(update={"leave_out": ("Water deeply at the foot",)})
    assert planned(first, mended)[1] == ()
    (unnamed,) = planned(first.model_copy(update={"what": ""}), second)[1]
    assert unnamed.mend.endswith(
        "write under both jobs a different `what:`, so that the client can tell which is for which"
    )


def test_a_line_that_starts_with_braces_is_named_by_its_other_words() -> None:
    first = job("", care("Water lightly.", "within", 2))
    second = job("", care("{litres a plant}: water deeply, early.", "within", 2))
    (finding,) = planned(first, second)[1]
    assert "`leave out: water deeply`" in finding.mend


def test_words_to_leave_out_must_stand_in_a_line() -> None:
    lines = (care("Water once, early.", "within", 2), care("Feed.", "within", 2))
    spans = {"jobs[0].leave out": Span("v.md", 7, 16, 25)}
    (finding,) = planned(job("", *lines, leave_out=("wait once",)), spans=spans)[1]
    assert (finding.rule, finding.span) == ("leaflet.leave-out", Span("v.md", 7, 16, 25))
    assert finding.what == "`wait once` stands in no line of the aftercare of `clip-a-ball`"
    assert finding.mend == "write `leave out: Water once` or `leave out: Feed`, or take `leave out` out"
    assert planned(job("", *lines, leave_out=("WATER  once",)))[1] == ()
    assert planned(job("", leave_out=("wait",)))[1][0].mend == "take `leave out` out"
