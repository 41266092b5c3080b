"""A list of beads as people write it down: counts and codes or names in either order, numbered lines, totals beside.

    3A 2B        A3, B2        3 x A        white x 3, dark blue x 2        12.  3 A        3 A   = 18 so far

A text is read in one order throughout: count first, or bead first, whichever fits all of it; the one that comes further
says what is wrong. Brackets that repeat are read as the notation has them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from string import ascii_uppercase

from engine.errors import NotationError, shortened
from engine.pattern.notation import LONGEST_TEXT, MOST_BEADS, parse
from engine.pattern.palette import LONGEST_NAME, MOST_ENTRIES

_HEADED = r"(?:list|thread|row|round|line|part|page|step)"
_NUMBERED = re.compile(rf"\s*(?:{_HEADED}\s*)?[0-9]{{1,6}}\s*[.):]\s+(?=\S)", re.I)  # "12. ", "Row 12: " before a line
_HEADING = re.compile(rf"\s*+{_HEADED}\s*+[0-9]*+[^0-9]*", re.I)
_PROSE = re.compile(r".*\b(runs|strung|threads?|one pass|stringing order|working order)\b.*", re.I)  # of printed lists
_TOTAL = re.compile(r"(^\s*=|=?\s{0,9}[0-9][0-9 ,.']{0,20}\s{0,9}(so far|in all|together)\b|\b(total|sum)\b).*", re.I)
_BOX = re.compile(r"(?<![☐☑✓✔□■▢\[\]•–—*])[☐☑✓✔□■▢\[\]•–—*]+(?=\s|$)")
_COUNT = re.compile(r"[0-9]+")
_WORDS = re.compile(r"[^\W\d_]+(?:[ '’/-]+[^\W\d_]+)*", re.UNICODE)
_TIMES = re.compile(r"\s*(?:[x×*](?=[\s0-9]|$)|[:=–-])\s*", re.I)
_APART = re.compile(r"[\s,;|+.]*")
LONGEST_CODE = 2


@dataclass(frozen=True)
class WrittenBead:
    """A bead of the text: its code, and the name that was written, empty where that was a code."""

    code: str
    name: str = ""


@dataclass(frozen=True)
class WrittenList:
    """Palette indices in the order of the text, and the beads in the order in which they came."""

    beads: bytes
    palette: tuple[WrittenBead, ...]


def read_list(text: str) -> WrittenList:
    """The list of that text. Raises NotationError, which names line and column and what was expected."""
    if len(text) > LONGEST_TEXT:
        raise NotationError(1, 1, f"the text has {len(text):,} characters; at most {LONGEST_TEXT:,} are read.")
    if "(" in text:
        return _notation(text)
    if not re.search(r"[^\W\d_]", text):
        raise NotationError(1, 1, "there are no beads; write counts and codes, such as 3A 2B.")
    objections = []
    for count_first in (True, False):
        reader = _Reader(count_first)
        try:
            return reader.read(text)
        except NotationError as error:
            objections.append(error)
    raise max(objections, key=lambda error: (error.line, error.column))


def _notation(text: str) -> WrittenList:
    """A text with brackets, whose codes are taken as they come."""
    codes = list(dict.fromkeys(word.upper() for word in re.findall(r"[A-Za-z]{1,2}(?![A-Za-z])", text)))
    codes = [code for code in codes if code != "X" or not re.search(r"\)\s*[xX]", text)]
    return WrittenList(parse(text, codes), tuple(WrittenBead(code) for code in codes))


@dataclass
class _Reader:
    """Reads a text line by line in one order."""

    count_first: bool
    beads: bytearray = field(default_factory=bytearray)
    found: dict[str, int] = field(default_factory=dict)
    names: list[str] = field(default_factory=list)

    def read(self, text: str) -> WrittenList:
        for number, line in enumerate(text.splitlines(), 1):
            self._line(line, number)
        return WrittenList(bytes(self.beads), tuple(_coded(self.names)))

    def _line(self, line: str, number: int) -> None:
        if _HEADING.fullmatch(line) or _PROSE.fullmatch(line):
            return
        numbered = _NUMBERED.match(line)
        rest = _BOX.sub(_blank, _TOTAL.sub(_blank, line))
        at = numbered.end() if numbered and _WORDS.search(rest, numbered.end()) else 0
        while (at := _after(_APART, rest, at)) < len(rest):
            at = self._entry(rest, at, number)

    def _entry(self, line: str, at: int, number: int) -> int:
        """One entry, and where it ends."""
        count, words = _COUNT.match(line, at), _WORDS.match(line, at)
        if count and self.count_first:
            begin = _after(_TIMES, line, count.end())
            words = _WORDS.match(line, _after(_APART, line, begin) if line[begin : begin + 1].isspace() else begin)
            words = words or _WORDS.match(line, count.end())  # an X that is a bead itself
            if words is None:
                raise NotationError(number, at + 1, f"the count {count.group()} has no bead behind it.")
            end = self._last_times(line, words)
            name = words.group()[: end - words.start()]
            counted = name.split()[0] if _are_codes(name) else name
            self._add(counted, int(count.group()[:9]), number, at)
            return words.start() + len(counted)
        if words and self.count_first and not line[words.end() : words.end() + 1].isdigit():
            self._singles(words, number)
            return words.end()
        if words and not self.count_first:
            end = self._last_times(line, words)
            count = _COUNT.match(line, _after(_TIMES, line, _after(re.compile(r"\s*"), line, end)))
            if count is None:
                self._singles(words, number)
                return words.end()
            *before, name = name.split() if _are_codes(name := words.group()[: end - words.start()]) else [name]
            for single in before:
                self._add(single, 1, number, at)
            self._add(name, int(count.group()[:9]), number, at)
            return count.end()
        expected = "a count, then a bead" if self.count_first else "a bead, then a count"
        raise NotationError(
            number, at + 1, f"“{shortened(line[at : at + 12])}” cannot stand here; expected {expected}."
        )

    def _last_times(self, line: str, words: re.Match[str]) -> int:
        """Where the name ends: before an x that stands between it and a count."""
        cut = re.search(r"(?<!\s)\s+[xX]\s*$", words.group())
        return (
            words.start() + cut.start()
            if cut and _COUNT.match(line, _after(re.compile(r"\s*"), line, words.end()))
            else words.end()
        )

    def _singles(self, words: re.Match[str], number: int) -> None:
        """Words without a count: short ones are a bead each, longer ones one name."""
        for name in words.group().split() if _are_codes(words.group()) else [words.group()]:
            self._add(name, 1, number, words.start())

    def _add(self, name: str, many: int, line: int, at: int) -> None:
        key = " ".join(name.split()).casefold()
        if len(key) > LONGEST_NAME:
            raise NotationError(
                line, at + 1, f"a name of {len(key)} letters is too long; at most {LONGEST_NAME} are read."
            )
        if key not in self.found:
            if len(self.found) == MOST_ENTRIES:
                raise NotationError(
                    line,
                    at + 1,
                    f"“{shortened(name)}” is bead {MOST_ENTRIES + 1}; a palette has at most {MOST_ENTRIES}.",
                )
            self.found[key] = len(self.found)
            self.names.append(" ".join(name.split()))
        if not many or len(self.beads) + many > MOST_BEADS:
            most = (
                "a count is nought; expected 1 or more." if not many else f"the beads come to more than {MOST_BEADS:,}."
            )
            raise NotationError(line, at + 1, most)
        self.beads += bytes([self.found[key]]) * many


def _coded(names: list[str]) -> Iterator[WrittenBead]:
    """A code for every name: its own where it is one, else the next letters that are free."""
    taken = {name.upper() for name in names if _is_code(name)}
    free = (code for code in _codes() if code not in taken)
    for name in names:
        yield WrittenBead(name.upper()) if _is_code(name) else WrittenBead(next(free), name)


def _are_codes(name: str) -> bool:
    """Whether several words are codes of beads and not the name of one."""
    return all(_is_code(word) for word in name.split())


def _is_code(name: str) -> bool:
    return len(name) <= LONGEST_CODE and name.isascii()


def _codes() -> Iterator[str]:
    yield from ascii_uppercase
    yield from (first + second for first in ascii_uppercase for second in ascii_uppercase)


def _blank(found: re.Match[str]) -> str:
    return " " * len(found.group())


def _after(pattern: re.Pattern[str], text: str, at: int) -> int:
    match = pattern.match(text, at)
    return match.end() if match else at
