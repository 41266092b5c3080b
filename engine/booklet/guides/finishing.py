"""The finishing guide: how the piece ends, by its closure and stitch, with caps, ends and core that fit."""

from __future__ import annotations

from engine.booklet.guides.guide import Part, Piece, Step
from engine.booklet.guides.tails import hide_tails
from engine.counting.findings import CAP_PLAY_MM, EYE_PIN_MM, WRAPPED_LOOP_MM
from engine.units import fixed, millimetres, plain

TITLES = {
    "open": "For a rope with closed ends",
    "clasp": "For a clasp with caps",
    "glued": "For a clasp with glued ends",
    "ring": "For a ring worked shut",
}
WIRE = "Cut wire flies: cover your eyes, hold the end as you cut, and point it away from people."
GLUE = "Glue: work with fresh air, keep it off skin and eyes, and follow the label."
NECK_MM = 3.0  # of wire between cap and loop, for the turns round it (common practice, no source)


def finishing(piece: Piece) -> tuple[Part, ...]:
    """The finishing guide of that piece."""
    return (*{"open": _open, "clasp": _clasp, "glued": _glued, "ring": _ring}[piece.closure](piece), hide_tails(piece))


def _open(piece: Piece) -> tuple[Part, ...]:
    return (
        _close_ends(piece),
        Part(
            "Wear it",
            (piece.step("Both ends are shut: the rope can be knotted, looped through itself or laid double."),),
        ),
    )


def _close_ends(piece: Piece) -> Part:
    around, tail = piece.around, piece.tail
    bare = "" if piece.slip else f"Work 1 rnd of {piece.terms.sc} without beads. "
    shut = "shut" if piece.slip else "nearly shut"
    other = f"with the tail of its {around} ch" if piece.slip else f"through its {around} {piece.terms.sc}"
    return Part(
        "Close the ends",
        (
            piece.step(f"{bare}Cut the thread, leaving {tail}, and pull it through the last loop."),
            piece.step(
                f"With the blunt needle gather the {around} st of the last rnd. {_pin(piece)}pull the end {shut}.",
                "closing-end",
            ),
            *_core(piece),
            piece.step(f"Close the other end in the same way, {other}."),
        ),
    )


def _pin(piece: Piece) -> str:
    """An eye pin goes in while the end is open."""
    if piece.closure != "clasp":
        return "Go once around, then "
    return (
        f"Put in an eye pin, wire {plain(EYE_PIN_MM, 2)} mm (22 gauge) or thicker, its eye inside the rope, its "
        "wire out through the middle; then "
    )


def _core(piece: Piece) -> tuple[Step, ...]:
    if piece.core is not None:
        return (
            piece.step(
                f"For a firm rope cut a hose of {plain(piece.core.outside_mm, 1)} mm outside 10 mm shorter "
                "than the rope and slide it in before you close the second end.",
                "core",
            ),
        )
    if piece.measure_core:
        return (
            piece.step(
                "For a firm rope try a piece of hose in the channel of what you have worked: measure first, "
                "then buy. Slide it in, 10 mm shorter than the rope, before you close the second end.",
                "core",
            ),
        )
    return ()


def _clasp(piece: Piece) -> tuple[Part, ...]:
    cap = (
        f"Slide a bead cap, {_fitting(piece)} inside, over the wire until it sits on the rope."
        if piece.measured
        else "Measure the rope first: a cap is as wide inside as the rope is thick, or up to "
        f"{plain(CAP_PLAY_MM, 1)} mm more. Slide it over the wire until it sits on the rope."
    )
    return (
        _close_ends(piece),
        Part(
            "Set the caps",
            (
                piece.step(f"At each end sew the eye of the pin fast with several turns of the tail. {cap}", "eye-pin"),
                piece.step(
                    f"Cut the wire {plain(WRAPPED_LOOP_MM, 0)} mm or more above the cap, and bend it square to the "
                    f"side {plain(NECK_MM, 0)} mm above the cap: that is its neck.",
                    "cutting-wire",
                    WIRE,
                ),
                piece.step(
                    "Roll the wire over the round-nose pliers to a loop above the neck. Hold the loop in flat pliers "
                    "and wind the end round the neck, turn beside turn, down to the cap. Cut off the rest and press "
                    "its end in. A loop that is not wrapped opens, and the rope is lost.",
                    "wrapped-loop",
                    WIRE,
                ),
            ),
        ),
        Part(
            "Hang the clasp",
            (
                piece.step(
                    "Open jump rings sideways, never by pulling the ends apart. Close them so that no gap can be felt.",
                    "jump-ring",
                ),
                piece.step(
                    "Join the ring of the toggle with one jump ring, the bar with two, so that the bar can turn "
                    "through.",
                    "toggle",
                ),
            ),
        ),
    )


def _glued(piece: Piece) -> tuple[Part, ...]:
    ends = (
        f"Take ends that are {_fitting(piece)} inside."
        if piece.measured
        else "Measure the rope first: the ends must be as wide inside as the rope is thick, or up to "
        f"{plain(CAP_PLAY_MM, 1)} mm more."
    )
    return (
        _close_ends(piece),
        Part(
            "Try the ends dry",
            (
                piece.step(ends),
                piece.step(
                    "Push each on without glue. The rope must reach the bottom, and no thread may stand out.",
                    "trying-ends",
                ),
            ),
        ),
        Part(
            "Glue",
            (
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
        ),
    )


def _fitting(piece: Piece) -> str:
    return f"{fixed(piece.thickness_mm, 1)} to {millimetres(piece.thickness_mm + CAP_PLAY_MM)}"


def _ring(piece: Piece) -> tuple[Part, ...]:
    meets = (
        "The seam joins the end of the rope to its start."
        if piece.joins_end_to_start
        else "The pattern goes on over the seam."
    )
    return (
        Part(
            "Match the ends",
            (
                piece.step(f"Cut the thread, leaving {piece.measures.about(400)}, and pull it through the last loop."),
                piece.step(f"Lay the ends against each other. {meets} {_turn(piece.turn)}"),
                piece.step("See that the rope is not twisted along its length."),
            ),
        ),
        Part(
            "Sew the seam",
            (
                piece.step(_seam(piece), "ring-join"),
                piece.step("Pull every st tight as you go, so that the beads of both rnds sit in each other’s gaps."),
                piece.step("Take the needle into the rope, hide both tails, and cut them."),
            ),
        ),
    )


def _turn(beads: float) -> str:
    if beads == 0:
        return "The first bead stands straight above the last rnd; nothing needs turning."
    told = f"{plain(abs(beads), 1)} {'bead' if abs(beads) == 1 else 'beads'}"
    return f"They meet when one end is turned by {told} against the other: roll them until the colours go on."


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
