"""Whatever a text holds, what is set of it is in letters that its face has."""

import pytest

from howto.fonts import CUTS, Face, missing
from howto.fonts.letters import settable, tidied

ODD = "a王سل🌿\u0323\ue000\u202e\u0378\ufdd0\x01\x7f\x85\ud800\ufeff\ufffd"


@pytest.mark.parametrize("face", CUTS)
def test_what_a_face_lacks_is_a_block(face: Face) -> None:
    assert missing(settable(ODD, face), face) == ()
    assert settable("Box 黄杨, 50 mm", face) == "Box ■■, 50 mm"
    assert settable("⅓ → ½", face) == "⅓ → ½"


def test_line_ends_and_tabs_are_no_letters_and_control_characters_are() -> None:
    assert settable("one\n\ttwo") == "one\n\ttwo"
    assert settable("bell\x07") == "bell■"


def test_letters_nobody_sees_are_left_out_and_look_alikes_made_plain() -> None:
    assert tidied("a\u200db\u00adc\u202ed\ufe0f e\u2011f\u2009g\u3000h") == "abcd e-f g h"


def test_what_people_see_stays() -> None:
    for text in ("Tēnā koe", "Cắt tỉa quả cầu", "± 15 mm × 2 → 3 m²", "½ λ я", "a\u00a0b\u202fc\u2007d"):
        assert tidied(text) == text
