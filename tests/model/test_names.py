"""What a title is called as a file, and which file a name means."""

from pathlib import Path

import pytest

from howto.model.names import file_name, on_disk, short_name

STORED = "cafe\u0301"  # as some phones and computers store it
SEEN = "caf\u00e9"


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


def test_a_file_is_found_however_its_accents_are_stored(tmp_path: Path) -> None:
    (tmp_path / STORED).mkdir()
    (tmp_path / STORED / f"{STORED}.jpg").touch()
    assert on_disk(tmp_path, f"{SEEN}/{SEEN}.jpg") == tmp_path / STORED / f"{STORED}.jpg"
    assert on_disk(tmp_path, f"{SEEN}/none.jpg") == tmp_path / STORED / "none.jpg"
    (tmp_path / STORED / f"{SEEN}.jpg").touch()
    assert on_disk(tmp_path / STORED, f"{SEEN}.jpg") == tmp_path / STORED / f"{SEEN}.jpg"


@pytest.mark.parametrize("name", ["é" * 300, "é\0", "../é", "é/é"])
def test_a_name_of_no_file_is_one_that_is_not_there(tmp_path: Path, name: str) -> None:
    assert on_disk(tmp_path, name) == tmp_path / name
