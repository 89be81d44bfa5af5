from pathlib import Path

import pytest

from howto.findings import Finding
from howto.model.crew import Climate, Colours, Crew
from howto.read.crew import crew_of, read_crew
from howto.span import SourceText, Span
from tests.support.reading import told

CLIMATE = """climate:
  max: [5, 7, 12, 16, 20, 24, 27, 26, 22, 16, 10, 6]
  min: [-2, -1, 2, 5, 9, 13, 15, 14, 11, 7, 2, -1]
  humidity: 82, 78, 72, 68, 68, 66, 64, 66, 72, 78, 82, 84
  wind: [2.4, 2.4, 2.5, 2.3, 2.0, 1.9, 1.8, 1.7, 1.8, 2.0, 2.2, 2.3]
  sunshine: [2.2, 3.4, 5.0, 6.2, 7.2, 8.4, 9.0, 8.2, 6.4, 4.4, 2.6, 1.9]
"""


def crew(text: str) -> tuple[Crew, tuple[Finding, ...]]:
    return crew_of(SourceText("techniques/crew.yaml", text))


def only(text: str) -> Finding:
    (finding,) = crew(text)[1]
    return finding


def test_every_key_is_read(tmp_path: Path) -> None:
    (tmp_path / "crew.yaml").write_text(
        "name: Low Wall crew\nplace: Nether Wold\nhemisphere: South\nlatitude: 41.5 S\naltitude: 100 ft\ncoast: yes\n"
        "soil: sandy loam\nunits: UK\nlanguage: es\ncurrency: £\ncontact: Ask the lead\nweb: low-wall.example\n"
        "mark: mark.png\ncaption limit: 500\nalt limit: 200\ncolours:\n  ink: 1D2A26\n  accent: #a3f\n",
        "utf-8",
    )
    found, findings = read_crew(tmp_path / "crew.yaml", "techniques/crew.yaml")
    assert findings == ()
    assert found.spans["mark"] == Span("techniques/crew.yaml", 13, 7, 15)
    assert found.spans["colours.ink"] == Span("techniques/crew.yaml", 17, 8, 14)
    assert found.model_copy(update={"spans": {}}) == Crew(
        name="Low Wall crew",
        place="Nether Wold",
        hemisphere="south",
        latitude_deg=-41.5,
        altitude_m=30.48,
        coast=True,
        soil="sandy loam",
        units="uk",
        language="es",
        currency="£",
        contact="Ask the lead",
        web="https://low-wall.example",
        mark="mark.png",
        caption_limit=500,
        alt_limit=200,
        colours=Colours(ink="#1d2a26", accent="#aa33ff"),
    )


@pytest.mark.parametrize(
    ("written", "degrees", "hemisphere"),
    [
        ("latitude: 41 S", -41.0, "south"),
        ("latitude: -41", -41.0, "south"),
        ("latitude: −41.25", -41.25, "south"),
        ("latitude: 41°30′ S", -41.5, "south"),
        ("latitude: 46 north", 46.0, "north"),
        ("latitude: 46°30'15.5″ N", 46.5, "north"),
        ('latitude: "46° 30’ 15” S"', -46.5, "south"),
        ("latitude: 46", 46.0, "north"),
        ("latitude: 41\nhemisphere: south", -41.0, "south"),
        ("hemisphere: south", -45.0, "south"),
        ("latitude: 90 S", -90.0, "south"),
        ("latitude: 0", 0.0, "north"),
    ],
)
def test_latitude_and_hemisphere_speak_for_each_other(written: str, degrees: float, hemisphere: str) -> None:
    found, findings = crew(written)
    assert findings == ()
    assert (found.latitude_deg, found.hemisphere) == (degrees, hemisphere)


def test_latitude_and_hemisphere_that_disagree_name_both_places() -> None:
    finding = only("latitude: 41 N\nhemisphere: south\n")
    assert told((finding,)) == [("file.hemisphere", 1, 11, 15)]
    assert finding.also is not None
    assert finding.also.line == 2
    assert finding.mend == "write `hemisphere: north`, or `latitude: 41 S`"


ADDRESS = "write it as a browser shows it, such as `web: https://thrushfield.example`, or take the line out"


@pytest.mark.parametrize(
    ("line", "rule", "mend"),
    [
        ("hemispere: south", "unknown-key", "write `hemisphere:`"),
        ("hemisphere: soth", "unknown-word", "write `hemisphere: south`"),
        ("latitude: far", "value", "write degrees and N or S, such as `latitude: 41 S`"),
        ("latitude: 91 S", "bound", "write `latitude: 45 S`, or another number from 90 S to 90 N"),
        ("latitude: 46 W", "value", "write degrees and N or S, such as `latitude: 41 S`"),
        ("altitude: 30 kg", "quantity", "write a length, such as `1.2 m`"),
        ("altitude: 9 km", "bound", "write `altitude: 30 m`, or another number from -430 m to 6000 m"),
        ("altitude: [3 m]", "value", "write one text after the colon"),
        ("units: imperial", "unknown-word", "write `units: us` or `units: uk`"),
        ("units: metrik", "unknown-word", "write `units: metric`"),
        ("coast: near", "value", "write `coast: yes` or `coast: no`"),
        ("caption limit: 99", "bound", "write `caption limit: 100`, or another number from 100 to 10000"),
        ("colours: red", "value", 'write a line such as `  accent: "#a63d1f"` under it'),
        ("colours: {accent: red}", "value", 'write one such as `accent: "#a63d1f"`'),
        ("colours: {acent: '#123456'}", "unknown-key", "write `accent:`"),
        (
            "climate: mild",
            "value",
            "write lines such as `  max: [5, 7, 12, 16, 20, 24, 27, 26, 22, 16, 10, 6]` under it",
        ),
        ("latitude: [41]", "value", "write one text after the colon"),
        ("name: [a, b]", "value", "write one text after the colon"),
        (f"name: {'Thrushfield ' * 6}", "too-long", "write it in at most 60 characters"),
        (f"contact: {'Ask the lead. ' * 12}", "too-long", "write it in at most 160 characters"),
        (f"web: https://{'a' * 90}.example", "too-long", "write it in at most 100 characters"),
        ("web: javascript:alert(1)", "value", ADDRESS),
        ("web: call us", "value", ADDRESS),
        ("- name", "value", "write `name: The crew`"),
    ],
)
def test_a_key_with_a_slip_is_explained(line: str, rule: str, mend: str) -> None:
    finding = only(line)
    assert (finding.rule, finding.span.line, finding.mend) == (f"file.{rule}", 1, mend)


def test_blank_keys_and_an_unreadable_file_leave_the_defaults(tmp_path: Path) -> None:
    assert crew("name:\nlatitude:\nclimate:\n") == (Crew(), ())
    assert crew("# nothing\n") == (Crew(), ())
    found, findings = read_crew(tmp_path)
    assert (found, [each.rule for each in findings]) == (Crew(), ["file.not-readable"])


def test_a_climate_is_twelve_numbers_of_each() -> None:
    found, findings = crew(CLIMATE)
    assert findings == ()
    assert isinstance(found.climate, Climate)
    assert (found.climate.max_c[0], found.climate.humidity_percent[11], found.climate.rain_mm[5]) == (5.0, 84.0, 0.0)


def test_climate_numbers_may_have_units() -> None:
    text = CLIMATE.replace("max: [5,", "max: [41 °F,").replace("wind: [2.4,", "wind: [8.64 km/h,")
    found, findings = crew(text + "  rain: [1 in, 50, 52, 60, 75, 70, 60, 62, 64, 70, 68, 60]\n")
    assert findings == ()
    assert found.climate is not None
    assert (found.climate.max_c[0], found.climate.wind_m_per_s[0], found.climate.rain_mm[0]) == (5.0, 2.4, 25.4)


@pytest.mark.parametrize(
    ("old", "new", "rule", "mend"),
    [
        ("max: [5, 7,", "max: [7,", "twelve-months", "write twelve numbers with commas between them"),
        ("max: [5,", "max: [500,", "bound", "write a number from -60 to 60 °C, such as 60"),
        ("max: [5,", "max: [warm,", "quantity", "write a temperature, such as `30 °C`"),
        ("max: [5,", "max: [41 F,", "quantity", "write `41 °F`"),
        ("  wind", "  wnid", "unknown-key", "write `wind:`"),
        (
            "max: [5,",
            "max: [-3,",
            "climate",
            "write the larger number of month 1 under `max` and the smaller under `min`",
        ),
    ],
)
def test_a_climate_with_a_slip_is_explained_and_left_out(old: str, new: str, rule: str, mend: str) -> None:
    found, (finding,) = crew(CLIMATE.replace(old, new))
    assert found.climate is None
    assert (finding.rule, finding.mend) == (f"file.{rule}", mend)


def test_a_kind_of_number_that_is_missing_is_named() -> None:
    found, (finding,) = crew(CLIMATE[: CLIMATE.index("  sunshine")])
    assert found.climate is None
    assert (finding.rule, finding.what) == ("file.missing-key", "the climate has no `sunshine`")
