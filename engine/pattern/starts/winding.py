"""Starts that follow the thread: rings of whole rounds, spirals of any repeat, and stripes along the rope."""

from __future__ import annotations

from engine.pattern.starts.start import Answers, Asked, Start, of_a_chart, row_of_beads


def rings(around: int, colours: int, answers: Answers) -> bytes:
    """Whole rounds, one a letter."""
    rounds = row_of_beads(answers, "rounds")
    of_a_chart(around * len(rounds))
    return b"".join(bytes([bead]) * around for bead in rounds)


def spiral(around: int, colours: int, answers: Answers) -> bytes:
    """The repeat itself: said again and again, it winds as its length and the number around have it."""
    return row_of_beads(answers, "repeat")


def stripes(around: int, colours: int, answers: Answers) -> bytes:
    """A pair of rows, in which a bead takes the colour of its place round the rope.

    Rows hold 2N + 1 places half a bead apart, so the pair repeats straight along the rope.
    """
    across, places = row_of_beads(answers, "across"), 2 * around + 1
    return bytes(across[2 * k % places * len(across) // places] for k in range(places))


WINDING = (
    Start(
        key="rings",
        label="Rings",
        words="Rounds of one colour, one after another.",
        asks=(
            Asked(
                "rounds",
                "Rounds",
                "3A 2B A 2B",
                "One letter a round: 3A 2B is three rounds of A, then two of B.",
                beads=True,
            ),
        ),
        colours=2,
        make=rings,
    ),
    Start(
        key="spiral",
        label="Spiral",
        words="A short repeat, strung again and again. How it winds follows from its length and the number around.",
        asks=(Asked("repeat", "Repeat", "4A 3B", "The beads that are strung again and again.", beads=True),),
        colours=2,
        make=spiral,
    ),
    Start(
        key="stripes",
        label="Stripes along the rope",
        words="Colours side by side, straight along the rope.",
        asks=(
            Asked("across", "Across", "3A 2B A 2B", "Once round the rope; longer runs are wider stripes.", beads=True),
        ),
        colours=2,
        make=stripes,
    ),
)
