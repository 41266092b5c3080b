"""Three booklets say today what they said when they were last looked at: a change of their pages is meant, or a fault.

What is set is compared, not the PDF, whose bytes also hold what zlib and Pango are on a computer. Whoever changes a page on
purpose looks at it, and then writes the new sum here; the failing test names it.
"""

from hashlib import sha256

import pytest

from engine.booklet.choices import Choices
from engine.booklet.compose import compose
from engine.counting.questions import Question
from engine.pattern.pattern import left_handed
from tests.booklets import IMPRINT, clasp, scattered
from webapp.printing.html import page

WALL = scattered(12, 900)
SUMS = {
    "clasp, A4": (WALL, clasp(380.0, imprint=IMPRINT, date="2026-11-23", revision=3), "10e57b066f6525b6"),
    "ring, left hand, UK": (
        left_handed(scattered(8, 320)),
        Choices(Question(200.0, "ring"), terms="uk"),
        "6a0c85012c08ca94",
    ),
    "glued, large print, Letter, inches": (
        scattered(6, 60),
        Choices(Question(400.0, "glued"), paper="Letter", format="large-print", units="in"),
        "78f5c138ccec1417",
    ),
}


@pytest.mark.parametrize("name", SUMS)
def test_the_pages_of_a_booklet_stay_as_they_were(name):
    pattern, choices, known = SUMS[name]
    html, _ = page(compose(pattern, choices), {})
    assert sha256(html.encode()).hexdigest()[:16] == known
