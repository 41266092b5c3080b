"""A field with one motif, placed again and again at a step along the thread."""

from __future__ import annotations

from engine.errors import EngineError
from engine.pattern.lattice import first_of_row
from engine.pattern.starts.start import Answers, Asked, Start, lines_of, number

GROUND = ".·-"
MOST_ROWS = 60


def placed(around: int, colours: int, answers: Answers) -> bytes:
    """The motif once, on as many beads of ground as the step has.

    A step of 2N + 1 beads or a multiple stands straight above the last one; any other leans, or winds round the rope.
    Raises EngineError where the motif is larger than the step or the rope, or has a letter that is no colour.
    """
    step, motif = number(answers, "step"), offsets(around, colours, lines_of(answers, "motif"))
    first = min(place for place, _ in motif)
    beads = bytearray(step)
    seen: set[int] = set()
    for place, colour in motif:
        at = (place - first) % step
        if at in seen:
            raise EngineError(f"The motif covers itself: {step:,} beads are too short a step for it.", "step")
        seen.add(at)
        beads[at] = colour
    return bytes(beads)


def offsets(around: int, colours: int, text: str) -> list[tuple[int, int]]:
    """Beads of a motif, rows told from the top, odd ones half a bead in: places along the thread, and their colours.

    >>> offsets(6, 2, "B\\nBB")
    [(0, 1), (1, 1), (7, 1)]
    """
    lines = [line.rstrip() for line in text.upper().splitlines() if line.strip()]
    if not lines:
        raise EngineError("The motif has no rows; write one letter a bead, a dot for the background.", "motif")
    if len(lines) > MOST_ROWS:
        raise EngineError(f"The motif has {len(lines)} rows; at most {MOST_ROWS} are read.", "motif")
    cells = [
        (first_of_row(around, row) + column, _colour(letter, colours, len(lines) - row))
        for row, line in enumerate(reversed(lines))
        for column, letter in enumerate(_letters(line, around, len(lines) - row))
    ]
    motif = [(place, colour) for place, colour in cells if colour]
    if not motif:
        raise EngineError("The motif has no bead that differs from the background, which is A or a dot.", "motif")
    return motif


def _letters(line: str, around: int, number: int) -> str:
    letters = line.replace(" ", "")
    if len(letters) > around:
        raise EngineError(f"Row {number} of the motif has {len(letters)} beads; the rope is {around} around.", "motif")
    return letters


def _colour(letter: str, colours: int, row: int) -> int:
    colour = 0 if letter in GROUND else ord(letter) - ord("A")
    if not 0 <= colour < colours:
        known = ", ".join(chr(ord("A") + place) for place in range(colours))
        raise EngineError(
            f"Row {row} of the motif has “{letter}”; expected {known}, or a dot for the background.", "motif"
        )
    return colour


MOTIFS = (
    Start(
        key="motif",
        label="Motif on a field",
        words="A small figure, placed again and again; its step says whether it stands straight, leans or winds.",
        asks=(
            Asked(
                "motif",
                "Motif",
                ".B.\nBCB\nBB",
                "Rows from the top, one letter a bead, a dot for the background; every second row lies half a bead in.",
                lines=True,
            ),
            Asked("step", "Step, in beads", "50", "From one to the next along the thread.", least=1, most=20_000),
        ),
        colours=3,
        make=placed,
    ),
)
