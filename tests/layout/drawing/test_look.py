from howto.colour import contrast
from howto.layout.drawing.look import frame_look, page_look
from howto.model.crew import Colours


def test_words_are_large_enough_and_clear_on_the_ground() -> None:
    page, frame = page_look(Colours()), frame_look(Colours())
    assert page.small / 25.4 * 72 >= 7.9  # 8 pt
    assert frame.small >= 28
    for look in (page, frame):
        assert look.small < look.size
        assert contrast(look.ink, look.ground) >= 4.5
        assert contrast(look.ink, look.leaf) >= 4.5
        assert contrast(look.grey, look.ground) >= 3
        assert look.fine <= look.thin < look.medium < look.heavy
