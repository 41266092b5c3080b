"""Words on a rope: along it, or upright letter over letter, of our own pixels or from a bitmap drawn elsewhere."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import ceil

from engine.errors import EngineError, shortened
from engine.pattern.lattice import place
from engine.pattern.starts.bitmap import Bitmap, Letters, stacked
from engine.pattern.starts.pixel_letters import HIGH, MARKED, pixels
from engine.pattern.starts.start import Asked, Start, chosen, lines_of, number, of_a_chart

PIXEL, SANS, SERIF = "pixel", "sans", "serif"
ALONG, UPRIGHT = "along", "upright"
LONGEST_TEXT, MOST_GAP = 60, 400
SPACE = 2  # rows of a space between words, in pixel letters
INK = 0.5  # share of a bead's cell that a letter covers where the bead is of it
ROW = 0.866  # height of a drawn row in bead widths (√3 / 2)
LEAST_FONT = 8  # beads of height under which letters of a font are hard to read (our judgement)


@dataclass(frozen=True)
class Lettering(Start):
    """The start whose letters are drawn by whoever asks for it."""

    def beads(
        self, around: int, codes: Sequence[str], typed: Mapping[str, str], letters: Letters | None = None
    ) -> bytes:
        answers = self.answers(codes, typed)
        words, face, high = lines_of(answers, "text"), chosen(answers, "letters"), number(answers, "high")
        if high > around:
            raise EngineError(f"Letters {high} beads high find no room on a rope of {around} around.", "high")
        draw = drawn_in_pixels if face == PIXEL or letters is None else letters
        upright = chosen(answers, "way") == UPRIGHT
        drawn = stacked([draw(letter, face, high) for letter in words]) if upright else draw(words, face, high)
        return laid_out(around, drawn, upright, number(answers, "gap"))

    def note(self, around: int, typed: Mapping[str, str]) -> str:
        """What is worth knowing of letters of that size."""
        high, face = int(typed["high"]), typed["letters"]
        seen = (around + 1) // 2
        said = []
        if face != PIXEL and high < LEAST_FONT:
            said.append(f"Letters of a font {high} beads high are hard to read; take pixel letters, or a wider rope.")
        if typed["way"] == ALONG and high > seen:
            said.append(
                f"About {seen} beads are seen from one side, so letters {high} beads high reach round the rope."
            )
        return " ".join(said)


def drawn_in_pixels(text: str, face: str, high: int) -> Bitmap:
    """The text in our own pixel letters. Raises EngineError for a letter that is not drawn, and for another height."""
    if not high >= HIGH:
        raise EngineError(f"Pixel letters are {HIGH} beads high; {high} are too few to read.", "high")
    glyphs = [_glyph(letter) for letter in text]
    marked = any("X" in glyph[0] for glyph in glyphs)
    rows = [".".join(glyph[row] for glyph in glyphs) for row in range(0 if marked else 1, MARKED)]
    return Bitmap(tuple(bytes(255 if mark == "X" else 0 for mark in row) for row in rows), 1)


def _glyph(letter: str) -> tuple[str, ...]:
    if letter.isspace():
        return ("." * SPACE,) * MARKED
    glyph = pixels(letter)
    if glyph is None:
        raise EngineError(f"“{shortened(letter)}” is not among the pixel letters; take letters of a font.", "text")
    return glyph


def laid_out(around: int, letters: Bitmap, upright: bool, gap: int) -> bytes:
    """The chart with those letters and rows of ground behind them, in whole pairs of rows: it stands straight."""
    high, wide = len(letters.rows) / letters.grain, letters.wide / letters.grain
    rise = 1.0 if letters.grain == 1 else ROW
    rows = ceil((high if upright else wide) / rise)
    pairs = ceil((rows + gap) / 2)
    if (wide if upright else high) > around + 0.5:
        raise EngineError(
            f"The letters are {ceil(wide if upright else high)} beads wide; the rope is {around} around.", "text"
        )

    def inked(k: int) -> bool:
        row, x = place(around, k)
        along, across = (row + 0.5) * rise, x + (0.5 if letters.grain > 1 else 0.25)
        return _covered(letters, across, high - along) if upright else _covered(letters, along, across)

    return bytes(int(inked(k)) for k in range(of_a_chart(pairs * (2 * around + 1), "text")))


def _covered(letters: Bitmap, x: float, y: float) -> bool:
    """Whether the letters cover most of the bead whose middle lies there, in beads from the top left."""
    grain = letters.grain
    if grain == 1:
        return 0 <= y < len(letters.rows) and 0 <= x < letters.wide and letters.rows[int(y)][int(x)] > 0
    left, top = round((x - 0.5) * grain), round((y - 0.5) * grain)
    cell = [
        letters.rows[row][column]
        for row in range(max(0, top), min(len(letters.rows), top + grain))
        for column in range(max(0, left), min(letters.wide, left + grain))
    ]
    return sum(cell) >= INK * 255 * grain * grain


LETTERING = (
    Lettering(
        "lettering",
        "Lettering",
        "Words along the rope, or upright, one letter over the other.",
        (
            Asked(
                "text",
                "Words",
                "ROPE",
                "Latin with accents, Greek, Cyrillic, digits.",
                lines=True,
                longest=LONGEST_TEXT,
            ),
            Asked(
                "letters",
                "Letters",
                PIXEL,
                choices=((PIXEL, "Pixel letters, five beads high"), (SANS, "Sans serif"), (SERIF, "Serif")),
            ),
            Asked(
                "way", "They run", ALONG, choices=((ALONG, "along the rope"), (UPRIGHT, "upright, one over the other"))
            ),
            Asked("high", "Height, in beads", "5", "Of pixel letters 5; of a font 8 and up.", 5, 60),
            Asked("gap", "Rows behind", "6", "Ground before the words come again.", 0, MOST_GAP),
        ),
        2,
        lambda around, colours, answers: b"",
    ),
)
