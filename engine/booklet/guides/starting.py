"""How a rope is started: a chain with beads for slip stitch, a plain chain and a row for wide ropes."""

from __future__ import annotations

from engine.booklet.guides.guide import Part, Piece, Step


def start(piece: Piece) -> Part:
    """The start in the stitch of that piece."""
    return Part("Start", _slip(piece) if piece.slip else _single(piece))


def _slip(piece: Piece) -> tuple[Step, ...]:
    around = piece.around
    return (
        piece.step(
            f"Take the {piece.hook}. Push the beads down the thread, keep a tail of {piece.about(200)}, and "
            "make a slip knot on the hook."
        ),
        piece.step(
            f"Work {around} chains (ch) with a bead in each: slide a bead up to the hook, "
            f"{piece.terms.over} ({piece.terms.yo}) behind it, and pull through. These {around} "
            "beads are round 1.",
            "beaded-chain",
        ),
        piece.step("Lay the chain to a circle, beads on the outside. See that it is not twisted."),
        piece.step(
            f"Work bead {around + 1} into the first ch, under the thread that holds its bead. That closes the circle.",
            "starting-ring",
        ),
    )


def _single(piece: Piece) -> tuple[Step, ...]:
    around, sc, single = piece.around, piece.terms.sc, piece.terms.single
    plain = (
        "Go straight on with beads: a round (rnd) without them would show at the seam of the ring."
        if piece.closure.worked_shut
        else f"Work 2 rounds (rnd) of {sc} without beads, in a spiral."
    )
    return (
        piece.step(f"Take the {piece.hook}. Push the beads down the thread and keep {piece.about(1000)} free."),
        piece.step(f"Make {around + 1} chains (ch): as many as the rope is around, and one more."),
        piece.step(
            f"Work 1 {single} ({sc}) in the second ch from the hook and in every ch to the end: {around} {sc}.",
            "wide-chain",
        ),
        piece.step(
            f"Join to a circle with a slip stitch (sl st) in the first {sc}. See that the strip is not twisted.",
            "wide-ring",
        ),
        piece.step(plain),
    )
