"""How a bead is worked: slip stitch or the stitch of wide ropes, and which way the work runs."""

from __future__ import annotations

from engine.booklet.guides.guide import Part, Piece, Step


def work(piece: Piece) -> tuple[Part, ...]:
    """The stitch of that piece, over and over, and how it looks when it is right."""
    return (_slip(piece), _check_slip(piece)) if piece.slip else (_single(piece), _check_single(piece))


def _slip(piece: Piece) -> Part:
    towards, back = piece.sides.towards, piece.sides.back
    return piece.strip(
        "Work the beads",
        "bead-slip-stitch",
        f"Put the hook from the inside of the tube to the outside, on the {towards} of the next bead, under the thread "
        "that holds the next bead.",
        f"Push that bead over the hook to its {back} side, where it lies flat.",
        "Slide one new bead down to the work, behind the hook. Lay the thread over the bead you pushed aside, which "
        f"locks it, then over the hook ({piece.terms.yo}).",
        "Pull the thread through both loops on the hook. The new bead stands upright. This is one bead sl st.",
    )


def _check_slip(piece: Piece) -> Part:
    return Part(
        "Go on and check",
        (
            piece.step(
                "Work one bead sl st in every bead, on and on. Do not join the rounds (rnd): the rope is a spiral."
            ),
            piece.step(
                "Look at the rim: a bead just worked stands upright, its hole up. One rnd later it lies flat, its hole "
                "along the rnd. A bead of the rnd below that still stands was missed, or the thread does not lie over "
                "it: pull back to it.",
                "upright-and-flat",
            ),
            _tension(piece),
            _way(piece),
        ),
    )


def _tension(piece: Piece) -> Step:
    return piece.step(
        "Pull the thread after every bead, always alike: so firmly that none shows between the beads, so loosely that "
        "the hook still goes in and the rope bends."
    )


def _single(piece: Piece) -> Part:
    sc, yo = piece.terms.sc, piece.terms.yo
    return piece.strip(
        "Work the beads",
        "bead-single-crochet",
        "Slide one new bead up to the work: it lies behind it, on the outside of the tube. Put the hook from the "
        "inside to the outside under both loops of the next stitch (st).",
        f"{piece.terms.over.capitalize()} ({yo}) behind the bead, and pull up a loop: two loops on the hook.",
        f"{yo.capitalize()} once more and pull through both loops.",
        f"One loop stays on the hook, and the bead lies behind the new st, on the outside. This is one bead {sc}.",
    )


def _check_single(piece: Piece) -> Part:
    return Part(
        "Go on and check",
        (
            piece.step(
                f"Work one bead {piece.terms.sc} in every st, on and on. Do not join the rounds: the rope is a spiral.",
                "how-beads-lie",
            ),
            _tension(piece),
            _way(piece),
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
