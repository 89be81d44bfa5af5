from io import BytesIO

import pytest
import segno
import zxingcpp
from PIL import Image

from howto.render.code import printed_mm, symbol

LEAF = "https://example.org/t/leaf"


def test_a_short_address_makes_a_version_2_code() -> None:
    # 26 bytes at level M fill version 2 (25 modules), 33 with the border of four: segno 1.6.6, ISO/IEC 18004
    found = symbol(LEAF)
    assert found.modules == 33
    assert 'viewBox="0 0 33 33"' in found.svg


def test_half_a_millimetre_a_module_is_the_least_width() -> None:
    assert symbol(LEAF).least_mm == pytest.approx(16.5, abs=0.01)


def test_thirty_millimetres_give_modules_of_nine_tenths() -> None:
    # printed width of a tenth of the scanning distance: 30 cm, 30 mm (an industry rule, not in ISO/IEC 18004)
    assert printed_mm(33, 30.0) / 33 == pytest.approx(0.909, abs=0.001)


def test_a_long_address_is_printed_wider_than_asked() -> None:
    found = symbol("https://example.org/t/" + "leaf" * 30)
    assert printed_mm(found.modules, 21.0) == found.modules * 0.5 > 21.0


def test_a_code_with_its_border_reads_and_one_without_on_black_does_not() -> None:
    # zxing-cpp 3.1.1, segno 1.6.6: border 4, scale 4 decodes; border 0 on black gives no result
    def read(border: int) -> list[str]:
        out = BytesIO()
        segno.make_qr(LEAF, error="m").save(out, kind="png", border=border, scale=4)
        code = Image.open(out).convert("L")
        black = Image.new("L", (code.width + 80, code.height + 80), 0)
        black.paste(code, (40, 40))
        return [found.text for found in zxingcpp.read_barcodes(black)]

    assert read(4) == [LEAF]
    assert read(0) == []


def test_it_is_never_a_micro_code_and_comes_out_the_same_twice() -> None:
    assert symbol("HI").modules == 29  # version 1 is 21 modules; a micro code would be smaller
    assert symbol(LEAF) == symbol(LEAF)
