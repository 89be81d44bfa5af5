"""The season letter gathers what any garden needs in a month, where the crew works."""

from datetime import date
from pathlib import Path

import pytest

from howto.jobs.folders import not_a_shelf
from howto.jobs.letter import needs_of, write_letter
from howto.layout.pages.letter import Needs, letter_sheet
from howto.layout.pages.plain import message
from howto.model.crew import Crew
from howto.model.prose import plain
from howto.render.pdf import pdf
from tests.test_gardens import examined, put_together

TODAY = date(2026, 10, 14)


def needs(crew: str, month: int) -> Needs:
    """Return what the gardens of a crew need in a month."""
    return needs_of(examined(crew), date(2027, month, 1))


def test_aftercare_of_a_season_falls_six_months_apart_in_the_two_hemispheres() -> None:
    rub = "Clip a ball: Rub off any brown leaf."
    assert rub in [plain(each) for each in needs("north", 3).care]
    assert rub not in [plain(each) for each in needs("north", 9).care]
    assert rub in [plain(each) for each in needs("south", 9).care]


def test_a_ban_is_no_task_and_days_after_a_visit_are_no_season() -> None:
    told = " ".join(plain(each) for month in range(1, 13) for each in needs("north", month).care)
    assert "Feed in the week of a clip" not in told
    assert "Water once" not in told


def test_work_in_season_is_named_and_what_is_done_all_year_is_not() -> None:
    assert "Trim a hedge" in needs("north", 6).work
    assert "Trim a hedge" not in needs("north", 7).work
    assert "Mow" in needs("south", 1).work


def test_a_lawn_says_when_to_cut_and_how_low_in_its_season() -> None:
    assert [each.replace("\u00a0", " ") for each in needs("north", 5).mowing] == [
        "Mow: cut when it stands 90 mm, down to 60 mm"
    ]
    assert needs("north", 1).mowing == ()


def test_plants_of_the_shelf_are_clipped_in_their_months() -> None:
    # hornbeam stands on a visit of the north; the book clips it in late summer
    assert [month for month in range(1, 13) if "Hornbeam" in needs("north", month).clip] != []
    assert needs("us", 1).clip == ()


def test_water_is_told_where_the_crew_keeps_its_climate() -> None:
    told = {entry.label.replace("\u00a0", " "): entry.value.replace("\u00a0", " ") for entry in needs("south", 1).water}
    assert set(told) == {"Lawn", "Bed, each 10 m²"}
    assert told["Lawn"] == "12 mm deep in a tin set on the ground, 3 times a week"
    assert all("usual rain" in entry.value for entry in needs("north", 12).water)


def test_a_month_that_asks_for_nothing_says_so() -> None:
    sheet = letter_sheet(Crew(), date(2027, 1, 1), Needs(), TODAY)
    text = message(sheet)
    assert text.startswith("Your garden in January 2027\nSeason letter · The crew\n")
    assert "TO DO THIS MONTH\nNothing needs doing this month." in text
    assert pdf(sheet, TODAY)[1] == 1


@pytest.mark.parametrize("month", [1, 4, 7, 10])
def test_a_letter_fits_one_sheet(month: int) -> None:
    crew = examined("north").shelf.crew
    sheet = letter_sheet(crew, date(2027, month, 1), needs("north", month), TODAY)
    assert pdf(sheet, TODAY)[1] <= sheet.most_pages


def test_a_letter_is_written_beside_what_is_there_and_alike_each_time(tmp_path: Path) -> None:
    root = put_together("north", tmp_path / "shelf")
    (tmp_path / "out/cards").mkdir(parents=True)
    (tmp_path / "out/cards/old.pdf").write_bytes(b"kept")
    made = write_letter(root, tmp_path / "out", date(2027, 7, 1), TODAY)
    assert made.written == ("letters/2027-07.html", "letters/2027-07.pdf")
    first = (tmp_path / "out/letters/2027-07.pdf").read_bytes()
    write_letter(root, tmp_path / "out", date(2027, 7, 1), TODAY)
    assert (tmp_path / "out/letters/2027-07.pdf").read_bytes() == first
    assert (tmp_path / "out/cards/old.pdf").read_bytes() == b"kept"
    assert len(made.text) <= 1500


def test_no_letter_is_written_while_an_error_stands(tmp_path: Path) -> None:
    root = put_together("south", tmp_path / "shelf")
    made = write_letter(root, tmp_path / "out", date(2027, 7, 1), TODAY)
    assert made.stopped
    assert "leaflet.contradiction" in {finding.rule for finding in made.findings}
    assert not (tmp_path / "out").exists()
    assert not_a_shelf(root, ()) == ""
