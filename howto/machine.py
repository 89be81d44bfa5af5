"""What the machine refuses, such as a full disk or a file that may not be read: which file, and what to do."""

import errno
from typing import Final

FULL: Final = ("the disk is full", "Make room on it, then give the command again")
BARRED: Final = (
    "you are not allowed to read or write there",
    "Change who may (its owner can), or choose a folder of your own with --to or --shelf",
)
IN_THE_WAY: Final = (
    "a file stands where a folder is needed, or a folder where a file is",
    "Move it away, or choose another folder with --to",
)
TOLD: Final = {
    errno.ENOSPC: FULL,
    errno.EDQUOT: FULL,
    errno.EACCES: BARRED,
    errno.EPERM: BARRED,
    errno.EROFS: ("this disk can only be read", "Choose a folder on another disk with --to"),
    errno.ENAMETOOLONG: ("the name is too long for this disk", "Give the file, or the folders it is in, shorter names"),
    errno.EISDIR: IN_THE_WAY,
    errno.ENOTDIR: IN_THE_WAY,
    errno.EEXIST: IN_THE_WAY,
    errno.ENOENT: ("it is not there any more", "Look whether something moved it, then give the command again"),
}


def refusal(problem: OSError) -> str:
    """Return what could not be read or written, why, and what to do about it."""
    if problem.errno is None:
        return str(problem)  # a sentence of ours
    other = (str(problem.strerror).lower(), "Look whether the disk is connected and sound, then give the command again")
    why, mend = TOLD.get(problem.errno, other)
    name = problem.filename2 or problem.filename
    return f"`{name}`: {why}. {mend}." if name else f"{why[0].upper()}{why[1:]}. {mend}."
