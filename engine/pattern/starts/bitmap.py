"""Letters as a grid of ink, drawn by whoever knows a font."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Bitmap:
    """Rows of bytes from the top, nought for the ground and 255 for ink; `grain` pixels are a bead wide."""

    rows: tuple[bytes, ...]
    grain: int

    @property
    def wide(self) -> int:
        """Pixels of a row."""
        return len(self.rows[0]) if self.rows else 0


Letters = Callable[[str, str, int], Bitmap]  # of a text, in a face, so many beads high


def stacked(letters: Sequence[Bitmap]) -> Bitmap:
    """Letters one under the other, each in the middle, a bead between them."""
    wide, grain = max(letter.wide for letter in letters), letters[0].grain
    rows: list[bytes] = []
    for letter in letters:
        left = (wide - letter.wide) // 2
        rows += [bytes(left) + row + bytes(wide - left - letter.wide) for row in letter.rows]
        rows += [bytes(wide)] * grain
    return Bitmap(tuple(rows[:-grain]), grain)
