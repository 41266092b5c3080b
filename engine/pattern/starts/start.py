"""What a starting point is: its name, what it asks, and the chart that it makes of the answers."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from engine.errors import ChoiceError, EngineError
from engine.numbers import whole_number
from engine.pattern.notation import MOST_BEADS, parse
from engine.pattern.starts.bitmap import Letters

MOST_COLOURS = 12


@dataclass(frozen=True)
class Asked:
    """One thing that a start asks: a number between `least` and `most`, `beads` as notation, `lines` of at most
    `longest` letters, or one of `choices`, each a value and its words.

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
    longest: int = 4000
    choices: tuple[tuple[str, str], ...] = ()

    def read(self, text: str, codes: Sequence[str]) -> int | bytes | str:
        """The answer that was typed. Raises an EngineError that names this field."""
        try:
            if self.beads:
                return parse(text, codes)
            if self.choices:
                return self._choice(text)
            return self._lines(text) if self.lines else self._number(text)
        except EngineError as error:
            raise error.at(self.key) from None

    def _choice(self, text: str) -> str:
        words = [value for value, _ in self.choices]
        if text not in words:
            raise ChoiceError(self.label, text, words)
        return text

    def _lines(self, text: str) -> str:
        if len(text) > self.longest:
            raise EngineError(f"{self.label}: {len(text):,} letters are too many; at most {self.longest:,} are read.")
        return text

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

    def answers(self, codes: Sequence[str], typed: Mapping[str, str]) -> Answers:
        """What was answered, the usual where nothing is typed. Raises an EngineError naming the field."""
        return {ask.key: ask.read(typed.get(ask.key) or ask.usual, codes) for ask in self.asks}

    def hand(self, typed: Mapping[str, str]) -> str:
        """The hand that the chart is laid for."""
        return "right"

    def note(self, around: int, typed: Mapping[str, str]) -> str:
        """What is worth knowing beside how it lies on the rope; empty for most."""
        return ""

    def beads(
        self, around: int, codes: Sequence[str], typed: Mapping[str, str], letters: Letters | None = None
    ) -> bytes:
        """The chart for those answers; `letters` draw a text in a face and a height. Raises as `answers` does."""
        answers = self.answers(codes, typed)
        try:
            return self.make(around, len(codes), answers)
        except EngineError as error:
            raise error.at(error.field or self.asks[0].key) from None


def of_a_chart(beads: int, field: str | None = None) -> int:
    """That many beads, asked for before they are made. Raises an EngineError where a chart cannot have as many."""
    if beads > MOST_BEADS:
        raise EngineError(f"That comes to {beads:,} beads; a chart has at most {MOST_BEADS:,}.", field)
    return beads


def chosen(answers: Answers, key: str) -> str:
    """The answer to a question with choices."""
    return lines_of(answers, key)


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
