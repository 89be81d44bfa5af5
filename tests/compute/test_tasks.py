"""The aftercare of several jobs becomes one list: each task once, on its nearest day."""

from datetime import date
from typing import Any

import pytest

from howto.compute.tasks import plan_of
from howto.model.figure import Figure
from howto.model.filling import printed
from howto.model.prose import Run, plain
from howto.model.reference import PRACTICE
from howto.model.task import Task
from howto.model.visit import Job
from tests.support import sample
from tests.support.visits import NBSP, care, job, planned, told, visit, when_and_what

SOUTH = sample.CREW.model_copy(update={"hemisphere": "south"})


def test_tasks_stand_in_order_of_date_and_the_undated_last() -> None:
    found = when_and_what(
        job("a", care("Sweep.", "always"), care("Feed.", "month", month=3), care("Water.", "within", 2)),
        job("b", care("Look.", "after", 14), care("Open the gate.", "next visit")),
    )
    assert found == [
        ("by Friday, 16 October 2026", "Water."),
        ("from Wednesday, 28 October 2026", "Look."),
        ("always", "Sweep."),
        ("at our next visit, Wednesday, 25 November 2026", "Open the gate."),
        ("March 2027", "Feed."),
    ]


def test_what_falls_before_the_next_visit_is_parted_from_the_rest() -> None:
    jobs = job("a", care("Water.", "within", 2), care("Look.", "after", 42), care("Sweep.", "always"))
    plan, _ = planned(jobs)
    assert [plain(task.sentence) for task in plan.first] == ["Water.", "Sweep."]
    assert [plain(task.sentence) for task in plan.later] == ["Look."]
    plan, _ = planned(jobs, next_visit=None)
    assert len(plan.first) == 3


def test_repeated_care_says_how_often_and_until_when() -> None:
    found = when_and_what(job("a", care("Water.", "every", 3, until_days=21), care("Mow.", "every", 7)))
    assert found == [
        ("every 3 days, from 17 October 2026 to 4 November 2026", "Water."),
        ("every week, from 21 October 2026", "Mow."),
    ]


def test_what_comes_round_without_an_end_stops_with_the_season_of_its_work() -> None:
    mow = care("Mow.", "every", 7)
    found = when_and_what(job("a", mow, season="spring to autumn"))
    assert found == [("every week, from 21 October 2026 to 30 November 2026", "Mow.")]
    assert when_and_what(job("a", mow, season="any time")) == [("every week, from 21 October 2026", "Mow.")]
    out_of_season = when_and_what(job("a", mow, season="May to June"))
    assert out_of_season == [("every week, from 21 October 2026", "Mow.")]
    southern = when_and_what(job("a", mow, season="spring to autumn"), crew=SOUTH)
    assert southern == [("every week, from 21 October 2026 to 31 May 2027", "Mow.")]


def test_a_season_that_has_begun_stands_where_it_ends() -> None:
    found = when_and_what(
        job("a", care("Rake.", "month", month=10), care("Water.", "within", 2), care("Look.", "after", 30))
    )
    assert [words for _, words in found] == ["Water.", "Rake.", "Look."]


def test_a_season_is_written_in_months() -> None:
    found = when_and_what(job("a", care("Mulch.", "season", season="winter"), care("Feed.", "season", season="spring")))
    assert found == [("December 2026 to February 2027", "Mulch."), ("March to May 2027", "Feed.")]


def test_a_season_is_that_of_the_crews_hemisphere_and_never_starts_before_the_visit() -> None:
    plan, _ = planned(job("a", care("Feed.", "season", season="spring")), crew=SOUTH)
    (task,) = plan.tasks
    # southern spring is September to November: on 14 October it has begun
    assert (task.start, task.end) == (date(2026, 10, 14), date(2026, 11, 30))


@pytest.mark.parametrize(
    ("visited", "days", "due"),
    [
        (date(2028, 2, 27), 2, date(2028, 2, 29)),  # a leap year
        (date(2027, 2, 27), 2, date(2027, 3, 1)),
        (date(2026, 12, 30), 3, date(2027, 1, 2)),
    ],
)
def test_days_run_over_the_end_of_a_month_and_a_year(visited: date, days: int, due: date) -> None:
    plan, _ = planned(job("a", care("Water.", "within", days)), date=visited, next_visit=None)
    assert plan.first[0].day == due


def test_next_visit_without_a_date_keeps_the_authors_words() -> None:
    assert when_and_what(job("a", care("Open the gate.", "next visit")), next_visit=None) == [
        ("next visit", "Open the gate.")
    ]


def test_the_same_words_twice_are_one_task_on_the_nearer_date() -> None:
    found = told(job("a", care("Water well.", "within", 5)), job("b", care("water  well", "within", 2)))
    assert found == [("by Friday, 16 October 2026", "water  well", ("a", "b"), "")]


def test_the_same_words_of_one_job_are_two_occasions() -> None:
    found = when_and_what(job("a", care("Water.", "within", 2), care("Water.", "after", 42)))
    assert len(found) == 2


def test_the_same_words_far_apart_are_two_occasions() -> None:
    found = when_and_what(job("a", care("Look.", "within", 2)), job("b", care("Look.", "month", month=3)))
    assert found == [("by Friday, 16 October 2026", "Look."), ("March 2027", "Look.")]


def test_one_job_needs_no_word_of_what_it_was() -> None:
    assert told(job("the pear", care("Water.", "within", 2)))[0][2] == ()


def test_amounts_for_things_named_apart_stay_apart() -> None:
    found = told(job("the pear", care("Water 9 L.", "within", 2)), job("the hedge", care("Water 9 L.", "within", 2)))
    assert [(words, what) for _, words, what, _ in found] == [
        ("Water 9 L.", ("the pear",)),
        ("Water 9 L.", ("the hedge",)),
    ]


def test_amounts_for_things_not_named_are_added_and_say_so() -> None:
    found = told(job("", care("Water 9 L.", "within", 2)), job("", care("Water 4.5 L.", "within", 2)))
    assert found == [("by Friday, 16 October 2026", "Water 13.5 L.", (), "9 L + 4.5 L")]


def test_what_is_bought_is_added_whatever_it_is_for() -> None:
    found = told(
        job("the bed", care("Order 80 L of bark.", "within", 2)),
        job("the hedge", care("order 120 L of bark", "within", 9)),
        job("the pear", care("Order 0.5 kg of feed.", "within", 9)),
        job("the plum", care("Order 700 g of feed.", "within", 9)),
    )
    assert [(words, what, note) for _, words, what, note in found] == [
        ("Order 200 L of bark.", ("the bed", "the hedge"), "80 L + 120 L"),
        ("Order 1.2 kg of feed.", ("the pear", "the plum"), "500 g + 700 g"),
    ]


def test_an_amount_each_is_one_task_where_it_is_the_same_and_two_where_it_is_not() -> None:
    same = told(
        job("the pear", care("Give each 9 L.", "within", 2)), job("the plum", care("Give each 9 L.", "within", 2))
    )
    assert [(words, what) for _, words, what, _ in same] == [("Give each 9 L.", ("the pear", "the plum"))]
    apart = told(job("", care("Give each 9 L.", "within", 2)), job("", care("Give each 4 L.", "within", 2)))
    assert [words for _, words, _, _ in apart] == ["Give each 9 L.", "Give each 4 L."]


def test_heights_are_never_added_and_say_which_job_they_are_of() -> None:
    found = told(
        job("", care("Mow at 90 mm.", "within", 2), title="Mow by thirds"),
        job("", care("Mow at 40 mm.", "within", 2), title="Mow a fine lawn"),
    )
    assert [(words, what) for _, words, what, _ in found] == [
        ("Mow at 90 mm.", ("Mow by thirds",)),
        ("Mow at 40 mm.", ("Mow a fine lawn",)),
    ]


def test_one_rhythm_for_two_things_is_one_task() -> None:
    found = told(
        job("the pear", care("Water.", "every", 3, until_days=21)),
        job("the plum", care("Water.", "every", 3, until_days=21)),
    )
    assert [(when, what) for when, _, what, _ in found] == [
        ("every 3 days, from 17 October 2026 to 4 November 2026", ("the pear", "the plum"))
    ]


def test_two_rhythms_for_two_things_stay_apart() -> None:
    found = told(
        job("the pear", care("Water.", "every", 3, until_days=21)),
        job("the plum", care("Water.", "every", 7, until_days=84)),
    )
    assert [what for _, _, what, _ in found] == [("the pear",), ("the plum",)]


def test_a_close_rhythm_gives_way_to_a_wider_one_that_lasts_longer() -> None:
    found = when_and_what(
        job("", care("Water.", "every", 7, until_days=84)), job("", care("Water.", "every", 3, until_days=21))
    )
    assert found == [
        ("every 3 days, from 17 October 2026 to 4 November 2026", "Water."),
        # a week after 4 November, to 84 days after 14 October
        ("every week, from 11 November 2026 to 6 January 2027", "Water."),
    ]


def test_a_wider_rhythm_that_ends_first_says_nothing_new() -> None:
    found = when_and_what(
        job("", care("Water.", "every", 7, until_days=21)), job("", care("Water.", "every", 3, until_days=42))
    )
    assert found == [("every 3 days, from 17 October 2026 to 25 November 2026", "Water.")]
    soon = when_and_what(
        job("", care("Water.", "every", 7, until_days=24)), job("", care("Water.", "every", 3, until_days=21))
    )
    assert soon == [("every 3 days, from 17 October 2026 to 4 November 2026", "Water.")]
    endless = when_and_what(job("", care("Water.", "every", 7, until_days=21)), job("", care("Water.", "every", 3)))
    assert endless == [("every 3 days, from 17 October 2026", "Water.")]


def test_the_same_goes_on_where_the_rhythm_before_it_ends() -> None:
    found = when_and_what(
        job(
            "",
            care("Water, 9 L.", "every", 1, until_days=14),
            care("Pull weeds.", "every", 7, until_days=14),
            care("The same again.", "every", 7, until_days=28),
        )
    )
    # two weeks from 14 October end on the 28th; a week and four weeks after that
    assert found == [
        ("every day, from 15 October 2026 to 28 October 2026", "Water, 9 L."),
        ("every week, from 21 October 2026 to 28 October 2026", "Pull weeds."),
        ("every week, from 4 November 2026 to 25 November 2026", "The same again."),
    ]
    alone = when_and_what(job("", care("The same again.", "every", 7, until_days=28)))
    assert alone == [("every week, from 21 October 2026 to 11 November 2026", "The same again.")]


def test_one_rhythm_with_two_ends_lasts_to_the_later_one() -> None:
    found = when_and_what(
        job("", care("Water.", "every", 7, until_days=21)), job("", care("Water.", "every", 7, until_days=42))
    )
    assert found == [("every week, from 21 October 2026 to 25 November 2026", "Water.")]


def test_what_not_to_do_is_said_once_with_what_it_is_about() -> None:
    same = care("Feed in the week of a clip.", "always", never=True)
    plan, _ = planned(job("the ball", same), job("the cone", same))
    assert [(plain(ban.sentence), ban.what) for ban in plan.never] == [
        ("Feed in the week of a clip.", ("the ball", "the cone"))
    ]


def test_a_line_is_left_out_where_the_visit_says_so() -> None:
    feed, water = care("Feed with 35 g/m2.", "within", 2), care("Water once.", "within", 2)
    assert when_and_what(job("a", feed, water, leave_out=("feed with",))) == [
        ("by Friday, 16 October 2026", "Water once.")
    ]


def keys(*jobs: Job, **changes: Any) -> list[str]:
    plan, _ = planned(*jobs, **changes)
    return [task.key for task in plan.tasks]


def test_a_tasks_name_holds_neither_its_dates_nor_its_amounts() -> None:
    first = job("a", care("Water once, {aftercare water}.", "within", 2), id="clip")
    later = job("b", care("Water once, {aftercare water}.", "within", 9), id="clip")
    assert (
        keys(first) == keys(later, date=date(2027, 3, 1), next_visit=None) == ["clip/1/water once, {aftercare water}."]
    )


def test_the_second_job_of_a_technique_has_names_of_its_own() -> None:
    water = care("Water 9 L.", "within", 2)
    found = keys(job("a", water, id="clip"), job("b", water, id="clip"))
    assert found == ["clip/1/water 9 l.", "clip/2/water 9 l."]


def test_a_task_without_a_day_has_none() -> None:
    assert Task(sentence=(), kind="always").day is None
    assert visit(job("a")).jobs[0].what == "a"


def spanish(what: str, text: str) -> Job:
    return job(what, care(text, "within", 2, language="es"), language="es")


def test_amounts_with_a_decimal_comma_are_added_and_printed_with_one() -> None:
    found = told(spanish("", "Riegue con 4,5 litros."), spanish("", "riegue con 9 L"), language="es")
    assert [(words, added) for _, words, _, added in found] == [("Riegue con 13,5 L.", "4,5 L + 9 L")]
    bought = told(
        spanish("el seto", "Pida 2,5 kg de abono."), spanish("el peral", "Pida 800 g de abono."), language="es"
    )
    assert [(words, what, added) for _, words, what, added in bought] == [
        ("Pida 3,3 kg de abono.", ("el seto", "el peral"), "2,5 kg + 800 g")
    ]
    each = told(spanish("", "Dé 4,5 L a cada una."), spanish("", "Dé 4,5 litros a cada una."), language="es")
    assert [words for _, words, _, _ in each] == ["Dé 4,5 L a cada una."]


def test_amounts_of_two_kinds_are_never_added() -> None:
    found = told(job("", care("Order 80 L of feed.", "within", 2)), job("", care("Order 2 kg of feed.", "within", 2)))
    assert [words for _, words, _, _ in found] == ["Order 80 L of feed.", "Order 2 kg of feed."]


def litres(value: float, digits: int | None = None) -> Figure:
    return Figure(name="litres", label="L", value=value, unit="L", digits=digits, working=("",), references=(PRACTICE,))


def test_figures_are_added_as_their_reader_sees_them() -> None:
    jobs = (job("", care("Water {litres}, once.", "within", 2)), job("", care("Water {litres}, once.", "within", 2)))
    made = visit(*jobs)
    for crew, first, second, said in (
        (sample.CREW, litres(8.44, 2), litres(4.04, 2), ("Water 12.4 L, once.", "8.4 L + 4 L")),
        (
            sample.CREW.model_copy(update={"units": "us"}),
            litres(9.0),
            litres(4.5),
            ("Water 3.57 US gal, once.", "2.38 US gal + 1.19 US gal"),
        ),
    ):
        ready = sample.ready_visit(made, [(first,), (second,)], crew)
        (task,) = plan_of(ready)[0].tasks
        assert (
            plain(printed(task.sentence, ready.reader)).replace(NBSP, " "),
            ready.reader.filled(task.added).replace(NBSP, " "),
        ) == said


def test_the_style_of_a_sentence_outlives_its_sum_and_an_amount_may_change_style_within() -> None:
    text = (Run(text="Water "), Run(text="9", strong=True), Run(text=" L once."))
    bold = care("Water 9 L once.", "within", 2).model_copy(update={"text": text})
    ready = sample.ready_visit(visit(job("", bold), job("", bold)), [(), ()])
    (task,) = plan_of(ready)[0].tasks
    assert [(run.text.replace(NBSP, " "), run.strong) for run in printed(task.sentence, ready.reader)] == [
        ("Water ", False),
        ("18 L", True),
        (" once.", False),
    ]
