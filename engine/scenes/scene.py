"""A scene by its key, the pattern that stands in it, and what it comes to: a rope before a camera, and drawings."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cached_property

from engine.cabinet.colourways import Colourway
from engine.counting.kinds import bead_sizes
from engine.counting.questions import Question
from engine.counting.sizes import Size, size
from engine.counting.workshop import Workshop
from engine.drawing.camera import Camera
from engine.drawing.fittings import Fitting
from engine.drawing.laying import ROW, LaidRope
from engine.drawing.shapes import Drawing
from engine.pattern.palette import Entry
from engine.pattern.pattern import Pattern
from engine.scenes.settings import Setting

TO_SCALE = "drawn to scale, not a photograph"


@dataclass(frozen=True)
class Subject:
    """What is shown: the pattern, the maker's own numbers, its other colourways, and how lengths are told."""

    pattern: Pattern
    workshop: Workshop = field(default_factory=Workshop)
    colourways: tuple[Colourway, ...] = ()
    units: str = "cm"

    @cached_property
    def sizes(self) -> tuple[float, ...]:
        """Diameters of the palette's beads, where they differ."""
        return bead_sizes(self.pattern, self.workshop.kinds)

    def size(self, question: Question | None = None) -> Size:
        """The size of that question, of one pass without one. Raises SizeError or ChoiceError."""
        return size(self.pattern, question or Question(), self.workshop)

    @property
    def colours(self) -> str:
        """The names of the beads that are used, as they appear: "Sea glass, Candle and Lamp"."""
        return in_one_line([self.pattern.palette[index].name for index in dict.fromkeys(self.pattern.drawn)])


@dataclass(frozen=True)
class Staged:
    """A scene before the camera: the rope in its beads, metal on it, and drawings in px under and over it.

    A rope that is `resting` on what is drawn under it throws a soft shade there in place of a shadow on a table.
    """

    rope: LaidRope
    entries: tuple[Entry, ...]
    camera: Camera
    fittings: tuple[Fitting, ...] = ()
    under: Drawing | None = None
    over: Drawing | None = None
    shadowed: bool = True
    resting: bool = False


@dataclass(frozen=True)
class Scene:
    """A picture that a shop may show: key, name, what is seen, how it is staged, and its alternative text.

    `lacks` says in one sentence what the pattern lacks for it; empty where nothing.
    """

    key: str
    name: str
    words: str
    stage: Callable[[Subject, Setting], Staged]
    seen: Callable[[Subject], str]
    lacks: Callable[[Subject], str] = lambda subject: ""


def mm_a_bead(size: Size) -> float:
    """Millimetres that a bead width of the studio stands for, so that the rope is as long as it is worked."""
    return size.rope.bead_mm * (size.around + 0.5) / ROW


def rope_in_words(subject: Subject) -> str:
    """The rope of every alternative text: "bead crochet rope, 12 around, in Sea glass and Candle"."""
    return f"bead crochet rope, {subject.pattern.around} around, in {subject.colours}"


def in_one_line(words: list[str]) -> str:
    """ "A", "A and B", "A, B and C"; of more than six the first five, and how many more."""
    if len(words) > 6:
        words = [*words[:5], f"{len(words) - 5} more"]
    return f"{', '.join(words[:-1])} and {words[-1]}" if len(words) > 1 else words[0]
