from datetime import date
from pathlib import Path

from howto.findings import Severity
from howto.read.shelf import read_shelf
from tests.support.reading import FAMILIES, TEXT

VISIT = "---\nsite: Orchard end\ndate: 2026-10-14\ndone: [clip-a-ball]\n---\nWords.\n"


def write(root: Path, files: dict[str, str]) -> None:
    for name, text in files.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")


def test_a_whole_shelf_is_read(tmp_path: Path) -> None:
    root = tmp_path / "techniques"
    write(
        root,
        {
            "crew.yaml": "name: Low Wall crew\nhemisphere: south\n",
            "clipping/clip-a-ball.md": TEXT,
            "clipping/README.md": "Notes to oneself.",
            "hedging/raise-a-hedge.md": TEXT.replace("family: clipping", "family: hedging"),
            "hedging/_draft.md": "not yet",
            ".trash/old.md": "gone",
            "pictures/notes.md": "no technique",
            "visits/2026-10-14-orchard-end.md": VISIT,
            "people.yaml": "- name: Sam\n",
            "plants.yaml": "- botanical: Novae herba\n  kind: conifer\n",
        },
    )
    shelf, findings = read_shelf(root, FAMILIES)
    assert findings == ()
    assert (shelf.root, shelf.crew.name) == (root.as_posix(), "Low Wall crew")
    assert [each.id for each in shelf.techniques] == ["clip-a-ball", "raise-a-hedge"]
    assert shelf.work(shelf.techniques[0]).crew == shelf.crew
    assert shelf.book.plant("novae herba") is not None
    assert [(each.id, each.date) for each in shelf.visits] == [("2026-10-14-orchard-end", date(2026, 10, 14))]
    assert [each.name for each in shelf.people] == ["Sam"]
    assert {path.removeprefix(f"{root.as_posix()}/") for path in shelf.sources} == {
        "crew.yaml",
        "people.yaml",
        "plants.yaml",
        "clipping/clip-a-ball.md",
        "hedging/raise-a-hedge.md",
        "visits/2026-10-14-orchard-end.md",
    }


def test_every_finding_of_every_file_comes_in_one_run(tmp_path: Path) -> None:
    write(
        tmp_path,
        {
            "crew.yaml": "nmae: Low Wall crew\n",
            "clipping/a.md": TEXT.replace("level: 2", "level: 9"),
            "clipping/b.md": TEXT.replace("shape: ball", "shape: bal"),
            "clipping/c.md": "",
            "grasses.yaml": "words\n",
            "plants.yaml": "\n",
            "people.yaml": "- Sam\n",
            "visits/v.md": VISIT.replace("clip-a-ball", "b, c, sing"),
            "visits/w.md": "",
        },
    )
    shelf, findings = read_shelf(tmp_path, FAMILIES)
    assert sorted((each.span.path.removeprefix(f"{tmp_path.as_posix()}/"), each.rule) for each in findings) == [
        ("clipping/a.md", "file.bound"),
        ("clipping/b.md", "file.unknown-word"),
        ("clipping/c.md", "file.empty"),
        ("crew.yaml", "file.unknown-key"),
        ("grasses.yaml", "file.value"),
        ("people.yaml", "file.value"),
        ("plants.yaml", "file.empty"),
        ("visits/v.md", "file.unknown-technique"),
        ("visits/w.md", "file.empty"),
    ]
    assert [each.id for each in shelf.techniques] == ["a"]


def test_a_shelf_that_is_not_there_is_a_finding(tmp_path: Path) -> None:
    shelf, (finding,) = read_shelf(tmp_path / "none", FAMILIES)
    assert shelf.techniques == ()
    assert finding.what == "there is no folder of this name"


def test_a_shelf_without_a_crew_is_warned(tmp_path: Path) -> None:
    write(tmp_path, {"clipping/clip-a-ball.md": TEXT})
    _, (finding,) = read_shelf(tmp_path, FAMILIES)
    assert (finding.rule, finding.severity) == ("file.no-crew", Severity.WARNING)


def test_a_crew_that_is_a_folder_leaves_the_defaults(tmp_path: Path) -> None:
    (tmp_path / "crew.yaml").mkdir()
    shelf, (finding,) = read_shelf(tmp_path, FAMILIES)
    assert (finding.rule, shelf.crew.name) == ("file.not-readable", "The crew")


def test_files_that_nearly_are_techniques_are_named(tmp_path: Path) -> None:
    write(
        tmp_path, {"crew.yaml": "name: x\n", "hedging/beech.md.txt": TEXT, "visits/v.docx": "x", "clipping/B.MD": TEXT}
    )
    _, findings = read_shelf(tmp_path, FAMILIES)
    assert [(each.rule, each.mend) for each in findings] == [
        ("file.name", "rename the file to `b.md`"),
        ("file.name", "save it as text and rename it to `beech.md`, or move it out of the shelf"),
        ("file.name", "save it as text and rename it to `v.md`, or move it out of the shelf"),
    ]


def test_a_technique_in_a_folder_within_a_folder_is_not_passed_over(tmp_path: Path) -> None:
    write(tmp_path, {"crew.yaml": "name: A\n", "clipping/round/clip-a-ball.md": TEXT, "clipping/_old/b.md": TEXT})
    _, (finding,) = read_shelf(tmp_path, FAMILIES)
    assert (finding.rule, finding.span.path) == ("file.folder", f"{tmp_path.as_posix()}/clipping/round/clip-a-ball.md")
    assert finding.what == "`clip-a-ball.md` stands in a folder within `clipping`, and is not read"
    assert finding.mend == f"move the file to `{tmp_path.as_posix()}/clipping`"


def test_a_visit_in_a_folder_within_visits_is_not_passed_over(tmp_path: Path) -> None:
    write(tmp_path, {"crew.yaml": "name: A\n", "visits/2026/2026-10-14-orchard-end.md": "x"})
    _, (finding,) = read_shelf(tmp_path, FAMILIES)
    assert (finding.rule, str(finding.severity)) == ("file.folder", "error")
    assert finding.mend == f"move the file to `{tmp_path.as_posix()}/visits`"
