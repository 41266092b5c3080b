"""The working guide: which steps apply to a rope of that number around, stitch, hand and threads, in order."""

from __future__ import annotations

from dataclasses import dataclass

from engine.booklet.terms import SIDES, Sides, Terms
from engine.counting.findings import Hose
from engine.units import INCH_MM, count, fixed, whole

SPOKES = 10  # so many stitches can still be counted in a flattened end


@dataclass(frozen=True)
class Piece:
    """What decides the guides. Lengths in mm; `core` is the hose that goes in; `measure_core`: none is chosen yet.

    `lists` says which thread takes which list; `turn` by how many beads the ends of a ring are turned at its seam.
    """

    around: int
    stitch: str
    hand: str
    closure: str
    terms: Terms
    units: str
    threads: int
    lists: str
    repeat: int
    ten_rounds_mm: float
    measured: bool
    thickness_mm: float
    core: Hose | None = None
    measure_core: bool = False
    turn: float = 0.0
    joins_end_to_start: bool = False

    @property
    def slip(self) -> bool:
        return self.stitch == "slip"

    @property
    def sides(self) -> Sides:
        return SIDES[self.hand]

    @property
    def may_have_core(self) -> bool:
        return self.core is not None or self.measure_core

    def about(self, mm: float) -> str:
        """A length that need not be exact: "15 cm", "6 in"."""
        return f"{whole(mm / INCH_MM)} in" if self.units == "in" else f"{whole(mm / 10)} cm"


@dataclass(frozen=True)
class Part:
    """Steps under a heading."""

    title: str
    steps: tuple[str, ...]


def working(piece: Piece) -> tuple[Part, ...]:
    """The working guide of that piece."""
    parts = (_string(piece), _start(piece), _work(piece), _count(piece), _add(piece), _tails(piece), _mistakes(piece))
    return tuple(part for part in parts if part.steps)


def _string(piece: Piece) -> Part:
    which = "String the list from its first entry to its last." if piece.threads == 1 else (
        f"String one thread at a time: {piece.lists}.")
    whose = "you" if piece.threads == 1 else "of its thread that you"
    return Part("String", (
        f"{which} Do not cut the thread from its reel.",
        "Tick an entry when its beads are on the thread. After ten entries compare with the running total, at the foot "
        "of a column with its sum.",
        "Measure what is strung and compare with the strung length at the head of the list.",
        f"The first bead you string is the last bead {whose} crochet."))


def _start(piece: Piece) -> Part:
    return Part("Start", _start_slip(piece) if piece.slip else _start_single(piece))


def _start_slip(piece: Piece) -> tuple[str, ...]:
    around = piece.around
    return (f"Push the beads down the thread, keep a tail of {piece.about(200)}, and make a slip knot on the hook.",
            f"Work {around} chains (ch) with a bead in each: slide a bead up to the hook, {piece.terms.over} "
            f"({piece.terms.yo}) behind it, and pull through. These {around} beads are round 1.",
            "Lay the chain to a circle, beads on the outside. See that it is not twisted.",
            f"Work bead {around + 1} into the first ch, under the thread that holds its bead. That closes the circle.")


def _start_single(piece: Piece) -> tuple[str, ...]:
    around, sc, single = piece.around, piece.terms.sc, piece.terms.single
    plain = ("Go straight on with beads: a round (rnd) without them would show at the seam of the ring."
             if piece.closure == "ring" else f"Work 2 rounds (rnd) of {sc} without beads, in a spiral.")
    return (f"Push the beads down the thread and keep {piece.about(1000)} free.",
            f"Make {around + 1} chains (ch): as many as the rope is around, and one more.",
            f"Work 1 {single} ({sc}) in the second ch from the hook and in every ch to the end: {around} {sc}.",
            f"Join to a circle with a slip stitch (sl st) in the first {sc}. See that the strip is not twisted.",
            plain)


def _work(piece: Piece) -> Part:
    return Part("Work the beads", (*(_work_slip(piece) if piece.slip else _work_single(piece)), _way(piece)))


def _work_slip(piece: Piece) -> tuple[str, ...]:
    towards, back = piece.sides.towards, piece.sides.back
    return (f"Put the hook in from the inside of the tube, under the thread that holds the next bead, on the {towards} "
            "of that bead.",
            f"Push that bead over the hook to its {back} side, where it lies flat.",
            f"Slide one new bead up to the work, {piece.terms.yo} behind it, and pull through everything on the hook. "
            "This is one bead sl st.",
            "Work one bead sl st in every bead, on and on. Do not join the rounds (rnd): the rope is a spiral.")


def _work_single(piece: Piece) -> tuple[str, ...]:
    sc, yo = piece.terms.sc, piece.terms.yo
    return ("Slide one bead up to the work. It lies on the outside of the tube, the side away from you.",
            f"Put the hook into the next stitch (st), {piece.terms.over} ({yo}) behind the bead, and pull up a loop: "
            "two loops on the hook.",
            f"{yo.capitalize()} and pull through both loops. This is one bead {sc}.",
            f"Work one bead {sc} in every st, on and on. Do not join the rounds: the rope is a spiral.")


def _way(piece: Piece) -> str:
    towards, back, hand = piece.sides
    return (f"You look into the tube and work with the {hand} hand from {back} to {towards}. From outside, working end "
            f"up, the beads run from {towards} to {back}, as the chart shows them.")


def _count(piece: Piece) -> Part:
    about = "by the maker’s swatch" if piece.measured else "an estimate"
    checks = _count_spokes(piece) if piece.around <= SPOKES else _count_marker(piece)
    return Part("Count and check", (
        *checks,
        f"Measure after ten rnds with beads: {fixed(piece.ten_rounds_mm, 0)} mm is expected, {about}. Looser or "
        "tighter work gives another length; see the sizes."))


def _count_spokes(piece: Piece) -> tuple[str, ...]:
    around = piece.around
    steps = [f"Every few rnds flatten the open end: it is a wheel of {around} spokes, a bead on each. Fewer or more, "
             "and a st was missed or worked twice: pull back to it."]
    if piece.slip:
        steps.append("New beads stand upright, those of the rnd below lie flat. A bead in the middle of the tube has "
                     "slipped to the inside: pull back and bring it out.")
    if around % piece.repeat == 0:
        steps.append("The bead you work into has the colour of the bead you slide up, for the colours come back with "
                     "every rnd. If it has not, look for a mistake before you go on.")
    return tuple(steps)


def _count_marker(piece: Piece) -> tuple[str, ...]:
    return (f"Put a marker in the first bead of each rnd of {piece.around}. It is the bead with a bar in the chart.",
            "Every tenth rnd compare with the chart: the marker sits in the bead with the ring, whose number stands "
            "beside it.",
            f"If it does not, count the last rnd: {piece.around} st, a bead on each. Pull back to the st that was "
            "missed or worked twice.")


def _add(piece: Piece) -> Part:
    if piece.threads == 1:
        return Part("Add a thread", ())
    joins = piece.threads - 1
    return Part("Add a thread", (
        f"Work the thread to its last bead and cut it, leaving {piece.about(150)}. String the next thread.",
        "Pull a loop of the new thread through the last loop of the old one, and tighten the old one.",
        "Hold both tails along the work and go on. There "
        + ("is one join." if joins == 1 else f"are {count(joins)} joins.")))


def _tails(piece: Piece) -> Part:
    steps = ["Thread a tail on the blunt needle and take it through the thread wall in two directions at least."]
    if piece.may_have_core:
        steps.append("Never take a tail through the channel: the core goes in there.")
    return Part("Hide the tails", (*steps, "Stretch the rope so that the ends sink in, then cut them."))


def _mistakes(piece: Piece) -> Part:
    again = "" if piece.threads == 1 else " A thread worked so may stay if you like it; string the others rightly."
    return Part("Mistakes", (
        "A bead too many: cover your eyes, hold the bead in pliers under the edge of the table and break it, pointing "
        "it away from you.",
        "A bead too few: leave its place, go on, and sew the missing bead on at the end.",
        "A wrong run near the hook: pull back to it. Far down the thread: work up to it, cut there, mend the string, "
        "and add the thread again.",
        f"The thread strung the wrong way round: the pattern appears end for end.{again}"))
