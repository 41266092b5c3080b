"""Where parts meet: how far what stands before turns a part round the rope, and which rounds bring it straight.

A part stands straight where its first bead lies in line with the first bead of the rope. A round is N of the N + ½
beads of a turn, so every round more turns what follows back by half a bead.
"""

from __future__ import annotations

from typing import NamedTuple

from engine.pattern.repeats import Drift, drift
from engine.units import counted, degrees, plain


class Seam(NamedTuple):
    """The seam before part `number` (counted from one) of a rope: `before` beads of rope stand before it, `turn` is how
    far they turn it, `more` and `fewer` are the rounds that bring it straight; nought where none do or need to."""

    number: int
    before: int
    turn: Drift
    more: int
    fewer: int

    @property
    def straight(self) -> bool:
        return not self.turn.beads


def seam(around: int, number: int, before: int) -> Seam:
    """The seam before that part.

    >>> seam(12, 2, 903)[2:]
    (Drift(beads=3.0, degrees=86.4), 6, 19)
    """
    halves = 2 * around + 1
    more = 2 * before % halves
    fewer = (halves - more) % halves
    return Seam(
        number=number,
        before=before,
        turn=drift(around, before),
        more=more,
        fewer=fewer if fewer * around <= before else 0,
    )


def seam_in_words(seam: Seam) -> str:
    """What the seam does: "turned by +3 beads (+86°); 6 rounds more before it or 19 fewer bring it straight"."""
    if seam.straight:
        return "straight"
    sign = "+" if seam.turn.beads > 0 else "−"
    turned = f"turned by {sign}{_beads(abs(seam.turn.beads))} ({degrees(seam.turn.degrees).replace('-', '−')})"
    fewer = f" or {seam.fewer} fewer" if seam.fewer else ""
    bring = "bring" if fewer or seam.more > 1 else "brings"
    return f"{turned}; {counted(seam.more, 'round')} more before it{fewer} {bring} it straight"


def _beads(beads: float) -> str:
    return f"{plain(beads, 1)} {'bead' if beads == 1 else 'beads'}"
