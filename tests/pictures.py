"""Charts told as letter pictures, and a comparison that names the first bead that differs."""

from __future__ import annotations

from textwrap import dedent

from engine.pattern.chart import letter_picture
from engine.pattern.notation import parse_rows
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern

COLOURS = {"A": "#1d3350", "B": "#f2e8d5", "C": "#b23a30", "D": "#dfa63a"}


def palette(codes: str = "ABCD") -> Palette:
    """A palette of single letters."""
    return Palette(tuple(Entry(code, f"Bead {code}", COLOURS.get(code, "#8a97a3")) for code in codes))


def chart(picture: str, around: int, codes: str = "ABCD") -> bytes:
    """Beads in working order of a letter picture, last row on top."""
    return parse_rows(dedent(picture), around, codes)


def pattern(picture: str, around: int, codes: str = "ABCD", **words: object) -> Pattern:
    """A pattern whose chart is that picture."""
    return Pattern(title="Trial", around=around, palette=palette(codes), chart=chart(picture, around, codes), **words)  # type: ignore[arg-type]


def assert_same_chart(around: int, beads: bytes, picture: str, codes: str = "ABCD") -> None:
    """Fails with round and place of the first bead that is not as the picture has it."""
    expected = chart(picture, around, codes)
    for k, (found, wanted) in enumerate(zip(beads, expected, strict=False)):
        assert found == wanted, (
            f"bead {k + 1} (round {k // around + 1}, place {k % around + 1}) is {codes[found]}, expected {codes[wanted]}:\n"
            f"{letter_picture(around, beads, codes)}"
        )
    assert len(beads) == len(expected)
