"""How a bead is worked: slip stitch or the stitch of wide ropes, and which way the work runs."""

from __future__ import annotations

from engine.booklet.guides.guide import Part, Piece, Step


def work(piece: Piece) -> Part:
    """The stitch of that piece, over and over."""
    return Part("Work the beads", (*(_slip(piece) if piece.slip else _single(piece)), _way(piece)))


def _slip(piece: Piece) -> tuple[Step, ...]:
    towards, back = piece.sides.towards, piece.sides.back
    return (
        piece.step(
            "Put the hook in from the inside of the tube, under the thread that holds the next bead, on the "
            f"{towards} of that bead."
        ),
        piece.step(f"Push that bead over the hook to its {back} side, where it lies flat."),
        piece.step(
            f"Slide one new bead up to the work, {piece.terms.yo} behind it, and pull through everything on "
            "the hook. This is one bead sl st.",
            "bead-slip-stitch",
        ),
        piece.step(
            "Work one bead sl st in every bead, on and on. Do not join the rounds (rnd): the rope is a spiral.",
            "how-beads-lie",
        ),
    )


def _single(piece: Piece) -> tuple[Step, ...]:
    sc, yo = piece.terms.sc, piece.terms.yo
    return (
        piece.step("Slide one bead up to the work. It lies on the outside of the tube, the side away from you."),
        piece.step(
            f"Put the hook into the next stitch (st), {piece.terms.over} ({yo}) behind the bead, and pull "
            "up a loop: two loops on the hook.",
            "bead-single-crochet",
        ),
        piece.step(f"{yo.capitalize()} and pull through both loops. This is one bead {sc}.", "through-both-loops"),
        piece.step(
            f"Work one bead {sc} in every st, on and on. Do not join the rounds: the rope is a spiral.", "how-beads-lie"
        ),
    )


def _way(piece: Piece) -> Step:
    towards, back, hand = piece.sides
    shown = ", as the chart shows them" if piece.charted else ""
    return piece.step(
        f"You look into the tube and work with the {hand} hand from {back} to {towards}. From outside, "
        f"working end up, the beads run from {towards} to {back}{shown}.",
        "working-way",
    )
