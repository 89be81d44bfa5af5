"""The plants and grasses that come with the package: every value has a source, and the published ones are right."""

from importlib.resources import files
from typing import Any, get_args

import pytest
import yaml

from howto.model.plants import Fact, Grass, Mowing, Plant, PlantBook, PlantMonths, VouchedWords
from howto.model.reference import Grade

PLANT_KEYS = {"botanical", "common", "kind", "uses", "group", "regrows", "clip months", "clips a year"} | {
    "growth",
    "spacing",
    "water",
    "cautions",
}
GRASS_KEYS = {"botanical", "common", "season", "mowing", "growth", "nitrogen", "cautions"}
UC_IPM = "University of California Statewide IPM Program"


def entries(name: str) -> list[dict[str, Any]]:
    text = (files("howto") / "data" / name).read_text(encoding="utf-8")
    read = yaml.safe_load(text)
    assert isinstance(read, list)
    return read


def words(node: Any) -> VouchedWords | None:
    return None if node is None else VouchedWords(**{**node, "grade": Grade(node["grade"])})


def fact(node: Any) -> Fact | None:
    if node is None:
        return None
    bounds = {key: float(node[key]) for key in ("low", "high")}
    return Fact(**{**node, **bounds, "grade": Grade(node["grade"])})


def cautions(entry: dict[str, Any]) -> tuple[VouchedWords, ...]:
    return tuple(found for node in entry.get("cautions", ()) if (found := words(node)))


def plant(entry: dict[str, Any]) -> Plant:
    assert set(entry) <= PLANT_KEYS, entry["botanical"]
    when = entry.get("clip months")
    return Plant(
        botanical=entry["botanical"],
        common=tuple(entry["common"]),
        kind=entry["kind"],
        uses=tuple(entry["uses"]),
        group=entry["group"],
        regrows=words(entry.get("regrows")),
        clip_months=when
        and PlantMonths(months=tuple(when["months"]), source=when["source"], grade=Grade(when["grade"])),
        clips_a_year=fact(entry.get("clips a year")),
        growth_mm_per_year=fact(entry.get("growth")),
        spacing_mm=fact(entry.get("spacing")),
        water=words(entry.get("water")),
        cautions=cautions(entry),
    )


def grass(entry: dict[str, Any]) -> Grass:
    assert set(entry) <= GRASS_KEYS, entry["botanical"]
    return Grass(
        botanical=entry["botanical"],
        common=tuple(entry["common"]),
        season=entry["season"],
        mowing=tuple(
            Mowing(
                climate=each["climate"],
                low_mm=float(each["low"]),
                high_mm=float(each["high"]),
                source=each["source"],
                grade=Grade(each["grade"]),
            )
            for each in entry["mowing"]
        ),
        growth_mm_per_day=fact(entry.get("growth")),
        nitrogen_g_per_m2_year=fact(entry.get("nitrogen")),
        cautions=cautions(entry),
    )


BOOK = PlantBook(
    plants=tuple(plant(entry) for entry in entries("plants.yaml")),
    grasses=tuple(grass(entry) for entry in entries("grasses.yaml")),
)


def known(name: str) -> Plant:
    found = BOOK.plant(name)
    assert found is not None, name
    return found


def heights(name: str, climate: str) -> tuple[float, float, str, Grade]:
    found = BOOK.grass(name)
    assert found is not None, name
    (range_,) = [each for each in found.mowing if each.climate == climate]
    return (range_.low_mm, range_.high_mm, range_.source.partition(",")[0], range_.grade)


def sourced() -> list[tuple[str, Any]]:
    """Return every value of both files that must say who vouches for it, with the plant it belongs to."""
    found: list[tuple[str, Any]] = []
    for item in BOOK.plants:
        single = (item.regrows, item.clip_months, item.clips_a_year, item.growth_mm_per_year, item.spacing_mm)
        found += [(item.botanical, value) for value in (*single, item.water, *item.cautions) if value]
    for lawn in BOOK.grasses:
        values = (*lawn.mowing, lawn.growth_mm_per_day, lawn.nitrogen_g_per_m2_year, *lawn.cautions)
        found += [(lawn.botanical, value) for value in values if value]
    return found


def test_there_are_enough_plants_and_grasses() -> None:
    assert len(BOOK.plants) == 93
    assert len(BOOK.grasses) == 14


def test_every_use_and_every_way_of_cutting_back_is_covered() -> None:
    uses = [use for item in BOOK.plants for use in item.uses]
    assert {use for use in uses if uses.count(use) >= 5} == {
        "hedge",
        "topiary",
        "fruit",
        "screen",
        "ground cover",
        "tree",
        "shrub",
    }
    groups = set(get_args(Plant.model_fields["group"].annotation))
    assert {item.group for item in BOOK.plants} == groups


def test_every_value_has_a_source_and_memory_says_so() -> None:
    for name, value in sourced():
        assert value.source.strip(), name
        assert (value.source == "from memory") is (value.grade is Grade.MEMORY), (name, value.source)
        assert value.grade is not Grade.OURS, name


def test_most_plants_have_every_value() -> None:
    bare = {item.botanical for item in BOOK.plants if item.regrows is None or item.clip_months is None}
    assert bare == {"Dichondra repens"}
    assert all(item.growth_mm_per_year and item.spacing_mm and item.clips_a_year for item in BOOK.plants)
    assert all(item.water and item.water.text in {"low", "moderate", "high"} for item in BOOK.plants)


def test_regrowth_is_one_of_three_answers() -> None:
    answers = {item.regrows.text for item in BOOK.plants if item.regrows}
    assert answers == {"old wood", "green wood only", "slowly from old wood"}


def test_ranges_run_upwards_in_the_unit_their_key_promises() -> None:
    for item in BOOK.plants:
        for value, unit in (
            (item.clips_a_year, "cuts/year"),
            (item.growth_mm_per_year, "mm/year"),
            (item.spacing_mm, "mm"),
        ):
            assert value is not None, item.botanical
            assert value.unit == unit, item.botanical
            assert 0 <= value.low <= value.high, item.botanical
    for lawn in BOOK.grasses:
        growth, nitrogen = lawn.growth_mm_per_day, lawn.nitrogen_g_per_m2_year
        assert growth is not None
        assert nitrogen is not None
        assert (growth.unit, nitrogen.unit) == ("mm/day", "g/m2/year"), lawn.botanical
        assert 0 < growth.low <= growth.high, lawn.botanical
        assert 0 <= nitrogen.low <= nitrogen.high <= 25, lawn.botanical
        assert all(5 <= each.low_mm <= each.high_mm <= 110 for each in lawn.mowing), lawn.botanical


def test_months_are_months_each_once() -> None:
    for item in BOOK.plants:
        if item.clip_months:
            months = item.clip_months.months
            assert months, item.botanical
            assert set(months) <= set(range(1, 13)), item.botanical
            assert len(set(months)) == len(months), item.botanical


@pytest.mark.parametrize("things", [BOOK.plants, BOOK.grasses])
def test_no_two_share_a_name(things: tuple[Plant, ...] | tuple[Grass, ...]) -> None:
    names = [name for thing in things for name in thing.names]
    assert sorted(name for name in set(names) if names.count(name) > 1) == []


def test_climates_of_one_grass_are_told_apart() -> None:
    for lawn in BOOK.grasses:
        climates = [each.climate.casefold() for each in lawn.mowing]
        assert len(climates) == len(set(climates)), lawn.botanical


@pytest.mark.parametrize(
    ("name", "low_mm", "high_mm", "mow_at_low_mm", "mow_at_high_mm"),
    [
        ("seeded couch", 25.4, 38.1, 38.1, 57.15),  # 1 to 1.5 in, mown at 1.5 to 2.25 in
        ("hybrid couch", 12.7, 25.4, 19.05, 38.1),  # 0.5 to 1 in, mown at 0.75 to 1.5 in
        ("kikuyu", 25.4, 38.1, 38.1, 57.15),  # 1 to 1.5 in, mown at 1.5 to 2.25 in
        ("st augustine", 25.4, 50.8, 38.1, 76.2),  # 1 to 2 in, mown at 1.5 to 3 in
        ("zoysia", 12.7, 25.4, 19.05, 38.1),  # 0.5 to 1 in, mown at 0.75 to 1.5 in
        ("seashore paspalum", 19.05, 38.1, 28.575, 57.15),  # 0.75 to 1.5 in, mown at 1.125 to 2.25 in
        ("american buffalograss", 25.4, 50.8, 38.1, 76.2),  # 1 to 2 in, mown at 1.5 to 3 in
    ],
)
def test_californian_heights_are_the_published_ones(
    name: str, low_mm: float, high_mm: float, mow_at_low_mm: float, mow_at_high_mm: float
) -> None:
    """UC Statewide IPM, UC Guide to Healthy Lawns, mowing warm-season grasses, 2017 copy: grade A, no tolerance."""
    found = heights(name, "California")
    assert found == (low_mm, high_mm, UC_IPM, Grade.A)
    assert (found[0] * 1.5, found[1] * 1.5) == pytest.approx((mow_at_low_mm, mow_at_high_mm), abs=1e-9)


def test_couch_kept_at_an_inch_in_north_carolina() -> None:
    """NC Cooperative Extension, Lawn Care Essentials, 2015: 0.75 to 1 in."""
    assert heights("couch", "North Carolina") == (19.05, 25.4, "NC Cooperative Extension", Grade.A)


def test_florida_and_california_are_not_averaged() -> None:
    """Buffalo: UC IPM 1 to 2 in against UF/IFAS Clay County 2018, 3.5 to 4 in; each climate keeps its own."""
    assert heights("buffalo", "California")[:2] == (25.4, 50.8)
    assert heights("buffalo", "Florida") == (88.9, 101.6, "UF/IFAS Extension Clay County", Grade.A)
    assert heights("dwarf buffalo", "Florida")[:2] == (63.5, 63.5)


def test_the_misprinted_couch_height_is_not_in_the_book() -> None:
    """A contractor's page prints 5 to 5.5 in for 0.5 to 1.5 in (chart from UF/IFAS LH028)."""
    assert heights("bermuda", "Florida") == (12.7, 38.1, "Tampa Bay Times", Grade.B)


def test_the_two_buffalos_are_different_grasses() -> None:
    """UC IPM lists both; the same word names one in Australia and the other in the United States."""
    southern, american = BOOK.grass("buffalo"), BOOK.grass("American buffalograss")
    assert southern is not None
    assert american is not None
    assert southern.botanical == "Stenotaphrum secundatum"
    assert american.botanical == "Bouteloua dactyloides"
    assert "Bouteloua dactyloides" in southern.cautions[0].text
    assert "Stenotaphrum secundatum" in american.cautions[0].text


@pytest.mark.parametrize(
    ("name", "low", "high"),
    [
        ("fine fescue", 4.9, 14.6),  # 1 to 3 lb per 1,000 sq ft, Illinois
        ("tall fescue", 9.8, 19.5),  # 2 to 4 lb, Illinois
        ("kentucky bluegrass", 4.9, 19.5),  # 1 to 4 lb, Illinois
        ("hybrid couch", 14.6, 24.4),  # 3 to 5 lb, Texas
        ("centipede", 4.9, 9.8),  # 1 to 2 lb, University of Georgia
    ],
)
def test_yearly_nitrogen_is_the_published_one(name: str, low: float, high: float) -> None:
    """1 lb per 1,000 sq ft is 4.882 g/m2; rounded to 0.1."""
    lawn = BOOK.grass(name)
    assert lawn is not None
    assert lawn.nitrogen_g_per_m2_year is not None
    assert (lawn.nitrogen_g_per_m2_year.low, lawn.nitrogen_g_per_m2_year.high) == (low, high)


@pytest.mark.parametrize(
    ("name", "low_mm", "high_mm"), [("apple", 304.8, 609.6), ("pear", 152.4, 304.8), ("peach", 254.0, 457.2)]
)
def test_shoots_of_bearing_fruit(name: str, low_mm: float, high_mm: float) -> None:
    """Colorado State University Extension, PlantTalk 1216: 12 to 24, 6 to 12 and 10 to 18 in."""
    growth = known(name).growth_mm_per_year
    assert growth is not None
    assert (growth.low, growth.high, growth.grade) == (low_mm, high_mm, Grade.A)


@pytest.mark.parametrize("name", ["box", "beech", "hornbeam", "hawthorn", "holly", "lonicera nitida", "yew"])
def test_plants_that_take_half_off_regrow_from_old_wood(name: str) -> None:
    """Royal Horticultural Society, Hedges: renovation, 2012 copy."""
    regrows = known(name).regrows
    assert regrows is not None
    assert (regrows.text, regrows.grade) == ("old wood", Grade.A)


def test_yew_is_the_conifer_that_regrows_and_leylandii_is_not() -> None:
    """Royal Horticultural Society, Hedges: renovation: most conifers, not yew, never shoot from old wood."""
    yew, leylandii = known("Taxus baccata"), known("leylandii")
    assert (yew.kind, leylandii.kind) == ("conifer", "conifer")
    assert yew.regrows is not None
    assert leylandii.regrows is not None
    assert (yew.regrows.text, leylandii.regrows.text) == ("old wood", "green wood only")


def test_northern_months_turn_over_in_the_south() -> None:
    """Beech in June and August (Royal Horticultural Society, Hedge trimming) is December and February there."""
    months = known("beech").clip_months
    assert months is not None
    assert months.at("north") == (6, 8)
    assert months.at("south") == (12, 2)


@pytest.mark.parametrize("name", ["yew", "cherry laurel", "portugal laurel", "oleander", "privet", "apricot", "holly"])
def test_poisonous_plants_say_so(name: str) -> None:
    warnings = [each for each in known(name).cautions if "oisonous" in each.text]
    assert warnings
    assert any(each.grade is not Grade.MEMORY for each in warnings)


@pytest.mark.parametrize("name", ["hawthorn", "pyracantha", "lemon"])
def test_thorny_plants_ask_for_gloves(name: str) -> None:
    assert any("horns" in each.text and "loves" in each.text for each in known(name).cautions)
