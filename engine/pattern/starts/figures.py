"""Starts that are drawn round the rope: zigzags, diamonds, checks, plaid, scales and braids.

A bead stands at `u`, its part of a turn, and `v`, the turns that the thread has made, which is also its height in rows.
A figure gives a colour for every u and v and is the same after a whole turn, so that it closes round the rope; its
height is a whole pair of rows, so that it stands straight.
"""

from __future__ import annotations

from collections.abc import Callable
from math import cos, hypot, pi

from engine.pattern.lattice import turns
from engine.pattern.starts.start import Answers, Asked, Start, number, of_a_chart, row_of_beads

Figure = Callable[[float, float], int]
MOST_ACROSS, MOST_ROWS = 30, 200
ROW_HEIGHT = 0.866  # of a drawn row, in bead widths: the height of a triangle of beads that touch (√3 / 2)


def drawn(around: int, rows: int, figure: Figure) -> bytes:
    """The chart of a figure that is that many rows high, twice over where they are odd."""
    pairs = rows // 2 if rows % 2 == 0 else rows
    places = (turns(around, k) for k in range(of_a_chart(pairs * (2 * around + 1))))
    return bytes(figure(v % 1, v) for v in places)


def zigzag(share: float) -> float:
    """Up and down again: 0 at 0, 1 at a half, 0 at 1."""
    return 1 - abs(2 * (share % 1) - 1)


def zigzags(around: int, colours: int, answers: Answers) -> bytes:
    """Bands that go up and down as often as asked on their way round."""
    across, high, bands = number(answers, "across"), number(answers, "high"), row_of_beads(answers, "bands")
    return drawn(around, len(bands), lambda u, v: bands[int(v + high * zigzag(across * u)) % len(bands)])


def diamonds(around: int, colours: int, answers: Answers) -> bytes:
    """Diamonds in rings inside one another, the first colour inside."""
    across, high = number(answers, "across"), number(answers, "high")

    def figure(u: float, v: float) -> int:
        far = (1 - zigzag(across * u)) + (1 - zigzag(v / high))  # 0 in the middle, 2 between four of them
        return min(colours - 1, int(far / 2 * colours))

    return drawn(around, high, figure)


def checks(around: int, colours: int, answers: Answers) -> bytes:
    """Fields by turns; an even number of them goes round."""
    across, high = 2 * number(answers, "across"), number(answers, "high")
    return drawn(around, high * _even(colours), lambda u, v: (int(across * u) + int(v / high)) % colours)


def plaid(around: int, colours: int, answers: Answers) -> bytes:
    """Stripes along the rope woven with stripes across: every second bead shows the other way."""
    along, across = row_of_beads(answers, "along"), row_of_beads(answers, "across")
    width, rows = len(along), len(across)
    pairs = rows if rows % 2 else rows // 2
    beads = (turns(around, k) for k in range(of_a_chart(pairs * (2 * around + 1))))
    return bytes(across[int(v) % rows] if k % 2 else along[int(v % 1 * width)] for k, v in enumerate(beads))


def scales(around: int, colours: int, answers: Answers) -> bytes:
    """Scales that overlap in rows, each with an edge of the last colour; the others change from row to row."""
    across, high = number(answers, "across"), 2 * number(answers, "high")
    wide = (around + 0.5) / across

    def figure(u: float, v: float) -> int:
        for row in range(int(2 * v / high) + 2, -3, -1):  # the upper rows lie under the lower ones
            rise = (v - row * high / 2) * ROW_HEIGHT
            aside = ((across * u + row / 2) % 1 - 0.5) * wide
            far = hypot(aside, rise * wide / (high * ROW_HEIGHT))
            if rise >= 0 and far <= wide / 2:
                return colours - 1 if far > wide / 2 - max(1.0, wide / 6) else row % max(1, colours - 1)
        return 0

    return drawn(around, high * max(1, colours - 1) // 2 * 2, figure)


def braid(around: int, colours: int, answers: Answers) -> bytes:
    """Strands, each of its own colour, that wind to and fro over a ground; the one in front lies on top."""
    strands, high = max(2, colours - 1), number(answers, "high")

    def figure(u: float, v: float) -> int:
        best, front = 0, -2.0
        for strand in range(strands):
            phase = 2 * pi * (v / high + strand / strands)
            middle, depth = 0.5 + 0.3 * cos(phase), cos(2 * phase - pi / 2)
            if abs(u - middle) < 0.11 and depth > front:
                best, front = strand + 1, depth
        return best if best < colours else 1

    return drawn(around, high, figure)


def _even(number: int) -> int:
    return number if number % 2 == 0 else 2 * number


def _across(usual: str, label: str = "Round the rope") -> Asked:
    return Asked("across", label, usual, "How often it stands side by side.", least=1, most=MOST_ACROSS)


def _high(usual: str, label: str = "Height, in rows") -> Asked:
    return Asked("high", label, usual, "From one to the next along the rope.", least=1, most=MOST_ROWS)


FIGURES = (
    Start(
        key="zigzag",
        label="Zigzags",
        words="Bands that go up and down on their way round the rope.",
        asks=(
            Asked("bands", "Bands, in rows", "4A 2B 4C 2B", "One letter a row.", beads=True),
            _across("2", "Points round the rope"),
            Asked("high", "Height of a point, in rows", "4", "", least=1, most=MOST_ROWS),
        ),
        colours=3,
        make=zigzags,
    ),
    Start(
        key="diamonds",
        label="Diamonds",
        words="Diamonds with rings of colour inside them.",
        asks=(_across("1"), _high("16")),
        colours=4,
        make=diamonds,
    ),
    Start(
        key="checks",
        label="Checks",
        words="Fields by turns, as on a board.",
        asks=(
            Asked("across", "Pairs round the rope", "2", "Two fields are a pair.", least=1, most=MOST_ACROSS),
            _high("4"),
        ),
        colours=2,
        make=checks,
    ),
    Start(
        key="plaid",
        label="Plaid",
        words="Stripes along the rope woven with stripes across it.",
        asks=(
            Asked("along", "Along the rope", "4A B 2A B", "Once round; longer runs are wider stripes.", beads=True),
            Asked("across", "Across it, in rows", "5A C 2A C", "One letter a row.", beads=True),
        ),
        colours=3,
        make=plaid,
    ),
    Start(
        key="scales",
        label="Scales",
        words="Scales that overlap, with an edge of the last bead of the palette.",
        asks=(_across("2"), _high("6", "Height of a scale, in rows")),
        colours=3,
        make=scales,
    ),
    Start(
        key="braid",
        label="Braid",
        words="Strands that wind to and fro over a background, each of its own colour.",
        asks=(_high("24", "Rows until it repeats"),),
        colours=4,
        make=braid,
    ),
)
