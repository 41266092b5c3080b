"""What is wrong with the library or its backups just now, for every page to say, and what went wrong lately."""

from __future__ import annotations

from collections import deque
from datetime import datetime
from threading import Lock
from typing import NamedTuple

MOST_KEPT = 20
LIBRARY, BACKUP, CLOCK = "library", "backup", "clock"


class Problem(NamedTuple):
    """Something that went wrong, in a sentence."""

    moment: datetime
    sentence: str


class Health:
    """Safe for threads. A trouble has a subject, and stands until it is cleared."""

    def __init__(self) -> None:
        self._lock = Lock()
        self._troubles: dict[str, str] = {}
        self._problems: deque[Problem] = deque(maxlen=MOST_KEPT)

    @property
    def troubles(self) -> tuple[str, ...]:
        """The sentences that every page says."""
        with self._lock:
            return tuple(self._troubles.values())

    @property
    def problems(self) -> tuple[Problem, ...]:
        """The last that went wrong, the newest first."""
        with self._lock:
            return tuple(reversed(self._problems))

    def has(self, subject: str) -> bool:
        with self._lock:
            return subject in self._troubles

    def trouble(self, subject: str, sentence: str, moment: datetime) -> None:
        """Says it on every page from now on."""
        with self._lock:
            repeated = self._troubles.get(subject) == sentence
            self._troubles[subject] = sentence
        if not repeated:
            self.problem(sentence, moment)

    def clear(self, subject: str) -> None:
        """That is well again."""
        with self._lock:
            self._troubles.pop(subject, None)

    def problem(self, sentence: str, moment: datetime) -> None:
        """Something went wrong once."""
        with self._lock:
            self._problems.append(Problem(moment, sentence))
