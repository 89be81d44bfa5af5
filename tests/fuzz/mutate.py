"""Ways to spoil a file as people and programs do: lines moved, cut, doubled and swapped, values that do not belong."""

import re
from collections.abc import Callable
from random import Random
from typing import Final

Lines = list[str]
Mutation = Callable[[Lines, Lines, Random], Lines]

NUMBER: Final = re.compile(r"\d+(?:[.,]\d+)?")
KEYED: Final = re.compile(r"(\s*(?:- )?[^\s:][^:]*:)\s+(\S.*)")
HEADS: Final = tuple(map(re.compile, (r"#|---", r"[^\s-][^:]*:", r"\d+\. |- ")))
EXTREMES: Final = (
    "0", "-0", "-1", "0.001", "0.0000001", "1", "2", "12", "13", "28", "31", "32", "99", "100", "101", "365", "1000",
    "9999", "1900", "2100", "100000", "1e9", "1e400", "99999999999999999999", "½", "٣", "1/0", "nan", "inf", "1,5",
    "1.2.3", "5 to 4", "0 to 0", "0x10", "1_000", "+1", "",
)  # fmt: skip
ODD: Final = (
    "\0", "\a", "\x1b[31m", "\x7f", "\x85", "\t", "\r", "\u00a0", "\u200b", "\u202e", "\u2028", "\ufeff", "\ufffe",
    "\udcff", "e\u0301", "ş", "Ω", "漢", "🌱", "👩🏽‍🌾", "\U0001d54f", "ﬁ", "ß", "İ", '"', "'", "“", "«", "`", "\\",
    '"\\0"', '"\\e[31m"', '"\\u202e"', "#", " #", ": ", ":", "- ", "|", ">", "&a ", "*a", "!x ", "{", "}", "{words}",
    "[", "]", "<b>", "&amp;", "](x)", "![x](y)", "**", "*", "_", "~", "→", "±", "×", "%", "---", "...", "\n", "\n\n",
    "## ", "1. ", "../", "/", "$", "@", "<!--", "null", "yes", "~~~", "//",
)  # fmt: skip


def moved(lines: Lines, _: Lines, chance: Random) -> Lines:
    """Return the lines with a few of them at another place."""
    at, to = _few(lines, chance)
    rest = [*lines[:at], *lines[to:]]
    place = chance.randint(0, len(rest))
    return [*rest[:place], *lines[at:to], *rest[place:]]


def cut(lines: Lines, _: Lines, chance: Random) -> Lines:
    """Return the lines without a few of them."""
    at, to = _few(lines, chance)
    return [*lines[:at], *lines[to:]]


def doubled(lines: Lines, _: Lines, chance: Random) -> Lines:
    """Return the lines with a few of them more than once."""
    at, to = _few(lines, chance)
    return [*lines[:to], *lines[at:to] * chance.choice((1, 1, 1, 2, 12)), *lines[to:]]


def swapped(lines: Lines, _: Lines, chance: Random) -> Lines:
    """Return the lines with two of them in each other's place."""
    one, two = chance.randrange(len(lines)), chance.randrange(len(lines))
    found = [*lines]
    found[one], found[two] = lines[two], lines[one]
    return found


def borrowed(lines: Lines, other: Lines, chance: Random) -> Lines:
    """Return the lines with a few of another file among them."""
    at, to = _few(other, chance)
    place = chance.randint(0, len(lines))
    return [*lines[:place], *other[at:to], *lines[place:]]


def replaced(lines: Lines, other: Lines, chance: Random) -> Lines:
    """Return the lines with a few of another file in place of a few."""
    at, to = _few(lines, chance)
    start, end = _few(other, chance)
    return [*lines[:at], *other[start:end], *lines[to:]]


def other_value(lines: Lines, other: Lines, chance: Random) -> Lines:
    """Return the lines with the value of another key, of this file or another, behind a key."""
    home = chance.choice((lines, other))
    values = [found[2] for line in home if (found := KEYED.fullmatch(line))]
    return _with_value(lines, chance.choice(values), chance) if values else lines


def no_value(lines: Lines, _: Lines, chance: Random) -> Lines:
    """Return the lines with nothing, or what YAML takes for nothing, behind a key."""
    return _with_value(lines, chance.choice(("", "~", "[]", "{}", '""', "null", "[ , ]", "{a: }")), chance)


def number(lines: Lines, _: Lines, chance: Random) -> Lines:
    """Return the lines with one number at an extreme."""
    places = [(at, found) for at, line in enumerate(lines) for found in NUMBER.finditer(line)]
    if not places:
        return lines
    at, found = chance.choice(places)
    return _with_line(lines, at, f"{lines[at][: found.start()]}{chance.choice(EXTREMES)}{lines[at][found.end() :]}")


def odd_letter(lines: Lines, _: Lines, chance: Random) -> Lines:
    """Return the lines with a sign or two put into one of them."""
    at = chance.randrange(len(lines))
    place = chance.randint(0, len(lines[at]))
    odd = "".join(chance.choices(ODD, k=chance.choice((1, 1, 2))))
    return _with_line(lines, at, f"{lines[at][:place]}{odd}{lines[at][place:]}")


def odd_value(lines: Lines, _: Lines, chance: Random) -> Lines:
    """Return the lines with a sign at the end of a value, or a quoted escape as the whole of it."""
    at, value = _keyed(lines, chance)
    if at is None:
        return lines
    odd = chance.choice(ODD)
    written = chance.choice((f"{value}{odd}", f'"{value}\\e{odd}"', f"'{value}{odd}'", f"{odd}{value}"))
    return _valued(lines, at, written)


def emptied(lines: Lines, _: Lines, chance: Random) -> Lines:
    """Return the lines with one section or key that has nothing below it."""
    at, to = _section(lines, chance)
    return [*lines[: at + 1], *lines[to:]]


def section_moved(lines: Lines, _: Lines, chance: Random) -> Lines:
    """Return the lines with one whole section at the start of another."""
    at, to = _section(lines, chance)
    rest = [*lines[:at], *lines[to:]]
    place = chance.choice([*_heads(rest), len(rest)])
    return [*rest[:place], *lines[at:to], *rest[place:]]


def section_borrowed(lines: Lines, other: Lines, chance: Random) -> Lines:
    """Return the lines with one whole section of another file in place of one, or beside it."""
    at, to = _section(lines, chance)
    start, end = _section(other, chance)
    return [*lines[:at], *other[start:end], *lines[chance.choice((at, to)) :]]


def shifted(lines: Lines, _: Lines, chance: Random) -> Lines:
    """Return the lines with a few set in deeper, or less."""
    at, to = _few(lines, chance)
    deeper = chance.choice(("", "  ", "    ", "\t", "- ", "> "))
    return [*lines[:at], *(deeper + line if deeper else line.lstrip() for line in lines[at:to]), *lines[to:]]


def cut_off(lines: Lines, _: Lines, chance: Random) -> Lines:
    """Return the lines as they are saved where a disk fills up: all but what comes after a place."""
    text = "\n".join(lines)
    return text[: chance.randint(0, len(text))].split("\n")


def stretched(lines: Lines, _: Lines, chance: Random) -> Lines:
    """Return the lines with a piece of one of them many times over."""
    at = chance.randrange(len(lines))
    line = lines[at]
    start = chance.randint(0, len(line))
    piece = line[start : start + chance.choice((1, 2, 9, 80))] or " "
    return _with_line(lines, at, line[:start] + piece * chance.choice((3, 40, 400, 4000)) + line[start:])


MUTATIONS: Final[tuple[Mutation, ...]] = (
    moved, cut, cut, doubled, swapped, borrowed, borrowed, replaced, other_value, other_value, other_value, no_value,
    number, number, number, number, odd_letter, odd_letter, odd_value, emptied, section_moved, section_borrowed,
    shifted, cut_off, stretched,
)  # fmt: skip


def mutated(text: str, other: str, chance: Random) -> str:
    """Return a text spoiled in one way, with what it takes from another text."""
    return "\n".join(chance.choice(MUTATIONS)(text.split("\n"), other.split("\n"), chance))


def _few(lines: Lines, chance: Random) -> tuple[int, int]:
    """Return where a few lines begin and end."""
    at = chance.randrange(len(lines))
    return at, min(len(lines), at + chance.choice((1, 1, 1, 2, 3, 8)))


def _rank(line: str) -> int:
    """Return how high a line stands: a heading, a key that is not set in, a step or an item, or anything else."""
    return next((rank for rank, head in enumerate(HEADS) if head.match(line)), len(HEADS))


def _heads(lines: Lines) -> list[int]:
    """Return where sections begin; the first line where there is none."""
    return [at for at, line in enumerate(lines) if _rank(line) < len(HEADS)] or [0]


def _section(lines: Lines, chance: Random) -> tuple[int, int]:
    """Return where a section begins, and where the next one that is no part of it does."""
    at = chance.choice(_heads(lines))
    ends = (to for to in range(at + 1, len(lines)) if _rank(lines[to]) <= _rank(lines[at]))
    return at, next(ends, len(lines))


def _with_line(lines: Lines, at: int, line: str) -> Lines:
    """Return the lines with one written anew."""
    return [*lines[:at], *line.split("\n"), *lines[at + 1 :]]


def _keyed(lines: Lines, chance: Random) -> tuple[int | None, str]:
    """Return the place of a line with a key and a value, and its value; None where there is no such line."""
    places = [at for at, line in enumerate(lines) if KEYED.fullmatch(line)]
    at = chance.choice(places) if places else None
    return at, "" if at is None else KEYED.fullmatch(lines[at])[2]  # type: ignore[index]


def _valued(lines: Lines, at: int, value: str) -> Lines:
    """Return the lines with another value behind the key of one."""
    return _with_line(lines, at, f"{KEYED.fullmatch(lines[at])[1]} {value}")  # type: ignore[index]


def _with_value(lines: Lines, value: str, chance: Random) -> Lines:
    """Return the lines with another value behind one of their keys."""
    at, _ = _keyed(lines, chance)
    return lines if at is None else _valued(lines, at, value)
