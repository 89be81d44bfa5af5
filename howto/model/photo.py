"""A photograph as it was read: upright pixels in sRGB, and nothing of where, when or by whom it was taken."""

from howto.model.value import Value


class Photograph(Value):
    """Pixels ready to place.

    `rgb` holds `width` × `height` pixels, three bytes each, row by row from the upper left. A big picture is
    held smaller than it was; `full_width` × `full_height` are the pixels the file has, once upright.
    """

    file: str
    width: int
    height: int
    rgb: bytes
    full_width: int
    full_height: int
