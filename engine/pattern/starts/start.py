"""What a starting point is: its name, what it asks, and the chart that it makes of the answers."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from engine.errors import EngineError
from engine.numbers import whole_number
from engine.pattern.notation import MOST_BEADS, parse

MOST_COLOURS = 12


@dataclass(frozen=True)
class Asked:
    """One thing that a start asks. `least` and `most` bound a number; a text of beads has neither, `beads` is then set.

    `usual` is what stands in the field at first.
    """

    key: str
    label: str
    usual: str
    hint: str = ""
    least: int = 0
    most: int = 0
    beads: bool = False
    lines: bool = False

    def read(self, text: str, codes: Sequence[str]) -> int | bytes | str:
        """The answer that was typed. Raises an EngineError that names this field."""
        try:
            if self.beads:
                return parse(text, codes)
            return text if self.lines else self._number(text)
        except EngineError as error:
            raise error.at(self.key) from None

    def _number(self, text: str) -> int:
        number = whole_number(text, f"{self.label[0].lower()}{self.label[1:]}, such as {self.usual}")
        if not self.least <= number <= self.most:
            raise EngineError(f"{self.label}: {number:,} cannot be; expected {self.least:,} to {self.most:,}.")
        return number


Answers = Mapping[str, "int | bytes | str"]


@dataclass(frozen=True)
class Start:
    """A starting point. `make` gives palette indices in working order for a number around and what was answered.

    `colours` is how many beads it begins with.
    """

    key: str
    label: str
    words: str
    asks: tuple[Asked, ...]
    colours: int
    make: Callable[[int, int, Answers], bytes]

    def beads(self, around: int, codes: Sequence[str], typed: Mapping[str, str]) -> bytes:
        """The chart for those answers, usual ones where nothing is typed. Raises an EngineError naming the field."""
        answers = {ask.key: ask.read(typed.get(ask.key) or ask.usual, codes) for ask in self.asks}
        beads = self.make(around, len(codes), answers)
        if len(beads) > MOST_BEADS:
            raise EngineError(
                f"That comes to {len(beads):,} beads; a chart has at most {MOST_BEADS:,}.", self.asks[0].key
            )
        return beads


def number(answers: Answers, key: str) -> int:
    """The answer to a question for a number."""
    answer = answers[key]
    assert isinstance(answer, int)
    return answer


def row_of_beads(answers: Answers, key: str) -> bytes:
    """The answer to a question for beads."""
    answer = answers[key]
    assert isinstance(answer, bytes)
    return answer


def lines_of(answers: Answers, key: str) -> str:
    """The answer to a question for rows of letters."""
    answer = answers[key]
    assert isinstance(answer, str)
    return answer
