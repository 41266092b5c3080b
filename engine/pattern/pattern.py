"""A pattern: the parts of a rope on one palette, worked with one hand in one stitch, and its words."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from math import ceil

from engine.errors import ChoiceError, PatternError
from engine.numbers import whole_number
from engine.pattern.chart import Chart
from engine.pattern.notation import MOST_BEADS
from engine.pattern.palette import Palette
from engine.pattern.part import Part, check_parts, only_fill, quoted, short_form
from engine.pattern.repeats import Drift, drift
from engine.pattern.shares import LaidPart, lay, shared, whole_passes
from engine.pattern.words import check_line, check_text

LEAST_AROUND, MOST_AROUND = 3, 60
LONGEST_TITLE, LONGEST_NOTES, LONGEST_TAG, MOST_TAGS = 120, 20_000, 40, 40
HANDS = ("right", "left")
STITCHES = ("slip", "single")
WIDEST_SLIP = 10  # beads around; wider ropes are worked in single crochet (common practice, no source)


@dataclass(frozen=True)
class Pattern:
    """A pattern is written in one of two forms, which stays its own: short, with a chart, or `in_parts`.

    `chart`, `start` and `end` are palette indices in working order; the first is worked first. `start` and `end` are
    worked once before and after the passes of the chart. Whoever asks what is worked reads `parts`, which both forms
    have. `stitch` may be empty: then the number of beads around decides. Raises PatternError or ChoiceError, naming the
    field.
    """

    title: str
    around: int
    palette: Palette
    chart: bytes = b""
    start: bytes = b""
    end: bytes = b""
    hand: str = "right"
    stitch: str = ""
    designer: str = ""
    notes: str = ""
    tags: tuple[str, ...] = ()
    in_parts: tuple[Part, ...] = ()

    def __post_init__(self) -> None:
        check_around(self.around)
        _check_words(self)
        if self.hand not in HANDS:
            raise ChoiceError("Hand", self.hand, HANDS, "hand")
        if self.stitch and self.stitch not in STITCHES:
            raise ChoiceError("Stitch", self.stitch, STITCHES, "stitch")
        _check_form(self)
        _check_beads(self)

    @cached_property
    def parts(self) -> tuple[Part, ...]:
        """The parts in working order; of the short form start and end once, and the chart that fills."""
        return self.in_parts or short_form(self.start, self.chart, self.end)

    @cached_property
    def main(self) -> Part:
        """The part that stands for the pattern: the first that fills, else the one of most beads."""
        return next((part for part in self.parts if part.fills), max(self.parts, key=lambda part: len(part.beads)))

    @cached_property
    def one_chart(self) -> bool:
        """Whether one chart fills the rope, with no more than a start and an end that are worked once."""
        return only_fill(self.parts) is not None

    @property
    def motif(self) -> Part | None:
        """The one fixed part of a rope that hangs between two parts that fill; None of any other rope."""
        fills = tuple(part.fills for part in self.parts)
        return self.parts[1] if fills == (True, False, True) else None

    @cached_property
    def drawn(self) -> bytes:
        """The beads of all parts, each drawn once."""
        return b"".join(part.beads for part in self.parts)

    @property
    def beads(self) -> int:
        """Beads drawn."""
        return len(self.drawn)

    @property
    def fills(self) -> tuple[Part, ...]:
        """The parts whose number of passes follows from the length of the rope."""
        return tuple(part for part in self.parts if part.fills)

    @property
    def fixed(self) -> tuple[Part, ...]:
        """The parts that every rope has as often."""
        return tuple(part for part in self.parts if not part.fills)

    @property
    def fills_an_end(self) -> bool:
        """Whether a part that fills begins or ends the rope, and may be cut there."""
        return self.parts[0].fills or self.parts[-1].fills

    @cached_property
    def fixed_beads(self) -> int:
        """Beads of the fixed parts as they are worked."""
        return sum(part.fixed_beads for part in self.parts)

    @property
    def stitch_worked(self) -> str:
        """The stitch of the pattern, or slip stitch to 10 around and single crochet above (common practice)."""
        return self.stitch or ("slip" if self.around <= WIDEST_SLIP else "single")

    @property
    def repeat(self) -> int:
        """Length of the repeat of the main part."""
        return self.main.repeat

    @property
    def drift(self) -> Drift:
        """How far one pass of the main part turns round the rope."""
        return drift(self.around, len(self.main.beads))

    def laid(self, total: int, bead_mm: Sequence[float] | None = None) -> tuple[LaidPart, ...]:
        """The parts of the worked rope of that many beads; `bead_mm` as in `shared`.

        Raises PatternError where the fixed parts alone are longer, or where nothing fills what is between.
        """
        between = total - self.fixed_beads
        if between < 0:
            raise PatternError(
                f"{self.fixed_alone} {self.fixed_beads:,} beads; a rope of {total:,} beads has no room for them.",
                "length",
            )
        if between and not self.fills:
            raise PatternError(
                f"No part of this rope fills, so it is worked in one size: {self.fixed_beads:,} beads.", "length"
            )
        return lay(self.parts, shared(self.parts, between, bead_mm))

    def worked(self, total: int) -> bytes:
        """The beads of that rope in working order. Raises as `laid` does."""
        return b"".join(part.worked for part in self.laid(total))

    def about(self, beads: int) -> bytes:
        """The worked rope of about so many beads or more, every part that fills in whole passes."""
        shares = whole_passes(self.parts, max(0, beads - self.fixed_beads), ceil)
        return b"".join(part.worked for part in lay(self.parts, shares))

    @property
    def fixed_alone(self) -> str:
        """The fixed parts by their names, to begin a sentence with: "“Head” and “Tail” alone make"."""
        return f"{quoted(self.fixed)} alone make{'s' if len(self.fixed) == 1 else ''}"

    def alone(self, beads: bytes) -> Pattern:
        """Those beads as the chart of a pattern that has nothing else."""
        return replace(self, chart=beads, start=b"", end=b"", in_parts=())

    def with_beads(self, change: Callable[[bytes], bytes]) -> Pattern:
        """The pattern, in its own form, with the beads of each part changed so."""
        return replace(
            self,
            chart=change(self.chart),
            start=change(self.start),
            end=change(self.end),
            in_parts=tuple(replace(part, beads=change(part.beads)) for part in self.in_parts),
        )


def check_around(around: int) -> None:
    """Raises PatternError for a number around that no pattern can have."""
    if not LEAST_AROUND <= around <= MOST_AROUND:
        raise PatternError(
            f"{around} around does not work; a rope has {LEAST_AROUND} to {MOST_AROUND} beads around.", "around"
        )


def read_around(text: str) -> int:
    """Beads around as typed, of a number that a pattern can have. Raises an EngineError."""
    around = whole_number(text, "how many beads go around, such as 12")
    check_around(around)
    return around


def left_handed(pattern: Pattern) -> Pattern:
    """The same string worked with the other hand: list and counts stay, the picture is mirrored."""
    return replace(pattern, hand="left" if pattern.hand == "right" else "right")


def keep_the_picture(pattern: Pattern) -> Pattern:
    """The pattern for the other hand that shows the same picture: the beads of every drawn row stand in reverse.

    Rows are counted from the first bead of each part, so that no bead of one strays into another.
    """

    def turned(beads: bytes) -> bytes:
        return Chart(pattern.around, beads).turned_rows().beads

    return left_handed(pattern).with_beads(turned)


def _check_words(pattern: Pattern) -> None:
    check_line(pattern.title, "title", LONGEST_TITLE, "title")
    check_line(pattern.designer, "designer's name", LONGEST_TITLE, "designer", least=0)
    check_text(pattern.notes, "notes", LONGEST_NOTES, "notes")
    if len(pattern.tags) > MOST_TAGS:
        raise PatternError(f"A pattern has at most {MOST_TAGS} tags; this one has {len(pattern.tags)}.", "tags")
    for number, tag in enumerate(pattern.tags):
        check_line(tag, "tag", LONGEST_TAG, f"tags.{number}")


def _check_form(pattern: Pattern) -> None:
    if pattern.in_parts:
        if pattern.chart or pattern.start or pattern.end:
            raise PatternError("A pattern in parts has no chart, start or end beside them.", "parts")
        check_parts(pattern.in_parts)
    elif not pattern.chart:
        raise PatternError("The chart has no beads; a chart has at least one.", "beads")


def _check_beads(pattern: Pattern) -> None:
    field = "parts" if pattern.in_parts else "beads"
    if pattern.beads > MOST_BEADS:
        raise PatternError(f"The pattern has {pattern.beads:,} beads; at most {MOST_BEADS:,} can be kept.", field)
    if pattern.fixed_beads > MOST_BEADS:
        raise PatternError(
            f"{pattern.fixed_alone} {pattern.fixed_beads:,} beads of rope; at most {MOST_BEADS:,} can be kept.",
            field,
        )
    if max(pattern.drawn) >= len(pattern.palette):
        raise PatternError("A bead stands in the chart that the palette does not have.", field)
