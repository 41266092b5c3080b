"""The finishing guide: how the piece ends, by its closure and stitch, with caps, ends and core that fit."""

from __future__ import annotations

from collections.abc import Callable

from engine.booklet.guides.guide import Part, Piece, Step
from engine.booklet.guides.tails import hide_tails
from engine.counting.findings import CAP_PLAY_MM, CORD_MM, EYE_PIN_LONG_MM, EYE_PIN_MM, WRAPPED_LOOP_MM
from engine.units import count, plain

WIRE = "Cut wire flies: cover your eyes, hold the end as you cut, and point it away from people."
GLUE = "Glue: work with fresh air, keep it off skin and eyes, and follow the label."
MAGNETS = "Magnets: not for people with a pacemaker, and out of reach of small children."
NECK_MM = 3.0  # of wire between cap and loop, for the turns round it (common practice, no source)
SEAM_MM = 400.0  # thread to sew a ring with


def finishing(piece: Piece) -> tuple[Part, ...]:
    """The finishing guide of that piece: the parts that its closure names, in order; the tails are hidden last."""
    return (*(PARTS[name](piece) for name in piece.closure.guide), hide_tails(piece))


def _wear_it(piece: Piece) -> Part:
    return Part(
        "Wear it", (piece.step("Both ends are shut: the rope can be knotted, looped through itself or laid double."),)
    )


def _close_ends(piece: Piece) -> Part:
    around = piece.around
    bare = "" if piece.slip else f"Work 1 rnd of {piece.terms.sc} without beads. "
    shut = "shut" if piece.slip else "nearly shut"
    other = (
        f"with the tail of its {around} ch" if piece.slip else f"through its {around} {piece.terms.sc}, with its tail"
    )
    return Part(
        "Close the ends",
        (
            piece.step(f"{bare}Cut the thread, leaving {piece.tail}, and pull it through the last loop."),
            piece.step(
                f"With the blunt needle gather the {around} st of the last rnd. Go once around, pull the end {shut}, "
                "and knot the thread.",
                "closing-end",
            ),
            *_core(piece, f"{piece.measures.plain(10)} shorter than the rope", "before you close the second end"),
            piece.step(f"Close the other end in the same way, {other}. Leave both tails hanging."),
        ),
    )


def _core(piece: Piece, long: str, when: str) -> tuple[Step, ...]:
    if piece.core is not None:
        thick = piece.measures.small(piece.core.outside_mm)
        text = f"For a firm rope cut tubing or cord {thick} thick, {long}, and slide it in {when}."
        return (piece.step(text, "core"),)
    if piece.measure_core:
        return (
            piece.step(
                "For a firm rope try a piece of tubing or cord in the channel of what you have worked: measure first, "
                f"then buy. Cut it {long} and slide it in {when}.",
                "core",
            ),
        )
    return ()


def _choose(piece: Piece, cap: str) -> Part:
    return Part(
        f"Choose the {cap}s",
        (
            piece.step(
                f"Measure how thick your rope is. A {cap} must be {_fitting(piece)}. Try it over the end: it must sit "
                "on the rope and hide the last rnd."
            ),
        ),
    )


def _choose_caps(piece: Piece) -> Part:
    return _choose(piece, "cap")


def _choose_cones(piece: Piece) -> Part:
    return _choose(piece, "cone")


def _set_caps(piece: Piece) -> Part:
    return _set(piece, "cap", "eye-pin")


def _set_cones(piece: Piece) -> Part:
    return _set(piece, "cone", "cone")


def _set(piece: Piece, cap: str, drawing: str) -> Part:
    """The pin led through the closed end, the cap or cone over it, and the wire wrapped to a loop."""
    measures, drawn_with = piece.measures, "" if cap == "cap" else "Drawn with a cap. "
    return Part(
        f"Set the {cap}s",
        (
            piece.step(
                f"Take an eye pin, wire {plain(EYE_PIN_MM, 2)} mm (22 gauge) or thicker, at least "
                f"{measures.plain(EYE_PIN_LONG_MM)} "
                "long. Open its eye sideways with pliers, lead it through several threads of the closed end, and close "
                "it. Pull at the pin: it must hold.",
            ),
            piece.step(f"Slide the {cap} over the wire until it sits on the rope and hides the eye.", drawing),
            piece.step(
                f"Cut the wire {measures.plain(WRAPPED_LOOP_MM)} or more above the {cap}, and bend it square to the "
                f"side {measures.plain(NECK_MM)} above the {cap}: that is its neck.",
                "cutting-wire",
                WIRE,
                drawn_with,
            ),
            piece.step(
                "Roll the wire over the round-nose pliers to a loop above the neck. Hold the loop in flat pliers "
                f"and wind the end round the neck, turn beside turn, down to the {cap}. Cut off the rest and press "
                "its end in. A loop that is not wrapped opens, and the rope is lost.",
                "wrapped-loop",
                drawn_with=drawn_with,
            ),
        ),
    )


def _hang_clasp(piece: Piece) -> Part:
    return Part(
        "Hang the clasp",
        (
            piece.step(
                "Hold a jump ring in two flat pliers. Open it sideways, never by pulling the ends apart. Close it so "
                "that no gap can be felt.",
                "jump-ring",
            ),
            piece.step(
                "Join the ring of the toggle with one jump ring, the bar with two, so that the bar can turn through.",
                "toggle",
            ),
        ),
    )


def _try_ends_dry(piece: Piece) -> Part:
    return Part(
        "Try the ends dry",
        (
            piece.step(f"Measure how thick your rope is. The ends must be {_fitting(piece)}."),
            piece.step(
                "Push each on without glue. The rope must reach the bottom, and no thread may stand out.",
                "trying-ends",
            ),
        ),
    )


def _glue(piece: Piece) -> Part:
    return Part(
        "Glue",
        (
            piece.step("Wind the tails round the closed ends, where the glue will hold them, and cut them short."),
            piece.step(
                "Roughen the inside of the ends, put a little glue in, and push the rope in with a turn.",
                "gluing",
                GLUE,
            ),
            piece.step(
                "Wipe off what comes out, and leave the piece alone for as long as the label says. Then pull at "
                "it: it must hold."
            ),
        ),
    )


def _try_magnet(piece: Piece) -> Part:
    return Part(
        "Try the magnet",
        (
            piece.step(
                "Let the magnet close and hang the piece from it: it must hold twice its own weight.",
                caution=MAGNETS,
            ),
        ),
    )


def _sew_button(piece: Piece) -> Part:
    return Part(
        "Sew the button",
        (
            piece.step(
                "Thread the tail of one end on the blunt needle. Go through the shank of the button and back into the "
                "closed end four times, wind the thread round below the shank, and knot it.",
                "button",
            ),
        ),
    )


def _work_loop(piece: Piece) -> Part:
    return Part(
        "Work the loop",
        (
            piece.step(
                "At the other end string beads on the tail until they go once round the button: 3.14 times its width, "
                f"about {piece.loop_beads} beads for a button {piece.measures.plain(piece.button_mm)} wide. Sew back "
                "into the end beside the tail.",
                "loop",
            ),
            piece.step(
                "Button it: the loop must go over easily and not slip off. Go through all its beads once more, which "
                "makes it a little tighter, button it again, and knot."
            ),
        ),
    )


def _fasten_cords(piece: Piece) -> Part:
    long = piece.measures.about(CORD_MM)
    return Part(
        "Fasten the cords",
        (
            piece.step(
                f"Lay a piece of cord of {long} double. With the tail sew its fold into the closed end, four times "
                "through cord and thread wall. Fasten the other piece in the other end."
            ),
        ),
    )


def _knot_tie(piece: Piece) -> Part:
    return Part(
        "Knot the tie",
        (
            piece.step(
                "Lay the cords past each other. Tie each pair round the other with an overhand knot, so that the knots "
                "slide. Pull them tight, pull at the ropes to try them, and cut the ends a hand behind the knots.",
                "sliding-tie",
            ),
        ),
    )


def _fitting(piece: Piece) -> str:
    if piece.measured:
        return f"{piece.measures.between(piece.thickness_mm, piece.thickness_mm + CAP_PLAY_MM)} inside"
    return f"as wide inside as the rope is thick, or up to {piece.measures.plain(CAP_PLAY_MM)} more"


def _match_ends(piece: Piece) -> Part:
    meets = (
        "The seam joins the end of the rope to its start."
        if piece.joins_end_to_start
        else "The pattern goes on over the seam."
    )
    once = "once more through a part that fills the rope" if piece.several else "once more through the chart"
    step = once if piece.joins_end_to_start else f"{count(piece.repeat)} beads"
    return Part(
        "Match the ends",
        (
            piece.step(
                "Leave the hook in the last loop and lay the ends against each other. See that the rope is not "
                f"twisted along its length. {meets} {_turn(piece.turn)}",
                "ends-meet",
            ),
            piece.step(
                "Hold the ring shut and try it over the hand. If it is too tight or too wide, work or undo "
                f"{step} at a time, so that the colours still meet."
            ),
            piece.step(f"Cut the thread, leaving {piece.measures.about(SEAM_MM)}, and pull it through the last loop."),
            *_core(piece, "as long as the rope", "before you sew; its ends meet inside the seam"),
        ),
    )


def _turn(beads: float) -> str:
    if beads == 0:
        return (
            "The first bead you worked comes to lie straight in line with the last rnd: neither end has to be rolled."
        )
    told = f"{plain(abs(beads), 1)} {'bead' if abs(beads) == 1 else 'beads'}"
    return f"Roll one end by {told} against the other, until the colours go on over the gap."


def _sew_seam(piece: Piece) -> Part:
    return Part(
        "Sew the seam",
        (
            piece.step(_seam(piece), "ring-join"),
            piece.step("Pull every st tight as you go, so that the beads of both rnds sit in each other’s gaps."),
            piece.step("Go around once more where the seam gapes, and knot the thread."),
        ),
    )


def _seam(piece: Piece) -> str:
    around = piece.around
    if piece.slip:
        return (
            f"With the blunt needle go under the thread of a bead of the last rnd, then under the thread of the ch "
            f"that faces it, and on, bead by bead, until all {around} are joined."
        )
    return (
        f"With the blunt needle go through a st of the last rnd, then through the {piece.terms.sc} of the first "
        f"row that faces it, and on, st by st, until all {around} are joined. The first row disappears inside."
    )


PARTS: dict[str, Callable[[Piece], Part]] = {
    "close the ends": _close_ends,
    "wear it": _wear_it,
    "choose the caps": _choose_caps,
    "set the caps": _set_caps,
    "choose the cones": _choose_cones,
    "set the cones": _set_cones,
    "try the magnet": _try_magnet,
    "sew the button": _sew_button,
    "work the loop": _work_loop,
    "fasten the cords": _fasten_cords,
    "knot the tie": _knot_tie,
    "hang the clasp": _hang_clasp,
    "try the ends dry": _try_ends_dry,
    "glue": _glue,
    "match the ends": _match_ends,
    "sew the seam": _sew_seam,
}
