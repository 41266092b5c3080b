"""Ropes of several parts, and of a number of beads whatever length was asked for."""

from __future__ import annotations

from hypothesis import strategies as st

from engine.counting.questions import Question
from engine.counting.sizes import Size, size_of_shares
from engine.counting.workshop import Workshop
from engine.pattern.part import MOST_PARTS, Part
from engine.pattern.pattern import Pattern
from engine.pattern.shares import shared
from tests.pictures import palette

CHARTS = st.binary(min_size=1, max_size=30).map(lambda some: bytes(bead % 4 for bead in some))
FIXED = st.builds(Part, st.sampled_from(["Head", "Focal", "Tail"]), CHARTS, st.integers(1, 5))
FILLS = st.builds(Part, st.sampled_from(["Rope", "Back"]), CHARTS, st.none())


@st.composite
def in_parts(draw) -> Pattern:
    """Any pattern of 1 to 12 parts, no two that fill side by side, on the palette of `pictures`."""
    parts = draw(st.lists(FIXED, max_size=6))
    for place in sorted(draw(st.sets(st.integers(0, len(parts)), min_size=not parts)), reverse=True):
        parts.insert(place, draw(FILLS))
    return Pattern("Parts", draw(st.integers(3, 12)), palette(), in_parts=tuple(parts[:MOST_PARTS]))


def size_of_beads(pattern: Pattern, question: Question, beads: int, workshop: Workshop | None = None) -> Size:
    """The size of a rope of so many beads; between parts it may end inside a pass."""
    return size_of_shares(pattern, question, shared(pattern.parts, beads - pattern.fixed_beads), workshop)
