"""What a title is called as a file."""

import pytest

from howto.model.names import file_name, short_name


@pytest.mark.parametrize(
    ("title", "name"),
    [
        ("Clip a ball", "clip-a-ball"),
        ("Cắt tỉa: #1 quả cầu", "cat-tia-1-qua-cau"),
        ("Đào hố", "dao-ho"),
        ("Tapahia te po\u0304ro", "tapahia-te-poro"),
        ("Élaguer l’if", "elaguer-l-if"),
        ("Straße & Łąka", "strasse-laka"),
        ("  ../../etc/x ", "etc-x"),
        ("修剪 🌿", ""),
    ],
)
def test_a_title_becomes_small_letters_digits_and_dashes(title: str, name: str) -> None:
    assert file_name(title) == short_name(title) == name


def test_a_long_title_is_cut_after_a_word() -> None:
    assert short_name("Clip " * 40) == "clip-clip-clip-clip-clip-clip-clip-clip-clip-clip-clip-clip"
    assert short_name("x" * 61) == "x" * 60
    assert short_name("x" * 60) == "x" * 60
    assert file_name("x" * 61) == "x" * 61
