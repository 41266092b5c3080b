"""How a rope is started: a chain with beads for slip stitch, a plain chain and a row for wide ropes."""

from __future__ import annotations

from engine.booklet.guides.guide import Part, Piece, Step


def start(piece: Piece) -> Part:
    """The start in the stitch of that piece."""
    return Part("Start", _slip(piece) if piece.slip else _single(piece))


def _slip(piece: Piece) -> tuple[Step, ...]:
    around, towards, back = piece.around, piece.sides.towards, piece.sides.back
    return (
        _slip_knot(piece),
        piece.step(
            f"Work {around} chains (ch) with a bead in each: slide a bead up to the hook, "
            f"{piece.terms.over} ({piece.terms.yo}) behind it, and pull through. These {around} "
            "beads are round 1.",
            "beaded-chain",
        ),
        piece.step(
            "Lay the chain to a circle, beads on the outside, its open end towards you. See that it is not twisted."
        ),
        piece.step(
            f"From inside the circle put the hook under the thread that holds bead 1, on the {towards} of the bead, "
            f"and flip bead 1 over the hook to the {back}, to the outside.",
            "starting-ring",
        ),
        piece.step(
            f"Slide bead {around + 1} up to the work, lay the thread over bead 1 and over the hook, and pull through "
            f"both loops. That closes the circle; bead {around + 1} stands on bead 1."
        ),
    )


def _slip_knot(piece: Piece) -> Step:
    use = "it is hidden in the seam" if piece.closure.worked_shut else "it closes this end"
    return piece.step(
        f"Take the {piece.hook}. Push the beads down the thread, make a slip knot on the hook, and leave a tail of "
        f"{piece.tail}: {use} later."
    )


def _single(piece: Piece) -> tuple[Step, ...]:
    around, sc, single = piece.around, piece.terms.sc, piece.terms.single
    plain = (
        "Go straight on with beads: a round (rnd) without them would show at the seam of the ring."
        if piece.closure.worked_shut
        else f"Work 2 rounds (rnd) of {sc} without beads, in a spiral."
    )
    return (
        _slip_knot(piece),
        piece.step(f"Make {around + 1} chains (ch): as many as the rope is around, and one more."),
        piece.step(
            f"Work 1 {single} ({sc}) in the second ch from the hook and in every ch to the end: {around} {sc}.",
            "wide-chain",
        ),
        piece.step(
            "Lay the strip to a circle, its open end towards you. See that it is not twisted. Join it with a slip "
            f"stitch (sl st) in the first {sc}.",
            "wide-ring",
        ),
        piece.step(plain),
    )
