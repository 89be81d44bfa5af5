"""What frames tell by line and number, colour-blind eyes tell apart too, by the reference library."""

import pytest
from colorspacious import cspace_convert

from howto.colour import SAFETY_YELLOW, contrast, mixed, rgb, written
from howto.layout.drawing.look import frame_look
from howto.layout.frames.look import board
from howto.model.crew import Colours, Crew

KINDS = ("protanomaly", "deuteranomaly", "tritanomaly")
PALETTES = (Colours(), Colours(accent="#9a3a1c"), Colours(ink="#10243a", ground="#ffffff", accent="#0a6a4a"))


def seen(colour: str, kind: str) -> str:
    space = {"name": "sRGB1+CVD", "cvd_type": kind, "severity": 100}
    channels = cspace_convert([part / 255 for part in rgb(colour)], space, "sRGB1")
    red, green, blue = (round(min(max(float(part), 0.0), 1.0) * 255) for part in channels)
    return written((red, green, blue))


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("colours", PALETTES)
def test_marks_and_hatching_stand_out_from_what_they_lie_on(kind: str, colours: Colours) -> None:
    sheet = board("4x5", Crew(colours=colours), colours.accent)
    look = frame_look(colours)
    pairs = (
        (sheet.ink, sheet.ground),  # words, outlines
        (sheet.accent, sheet.ground),  # hatching of what comes off, labels, the ring round a disc
        (sheet.accent, look.leaf),  # gauge rings over what stays
        (sheet.on_accent, sheet.accent),  # the number in a disc
        ("#000000", SAFETY_YELLOW),  # cautions
    )
    for one, other in pairs:
        assert contrast(seen(one, kind), seen(other, kind)) >= 3.0


@pytest.mark.parametrize("kind", KINDS)
def test_a_leader_in_its_halo_stands_out_on_anything(kind: str) -> None:
    colours = Colours()
    # a leader is ink inside ground: whichever way the photograph goes, one edge of it is 3 to 1 or more
    for share in range(0, 101, 5):
        grey = mixed("#000000", "#ffffff", share / 100)
        best = max(contrast(seen(each, kind), seen(grey, kind)) for each in (colours.ink, colours.ground))
        assert best >= 3.0
