"""Text to beads and back: counts and codes, groups that repeat, and rows of letters.

    beads  := item+                   items stand apart by spaces, commas or line ends, or not at all
    item   := [count] code            "3A", "3 A", "A"; letters together are one code, one or two of them
            | "(" item+ ")" ["x" count]

Nothing is unfolded before it is known to stay within 100,000 beads.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import NoReturn

from engine.errors import NotationError, shortened
from engine.pattern.chart import runs
from engine.pattern.lattice import row_length

MOST_BEADS = 100_000
DEEPEST = 40
LONGEST_TEXT = 2_000_000

_SPACE = re.compile(r"[\s,]*")
_NUMBER = re.compile(r"[0-9]+")
_WORD = re.compile(r"[^\W\d_]+")
_TIMES = re.compile(r"[\s,]*[xX×]([0-9]+)")


def parse(text: str, codes: Sequence[str], strung: bool = False) -> bytes:
    """Palette indices in working order of a text in working order, or with `strung` in stringing order.

    >>> parse("2A (A B)x2", ["A", "B"]).hex()
    '000000010001'

    Raises NotationError, which names line and column and what was expected.
    """
    beads = _Reader(text, codes).read()
    return beads[::-1] if strung else beads


def write(beads: bytes, codes: Sequence[str], strung: bool = False) -> str:
    """The text of the beads: runs in working order, or in stringing order; a count of one is left out."""
    told = runs(beads[::-1] if strung else beads)
    return " ".join(codes[index] if count == 1 else f"{count}{codes[index]}" for index, count in told)


def parse_rows(text: str, around: int, codes: Sequence[str]) -> bytes:
    """Palette indices in working order of a letter picture: last drawn row on top, N + 1 and N letters by turns.

    Letters may stand apart by spaces; only the top row may be short. Raises NotationError.
    """
    lines = [(number, line) for number, line in enumerate(text.splitlines(), 1) if line.strip(" \t,")]
    if not lines:
        raise NotationError(1, 1, "there are no rows; write one letter a bead, the row worked first at the bottom.")
    index = {code: i for i, code in enumerate(codes)}
    beads = bytearray()
    for row, (number, line) in enumerate(reversed(lines)):
        beads += _row(line, number, index, row_length(around, row), row == len(lines) - 1)
        if len(beads) > MOST_BEADS:
            raise NotationError(number, 1, f"the rows come to more than {MOST_BEADS:,} beads, which is the most here.")
    return bytes(beads)


def _row(line: str, number: int, index: dict[str, int], length: int, last: bool) -> bytes:
    beads = bytearray()
    for column, letter in enumerate(line, 1):
        if letter in " \t,":
            continue
        if letter.upper() not in index:
            raise NotationError(number, column, _unknown(letter, list(index)))
        beads.append(index[letter.upper()])
    if len(beads) > length or (len(beads) < length and not last):
        raise NotationError(
            number,
            1,
            f"this row has {len(beads)} beads; expected {length}, because drawn rows hold "
            "one bead more and as many as the rope is around, by turns, from the bottom.",
        )
    return bytes(beads)


def _unknown(code: str, codes: Sequence[str]) -> str:
    known = ", ".join(codes[:12]) + (", …" if len(codes) > 12 else "")
    return f"“{shortened(code)}” is not a code of the palette; expected one of {known}."


@dataclass
class _Group:
    """An open bracket: where it stands and the beads read since."""

    opened: int
    beads: bytearray = field(default_factory=bytearray)


class _Reader:
    """Reads a text from left to right with a stack of open brackets."""

    def __init__(self, text: str, codes: Sequence[str]) -> None:
        self.text = text
        self.codes = codes
        self.index = {code: i for i, code in enumerate(codes)}
        self.at = 0
        self.groups = [_Group(0)]

    def read(self) -> bytes:
        if len(self.text) > LONGEST_TEXT:
            raise NotationError(1, 1, f"the text has {len(self.text):,} characters; at most {LONGEST_TEXT:,} are read.")
        while self._skip_space() < len(self.text):
            self._item()
        if len(self.groups) > 1:
            self._fail(self.groups[-1].opened, "this bracket is never closed; expected “)”.")
        if not self.groups[0].beads:
            self._fail(0, "there are no beads; write counts and codes, such as 3A 2B.")
        return bytes(self.groups[0].beads)

    def _skip_space(self) -> int:
        match = _SPACE.match(self.text, self.at)
        self.at = match.end() if match else self.at
        return self.at

    def _item(self) -> None:
        letter = self.text[self.at]
        if letter == "(":
            self._open()
        elif letter == ")":
            self._close()
        else:
            self._beads()

    def _open(self) -> None:
        if len(self.groups) > DEEPEST:
            self._fail(self.at, f"brackets stand more than {DEEPEST} deep; write this stretch out.")
        self.groups.append(_Group(self.at))
        self.at += 1

    def _close(self) -> None:
        if len(self.groups) == 1:
            self._fail(self.at, "this bracket closes nothing; expected a count, a code or “(”.")
        group = self.groups.pop()
        if not group.beads:
            self._fail(group.opened, "this bracket is empty; expected beads in it.")
        self.at += 1
        times, begin = 1, self.at
        if match := _TIMES.match(self.text, self.at):
            times, begin = self._count(match.group(1), match.start(1)), match.start(1)
            self.at = match.end()
        self._add(bytes(group.beads), times, begin)

    def _beads(self) -> None:
        begin, times = self.at, 1
        if number := _NUMBER.match(self.text, self.at):
            times = self._count(number.group(), self.at)
            self.at = number.end()
            self._skip_space()
        word = _WORD.match(self.text, self.at)
        if word is None:
            self._missing_code(begin, number is not None)
        self.at = word.end()
        self._add(bytes([self._code(word)]), times, begin)

    def _missing_code(self, begin: int, counted: bool) -> NoReturn:
        here = shortened(self.text[self.at : self.at + 1])
        if not counted:
            self._fail(self.at, f"“{here}” cannot stand here; expected a count, a code or a bracket.")
        if here == "(":
            self._fail(begin, "a count cannot stand before a bracket; write it behind, such as (A B)x3.")
        instead = f"found “{here}”" if here else "the text ends"
        self._fail(begin, f"a count has no code behind it: {instead}, expected one or two letters.")

    def _code(self, word: re.Match[str]) -> int:
        code = word.group().upper()
        if code in self.index:
            return self.index[code]
        if code == "X":
            self._fail(word.start(), "“x” stands only behind a bracket and before a number, such as (A B)x4.")
        if len(code) > 2:
            self._fail(
                word.start(),
                f"“{shortened(word.group())}” is too long for a code of one or two letters; set codes apart by spaces.",
            )
        self._fail(word.start(), _unknown(word.group(), self.codes))

    def _count(self, digits: str, at: int) -> int:
        if not digits.strip("0"):
            self._fail(at, "a count is nought; expected 1 or more.")
        if len(digits) > 9:
            self._fail(at, f"this count is too large; a chart has at most {MOST_BEADS:,} beads.")
        return int(digits)

    def _add(self, beads: bytes, times: int, at: int) -> None:
        target = self.groups[-1].beads
        if len(target) + len(beads) * times > MOST_BEADS:
            self._fail(at, f"the beads come to more than {MOST_BEADS:,} here, which is the most a chart can have.")
        target += beads * times

    def _fail(self, at: int, problem: str) -> NoReturn:
        before = self.text[:at]
        raise NotationError(before.count("\n") + 1, at - (before.rfind("\n") + 1) + 1, problem)
