"""The figures of one garden: water until the next visit, and the mower's setting."""

from datetime import date
from typing import Any

import pytest

from howto.families import family
from howto.jobs.garden import garden_figures, thirstiest_until_next
from howto.languages.reader import Reader
from howto.model.crew import Climate, Crew
from howto.model.figure import Figure
from howto.model.plants import Grass, Plant, PlantBook, VouchedWords
from howto.model.reference import Grade
from howto.model.visit import Job, Visit
from tests.support import builders, sample

READER = Reader()
DRY = Climate(
    max_c=(5, 7, 12, 16, 20, 24, 27, 26, 22, 16, 10, 6),
    min_c=(-2, -1, 2, 5, 9, 13, 15, 14, 11, 7, 2, -1),
    humidity_percent=(82, 78, 72, 68, 68, 66, 64, 66, 72, 78, 82, 84),
    wind_m_per_s=(2.4, 2.4, 2.5, 2.3, 2.0, 1.9, 1.8, 1.7, 1.8, 2.0, 2.2, 2.3),
    sunshine_hours=(2.2, 3.4, 5.0, 6.2, 7.2, 8.4, 9.0, 8.2, 6.4, 4.4, 2.6, 1.9),
)
CREW = Crew(latitude_deg=46, altitude_m=120, soil="clay loam", climate=DRY)
RAINY = CREW.model_copy(update={"climate": DRY.model_copy(update={"rain_mm": (70.0,) * 12})})


def figures(trade: str, crew: Crew = CREW, on: date = date(2027, 6, 10), **job: Any) -> dict[str, Figure]:
    """Return the garden's figures of one job by name."""
    known = family(trade)
    assert known is not None
    measures = job.pop("measures", {})
    work = builders.technique(known, crew=crew, book=job.pop("book", None), **measures)
    made = Job(technique=work.technique, **job)
    visit: Visit = sample.visit(jobs=(made,), date=on, next_visit=None)
    return {figure.name: figure for figure in garden_figures(visit, made, work)}


def told(figure: Figure, reader: Reader = READER) -> str:
    return reader.plain(str(figure.value))


def worked(figure: Figure) -> str:
    return " ".join(map(READER.worked, figure.working))


def test_a_lawn_says_the_mowers_setting_and_its_water() -> None:
    found = figures("mowing", area_m2=100.0, measures={"set_height_mm": 60.0})
    assert list(found) == ["mower setting", "water a week", "each watering"]
    assert (found["mower setting"].value, found["mower setting"].unit) == (60.0, "mm")
    assert all(figure.client and figure.references and figure.working for figure in found.values())


def test_a_lawns_water_is_reckoned_for_the_thirstiest_month_until_the_next_visit() -> None:
    week = figures("mowing", area_m2=100.0)["water a week"]
    # July of this climate: 4.46 mm a day x 0.95 of a cool lawn x 7 x 100 m² / 0.75 of a sprinkler
    assert READER.plain(week.label) == "Water a week in July, if no rain falls"
    assert week.value == pytest.approx(3955, abs=1)
    double = figures("mowing", area_m2=200.0)["water a week"]
    assert isinstance(week.value, float)
    assert double.value == pytest.approx(2 * week.value)


def test_a_lawns_watering_is_a_depth_in_a_tin_and_a_small_beds_is_cans() -> None:
    assert (
        told(figures("mowing", area_m2=100.0)["each watering"]) == "20 mm deep in a tin set on the ground, twice a week"
    )
    assert told(figures("clipping", area_m2=1.5)["each watering"]) == "three full 9 L cans, once a week"


def test_a_plant_of_the_book_sets_how_much_a_bed_drinks() -> None:
    rosemary = Plant(
        botanical="Salvia rosmarinus", kind="evergreen", water=VouchedWords(text="low", source="a table", grade=Grade.A)
    )
    known = family("clipping")
    assert known is not None
    having = {"plants": ("salvia rosmarinus",)}
    work = builders.technique(known, having, crew=CREW, book=PlantBook(plants=(rosemary,)))
    made = Job(technique=work.technique, area_m2=10.0)
    low = garden_figures(sample.visit(jobs=(made,), date=date(2027, 6, 10), next_visit=None), made, work)[0]
    assert "plants: 4.46 x 0.2" in worked(low)
    usual = figures("clipping", area_m2=10.0)["water a week"]
    assert "plants: 4.46 x 0.5" in worked(usual)


def test_where_the_usual_rain_is_enough_that_is_all_that_is_said() -> None:
    found = figures("mowing", crew=RAINY, on=date(2026, 11, 2), area_m2=100.0)
    assert "each watering" not in found
    assert told(found["water a week"]) == "none, as the usual rain is enough"
    assert READER.plain(found["water a week"].label) == "Water a week in November"
    assert READER.worked(found["water a week"].working[-1]) == "usual rain: 16.1 mm a week, enough"
    summer = figures("mowing", crew=RAINY, area_m2=100.0)["water a week"]
    assert READER.worked(summer.working[-1]) == "usual rain: 16.1 mm a week, not enough by itself"


def test_nothing_is_said_without_an_area_a_climate_or_of_a_watering_that_says_its_own() -> None:
    assert list(figures("mowing")) == ["mower setting"]
    assert figures("clipping", crew=Crew(), area_m2=10.0) == {}
    assert figures("watering", area_m2=10.0) == {}


@pytest.mark.parametrize(
    ("on", "following", "month"),
    [
        (date(2026, 10, 14), None, 10),
        (date(2027, 5, 20), date(2027, 9, 1), 7),
        (date(2026, 12, 20), date(2027, 3, 15), 3),  # over the year's end
        (date(2026, 11, 20), date(2028, 7, 1), 2),  # no further than three months
        (date(2026, 10, 14), date(2026, 1, 25), 10),  # a wrong year, told elsewhere
        (date(2028, 2, 29), date(2028, 2, 29), 4),
        (date(2999, 12, 31), date(1900, 1, 1), 2),
    ],
)
def test_the_month_is_one_of_those_until_the_next_visit(on: date, following: date | None, month: int) -> None:
    assert thirstiest_until_next(sample.visit(date=on, next_visit=following), CREW) == month


def test_in_the_south_the_year_is_turned_round() -> None:
    south = CREW.model_copy(update={"hemisphere": "south", "latitude_deg": 46})
    assert thirstiest_until_next(sample.visit(date=date(2026, 6, 1), next_visit=None), Crew()) is None
    north = thirstiest_until_next(sample.visit(date=date(2026, 12, 1), next_visit=None), CREW)
    assert (north, thirstiest_until_next(sample.visit(date=date(2026, 12, 1), next_visit=None), south)) == (1, 12)


def test_gallons_and_inches_for_those_who_use_them() -> None:
    us = CREW.model_copy(update={"units": "us"})
    assert (
        told(figures("mowing", crew=us, area_m2=100.0)["each watering"], us.read_in("en"))
        == "¾ in deep in a tin set on the ground, twice a week"
    )


def test_a_warm_lawn_drinks_less() -> None:
    grass = Grass(botanical="Cynodon dactylon", season="warm", mowing=())
    found = figures("mowing", area_m2=100.0, measures={"grass": "cynodon dactylon"}, book=PlantBook(grasses=(grass,)))
    assert "plants: 4.46 x 0.85" in worked(found["water a week"])


@pytest.mark.parametrize("language", ["es", "vi", "mi"])
def test_a_gardens_figures_are_told_in_every_language_we_have(language: str) -> None:
    crew = CREW.model_copy(update={"language": language})
    found = [
        *figures("mowing", area_m2=100.0).values(),
        *figures("clipping", area_m2=1.5).values(),
        *figures("mowing", crew=RAINY, on=date(2026, 11, 2), area_m2=100.0).values(),
    ]
    texts = [text for figure in found for text in (figure.label, figure.value) if isinstance(text, str)]
    assert [gap for text in texts for gap in crew.read_in(language).gaps(text)] == []
