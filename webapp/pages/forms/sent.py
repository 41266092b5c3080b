"""What a browser sent: pairs of name and text, and what is wrong with them."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TypeVar

from engine.errors import EngineError

T = TypeVar("T")


class Sent:
    """Pairs of name and value in the order of the page; whatever is not text (a file) is passed over."""

    def __init__(self, pairs: Iterable[tuple[str, object]] = ()) -> None:
        self.pairs = tuple((name, value) for name, value in pairs if isinstance(value, str))

    def one(self, name: str, default: str = "") -> str:
        """The text of that field without the space around it, or the default where it was not sent."""
        return next((value.strip() for key, value in self.pairs if key == name), default)

    def all(self, name: str) -> tuple[str, ...]:
        """The texts of all fields of that name."""
        return tuple(value.strip() for key, value in self.pairs if key == name)

    def places(self, name: str, among: int) -> tuple[int, ...]:
        """The fields of that name that are places among so many, counted from nought; others are passed over."""
        most = len(str(among))
        told = (text for text in self.all(name) if text.isascii() and text.isdigit() and len(text) <= most)
        return tuple(place for place in map(int, told) if place < among)

    def has(self, name: str) -> bool:
        return any(key == name for key, _ in self.pairs)


class Objections:
    """Collects what is wrong, one sentence a field: the first that is found."""

    def __init__(self) -> None:
        self.by_field: dict[str, str] = {}

    def add(self, field: str, sentence: str) -> None:
        self.by_field.setdefault(field, sentence)

    def read(self, field: str, reading: Callable[[], T], otherwise: T) -> T:
        """What the reading gives, or the other value and its objection kept for the field."""
        try:
            return reading()
        except EngineError as error:
            self.add(field, error.message)
            return otherwise
