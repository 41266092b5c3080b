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


Letters = Callable[[Sequence[str], str, int], tuple[Bitmap, ...]]
"""Draws letters in a face, so many beads high: each as wide as its ink, all on one line and equally high."""


def beside(letters: Sequence[Bitmap], gaps: Sequence[int]) -> Bitmap:
    """Letters of one height beside one another; `gaps` are the beads behind each, but for the last."""
    grain = letters[0].grain
    between = [bytes(gap * grain) for gap in [*gaps[: len(letters) - 1], 0]]
    rows = zip(*(letter.rows for letter in letters), strict=True)
    return Bitmap(
        tuple(b"".join(part + gap for part, gap in zip(row, between, strict=True)) for row in rows),
        grain,
    )


def stacked(letters: Sequence[Bitmap], gaps: Sequence[int]) -> Bitmap:
    """Letters one under the other, each in the middle; `gaps` are the beads under each, but for the last."""
    wide, grain = max(letter.wide for letter in letters), letters[0].grain
    rows: list[bytes] = []
    for letter, gap in zip(letters, [*gaps[: len(letters) - 1], 0], strict=True):
        left = (wide - letter.wide) // 2
        rows += [bytes(left) + row + bytes(wide - left - letter.wide) for row in letter.rows]
        rows += [bytes(wide)] * (gap * grain)
    return Bitmap(tuple(rows), grain)
