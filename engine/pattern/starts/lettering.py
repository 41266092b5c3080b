"""Words on a rope: along it, or upright letter over letter, of our own pixels or from a bitmap drawn elsewhere."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import ceil
from unicodedata import combining, normalize

from engine.errors import EngineError, shortened
from engine.pattern.chart import Chart
from engine.pattern.lattice import place
from engine.pattern.starts.bitmap import Bitmap, Letters, beside, stacked
from engine.pattern.starts.pixel_letters import ABOVE, BELOW, HIGH, pixels
from engine.pattern.starts.start import Answers, Asked, Start, chosen, lines_of, number, of_a_chart

PIXEL, SANS, SERIF = "pixel", "sans", "serif"
ALONG, UPRIGHT = "along", "upright"
RIGHT, LEFT = "right", "left"
LONGEST_TEXT, MOST_GAP, MOST_SPACING = 60, 400, 40
INK = 0.5  # share of a bead's cell that a letter covers where the bead is of it
ROW = 0.866  # height of a drawn row in bead widths (√3 / 2)
LEAST_FONT = 8  # beads of height under which letters of a font are hard to read (our judgement)


@dataclass(frozen=True)
class Lettering(Start):
    """The start whose letters are drawn by whoever asks for it, and whose words read in the hand that is chosen."""

    def beads(
        self, around: int, codes: Sequence[str], typed: Mapping[str, str], letters: Letters | None = None
    ) -> bytes:
        answers = self.answers(codes, typed)
        high = number(answers, "high")
        if high > around:
            raise EngineError(f"Letters {high} beads high find no room on a rope of {around} around.", "high")
        upright = chosen(answers, "way") == UPRIGHT
        beads = laid_out(around, written(answers, upright, letters), upright, number(answers, "gap"))
        return Chart(around, beads).turned_rows().beads if chosen(answers, "hand") == LEFT else beads

    def hand(self, typed: Mapping[str, str]) -> str:
        return typed.get("hand") or RIGHT

    def note(self, around: int, typed: Mapping[str, str]) -> str:
        """What is worth knowing of letters of that size, and of the other hand."""
        high, face = int(typed["high"]), typed["letters"]
        seen = (around + 1) // 2
        notes = []
        if face != PIXEL and high < LEAST_FONT:
            notes.append(f"Letters of a font {high} beads high are hard to read; take pixel letters, or a wider rope.")
        if face == PIXEL and high % HIGH:
            notes.append(f"Pixel letters are drawn {high // HIGH * HIGH} beads high, the next height that they have.")
        if typed["way"] == ALONG and high > seen:
            notes.append(
                f"About {seen} beads are seen from one side, so letters {high} beads high reach round the rope."
            )
        if self.hand(typed) == LEFT:
            notes.append("Laid for the left hand: worked with the right one, the words come out mirrored.")
        return " ".join(notes)


def written(answers: Answers, upright: bool, letters: Letters | None) -> Bitmap:
    """The words as they were asked for; `letters` draw those of a font. Raises EngineError."""
    face, high, spacing = chosen(answers, "letters"), number(answers, "high"), number(answers, "spacing")
    words = [list(letters_of(word)) for word in lines_of(answers, "text").split()]
    every = [letter for word in words for letter in word]
    if not every:
        raise EngineError("There are no words; write a letter or more.", "text")
    gaps = [gap for word in words for gap in (*[spacing] * (len(word) - 1), number(answers, "between_words"))]
    draw = drawn_in_pixels if face == PIXEL or letters is None else letters
    if upright:
        return stacked([draw((letter,), face, high)[0] for letter in every], gaps)
    return beside(draw(every, face, high), gaps)


def letters_of(word: str) -> Iterator[str]:
    """The letters of a word, each with its marks."""
    letter = ""
    for sign in normalize("NFC", word):
        if letter and not combining(sign):
            yield letter
            letter = ""
        letter += sign
    if letter:
        yield letter


def drawn_in_pixels(letters: Sequence[str], face: str, high: int) -> tuple[Bitmap, ...]:
    """The letters in our own pixels, as many times HIGH as find room in that height.

    Raises EngineError for a letter that is not drawn, and for too small a height.
    """
    if not high >= HIGH:
        raise EngineError(f"Pixel letters are {HIGH} beads high; {high} are too few to read.", "high")
    glyphs = [_glyph(letter) for letter in letters]
    first = 0 if any("X" in row for glyph in glyphs for row in glyph[:ABOVE]) else ABOVE
    last = ABOVE + HIGH + (BELOW if any("X" in row for glyph in glyphs for row in glyph[ABOVE + HIGH :]) else 0)
    return tuple(_bitmap(glyph[first:last], high // HIGH) for glyph in glyphs)


def _bitmap(rows: Sequence[str], size: int) -> Bitmap:
    """Those rows of marks, each of them so many beads wide and high."""
    inked = (bytes(255 if mark == "X" else 0 for mark in row for _ in range(size)) for row in rows)
    return Bitmap(tuple(row for row in inked for _ in range(size)), 1)


def _glyph(letter: str) -> tuple[str, ...]:
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
        size = f"{ceil(wide)} beads wide" if upright else f"{ceil(high)} beads high with their marks and tails"
        raise EngineError(f"The letters are {size}; the rope is {around} around.", "text")

    before = int((around + 0.5 - (wide if upright else high)) / 2)  # pictures show the middle of the chart in front

    def inked(k: int) -> bool:
        row, x = place(around, k)
        along, across = (row + 0.5) * rise, x - before + (0.5 if letters.grain > 1 else 0.25)
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
        key="lettering",
        label="Lettering",
        words="Words along the rope, or upright, one letter over the other.",
        asks=(
            Asked(
                "text",
                "Words",
                "ROPE",
                "Latin with accents, Greek, Cyrillic, digits, a few signs.",
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
            Asked(
                "high",
                "Height, in beads",
                "5",
                "Of pixel letters 5, 10 and so on; of a font 8 and up.",
                least=5,
                most=60,
            ),
            Asked(
                "spacing",
                "Between letters, in beads",
                "1",
                "From the ink of one to that of the next.",
                least=0,
                most=MOST_SPACING,
            ),
            Asked("between_words", "Between words, in beads", "4", "", least=0, most=MOST_SPACING),
            Asked(
                "hand",
                "Worked with",
                RIGHT,
                "Worked with the other hand, words come out mirrored.",
                choices=((RIGHT, "the right hand"), (LEFT, "the left hand")),
            ),
            Asked("gap", "Rows behind", "6", "Background before the words come again.", least=0, most=MOST_GAP),
        ),
        colours=2,
        make=lambda around, colours, answers: b"",
    ),
)
