"""A QR code as an SVG, with its quiet zone, at a size a phone can read off a laminated card."""

from io import BytesIO
from typing import Final, NamedTuple

import segno

BORDER: Final = 4  # modules of quiet zone on every side (DENSO WAVE, Point for determining the code area)
LEAST_MODULE_MM: Final = 0.5  # twice the inventor's worked example of 0.254 mm at 400 dpi (same source)
CORRECTION: Final = "m"  # about 15 % may be lost to dirt and scratches


class Symbol(NamedTuple):
    """A QR code: its SVG, how many modules it is across with its border, and its smallest printed width."""

    svg: str
    modules: int
    least_mm: float


def symbol(url: str) -> Symbol:
    """Return the code that opens `url`: black on white, one unit of the SVG a module; the same text each time."""
    code = segno.make_qr(url, error=CORRECTION)
    out = BytesIO()
    code.save(
        out,
        kind="svg",
        border=BORDER,
        dark="#000000",
        light="#ffffff",
        xmldecl=False,
        omitsize=True,  # a viewBox in place of a size, so that whoever places it decides how wide it is
        nl=False,
    )
    modules = int(code.symbol_size(scale=1, border=BORDER)[0])
    return Symbol(out.getvalue().decode("utf-8"), modules, modules * LEAST_MODULE_MM)


def printed_mm(modules: int, wanted_mm: float) -> float:
    """Return the width to print a code at: the one wanted, or what half a millimetre a module needs."""
    return max(wanted_mm, modules * LEAST_MODULE_MM)
