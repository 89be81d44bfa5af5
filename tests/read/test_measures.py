from dataclasses import replace
from datetime import date

import pytest
from pydantic import Field

from howto.findings import Finding
from howto.model.measures import Measures
from howto.model.technique import AnyTechnique
from howto.read.assemble import assemble
from howto.read.bounds import authors_unit
from tests.support.reading import FAMILY, read, source, swapped


def one(old: str, new: str) -> Finding:
    """Return the one finding of the right text with one part changed."""
    (finding,) = read(swapped(old, new))[1]
    return finding


def measure(line: str) -> tuple[AnyTechnique | None, tuple[Finding, ...]]:
    """Return the right text read with one measure more, on line 12."""
    return read(swapped("± 20 mm\n", f"± 20 mm\n  {line}\n"))


@pytest.mark.parametrize(
    ("line", "field", "value"),
    [
        ("slope: 1/3", "slope_fraction", 1 / 3),
        ("slope: 25 %", "slope_fraction", 0.25),
        ("water: 2 L/m2", "water_l_per_m2", 2.0),
        ("night: 50 °F", "night_c", 10.0),
        ("share: 25 %", "share_percent", 25.0),
        ("passes: 3", "passes", 3),
        ("passes: 3 passes", "passes", 3),
        ("double row: Yes", "double_row", True),
        ("double_row: no", "double_row", False),
        ("Double Row: sí", "double_row", True),
        ("wires: 300 mm, 2 ft", "wires_mm", (300.0, 609.6)),
        ("wires: [1 m, 18 in]", "wires_mm", (1000.0, 457.2)),
        ("wires:\n    - 1 m", "wires_mm", (1000.0,)),
        ("sides: north, South", "sides", ("north", "south")),
        ("marks: 1, 2", "marks", (1, 2)),
        ("cuts: 2026-06-01, 2026-08-15", "cuts", (date(2026, 6, 1), date(2026, 8, 15))),
        ("first frost: 14 October 2026", "first_frost", date(2026, 10, 14)),
        ("first frost: Oct 14, 2026", "first_frost", date(2026, 10, 14)),
        ("label: NO", "label", "NO"),
        ("names: [oak, ash]", "names", ("oak", "ash")),
        ("cans: 12 mL, , 1 L;", "cans_ml", (12.0, 1000.0)),
        ("rate: 6/m", "rate_per_m", 6.0),
    ],
)
def test_a_measure_of_every_kind_is_read(line: str, field: str, value: object) -> None:
    technique, findings = measure(line)
    assert findings == ()
    assert technique is not None
    found = getattr(technique.measures, field)
    assert (found, type(found)) == (value, type(value))


@pytest.mark.parametrize(
    ("line", "rule", "columns", "mend"),
    [
        ("slope: 3 kg", "quantity", (10, 14), "write a plain number, such as `1/3`"),
        ("water: 2 L/m", "quantity", (10, 15), "write a measure in L/m², such as `2 L/m2`"),
        ("water: about 2 L/m2", "quantity", (10, 16), "write `2 L/m2` or `2 L/m2 ± 0.1 L/m²`"),
        ("water: 2 L/m2 or so", "quantity", (17, 22), "write `2 L/m2`"),
        ("wires: 300 mm, 2 fleet", "quantity", (20, 25), "write `2 feet`"),
        ("passes: 2.5", "value", (11, 14), "write `passes: 2`"),
        ("passes: 2 ± 1", "value", (11, 16), "write `passes: 2`"),
        ("passes: 13", "bound", (11, 13), "write `passes: 12`, or another amount at least 1 and at most 12"),
        ("slope: 1", "bound", (10, 11), "write `slope: 0.5`, or another amount at least 0 and less than 1"),
        ("water: 0.5 L/m2", "bound", (10, 18), "write `water: 1 L/m2`, or another amount at least 1 L/m2"),
        ("night: 95 °F", "bound", (10, 15), "write `night: 86 °F`, or another amount at least 14 °F and at most 86 °F"),
        (
            "night: 40 °C",
            "bound",
            (10, 15),
            "write `night: 30 °C`, or another amount at least -10 °C and at most 30 °C",
        ),
        ("double row: maybe", "value", (15, 20), "write `double row: yes` or `double row: no`"),
        ("sides: nroth", "unknown-word", (10, 15), "write `sides: north`"),
        ("first frost: 3/4/2026", "date", (16, 24), "write `first frost: 2026-04-03` or `first frost: 2026-03-04`"),
        ("first frost: 31/12/2026", "date", (16, 26), "write `first frost: 2026-12-31`"),
        ("first frost: 2026-02-30", "date", (16, 26), "write the date as `first frost: 2026-10-14`"),
        ("first frost: soon", "date", (16, 20), "write the date as `first frost: 2026-10-14`"),
        ("label: [a, b]", "value", (3, 8), "write one text after the colon"),
        ("cans: 12 mL", "bound", (9, 14), "write at least 2, with commas between them"),
        ("cans: 1 mL, 2 mL, 3 mL, 4 mL", "bound", (9, 31), "write at most 3, with commas between them"),
        ("cans: 1 mL, -2 mL", "bound", (9, 20), "write `0 mL`, or another amount at least 0 mL"),
        ("cans: 1 mL, 5 L", "bound", (9, 18), "write `3750 mL`, or another amount less than 5000 mL"),
        ("water: [2 L/m2]", "value", (3, 8), "write one text after the colon"),
        ("water: 2  fleet", "quantity", (10, 18), "write `2 feet`"),
        ("stakes: 1", "bound", (11, 12), "write `stakes: 2`, or another amount more than 1"),
        ("depth: 5 cm", "bound", (10, 14), "write `depth: -1 cm`, or another amount less than 0 cm"),
        ("code: beech", "measures", (9, 14), "change the measure so that this holds"),
        ("rate: 0.7/m", "measures", (9, 14), "change the measure so that this holds"),
        ("marks: 1, 2.5", "value", (13, 16), "write `marks: 2`"),
        ("wires: [1 m, {a: b}]", "value", (3, 8), "write them with commas between: `wires: [one, two]`"),
        ("wires: []", "value", (3, 8), "write it after the colon, or take the line `wires:` out"),
        ("wires: ['', ' ']", "value", (3, 8), "write it after the colon, or take the line `wires:` out"),
        ("wires: {a: b}", "value", (3, 8), "write them with commas between: `wires: [one, two]`"),
    ],
)
def test_a_measure_with_a_slip_is_explained(line: str, rule: str, columns: tuple[int, int], mend: str) -> None:
    technique, (finding,) = measure(line)
    assert technique is None
    assert (finding.rule, finding.span.line) == (f"file.{rule}", 12)
    assert ((finding.span.column, finding.span.end_column), finding.mend) == (columns, mend)


@pytest.mark.parametrize(
    ("written", "what", "mend", "bound"),
    [
        (
            "0 mm",
            "`finished width` is 0 mm",
            "write `finished width: 5000 mm`, or another amount ",
            "more than 0 mm and at most 10000 mm",
        ),
        (
            "900 m",
            "`finished width` is 900 m",
            "write `finished width: 10 m`, or another amount ",
            "more than 0 m and at most 10 m",
        ),
        (
            "50 ft",
            "`finished width` is 50 ft",
            "write `finished width: 32.8 ft`, or another amount ",
            "more than 0 ft and at most 32.8083 ft",
        ),
        (
            "50 ft 6 in",
            "`finished width` is 50 ft 6 in",
            "write `finished width: 10000 mm`, or another amount ",
            "more than 0 mm and at most 10000 mm",
        ),
    ],
)
def test_a_bound_is_told_in_the_authors_unit_and_mended(written: str, what: str, mend: str, bound: str) -> None:
    finding = one("900 mm ± 20 mm", written)
    assert (finding.rule, finding.what, finding.mend) == ("file.bound", what, mend + bound)
    inside = mend.partition("finished width: ")[2].partition("`")[0]
    assert read(swapped("900 mm ± 20 mm", inside))[1] == ()


def test_a_unit_that_cannot_be_turned_leaves_the_fields_own() -> None:
    assert authors_unit("5 parsecs", "mm") == "mm"


def test_measures_that_do_not_go_together_say_why() -> None:
    _, (finding,) = measure("low: 30 mm\n  high: 20 mm")
    assert (finding.rule, finding.span.line) == ("file.measures", 9)
    assert finding.why == "low is 30 mm and high is 20 mm"


def test_a_number_without_its_unit_is_told_which() -> None:
    finding = one("900 mm ± 20 mm", "900")
    assert (finding.rule, finding.mend) == ("file.quantity", "write `900 mm`")


class Lawn(Measures):
    """A measure with a low bound that is small in the author's unit."""

    area_m2: float = Field(ge=0.001, le=100_000)


def test_a_bound_that_is_small_in_the_authors_unit_is_written_out() -> None:
    family = replace(FAMILY, measures=Lawn, starter=())  # type: ignore[arg-type]
    text = "---\ntitle: Mow\nfamily: clipping\nmeasures:\n  area: 100 ha\n---\n"
    _, findings = assemble(source(text), {"clipping": family}, "en")
    (one,) = [each for each in findings if each.rule == "file.bound"]
    assert one.mend == "write `area: 10 ha`, or another amount at least 0.0000001 ha and at most 10 ha"
