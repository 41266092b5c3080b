"""The finishing guide: how the piece ends, by its closure and stitch, with caps, ends and core that fit."""

from __future__ import annotations

from engine.booklet.guide import Part, Piece
from engine.counting.findings import CAP_PLAY_MM, EYE_PIN_MM, SIMPLE_LOOP_MM, WRAPPED_LOOP_MM
from engine.units import fixed, millimetres, plain

TITLES = {"open": "For a rope with closed ends", "clasp": "For a clasp with caps",
          "glued": "For a clasp with glued ends", "ring": "For a ring worked shut"}


def finishing(piece: Piece) -> tuple[Part, ...]:
    """The finishing guide of that piece."""
    return {"open": _open, "clasp": _clasp, "glued": _glued, "ring": _ring}[piece.closure](piece)


def _open(piece: Piece) -> tuple[Part, ...]:
    return (_close_ends(piece), Part("Wear it", (
        "Both ends are shut: the rope can be knotted, looped through itself or laid double.",)))


def _close_ends(piece: Piece) -> Part:
    around, tail = piece.around, piece.about(200)
    if piece.slip:
        first = (f"Cut the thread, leaving {tail}, and pull it through the last loop.",
                 f"With the blunt needle gather the {around} st of the last rnd and pull the end shut. Close the other "
                 f"end with the tail of its {around} ch.")
    else:
        first = (f"Work 1 rnd of {piece.terms.sc} without beads. Cut the thread, leaving {tail}.",
                 f"With the blunt needle gather the {around} st of the last rnd and pull the end nearly shut. Gather "
                 "the other end in the same way.")
    return Part("Close the ends", (*first, *_core(piece)))


def _core(piece: Piece) -> tuple[str, ...]:
    if piece.core is not None:
        return (f"For a firm rope cut a hose of {plain(piece.core.outside_mm, 1)} mm outside 10 mm shorter than the "
                "rope and slide it in before you close the second end.",)
    if piece.measure_core:
        return ("For a firm rope try a piece of hose in the channel of what you have worked: measure first, then buy. "
                "Slide it in, 10 mm shorter than the rope, before you close the second end.",)
    return ()


def _clasp(piece: Piece) -> tuple[Part, ...]:
    low, high = SIMPLE_LOOP_MM
    cap = (f"Slide a bead cap, {_fitting(piece)} inside, over the wire until it sits on the rope."
           if piece.measured else
           "Measure the rope first: a cap is as wide inside as the rope is thick, or up to "
           f"{plain(CAP_PLAY_MM, 1)} mm more. Slide it over the wire until it sits on the rope.")
    return (_close_ends(piece), Part("Set the caps", (
        f"Put an eye pin, wire {plain(EYE_PIN_MM, 2)} mm (22 gauge) or thicker, into each end, its eye inside the "
        "rope, and sew the eye fast with several turns of the tail.",
        cap,
        f"For a wrapped loop, the safer one, leave {plain(WRAPPED_LOOP_MM, 0)} mm of wire or more above the cap; for a "
        f"simple loop {plain(low, 1)} to {plain(high, 1)} mm. Cover your eyes and hold the end as you cut: it flies.",
        "Bend the wire to a loop with round-nose pliers.")),
        Part("Hang the clasp", (
            "Open jump rings sideways, never by pulling the ends apart.",
            "Join the ring of the toggle with one jump ring, the bar with two, so that the bar can turn through.",
            "Close the jump rings and check that no gap can be felt.")))


def _glued(piece: Piece) -> tuple[Part, ...]:
    ends = (f"Take ends that are {_fitting(piece)} inside." if piece.measured else
            "Measure the rope first: the ends must be as wide inside as the rope is thick, or up to "
            f"{plain(CAP_PLAY_MM, 1)} mm more.")
    return (_close_ends(piece), Part("Try the ends dry", (
        ends,
        "Push each on without glue. The rope must reach the bottom, and no thread may stand out.",)),
        Part("Glue", (
            "Work with fresh air and follow the label of the glue.",
            "Roughen the inside of the ends, put a little glue in, and push the rope in with a turn.",
            "Wipe off what comes out, and leave the piece alone for as long as the label says. Then pull at it: it "
            "must hold.")))


def _fitting(piece: Piece) -> str:
    return f"{fixed(piece.thickness_mm, 1)} to {millimetres(piece.thickness_mm + CAP_PLAY_MM)}"


def _ring(piece: Piece) -> tuple[Part, ...]:
    meets = ("The seam joins the end of the rope to its start." if piece.joins_end_to_start else
             "The pattern goes on over the seam.")
    return (Part("Bring the ends together", (
        f"Cut the thread, leaving {piece.about(400)}, and pull it through the last loop.",
        f"Lay the ends against each other. {meets} {_turn(piece.turn)}",
        "See that the rope is not twisted along its length.")), Part("Sew the seam", (*_seam(piece),
        "Pull every st tight as you go, so that the beads of both rnds sit in each other’s gaps.",
        "Take the needle into the rope, hide both tails, and cut them.")))


def _turn(beads: float) -> str:
    if beads == 0:
        return "The first bead stands straight above the last rnd; nothing needs turning."
    told = f"{plain(abs(beads), 1)} {'bead' if abs(beads) == 1 else 'beads'}"
    return f"They meet when one end is turned by {told} against the other: roll them until the colours go on."


def _seam(piece: Piece) -> tuple[str, ...]:
    around = piece.around
    if piece.slip:
        return (f"With the needle go under the thread of a bead of the last rnd, then under the thread of the ch that "
                f"faces it, and on, bead by bead, until all {around} are joined.",)
    return (f"With the needle go through a st of the last rnd, then through the {piece.terms.sc} of the first row that "
            f"faces it, and on, st by st, until all {around} are joined. The first row disappears inside.",)
