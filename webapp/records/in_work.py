"""Pieces in work, and answers that were given."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import NamedTuple

from engine.pattern.pattern import Pattern

OPEN, FINISHED, AWAY = STATES = ("open", "finished", "away")
LONGEST_NAME = 80


class Counted(NamedTuple):
    """What a list or an answer was counted from: the pattern as it stood, its revision, and the text of `frozen`."""

    pattern: Pattern
    revision: int
    text: str


@dataclass(frozen=True)
class Piece:
    """A piece in work: `thread`, counted from one, and how many entries of its list are `strung` say where one is.

    `asked` is the question as in an address, `sequence` grows with every change of the place, `state` is one of STATES.
    """

    id: int
    of: int
    name: str
    begun: datetime
    counted: Counted
    asked: str
    thread: int
    strung: int
    sequence: int
    state: str


@dataclass(frozen=True)
class GivenAnswer:
    """An answer as it was kept: who asked, when, the question as in an address, the text sent, the beads told."""

    id: int
    of: int
    title: str
    name: str
    asked: datetime
    counted: Counted
    question: str
    sent: str
    beads: int
