"""What the machine refuses is told with the file's name and what to do."""

import errno
import os

import pytest

from howto.jobs.staging import RefusedError
from howto.machine import refusal

FULL = "the disk is full. Make room on it, then give the command again."
ALLOWED = (
    "you are not allowed to read or write there. Change who may (its owner can), or choose a folder of your own with "
    "--to or --shelf."
)


@pytest.mark.parametrize(
    ("number", "told"),
    [
        (errno.ENOSPC, FULL),
        (errno.EDQUOT, FULL),
        (errno.EACCES, ALLOWED),
        (errno.EPERM, ALLOWED),
        (errno.EROFS, "this disk can only be read. Choose a folder on another disk with --to."),
        (
            errno.ENAMETOOLONG,
            "the name is too long for this disk. Give the file, or the folders it is in, shorter names.",
        ),
        (errno.EIO, "input/output error. Look whether the disk is connected and sound, then give the command again."),
    ],
)
def test_a_refusal_names_the_file_and_what_to_do(number: int, told: str) -> None:
    assert refusal(OSError(number, os.strerror(number), "out/a.pdf")) == f"`out/a.pdf`: {told}"
    assert refusal(OSError(number, os.strerror(number), "stage/a.pdf", None, "out/a.pdf")) == f"`out/a.pdf`: {told}"
    assert refusal(OSError(number, os.strerror(number))) == told[0].upper() + told[1:]


@pytest.mark.parametrize("number", [errno.EISDIR, errno.ENOTDIR, errno.EEXIST, errno.ENOENT])
def test_what_stands_in_the_way_or_is_gone_is_told_in_plain_words(number: int) -> None:
    told = refusal(OSError(number, os.strerror(number), "out"))
    assert told.startswith("`out`: ")
    assert os.strerror(number).lower() not in told.lower()


def test_a_sentence_of_ours_stands_as_it_is() -> None:
    assert refusal(RefusedError("Another build is writing in `out`.")) == "Another build is writing in `out`."
