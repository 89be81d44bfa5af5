from collections.abc import Sequence
from datetime import date

from howto.compute.words import filled_technique
from howto.languages.reader import Reader
from howto.model.figure import Figure
from howto.model.prose import Prose, Run, plain, prose
from howto.model.reference import GEOMETRY, PRACTICE
from howto.model.shown import shown
from howto.model.technique import Kit
from tests.support import sample

NBSP = "\u00a0"


READER = sample.CREW.read_in("en")


def filled(words: Prose, figures: Sequence[Figure] = (), reader: Reader = READER) -> Prose:
    """Return the words filled as the first of the sample technique."""
    return filled_technique(sample.technique(intro=(words,)), figures, reader).intro[0]


def words(text: str) -> str:
    """Return the text filled from the sample, with ordinary spaces."""
    return plain(filled(prose(text), sample.FIGURES)).replace(NBSP, " ")


def test_a_measure_goes_by_the_authors_key() -> None:
    assert words("Clip to {finished width}.") == "Clip to 900 mm."


def test_a_tolerance_goes_by_the_key_and_the_word_tolerance() -> None:
    assert words("within {finished width tolerance}") == "within ± 20 mm"


def test_a_figure_goes_by_its_name_and_a_date_is_written_out() -> None:
    assert words("Take {off each side}; back by {next clip}.") == "Take 40 mm; back by 2 June 2027."


def test_a_word_and_a_count_are_shown_as_they_are() -> None:
    assert words("{passes} passes over the {shape}") == "2 passes over the ball"


def test_capitals_and_spaces_in_the_braces_do_not_matter() -> None:
    assert words("{ Finished  Width }") == "900 mm"


def test_an_unknown_word_stays_for_the_check_stage() -> None:
    assert words("Clip to {finshed width}.") == "Clip to {finshed width}."


def test_a_measure_without_tolerance_leaves_its_tolerance_unfilled() -> None:
    assert words("{standing width tolerance}") == "{standing width tolerance}"


def test_a_measure_stands_over_a_figure_of_the_same_name() -> None:
    twin = Figure(name="passes", label="Passes", value=9.0, working=("9",), references=(PRACTICE,))
    assert plain(filled(prose("{passes}"), (twin,))) == "2"


def test_the_style_of_a_run_is_kept() -> None:
    found = filled((Run(text="{passes}", strong=True), Run(text=" times")))
    assert found == (Run(text="2", strong=True), Run(text=" times"))


def test_braces_of_an_author_are_never_read_as_a_pattern() -> None:
    assert words("{} {finished width {passes}") == "{} {finished width 2"


def test_numbers_follow_the_crews_units() -> None:
    crew = sample.CREW.model_copy(update={"units": "us"})
    found = filled(prose("{finished width}"), (), crew.read_in("en"))
    assert plain(found).replace(NBSP, " ") == "2 ft 11½ in"  # 900 mm ÷ 25.4 = 35.43 in, to a quarter 35½


def test_dates_follow_the_readers_language() -> None:
    figure = Figure(name="d", label="D", value=date(2027, 6, 2), working=("",), references=(GEOMETRY,))
    assert shown(figure, Reader("en")) == "2 June 2027"
    assert shown(figure, Reader("es")) == "2 de junio de 2027"
    assert shown(figure, Reader("xx")) == "2 June 2027"


def test_digits_ask_for_so_many_figures() -> None:
    figure = Figure(name="s", label="S", value=22.55, unit="%", digits=2, working=("",), references=(GEOMETRY,))
    assert shown(figure, Reader()).replace(NBSP, " ") == "23 %"


def test_every_prose_of_a_technique_is_filled() -> None:
    ask = prose("{passes}")
    technique = sample.technique(
        intro=(ask,),
        tools=(Kit(name="Shears", note=ask),),
        materials=(Kit(name="Sheet", note=ask),),
        steps=tuple(
            step.model_copy(
                update={"title": "{passes}", "text": ask, "key_points": (ask,), "reasons": (ask,), "checks": (ask,)}
            )
            for step in sample.STEPS[:1]
        ),
        cautions=tuple(hazard.model_copy(update={"text": ask}) for hazard in sample.CAUTIONS),
        finish=(ask,),
        aftercare=tuple(care.model_copy(update={"text": ask}) for care in sample.AFTERCARE),
    )
    found = filled_technique(technique, (), READER)
    assert "{passes}" not in found.model_dump_json()
    assert found.steps[0].title == "2"


def test_each_job_is_filled_from_its_own_measures() -> None:
    small = sample.MEASURES.model_copy(update={"finished_width_mm": 700.0})
    step = sample.STEPS[0].model_copy(update={"text": prose("{finished width}")})
    jobs = tuple(
        job.model_copy(update={"technique": sample.technique(measures=measures, steps=(step,))})
        for job in sample.visit().jobs
        for measures in (sample.MEASURES, small)
    )
    found = sample.ready_visit(sample.visit(jobs=jobs))
    texts = [plain(job.technique.steps[0].text).replace(NBSP, " ") for job in found.jobs]
    assert texts == ["900 mm", "700 mm"]
