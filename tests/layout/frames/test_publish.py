import pytest

from howto.languages import language_of
from howto.layout.frames.alt import sentence, where, within
from howto.layout.frames.publish import alt_texts, caption, caption_findings
from howto.model.plants import Plant, PlantBook
from howto.model.prose import prose
from howto.model.ready import Ready
from howto.model.sheet import Frame
from howto.model.technique import Hazard, Mark, Picture, Step
from tests.support import sample

WHOLE = """Clip a ball.

A ball that reads as one round line from the gate and from the window. Clipped little and often it closes up and stays \
green to the ground.

Off each side: 40 mm
Share of the ball taken off: 23 %

Key point: Start at the widest ring, never at the top.
Reason: The widest ring is the one line every other cut is measured from.

1. Find the circle from above
2. Cut the belt
3. Cut four ribs, pole to pole
4. Join the ribs
5. Ruffle and clip again
6. Step back and clear

Take care: Blades. Keep the free hand behind the handles. Close and lock the shears before you move your feet. Wear \
cut-resistant gloves, eye protection.
Nests. Look inside the plant before the first cut. A nest in use means the job waits.
Follow local codes and the product label. Leave electrical work, tree climbing, chainsaws and chemicals that need a \
licence to people who hold one.

Lantern Field crew · Version 7f3a91c2 · https://lantern-field.example/t

#Clipping #ClipABall #IlexCrenata #Topiary
"""


def limited(limit: int) -> Ready:
    return sample.ready(crew=sample.CREW.model_copy(update={"caption_limit": limit}))


def test_a_caption_opens_tips_warns_and_tags() -> None:
    assert caption(sample.ready(), ("topiary", "clipping")) == WHOLE


@pytest.mark.parametrize(
    ("limit", "gone"),
    [
        (900, ("1. Find",)),
        (800, ("1. Find", "A ball that reads")),
        (650, ("1. Find", "A ball that reads", "Key point")),
    ],
)
def test_a_shorter_limit_leaves_out_what_matters_least(limit: int, gone: tuple[str, ...]) -> None:
    told = caption(limited(limit))
    assert len(told) <= limit
    assert not any(each in told for each in gone)
    assert "Take care: Blades." in told
    assert "Follow local codes and the product label." in told


@pytest.mark.parametrize("limit", range(500, 1100, 50))
def test_a_caption_keeps_its_limit(limit: int) -> None:
    assert len(caption(limited(limit))) <= limit


def test_cautions_longer_than_the_limit_are_a_finding_and_never_cut() -> None:
    short = limited(300)
    (found,) = caption_findings(short)
    assert "Nests. Look inside the plant before the first cut." in caption(short)
    assert found.rule == "fit.caption"
    assert found.why == "the crew's limit is 300"
    wanted = int(found.mend.rpartition("`caption limit: ")[2].split("`")[0])
    assert caption_findings(limited(wanted)) == ()
    assert caption_findings(limited(wanted - 1)) != ()


def test_tags_come_from_task_and_plant_and_are_few() -> None:
    plant = Plant(botanical="Coprosma virescens", common=("green mikimiki",), kind="evergreen")
    known = sample.ready(plants=("coprosma virescens",), book=PlantBook(plants=(plant,)))
    last = caption(known, tuple(f"tag {n}" for n in range(9))).splitlines()[-1]
    assert last == "#Clipping #ClipABall #CoprosmaVirescens #GreenMikimiki #Tag0 #Tag1"


def test_a_tag_is_short_or_left_out() -> None:
    last = caption(sample.ready((), title="Clip a ball that has not been clipped for years", plants=())).splitlines()[
        -1
    ]
    assert last == "#Clipping"


def test_photographs_are_credited() -> None:
    steps = (Step(title="Look.", pictures=(Picture(file="p.jpg", credit="A. Nother"), Picture(file="q.jpg"))),)
    assert "Photograph: A. Nother" in caption(sample.ready((), steps=steps))


def test_a_technique_without_numbers_or_cautions_still_warns() -> None:
    told = caption(sample.ready((), cautions=(Hazard(title="", text=prose("Mind your back")),), steps=(), intro=()))
    assert "Take care: Mind your back." in told


def test_alternative_texts_go_by_file() -> None:
    bare = {"width": 1, "height": 1, "ground": "#ffffff", "marks": ()}
    frames = (
        Frame(name="01", alt="A cover.", **bare),  # type: ignore[arg-type]
        Frame(name="02", alt="A step.", credit="A. Nother", **bare),  # type: ignore[arg-type]
    )
    assert alt_texts(frames) == [
        {"file": "01.jpg", "alt": "A cover."},
        {"file": "02.jpg", "alt": "A step.", "credit": "A. Nother"},
    ]


def test_sentences_are_dropped_whole_from_the_end() -> None:
    assert within(("One thing", "Another thing"), 25) == "One thing. Another thing."
    assert within(("One thing", "Another thing"), 24) == "One thing."
    assert within(("", "One thing"), 24) == "One thing."
    assert within((), 24) == ""


def test_a_first_sentence_that_is_too_long_ends_at_a_word() -> None:
    assert within(("A ball, clipped from above", "More"), 16) == "A ball, clipped…"


@pytest.mark.parametrize(("text", "ended"), [("a\n b", "a b."), ("Why?", "Why?"), ("  ", "")])
def test_a_sentence_has_one_line_and_an_end(text: str, ended: str) -> None:
    assert sentence(text) == ended


@pytest.mark.parametrize(
    ("x", "y", "place"), [(0, 0, "top left"), (50, 50, "centre"), (100, 100, "bottom right"), (50, 90, "bottom centre")]
)
def test_a_mark_is_pointed_out_by_its_ninth(x: float, y: float, place: str) -> None:
    assert where(Mark(x_percent=x, y_percent=y, text="it"), language_of("en").labels) == place


def test_tags_are_in_the_language_of_the_caption() -> None:
    crew = sample.CREW.model_copy(update={"language": "es"})
    told = caption(sample.ready((), crew=crew, language="es"), ("topiary", "blasting"))
    tags = told.strip().rpartition("\n")[2]
    assert tags.startswith("#Recorte ")
    assert "#Topiaria" in tags
    assert "lasting" not in tags
