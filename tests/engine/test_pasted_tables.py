"""Tables pasted as text: drawn rows and rounds, letters and colours, each cell a bead."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.errors import NotationError
from engine.pattern.chart import Chart
from engine.pattern.starts.pasted_tables import BOTTOM, TOP, read_table


def test_rows_by_turns_are_drawn_rows_of_the_lattice() -> None:
    table = read_table("A\tB\tA\tB\nA\tA\tA\nB\tB\tB\tB")
    assert (table.around, table.rounds, table.codes) == (3, False, ("A", "B"))
    assert table.beads == bytes([1, 1, 1, 1, 0, 0, 0, 0, 1, 0, 1])


def test_rows_of_one_length_are_rounds() -> None:
    table = read_table("ABBB\nBAAA")
    assert (table.around, table.rounds, table.beads) == (4, True, bytes([1, 0, 0, 0, 0, 1, 1, 1]))


def test_the_first_row_may_stand_at_the_top() -> None:
    assert read_table("A A A\nB B B", TOP).beads == bytes([0, 0, 0, 1, 1, 1])


def test_cells_may_be_colours() -> None:
    table = read_table("#fff,#102030,#fff\n#102030,#102030,#102030")
    assert (table.codes, table.colours) == (("A", "B"), ("#102030", "#ffffff"))
    assert table.beads == bytes([0, 0, 0, 1, 0, 1])


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("\n\n", "Line 1, column 1: there are no rows; paste one row a line, one bead a cell."),
        ("A B\nA B", "Line 2, column 1: the row has 2 cells; expected 3 to 61, as many as go around."),
        ("A B C D E\nA B C D\nA B C D", "Line 1, column 1: this row has 5 cells; expected 4."),
        ("A 3 A", "Line 1, column 2: cell 2 holds “3”; expected one or two letters, or a colour such as #2f7f76."),
        ("A B C\nA B C\nA B\nA B C", "Line 3, column 1: this row has 2 cells; expected 3."),
        ("A B C D\nA B C D\nA B C\nA B C D", "Line 1, column 1: this row has 4 cells; expected 3, because"),
    ],
)
def test_what_cannot_be_read_is_named_with_its_place(text: str, sentence: str) -> None:
    with pytest.raises(NotationError) as refused:
        read_table(text)
    assert refused.value.message.startswith(sentence)


@given(st.integers(3, 60), st.integers(4, 40), st.data())
def test_a_chart_told_as_letters_comes_back(around: int, rows: int, data) -> None:
    length = (2 * around + 1) * rows // 2
    beads = bytes(data.draw(st.lists(st.integers(0, 3), min_size=length, max_size=length)))
    chart = Chart(around, beads)
    lines = [" ".join("ABCD"[bead] for bead in chart.row(row)) for row in range(chart.rows)]
    table = read_table("\n".join(reversed(lines)), BOTTOM)
    codes = "ABCD"
    assert "".join(table.codes[bead] for bead in table.beads) == "".join(codes[bead] for bead in beads)
    assert (table.around, table.rounds) == (around, False)
