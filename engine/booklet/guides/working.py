"""The working guide: which steps apply to a rope of that number around, stitch, hand and threads, in order."""

from __future__ import annotations

from engine.booklet.guides.guide import Part, Piece, Step
from engine.booklet.guides.starting import start
from engine.booklet.guides.stitches import work
from engine.units import count

SPOKES = 10  # so many stitches can still be counted in a flattened end
SMALL_PARTS = "Small parts: keep beads and needles away from children under three."
GLASS = "Broken glass flies: let nobody stand near."


def working(piece: Piece) -> tuple[Part, ...]:
    """The working guide of that piece."""
    parts = (
        _first_rope(piece),
        _string(piece),
        start(piece),
        *work(piece),
        _count(piece),
        _add(piece),
        _mistakes(piece),
    )
    return tuple(part for part in parts if part.steps)


def _first_rope(piece: Piece) -> Part:
    """A rope on which a mistake shows at once: six colours, six around."""
    stitch = "bead slip stitch" if piece.slip else f"bead {piece.terms.single}"
    return Part(
        "Your first rope",
        (
            piece.step(
                "If you have never worked a rope, practise first with 60 large beads, 6/0 or 8/0, in six colours: "
                f"string one of each, always in the same order, ten times, and work them 6 around in {stitch}. Every "
                "bead goes into one of its own colour, so a st that was missed shows at once."
            ),
        ),
    )


def _string(piece: Piece) -> Part:
    which = (
        "String the list from its first entry to its last."
        if piece.threads == 1
        else (f"String one thread at a time: {piece.lists}.")
    )
    foot = "" if piece.large else ", at the foot of a column with its sum"
    groups = " Of a group that is strung again and again tick a box each time." if piece.grouped else ""
    whose = "you" if piece.threads == 1 else "of its thread that you"
    return Part(
        "String",
        (
            piece.step(
                f"Put the end of the thread, {piece.thread}, through the needle, a "
                f"{piece.measures.beside(piece.needle)}. Pick the beads "
                "up on its point and slide them on to the thread. Do not cut the thread from its reel.",
                "threading",
                SMALL_PARTS,
            ),
            piece.step(
                f"{which} Tick an entry when its beads are on the thread. After ten entries compare with the "
                f"running total{foot}.{groups}",
                "reading-list",
            ),
            piece.step("Measure what is strung and compare with the strung length at the head of the list."),
            piece.step(f"The first bead you string is the last bead {whose} crochet.", "strung-order"),
        ),
    )


def _count(piece: Piece) -> Part:
    about = "by the maker’s swatch" if piece.measured else "an estimate"
    checks = _count_spokes(piece) if piece.around <= SPOKES else _count_marker(piece)
    return Part(
        "Count and check",
        (
            *checks,
            piece.step(
                f"Measure after ten rnds with beads: {piece.measures.small(piece.ten_rounds_mm)} is expected, {about}. "
                "Looser or tighter work gives another length; see the sizes."
            ),
        ),
    )


def _count_spokes(piece: Piece) -> tuple[Step, ...]:
    around = piece.around
    steps = [
        piece.step(
            f"Every few rnds flatten the open end: it is a wheel of {around} spokes, a bead on each. Fewer "
            "or more, and a st was missed or worked twice: pull back to it.",
            "counting",
        )
    ]
    if piece.slip:
        steps.append(
            piece.step("A bead in the middle of the tube has slipped to the inside: pull back and bring it out.")
        )
    if around % piece.repeat == 0:
        steps.append(
            piece.step(
                "The bead you work into has the colour of the bead you slide up, for the colours come "
                "back with every rnd. If it has not, look for a mistake before you go on."
            )
        )
    return tuple(steps)


def _count_marker(piece: Piece) -> tuple[Step, ...]:
    if not piece.charted:
        return (
            piece.step(f"Put a marker in the first bead of each rnd of {piece.around}.", "marker"),
            piece.step(
                f"Count every tenth rnd: {piece.around} st, a bead on each. If they are not, pull back to "
                "the st that was missed or worked twice."
            ),
        )
    return (
        piece.step(
            f"Put a marker in the first bead of each rnd of {piece.around}. It is the bead with a bar in the chart.",
            "marker",
        ),
        piece.step(
            "Every tenth rnd compare with the chart: the marker sits in the bead with the ring, whose "
            "number stands beside it."
        ),
        piece.step(
            f"If it does not, count the last rnd: {piece.around} st, a bead on each. Pull back to the st "
            "that was missed or worked twice."
        ),
    )


def _add(piece: Piece) -> Part:
    if piece.threads == 1:
        return Part("Add a thread", ())
    joins = piece.threads - 1
    return Part(
        "Add a thread",
        (
            piece.step(
                f"Work the thread to its last bead and cut it, leaving {piece.measures.about(150)}. String the next "
                "thread."
            ),
            piece.step(
                "Pull a loop of the new thread through the last loop of the old one, and tighten the old one.",
                "new-thread",
            ),
            piece.step(
                "Hold both tails along the work and go on. There "
                + ("is one join." if joins == 1 else f"are {count(joins)} joins.")
            ),
        ),
    )


def _mistakes(piece: Piece) -> Part:
    again = "" if piece.threads == 1 else " A thread worked so may stay if you like it; string the others correctly."
    return Part(
        "Mistakes",
        (
            piece.step(
                "A bead too many: cover your eyes. Push a needle through its hole, beside the thread: it saves the "
                "thread from the glass. Under the edge of a table take the bead in the jaws of old pliers, across its "
                "hole, and squeeze until it breaks.",
                "break-bead",
                GLASS,
            ),
            piece.step(
                "A bead too few: work that stitch without a bead, go on, and sew the missing bead on at the end.",
                "missing-bead",
            ),
            piece.step(
                "A wrong run near the hook: pull back to it. Far down the thread: work up to it, cut there, mend "
                "the string, and add the thread again."
            ),
            piece.step(f"The thread strung the wrong way round: the pattern appears end for end.{again}"),
        ),
    )
