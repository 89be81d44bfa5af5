import os
from pathlib import Path

import pytest

from howto.findings import README
from howto.model.reference import FORMAT
from howto.read.text import MOST, MOST_OF_WORDS, read_text, text_of
from tests.support.reading import told


def read(tmp_path: Path, data: bytes) -> tuple[str | None, list[tuple[str, int, int, int]]]:
    path = tmp_path / "a.md"
    path.write_bytes(data)
    source, findings = read_text(path, "techniques/a.md")
    return (source.text if source else None), told(findings)


def test_a_file_is_read_under_the_name_findings_give_it(tmp_path: Path) -> None:
    (tmp_path / "a.md").write_text("Grüße ±\n", "utf-8")
    source, findings = read_text(tmp_path / "a.md", "techniques/a.md")
    assert source is not None
    assert (source.path, source.text, findings) == ("techniques/a.md", "Grüße ±\n", ())


def test_a_byte_order_mark_and_any_line_end_are_taken_silently(tmp_path: Path) -> None:
    assert read(tmp_path, b"\xef\xbb\xbfone\r\ntwo\rthree\n") == ("one\ntwo\nthree\n", [])


def test_line_separators_of_other_programs_are_line_ends(tmp_path: Path) -> None:
    assert read(tmp_path, "one\u2028two\u2029three\u0085four".encode()) == ("one\ntwo\nthree\nfour", [])


def test_the_first_byte_that_is_not_utf8_is_pointed_at(tmp_path: Path) -> None:
    assert read(tmp_path, b"one\r\ncaf\xe9 noir\n") == (None, [("file.not-utf8", 2, 4, 5)])


def test_the_byte_is_named_with_its_number(tmp_path: Path) -> None:
    (tmp_path / "a.md").write_bytes(b"caf\xe9")
    (finding,) = read_text(tmp_path / "a.md", "a.md")[1]
    assert finding.what == "byte 4 (0xE9) is not UTF-8 text"
    assert finding.text == "caf\ufffd"
    assert finding.mend == "open the file, choose “Save as”, and pick the encoding UTF-8"


def test_utf16_is_called_by_its_name(tmp_path: Path) -> None:
    (tmp_path / "a.md").write_bytes("title".encode("utf-16"))
    (finding,) = read_text(tmp_path / "a.md", "a.md")[1]
    assert (finding.rule, finding.what) == ("file.not-utf8", "this file is saved as UTF-16")


def test_a_nul_byte_is_pointed_at(tmp_path: Path) -> None:
    assert read(tmp_path, b"one\ntw\x00o\n") == (None, [("file.odd-character", 2, 3, 4)])


def test_a_control_character_is_named(tmp_path: Path) -> None:
    (tmp_path / "a.md").write_bytes(b"one\x0c")
    (finding,) = read_text(tmp_path / "a.md", "a.md")[1]
    assert finding.what == "a control character (U+000C) stands here"


def test_an_empty_file_and_one_of_spaces_say_nothing(tmp_path: Path) -> None:
    for data in (b"", b"\xef\xbb\xbf", b" \n\t\n", "\u00a0\n".encode()):
        assert read(tmp_path, data) == (None, [("file.empty", 1, 1, 1)])


@pytest.mark.parametrize(("name", "most"), [("a.md", MOST_OF_WORDS), ("plants.yaml", MOST)])
def test_a_file_of_the_most_bytes_and_lines_is_read_and_no_more(name: str, most: tuple[int, int]) -> None:
    kib, lines = most
    for data in (b"a" * kib * 1024, b"a\n" * lines):
        source, findings = text_of(data, name)
        assert source is not None
        assert findings == ()
    for data in (b"a" * (kib * 1024 + 1), b"a\n" * (lines + 1)):
        source, findings = text_of(data, name)
        assert source is None
        assert told(findings) == [("file.too-big", 1, 1, 1)]


def test_a_folder_is_a_finding(tmp_path: Path) -> None:
    (tmp_path / "beech.md").mkdir()
    (finding,) = read_text(tmp_path / "beech.md", "hedging/beech.md")[1]
    assert (finding.rule, finding.what) == ("file.not-readable", "this is a folder, not a file")
    assert finding.mend == "rename the folder so that its name does not end in `.md`, or move it away"


def test_a_file_that_is_not_there_is_a_finding(tmp_path: Path) -> None:
    (finding,) = read_text(tmp_path / "none.md", "none.md")[1]
    assert (finding.rule, finding.why) == ("file.not-readable", "the computer says: no such file or directory")


def test_a_name_the_computer_cannot_take_is_a_finding(tmp_path: Path) -> None:
    (finding,) = read_text(tmp_path / "a\0b.md", "a.md")[1]
    assert finding.why == "the computer says: the path cannot be opened"


def test_findings_of_reading_name_the_format_as_the_model_does() -> None:
    assert str(FORMAT) == README


def test_accents_stored_apart_are_composed_and_byte_order_marks_dropped() -> None:
    source, findings = text_of("\ufeff\ufeffpo\u0304ro\n".encode(), "a.md")
    assert source is not None
    assert (source.text, findings) == ("p\u014dro\n", ())


def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "a.md")
    source, (finding,) = read_text(tmp_path / "a.md", "a.md")
    assert source is None
    assert (finding.rule, finding.what) == ("file.not-readable", "this is a device or a pipe, not a file")
