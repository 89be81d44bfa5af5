from pathlib import Path
from typing import Any

import pytest

from howto.findings import Finding
from howto.model.plants import Fact, Grass, Mowing, Plant, PlantMonths, VouchedWords
from howto.model.reference import Grade
from howto.read.plants import DATA, entries_of, own_book, read_book
from howto.span import SourceText
from tests.support.reading import told

OURS: dict[str, Any] = {"source": "the crew's own", "grade": Grade.PRACTICE}


def plants(text: str) -> tuple[tuple[Plant, ...], tuple[Finding, ...]]:
    return entries_of(SourceText("plants.yaml", text), Plant)


def grasses(text: str) -> tuple[tuple[Grass, ...], tuple[Finding, ...]]:
    return entries_of(SourceText("grasses.yaml", text), Grass)


@pytest.mark.parametrize("name", ["plants", "grasses"])
def test_the_packages_own_files_keep_every_rule_of_reading(name: str) -> None:
    source = SourceText(f"{name}.yaml", (DATA / f"{name}.yaml").read_text("utf-8"))
    kind = Plant if name == "plants" else Grass
    slow, findings = entries_of(source, kind)
    assert findings == ()
    quick, _ = entries_of(source, kind, own=True)
    assert slow == quick


def test_the_packages_own_plants_are_many() -> None:
    book = own_book()
    assert len(book.plants) >= 40
    assert len(book.grasses) >= 10
    box = book.plant("Boxwood")
    assert box is not None
    assert box.growth_mm_per_year is not None
    assert (box.growth_mm_per_year.low, box.growth_mm_per_year.unit) == (100.0, "mm/year")


def test_a_plant_in_full_is_read() -> None:
    found, findings = plants(
        "- botanical: Fagus sylvatica\n  common: [beech, common beech]\n  kind: deciduous\n  uses: hedge, tree\n"
        "  group: stocky deciduous\n  regrows: {text: old wood, source: A guide, grade: A}\n"
        "  clip months: {months: [8, September], source: A guide, grade: B}\n"
        "  clips a year: {low: 1, high: 2, unit: cuts/year, source: A guide, grade: C}\n"
        "  growth: {low: 1, high: 2, unit: ft/year, source: A guide, grade: memory}\n"
        "  spacing: {low: 18 in, high: 60 cm, unit: mm, source: A guide, grade: A}\n"
        "  water: {text: moderate, source: A guide, grade: A}\n"
        "  cautions:\n    - {text: Nuts upset horses., source: A guide, grade: A}\n"
    )
    assert findings == ()
    by: dict[str, Any] = {"source": "A guide"}
    assert found == (
        Plant(
            botanical="Fagus sylvatica",
            common=("beech", "common beech"),
            kind="deciduous",
            uses=("hedge", "tree"),
            group="stocky deciduous",
            regrows=VouchedWords(text="old wood", grade=Grade.A, **by),
            clip_months=PlantMonths(months=(8, 9), grade=Grade.B, **by),
            clips_a_year=Fact(low=1.0, high=2.0, unit="cuts/year", grade=Grade.C, **by),
            growth_mm_per_year=Fact(low=304.8, high=609.6, unit="mm/year", grade=Grade.MEMORY, **by),
            spacing_mm=Fact(low=457.2, high=600.0, unit="mm", grade=Grade.A, **by),
            water=VouchedWords(text="moderate", grade=Grade.A, **by),
            cautions=(VouchedWords(text="Nuts upset horses.", grade=Grade.A, **by),),
        ),
    )


def test_a_crews_own_numbers_may_be_written_short() -> None:
    found, findings = plants(
        "plants:\n  - botanical: Fagus sylvatica\n    kind: deciduous\n    growth: 300 mm/year ± 50 mm/year\n"
        "    regrows: Old wood\n    clip months: [8]\n    cautions: Nuts upset horses.\n    spacing: 18 in\n"
    )
    assert findings == ()
    (plant,) = found
    assert plant.growth_mm_per_year == Fact(low=250.0, high=350.0, unit="mm/year", **OURS)
    assert plant.spacing_mm == Fact(low=457.2, high=457.2, unit="mm", **OURS)
    assert plant.regrows == VouchedWords(text="old wood", **OURS)
    assert plant.clip_months == PlantMonths(months=(8,), **OURS)
    assert plant.cautions == (VouchedWords(text="Nuts upset horses.", **OURS),)


def test_a_grass_is_read_with_its_heights() -> None:
    found, findings = grasses(
        "- botanical: Poa pratensis\n  season: cool\n  nitrogen: {low: 2, high: 3, unit: lb/1000 ft2/year}\n"
        "  mowing:\n    - {climate: Ohio, low: 2 in, high: 3 in, source: A guide, grade: A}\n"
        "    - {low: 40, high: 60}\n"
    )
    assert findings == ()
    (grass,) = found
    assert grass.mowing == (
        Mowing(climate="Ohio", low_mm=50.8, high_mm=76.2, source="A guide", grade=Grade.A),
        Mowing(climate="anywhere", low_mm=40.0, high_mm=60.0, **OURS),
    )
    assert grass.nitrogen_g_per_m2_year is not None
    # 1 lb/1000 ft2 is 4.8824 g/m2 (NIST SP 811, 2008).
    assert grass.nitrogen_g_per_m2_year.low == pytest.approx(9.7649, abs=1e-4)


def test_a_shelfs_plants_stand_over_and_beside_the_packages(tmp_path: Path) -> None:
    (tmp_path / "plants.yaml").write_text(
        "- botanical: buxus sempervirens\n  kind: evergreen\n  growth: 80 mm/year\n"
        "- botanical: Novae herba\n  kind: conifer\n",
        "utf-8",
    )
    (tmp_path / "grasses.yaml").write_bytes(b"\xff")
    book, findings = read_book(tmp_path)
    assert [each.rule for each in findings] == ["file.not-utf8"]
    box = book.plant("buxus sempervirens")
    assert box is not None
    assert box.growth_mm_per_year == Fact(low=80.0, high=80.0, unit="mm/year", **OURS)
    assert len(book.plants) == len(own_book().plants) + 1
    assert book.grasses == own_book().grasses


def test_a_shelf_without_plants_has_the_packages(tmp_path: Path) -> None:
    assert read_book(tmp_path) == (own_book(), ())


@pytest.mark.parametrize(
    ("line", "rule", "mend"),
    [
        ("grwoth: 3 mm/year", "unknown-key", "write `growth:`"),
        ("growth: 3 mm", "quantity", "write a measure in mm/year, such as `5 mm/year`"),
        ("growth: {low: 200, high: 100}", "bound", "write `low: 100, high: 200`"),
        ("growth: {low: 200}", "missing-key", "write `high: 100` in it"),
        ("growth: {low: 1, high: }", "value", "write it after the colon, or take the line `high:` out"),
        ("growth: {low: 1, high: 2, untis: mm/year}", "unknown-key", "write `unit:`"),
        ("growth: [1, 2]", "value", "write one text after the colon"),
        ("regrows: never", "unknown-word", "write `old wood`, `green wood only` or `slowly from old wood`"),
        ("regrows: {source: A guide}", "missing-key", "write `text: …` in it"),
        ("water: {text: hihg}", "unknown-word", "write `text: high`"),
        ("water: {text: high, grade: Z}", "unknown-word", "write `A`, `B`, `C`, `practice`, `memory` or `ours`"),
        ("clip months: [13]", "unknown-word", "write `january`, `february`"),
        ("clip months: {source: A guide}", "missing-key", "write `months: [5, 6]` in it"),
        ("uses: [hegde]", "unknown-word", "write `uses: hedge`"),
        ("group: none of these", "unknown-word", "write `upright deciduous`"),
        ("common: {a: b}", "value", "write them with commas between: `common: [one, two]`"),
    ],
)
def test_an_entry_with_a_slip_is_explained_and_left_out(line: str, rule: str, mend: str) -> None:
    found, (finding,) = plants(f"- botanical: Fagus sylvatica\n  kind: deciduous\n  {line}\n")
    assert found == ()
    assert (finding.rule, finding.span.line) == (f"file.{rule}", 3)
    assert finding.mend.startswith(mend)


@pytest.mark.parametrize(
    ("heights", "rule", "mend"),
    [
        ("{low: 60, high: 40}", "bound", "write `low: 40, high: 60`"),
        ("{climate: Ohio, high: 40}", "missing-key", "write `low: 100` in it"),
        ("{climate: [], low: 1, high: 2}", "value", "write one text after the colon"),
    ],
)
def test_heights_with_a_slip_are_explained(heights: str, rule: str, mend: str) -> None:
    found, (finding,) = grasses(f"- botanical: Poa\n  season: cool\n  mowing: [{heights}]\n")
    assert found == ()
    assert (finding.rule, finding.mend) == (f"file.{rule}", mend)


def test_what_an_entry_must_have_is_missed() -> None:
    found, findings = plants("- common: beech\n")
    assert found == ()
    assert [each.mend for each in findings] == [
        "write a line `botanical: Buxus sempervirens` in it",
        "write a line `kind: evergreen` in it",
    ]
    assert [each.what for each in grasses("- botanical: Poa\n  season: cool\n")[1]] == ["this entry has no `mowing`"]
    assert [each.mend for each in grasses("- botanical: Poa\n  season: cool\n  mowing: [low]\n")[1]] == [
        "write `- {climate: …, low: 25, high: 38}` in it"
    ]


def test_a_plant_listed_twice_names_both_lines() -> None:
    found, (finding,) = plants("- botanical: Poa\n  kind: conifer\n- botanical: poa\n  kind: evergreen\n")
    assert len(found) == 1
    assert (finding.rule, finding.mend) == ("file.repeated-key", "make one entry of the two on lines 1 and 3")


@pytest.mark.parametrize(
    ("text", "line"), [("words\n", 1), ("- a\n- botanical: Poa\n  kind: conifer\n", 1), ("a: b\nc: d\n", 1)]
)
def test_what_is_no_list_of_plants_is_a_finding(text: str, line: int) -> None:
    assert [(rule, at) for rule, at, *_ in told(plants(text)[1])] == [("file.value", line)]


def test_an_empty_list_has_no_plants() -> None:
    assert plants("# none yet\n") == ((), ())
