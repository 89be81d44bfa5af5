"""What is shown is made once: words filled, figures worked out and drawings told, as their reader sees them."""

from howto.compute.ready import told, words_of
from howto.languages.reader import Reader
from howto.model.prose import plain
from howto.quantities.amounts import mm
from howto.shapes import DimensionLine, Drawing, Label, Level, Line, Role
from tests.support import drawings, sample

DRAWING = Drawing(
    shapes=(
        Line(((0, 0), (1, 1)), Role.KEEP),
        DimensionLine((0, 0), (9, 0), str(mm(900))),
        Level((0, 0), f"{mm(450)} up"),
        Label((0, 0), f"{mm(40)} off each side"),
    ),
    caption=f"A ball of {mm(900)}",
    alt=f"A ball {mm(900)} across.",
)
US = sample.CREW.model_copy(update={"units": "us"})


def test_a_drawings_labels_caption_and_description_are_told_and_its_lines_are_left() -> None:
    found = told(DRAWING, Reader("en", "us"))
    assert drawings.words_of(found) == ["2 ft 11½ in", "17¾ in up", "1 5/8 in off each side"]
    wide = "2\u00a0ft\u00a011½\u00a0in"
    assert (found.caption, found.alt) == (f"A ball of {wide}", f"A ball {wide} across.")
    assert found.shapes[0] == DRAWING.shapes[0]
    assert told(found, Reader()) == found


def test_all_that_a_drawing_says_is_kept_as_it_was_meant() -> None:
    ready = sample.ready(drawings=(DRAWING, DRAWING))
    assert ready.drawn_words == words_of(DRAWING) * 2
    assert words_of(DRAWING) == (DRAWING.caption, DRAWING.alt, str(mm(900)), f"{mm(450)} up", f"{mm(40)} off each side")


def test_a_technique_is_ready_in_its_crews_units_and_as_written_beside() -> None:
    ready = sample.ready(drawings=(DRAWING,), crew=US)
    assert plain(ready.technique.steps[1].text).endswith("Take 1\u00a05/8\u00a0in off each side.")
    assert ready.work.technique == sample.technique()
    assert ready.figures == sample.FIGURES
    assert drawings.words_of(ready.drawings[0])[0] == "2 ft 11½ in"
    assert (ready.crew, ready.reader) == (US, US.read_in("en"))


def test_a_visits_jobs_are_told_in_its_own_language() -> None:
    ready = sample.ready_visit(sample.visit(language="es"))
    (job,) = ready.jobs
    assert ready.reader == sample.CREW.read_in("es")
    assert plain(job.technique.aftercare[1].text) == "Look for new growth; clip again by 2 de junio de 2027."
    assert ready.meanings[0]["next clip"] == "2 de junio de 2027"
