"""A path read into text: encoding, line ends, size, and characters that are no text."""

import re
import unicodedata
from pathlib import Path
from typing import Final

from howto.findings import Finding
from howto.read.notes import Notes, whole_line
from howto.span import SourceText, Span

MOST: Final = (128, 8000)  # KiB and lines of a list of plants or people
MOST_OF_WORDS: Final = (64, 1000)  # of a technique or a visit: a page or two are some three, and a hundred
_LINE_ENDS: Final = re.compile("\r\n|[\r\u0085\u2028\u2029]")
_NO_TEXT: Final = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff\ufdd0-\ufdef\ufffe\uffff]")


def read_text(path: Path, shown: str) -> tuple[SourceText | None, tuple[Finding, ...]]:
    """Return the text of a file, or None where it cannot be read as text; `shown` is what findings call it."""
    notes = Notes(SourceText(shown, ""))
    here = Span(shown)
    if path.is_dir():
        notes.add(
            "not-readable",
            here,
            "this is a folder, not a file",
            "a technique, a visit and the crew are each one file of text",
            f"rename the folder so that its name does not end in `{path.suffix or path.name}`, or move it away",
        )
        return None, notes.findings
    if path.exists() and not path.is_file():  # a pipe would be waited for without end
        notes.add(
            "not-readable",
            here,
            "this is a device or a pipe, not a file",
            "a technique, a visit and the crew are each one file of text",
            "put a file of text in its place, or move it away",
        )
        return None, notes.findings
    try:
        with path.open("rb") as file:
            data = file.read(MOST[0] * 1024 + 1)
    except (OSError, ValueError) as problem:
        reason = getattr(problem, "strerror", None) or "the path cannot be opened"
        notes.add(
            "not-readable",
            here,
            "this file cannot be opened",
            f"the computer says: {reason.lower()}",
            "check the file's name and that you are allowed to read it",
        )
        return None, notes.findings
    return text_of(data, shown)


def text_of(data: bytes, shown: str) -> tuple[SourceText | None, tuple[Finding, ...]]:
    """Return bytes as text with line ends made one kind, or None with the finding that says why not."""
    empty = Notes(SourceText(shown, ""))
    kib, lines = MOST_OF_WORDS if shown.casefold().endswith(".md") else MOST
    if len(data) > kib * 1024 or len(data.splitlines()) > lines:
        empty.add(
            "too-big",
            Span(shown),
            f"this file is over {kib} KiB ({kib * 1024:,} bytes) or over {lines:,} lines",
            "a technique is a page or two of words; pictures are kept beside it, not in it",
            "take out what is not words, or split the file in two",
        )
        return None, empty.findings
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as problem:
        return None, _not_utf8(data, problem.start, shown)
    # composed, as it is seen: some phones and computers store é as an e and an accent
    text = unicodedata.normalize("NFC", text.lstrip("\ufeff"))
    source = SourceText(shown, _LINE_ENDS.sub("\n", text))
    notes = Notes(source)
    if not source.text.strip("\ufeff\u200b \t\n\u00a0"):
        notes.add(
            "empty",
            Span(shown),
            "nothing is written in this file",
            "every file of the shelf says something",
            "write it, or delete it; `howto new` makes one to fill in",
        )
        return None, notes.findings
    odd = _NO_TEXT.search(source.text)
    if odd is None:
        return source, ()
    line = source.text.count("\n", 0, odd.start()) + 1
    column = odd.start() - (source.text.rfind("\n", 0, odd.start()) + 1) + 1
    code = ord(odd.group())
    seen = "a NUL byte" if code == 0 else f"a control character (U+{code:04X})"
    notes.add(
        "odd-character",
        Span(shown, line, column, column + 1),
        f"{seen} stands here",
        "it is no letter, and printers and phones choke on it; the file may not be text at all",
        "delete that character, or save the file again as plain text",
    )
    return None, notes.findings


def _not_utf8(data: bytes, at: int, shown: str) -> tuple[Finding, ...]:
    """Return the finding for bytes that are not UTF-8, at the line and column of the first."""
    source = SourceText(shown, _LINE_ENDS.sub("\n", data.decode("utf-8", "replace")))
    before = _LINE_ENDS.sub("\n", data[:at].decode("utf-8-sig", "replace"))
    line = before.count("\n") + 1
    column = len(before) - (before.rfind("\n") + 1) + 1
    notes = Notes(source)
    wide = data[:2] in (b"\xff\xfe", b"\xfe\xff")
    notes.add(
        "not-utf8",
        whole_line(source, line) if wide else Span(shown, line, column, column + 1),
        "this file is saved as UTF-16" if wide else f"byte {at + 1} (0x{data[at]:02X}) is not UTF-8 text",
        "files are read as UTF-8, the usual way to save text, so that every letter and sign survives",
        "open the file, choose “Save as”, and pick the encoding UTF-8",
    )
    return notes.findings
