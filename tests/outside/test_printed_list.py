"""A published stringing sequence, printed in a booklet and read back from its text.

Source: beading magazine project "Crochet Rope", https://www.beadingmag.info/fire-polished/crochet-rope.html: seven groups
of six in stringing order, two kinds of beads written 8 and C.
"""

from __future__ import annotations

from engine.booklet.choices import Choices
from engine.counting.stringing import Run
from engine.pattern.notation import parse
from engine.pattern.pattern import Pattern
from tests.booklets import palette, print_of, read_lists, text_of

PUBLISHED = "8CCCCC 88CCCC 8C8CCC 8CC8CC 8CCC8C 8CCCC8 8CCCCC"
RUNS = (1, 5, 2, 4, 1, 1, 1, 3, 1, 2, 1, 2, 1, 3, 1, 1, 1, 4, 2, 5)


def test_a_published_stringing_sequence_is_printed_run_by_run() -> None:
    notation = " ".join(PUBLISHED.replace("8", "A").replace("C", "B").replace(" ", ""))
    pattern = Pattern("Published rope", 6, palette(2), parse(notation, ["A", "B"], strung=True))
    text = text_of(print_of(pattern, Choices()).pdf)
    assert read_lists(text) == [tuple(Run("AB"[i % 2], beads) for i, beads in enumerate(RUNS))]
    assert "End of list 1: 42 beads in 20 entries." in text
