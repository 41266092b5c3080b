"""What was read of a zip, ready to be taken in at once: checked patterns and cleaned photographs in one file."""

from __future__ import annotations

import os
import pickle
from collections.abc import Iterable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import BinaryIO, NamedTuple

from engine.pattern.pattern import Pattern
from webapp.exchange.portable import PortableBead, PortablePattern, PortableWorkshop


class Prepared:
    """Patterns that can be gone through again and again, one held at a time; `workshop` are the maker's own numbers."""

    def __init__(self, path: Path, total: int, workshop: PortableWorkshop) -> None:
        self.workshop = workshop
        self._path, self._total = path, total

    def __len__(self) -> int:
        return self._total

    def __iter__(self) -> Iterator[tuple[Pattern, PortablePattern]]:
        with self._path.open("rb") as file:
            for _ in range(self._total):
                yield pickle.load(file)


def prepare(patterns: Iterable[tuple[Pattern, PortablePattern]], workshop: PortableWorkshop, path: Path) -> Prepared:
    """Goes through all of them; nobody has to wait for that who only saves. The file is for its owner alone."""
    total = 0
    path.parent.mkdir(0o700, parents=True, exist_ok=True)
    with open(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600), "wb") as file:
        for pattern in patterns:
            pickle.dump(pattern, file)
            total += 1
        beads = tuple(_put_aside(bead, path, file) for bead in workshop.beads)
    return Prepared(path, total, replace(workshop, beads=beads))


def _put_aside(bead: PortableBead, path: Path, file: BinaryIO) -> PortableBead:
    """The bead with its photograph in that file."""
    if bead.photograph is None:
        return bead
    place = file.tell()
    pickle.dump(bead.photograph.read(), file)
    return bead._replace(photograph=PutAside(path, place))


class PutAside(NamedTuple):
    """A cleaned photograph at a place of the file."""

    path: Path
    place: int

    def read(self) -> tuple[bytes, int, int]:
        with self.path.open("rb") as file:
            file.seek(self.place)
            picture: tuple[bytes, int, int] = pickle.load(file)
            return picture
