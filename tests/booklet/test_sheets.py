"""Charts cut into sheets: every bead once, none too small, nothing beyond the paper."""

from __future__ import annotations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as some

from engine.booklet.papers import LARGE, PAPERS, paper
from engine.booklet.sheets import NARROW_SIDE, OVERLAP, cut, lay_out, overview
from engine.drawing.charts import ROW
from engine.errors import PatternError
from engine.pattern.lattice import first_of_row, rows
from engine.pattern.pattern import Pattern
from tests.booklets import palette, scattered


def sheets_of(pattern: Pattern, name: str = "A4", taken: float = 0.0, note: float = 0.0):
    layout = lay_out(pattern.around, rows(pattern.around, len(pattern.chart)), paper(name), taken, note)
    return layout, cut(pattern, layout)


@settings(max_examples=60)
@given(some.integers(3, 40), some.integers(1, 4000), some.sampled_from(PAPERS), some.floats(0, 40), some.floats(0, 45))
@example(60, 4000, "A4", 0.0, 0.0)
@example(60, 4000, "Letter", 0.0, 45.0)
def test_every_bead_stands_on_one_sheet_and_fits_the_paper(
    around: int, beads: int, name: str, taken: float, note: float
) -> None:
    pattern = Pattern("Plain", around, palette(1), bytes(beads))
    layout, sheets = sheets_of(pattern, name, taken, note)
    assert [bead for sheet in sheets for bead in range(sheet.own, sheet.last)] == list(range(beads))
    assert [sheet.number for sheet in sheets] == list(range(1, len(sheets) + 1))
    room = paper(name).text - NARROW_SIDE if layout.wide else paper(name).main
    for sheet in sheets:
        assert sheet.bead >= 2.2
        assert sheet.width <= room
        assert sheet.height <= paper(name).chart - taken - (note if sheet.number == 1 else 0)


def test_a_small_chart_is_one_sheet_with_large_beads() -> None:
    layout, (sheet,) = sheets_of(scattered(6, 78))
    assert (layout.bead, layout.wide) == (6.0, False)
    assert (sheet.first, sheet.last, sheet.row, sheet.top_row, sheet.pale) == (0, 78, 0, 12, 0.0)
    assert sheet.said == "Rows 1 to 12 of 12, rounds 1 to 13, beads 1 to 78."


def test_a_chart_of_one_bead_is_a_sheet() -> None:
    _, (sheet,) = sheets_of(Pattern("One", 3, palette(1), b"\0"))
    assert sheet.said == "Row 1 of 1, round 1, bead 1."


def test_the_next_sheet_shows_the_last_rows_of_the_one_before_again() -> None:
    _, sheets = sheets_of(scattered(12, 900))
    first, second = sheets
    assert second.own == first.last
    assert second.first == first_of_row(12, second.row - OVERLAP)
    assert second.pale == pytest.approx(OVERLAP * second.bead * ROW + 0.8, abs=0.01)
    assert (second.said, second.row, second.top_row) == (
        "Rows 37 to 72 of 72, rounds 38 to 75, beads 451 to 900.",
        36,
        72,
    )


def test_every_tenth_round_is_numbered_once() -> None:
    _, sheets = sheets_of(scattered(12, 900))
    assert [number.text for sheet in sheets for number in sheet.numbers] == [f"round {n}" for n in range(10, 80, 10)]
    assert all(0 < number.top < sheet.height for sheet in sheets for number in sheet.numbers)


def test_a_wide_chart_takes_the_room_of_the_side_column() -> None:
    layout, _ = sheets_of(scattered(60, 600))
    assert layout.wide and layout.bead >= 2.2


def test_the_frame_in_the_overview_marks_the_rows_of_the_sheet() -> None:
    pattern = scattered(12, 900)
    layout, sheets = sheets_of(pattern)
    small = overview(12, 72, layout)
    (top, height), (top_of_next, height_of_next) = (small.frame(sheet) for sheet in sheets)
    assert (top_of_next, height_of_next) == (0.0, pytest.approx(small.height / 2, abs=0.01))
    assert top + height == pytest.approx(small.height, abs=0.02)


def test_a_chart_too_wide_for_the_paper_is_refused_in_words() -> None:
    with pytest.raises(
        PatternError, match=r"A5 is too narrow for a chart of 60 around: its beads would be 1\.5 mm wide\. Choose A4"
    ):
        sheets_of(scattered(60, 120), "A5")


@pytest.mark.parametrize("around", [3, 12, 32])
def test_large_print_shows_large_beads_that_fit_its_column(around: int) -> None:
    pattern, page = scattered(around, 40 * around), paper("A4", LARGE)
    layout = lay_out(around, rows(around, len(pattern.chart)), page)
    assert layout.bead >= 4.0 and layout.word == ""
    assert all(sheet.width + page.numbers <= page.text and sheet.height <= page.chart for sheet in cut(pattern, layout))
