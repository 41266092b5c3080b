"""What is drawn is read back out of the PDF's bytes: every symbol as itself, every bead as large as it was drawn."""

from __future__ import annotations

import pytest

from engine.booklet.proof.readback import ReadBead
from engine.drawing.charts import FILL
from engine.drawing.symbols import SYMBOLS
from engine.pattern.palette import Entry, Palette
from webapp.printing.figures import BeadFigure
from webapp.printing.pdf import write_pdf
from webapp.printing.proofread import read_back

SIDE = 7.0
ALL = Palette(
    tuple(
        Entry(f"{'ABCDEFGH'[i // 8]}{'ABCDEFGH'[i % 8]}", symbol.name, "#2f7f76", symbol=symbol.name)
        for i, symbol in enumerate(SYMBOLS)
    )
)


def read_beads(*indices: int) -> list[ReadBead]:
    """Those entries of the palette, drawn on one page and read back."""
    images = "".join(f'<img src="booklet:{i}" alt="A bead"/>' for i in indices)
    html = f'<html lang="en"><head><title>Symbols</title></head><body><p>{images}</p></body></html>'
    pdf = write_pdf(html, {f"booklet:{i}": BeadFigure(ALL, i, SIDE) for i in indices}).pdf
    return [bead for page in read_back(pdf).pages for bead in page.beads]


def test_every_symbol_among_all_the_others_is_read_as_it_is_alone() -> None:
    together = read_beads(*range(len(ALL)))
    assert len({bead.symbol for bead in together}) == len(SYMBOLS) == 64
    for index, bead in enumerate(together):
        (alone,) = read_beads(index)
        assert bead.symbol == alone.symbol, SYMBOLS[index].name
        assert bead[6:] == pytest.approx(alone[6:], abs=0.001)


def test_every_bead_is_read_back_as_large_as_it_was_drawn() -> None:
    for bead in read_beads(*range(len(ALL))):
        assert bead.colour == "#2f7f76" and bead.of_list
        assert (bead.width, bead.height) == pytest.approx((FILL * SIDE, FILL * SIDE), abs=0.01)


def test_bytes_that_are_no_pdf_are_refused() -> None:
    with pytest.raises(ValueError, match="not a PDF"):
        read_back(b"no PDF")
