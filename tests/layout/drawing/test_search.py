import pytest

from howto.layout.drawing.look import frame_look, page_look
from howto.layout.drawing.search import Fitted, Search
from howto.model.crew import Colours
from howto.shapes import Drawing, Label, Polygon, Role, rectangle
from tests.support.drawings import DRAWINGS, ball

FRAME, PAGE = frame_look(Colours()), page_look(Colours())
BOX = (952.0, 700.0)


def square(*labels: Label) -> Drawing:
    return Drawing((Polygon(rectangle(0, 0, 1000, 1000), Role.WOOD), *labels), "A square", "A square.")


def test_a_trial_that_is_too_wide_says_at_which_scale_to_go_on() -> None:
    search = Search(square(Label((1000, 500), "A label of some words")), (700.0, 700.0), FRAME)
    assert search.largest == pytest.approx(0.7)
    edge = search.at(0.7, FRAME.size, 0.0)
    assert edge == pytest.approx(0.686)  # two heavy lines less
    assert isinstance(edge, float)
    hope = search.at(edge, FRAME.size, 0.0)
    assert isinstance(hope, float)
    assert 0.1 < hope < 0.65
    assert isinstance(search.at(hope * 0.99, FRAME.size, 0.0), Fitted)


def test_a_fit_that_is_worth_less_than_the_least_is_none() -> None:
    search = Search(ball(), BOX, FRAME)
    found = search.best(0.0)
    assert found is not None
    assert search.best(found.worth * 1.01) is None


@pytest.mark.parametrize("name", sorted(DRAWINGS))
def test_few_scales_are_tried(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    tried: list[float] = []
    at = Search.at

    def counted(self: Search, scale: float, size: float, least: float) -> Fitted | float:
        tried.append(scale)
        return at(self, scale, size, least)

    monkeypatch.setattr(Search, "at", counted)
    assert Search(DRAWINGS[name](), BOX, FRAME).best(0.0) is not None
    assert len(tried) <= 30


def test_no_scale_of_a_fine_grid_is_worth_much_more() -> None:
    for drawing in (each() for each in DRAWINGS.values()):
        search = Search(drawing, BOX, FRAME)
        found = search.best(0.0)
        assert found is not None
        grid = (search.at(search.largest * 0.98**step, found.core.size, 0.0) for step in range(40))
        assert max(each.worth for each in grid if isinstance(each, Fitted)) <= found.worth * 1.06


def test_on_paper_only_the_scales_of_a_scale_rule_are_tried() -> None:
    search = Search(ball(), (124.0, 80.0), PAGE)
    assert search.below(0.07) == 0.05
    assert search.below(1e-9) == 0.0
