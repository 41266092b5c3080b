"""Palettes are checked once, and every colour has an ink that reads on it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.errors import EngineError
from engine.pattern.palette import Entry, Palette, contrast, ink_on

colours = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")


def test_entries_are_found_by_code():
    palette = Palette((Entry("A", "Sea", "#2f7f76"), Entry("BB", "Sand", "#f5eddc")))
    assert (palette.codes, palette.index("BB"), palette[0].name, len(palette)) == (("A", "BB"), 1, "Sea", 2)


@pytest.mark.parametrize(
    ("entries", "sentence", "field"),
    [
        ((), "A palette has 1 to 64 beads; this one has 0.", "palette"),
        (
            (Entry("A", "x", "#000000"), Entry("A", "y", "#111111")),
            "The code A stands twice in the palette; every bead needs its own.",
            "palette.1.code",
        ),
        (
            (Entry("ABC", "x", "#000000"),),
            "“ABC” is not a code; a code is one or two letters A to Z.",
            "palette.0.code",
        ),
        (
            (Entry("A", "x", "red"),),
            "“red” is not a colour; write # and six digits or letters a to f, such as #2f7f76.",
            "palette.0.colour",
        ),
        (
            (Entry("A", "  ", "#000000"),),
            "The name of bead A is empty; expected 1 to 120 characters.",
            "palette.0.name",
        ),
        (
            (Entry("A", "a\x00b", "#000000"),),
            "A character in the name of bead A cannot be printed; please type it anew.",
            "palette.0.name",
        ),
        (
            (Entry("A", "x", "#000000", "shiny"),),
            "Finish of bead A: “shiny” is not known here; expected one of opaque, "
            "transparent, matte, metallic, pearl, lined.",
            "palette.0.finish",
        ),
    ],
)
def test_a_palette_that_cannot_be_is_refused_by_name(entries, sentence, field):
    with pytest.raises(EngineError) as refused:
        Palette(entries)
    assert (refused.value.message, refused.value.field) == (sentence, field)


@given(colours)
def test_the_ink_reads_on_every_colour(colour):
    assert contrast(colour, ink_on(colour)) >= 4.5
