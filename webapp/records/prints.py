"""Prints of booklets, and what goes into them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:  # a proof knows the whole booklet, which few who show a job need
    from engine.booklet.proof.proof import Proof


@dataclass(frozen=True)
class PrintJob:
    """A booklet on its way: waiting, running, done, failed or cancelled; every step is (name, state) in the same words.

    `message` is one sentence when it failed; `pages` is known when it is done, `proof` too where one was asked for.
    `name` says which booklet it is, `revision` of which state of the pattern, `published` the edition it is meant for.
    """

    id: str
    pattern_id: int
    state: str
    steps: tuple[tuple[str, str], ...]
    message: str = ""
    pages: int | None = None
    name: str = ""
    revision: int = 0
    proof: Proof | None = None
    published: int = 0

    @property
    def over(self) -> bool:
        return self.state in ("done", "failed", "cancelled")


class Photograph(NamedTuple):
    """A photograph of a pattern: its number, caption, what is seen in it, and its size in px."""

    id: int
    caption: str
    seen: str
    width: int
    height: int


@dataclass(frozen=True)
class MissingLibrary:
    """What this computer lacks for printing: libraries by name, and what to type, as (system, line)."""

    names: tuple[str, ...]
    remedies: tuple[tuple[str, str], ...]
