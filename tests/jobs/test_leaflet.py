"""What a client is given after a visit: pictures cleaned, pages that fit, a message, a calendar."""

from datetime import date
from pathlib import Path

import pytest
from PIL import Image

from howto.jobs.leaflet import leaflet
from howto.model.crew import Crew
from howto.model.ready import ReadyVisit
from howto.model.technique import Picture
from howto.model.visit import Job, Visit
from tests.support import sample
from tests.support.visits import care, job

TODAY = sample.TODAY


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """Return a shelf's folder with two photographs, one of which says where it was taken."""
    (tmp_path / "pictures").mkdir()
    for name, colour in (("old.jpg", "#886644"), ("new.jpg", "#448866")):
        exif = Image.Exif()
        exif[0x010E] = "12 Elm Street"
        exif.get_ifd(0x8825)[1] = "N"
        Image.new("RGB", (1600, 1200), colour).save(tmp_path / "pictures" / name, exif=exif)
    return tmp_path


def visit(**changes: object) -> Visit:
    """Return a visit with a picture before and after."""
    return sample.visit(
        before=(Picture(file="old.jpg"),), after=(Picture(file="new.jpg", credit="the crew"),), **changes
    )


def bare(jobs: tuple[Job, ...], crew: Crew = sample.CREW, **changes: object) -> ReadyVisit:
    """Return the visit with these jobs and no figures."""
    return sample.ready_visit(visit(jobs=jobs, **changes), [()] * len(jobs), crew)


def test_a_leaflet_comes_out_four_ways_with_its_pictures_cleaned(root: Path) -> None:
    files: dict[str, bytes] = {}
    made = leaflet(sample.ready_visit(visit()), root, TODAY, files.__setitem__)
    assert made.findings == ()
    assert sorted(files) == [f"leaflets/2026-10-14-orchard-end.{end}" for end in ("html", "ics", "pdf", "txt")]
    page = files["leaflets/2026-10-14-orchard-end.html"].decode()
    assert page.count("data:image/jpeg;base64,") == 2
    assert "After (the crew)" in page
    assert b"Elm Street" not in b"".join(files.values())
    assert files["leaflets/2026-10-14-orchard-end.txt"].decode() == f"{made.text}\n"
    assert made.text.startswith("Orchard end\nCare leaflet")


def test_a_picture_that_cannot_be_read_is_a_finding_at_its_place(root: Path) -> None:
    (root / "pictures/old.jpg").unlink()
    made = leaflet(sample.ready_visit(visit()), root, TODAY)
    (finding,) = made.findings
    assert finding.rule == "file.picture-missing"


def test_a_leaflet_that_runs_over_is_told_and_not_written(root: Path) -> None:
    many = tuple(
        job(f"the bed number {n}", care(f"Water bed {n}, slowly, at the foot of each plant.", "within", n))
        for n in range(60)
    )
    files: dict[str, bytes] = {}
    made = leaflet(bare(many, next_visit=date(2026, 11, 25)), root, TODAY, files.__setitem__)
    assert [finding.rule for finding in made.findings] == ["fit.leaflet"]
    assert made.findings[0].mend == "shorten the words to the client, or put some of the jobs on a second visit file"
    assert files == {}
    assert len(made.text) > 0


def test_the_message_keeps_to_1500_characters_or_the_crews_own_limit(root: Path) -> None:
    many = tuple(job(f"the bed {n}", care(f"Water bed {n}, slowly, at the foot.", "within", n)) for n in range(30))
    assert len(leaflet(bare(many), root, TODAY).text) <= 1500
    short = sample.CREW.model_copy(update={"caption_limit": 700})
    assert len(leaflet(bare(many, short), root, TODAY).text) <= 700
