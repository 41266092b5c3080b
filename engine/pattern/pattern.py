"""A pattern: chart, start and end on one palette, worked with one hand in one stitch, and its words."""

from __future__ import annotations

from dataclasses import dataclass, replace

from engine.errors import ChoiceError, PatternError
from engine.numbers import whole_number
from engine.pattern.chart import Chart
from engine.pattern.notation import MOST_BEADS
from engine.pattern.palette import Palette
from engine.pattern.repeats import Drift, drift, repeat
from engine.pattern.words import check_line, check_text

LEAST_AROUND, MOST_AROUND = 3, 60
LONGEST_TITLE, LONGEST_NOTES, LONGEST_TAG, MOST_TAGS = 120, 20_000, 40, 40
HANDS = ("right", "left")
STITCHES = ("slip", "single")
WIDEST_SLIP = 10  # beads around; wider ropes are worked in single crochet (common practice, no source)


@dataclass(frozen=True)
class Pattern:
    """`chart`, `start` and `end` are palette indices in working order; the first is worked first.

    `start` and `end` are worked once before and after the passes of the chart. `stitch` may be empty: then the number
    of beads around decides. Raises PatternError or ChoiceError, naming the field.
    """

    title: str
    around: int
    palette: Palette
    chart: bytes
    start: bytes = b""
    end: bytes = b""
    hand: str = "right"
    stitch: str = ""
    designer: str = ""
    notes: str = ""
    tags: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        check_around(self.around)
        _check_words(self)
        if self.hand not in HANDS:
            raise ChoiceError("Hand", self.hand, HANDS, "hand")
        if self.stitch and self.stitch not in STITCHES:
            raise ChoiceError("Stitch", self.stitch, STITCHES, "stitch")
        if not self.chart:
            raise PatternError("The chart has no beads; a chart has at least one.", "beads")
        if self.beads > MOST_BEADS:
            raise PatternError(f"The pattern has {self.beads:,} beads; at most {MOST_BEADS:,} can be kept.", "beads")
        if max(map(max, filter(None, (self.chart, self.start, self.end)))) >= len(self.palette):
            raise PatternError("A bead stands in the chart that the palette does not have.", "beads")

    @property
    def beads(self) -> int:
        """Beads drawn: start, chart and end."""
        return self.fixed_beads + len(self.chart)

    @property
    def fixed_beads(self) -> int:
        """Beads of start and end, which every length of rope has once."""
        return len(self.start) + len(self.end)

    @property
    def stitch_worked(self) -> str:
        """The stitch of the pattern, or slip stitch to 10 around and single crochet above (common practice)."""
        return self.stitch or ("slip" if self.around <= WIDEST_SLIP else "single")

    @property
    def repeat(self) -> int:
        return repeat(self.chart)

    @property
    def drift(self) -> Drift:
        """How far one pass of the chart turns round the rope."""
        return drift(self.around, len(self.chart))

    def worked(self, total: int) -> bytes:
        """The worked rope of that many beads: start, passes of the chart cut off where the end begins, then the end.

        Raises PatternError where start and end alone are longer.
        """
        between = total - self.fixed_beads
        if between < 0:
            raise PatternError(
                f"Start and end alone are {self.fixed_beads:,} beads; a rope of {total:,} beads has no room for them.",
                "length",
            )
        passes = -(-between // len(self.chart))
        return self.start + (self.chart * passes)[:between] + self.end


def check_around(around: int) -> None:
    """Raises PatternError for a number around that no pattern can have."""
    if not LEAST_AROUND <= around <= MOST_AROUND:
        raise PatternError(
            f"{around} around cannot be kept; a rope has {LEAST_AROUND} to {MOST_AROUND} beads around.", "around"
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

    Rows are counted from the first bead of each stretch, so that no bead of the start strays into the chart.
    """

    def turned(beads: bytes) -> bytes:
        return Chart(pattern.around, beads).turned_rows().beads

    return replace(
        left_handed(pattern), chart=turned(pattern.chart), start=turned(pattern.start), end=turned(pattern.end)
    )


def _check_words(pattern: Pattern) -> None:
    check_line(pattern.title, "title", LONGEST_TITLE, "title")
    check_line(pattern.designer, "designer's name", LONGEST_TITLE, "designer", least=0)
    check_text(pattern.notes, "notes", LONGEST_NOTES, "notes")
    if len(pattern.tags) > MOST_TAGS:
        raise PatternError(f"A pattern has at most {MOST_TAGS} tags; this one has {len(pattern.tags)}.", "tags")
    for number, tag in enumerate(pattern.tags):
        check_line(tag, "tag", LONGEST_TAG, f"tags.{number}")
