"""What a guide is made of: the piece that decides it, its parts, and its steps with their drawings."""

from __future__ import annotations

from dataclasses import dataclass

from engine.booklet.measures import Measures
from engine.booklet.terms import SIDES, Sides, Terms, in_full
from engine.counting.closures import Closure
from engine.counting.findings import Findings, Hose
from engine.drawing.handwork.album import ALBUM, words

DRAWN_FOR = 8  # around, where a rope has more beads than can be drawn
WIDE = 10  # wider ropes take a longer tail to close


@dataclass(frozen=True)
class Step:
    """A direction that is complete without its drawing; `caution` is said where the hand is in danger.

    `drawing` is a name of the album or empty; `shows` says in words what it shows, `note` what its numbers and letters
    mean.
    """

    text: str
    drawing: str = ""
    caution: str = ""
    shows: str = ""
    note: str = ""


@dataclass(frozen=True)
class Part:
    """Steps under a heading, lettered where a strip of panels as wide as the text stands over them.

    `strip` is its name in the album or empty; `shows` says in words what it shows, `note` how it is seen.
    """

    title: str
    steps: tuple[Step, ...]
    strip: str = ""
    shows: str = ""
    note: str = ""


@dataclass(frozen=True)
class Piece:
    """What decides the guides. Lengths in mm; `core` is the hose that goes in; `measure_core`: none is chosen yet.

    `lists` says which thread takes which list; `turn` by how many beads the ends of a ring are turned at its seam.
    `hook`, `thread` and `needle` are the words of the findings; `button_mm` and `loop_beads` are a button that fits and
    the beads that go round it. `large`: the lists are large print, in one column and
    without sums at its foot; `charted`: there is a chart to compare with; `grouped`: a list has a group that is
    strung again and again.
    """

    around: int
    stitch: str
    hand: str
    closure: Closure
    terms: Terms
    units: str
    threads: int
    lists: str
    repeat: int
    ten_rounds_mm: float
    measured: bool
    thickness_mm: float
    button_mm: float
    loop_beads: int
    hook: str
    thread: str
    needle: str
    core: Hose | None = None
    measure_core: bool = False
    turn: float = 0.0
    joins_end_to_start: bool = False
    several: bool = False
    large: bool = False
    charted: bool = True
    grouped: bool = False

    @property
    def slip(self) -> bool:
        return self.stitch == "slip"

    @property
    def sides(self) -> Sides:
        return SIDES[self.hand]

    @property
    def tail(self) -> str:
        """How much thread is left at an end to close it with."""
        return self.measures.about(300 if self.around > WIDE else 200)

    @property
    def may_have_core(self) -> bool:
        return self.core is not None or self.measure_core

    @property
    def measures(self) -> Measures:
        return Measures(self.units)

    def strip(self, title: str, drawing: str, *texts: str) -> Part:
        """A part whose steps go with the panels of a strip; in large print the steps alone."""
        steps = tuple(self.step(text) for text in texts)
        if self.large:
            return Part(title, steps)
        drawn = ALBUM[drawing]
        return Part(
            title=title,
            steps=steps,
            strip=drawing,
            shows=f"{drawn.title}. {words(drawing, self.hand)}",
            note=drawn.note,
        )

    def step(self, text: str, drawing: str = "", caution: str = "", drawn_with: str = "") -> Step:
        """A step with its drawing in the words of this hand; in large print without drawing and short forms.

        `drawn_with` is said where the drawing shows another thing than the step names. A drawing that there is for 3 to
        9 around is taken for the number of this piece, or for 8.
        """
        text = self.terms.spelled(text)
        if self.large:
            return Step(in_full(text), "", caution)
        if not drawing:
            return Step(text, "", caution)
        note = ""
        if self.units == "in" and f"{drawing}-inch" in ALBUM:
            drawing = f"{drawing}-inch"
        if drawing not in ALBUM:
            number = self.around if f"{drawing}-{self.around}" in ALBUM else DRAWN_FOR
            drawing, note = f"{drawing}-{number}", "" if number == self.around else f"Drawn for {number} around. "
        drawn = ALBUM[drawing]
        return Step(
            text=text,
            drawing=drawing,
            caution=caution,
            shows=f"{drawn.title}. {words(drawing, self.hand)}",
            note=(note + drawn_with + drawn.note).strip(),
        )


def tools_of(supplies: Findings) -> dict[str, str]:
    """Hook, thread and stringing needle as the steps name them, without what only a buyer needs to know."""
    return {
        "hook": supplies.hook.split(" (")[0],
        "thread": supplies.thread.split(", or ")[0],
        "needle": supplies.needle.split(", ")[0],
    }
