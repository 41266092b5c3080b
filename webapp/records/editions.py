"""Editions, their booklets, and who was given a copy."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import NamedTuple


class FreshBooklet(NamedTuple):
    """A booklet that is to be published: which one, the choices it was printed with as JSON, its pages, its bytes."""

    name: str
    choices: str
    pages: int
    pdf: bytes


class EditionBooklet(NamedTuple):
    """A booklet of an edition: which one, the choices it was printed with as JSON, pages, hash, size in bytes."""

    name: str
    choices: str
    pages: int
    sha256: str
    bytes: int


@dataclass(frozen=True)
class Edition:
    """A revision as published. `words` are the maker's own as they then were, as JSON; `why` it was withdrawn."""

    pattern: int
    number: int
    revision: int
    published: datetime
    note: str
    words: str
    booklets: tuple[EditionBooklet, ...]
    withdrawn: datetime | None = None
    why: str = ""


@dataclass(frozen=True)
class GivenCopy:
    """A booklet of an edition as given to somebody; `told` is the edition whose errata they were sent last."""

    id: int
    pattern: int
    edition: int
    booklet: str
    name: str
    test: bool
    given: datetime
    told: int
