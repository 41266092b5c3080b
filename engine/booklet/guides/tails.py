"""How tails are hidden, once the ends are finished and need them no longer."""

from __future__ import annotations

from engine.booklet.guides.guide import Part, Piece


def hide_tails(piece: Piece) -> Part:
    """The last part of every finishing guide."""
    channel = " Leave the channel free: the core is in there." if piece.may_have_core else ""
    return Part(
        "Hide the tails",
        (
            piece.step(
                "When the ends are finished, thread every loose tail on the blunt needle, one after the other, and "
                f"take it through the thread wall in two directions at least.{channel}",
                "hiding-tail",
            ),
            piece.step("Stretch the rope so that the ends sink in, then cut them."),
        ),
    )
