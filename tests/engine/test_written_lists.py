"""Lists in the ways in which people write them, all read to the same beads, or refused at their place."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.errors import NotationError
from engine.pattern.chart import runs
from engine.pattern.starts.written_lists import read_list

THREE_A_TWO_B = [(0, 3), (1, 2)]


def read(text: str) -> list[tuple[int, int]]:
    return list(runs(read_list(text).beads))


@pytest.mark.parametrize(
    "text",
    [
        "3A 2B",
        "3A2B",
        "3 A, 2 B",
        "A3 B2",
        "A3, B2",
        "3 x A, 2 x B",
        "A x 3; B x 2",
        "3 × A | 2 × B",
        "A=3, B=2",
        "A: 3\nB: 2",
        "A - 3\nB - 2",
        "1. 3 A\n2. 2 B",
        "12) 3 A\n13) 2 B",
        "Row 1: 3A\nRow 2: 2B",
        "List 1\n☐ 3 A ☐ 2 B\n= 5 so far",
        "3 white, 2 dark blue",
        "white x 3, dark blue x 2",
        "white 3\ndark blue 2\nTotal: 5 beads",
        "A A A B B",
        "List 1, for thread 1\n5 beads in 2 runs, 10 mm strung\n  3 A\n  2 B\n    = 5 so far",
    ],
)
def test_every_usual_way_of_writing_is_read(text: str) -> None:
    assert read(text) == THREE_A_TWO_B


def test_names_get_the_codes_that_are_free() -> None:
    palette = read_list("3 white, 2 B, 1 dark blue").palette
    assert [(bead.code, bead.name) for bead in palette] == [("A", "white"), ("B", ""), ("C", "dark blue")]


def test_codes_without_a_count_stand_between_those_with_one() -> None:
    assert read("4C A 2D B B 3A") == [(0, 4), (1, 1), (2, 2), (3, 2), (1, 3)]
    assert read("C4 A D2") == [(0, 4), (1, 1), (2, 2)]


def test_brackets_repeat() -> None:
    assert read("(3A 2B)x2 C") == [(0, 3), (1, 2), (0, 3), (1, 2), (2, 1)]


@pytest.mark.parametrize(
    ("text", "line", "column", "problem"),
    [
        ("", 1, 1, "there are no beads; write counts and codes, such as 3A 2B."),
        ("3A\n? 2B", 2, 1, "“? 2B” cannot stand here; expected a count, then a bead."),
        ("3A\n4", 2, 1, "the count 4 has no bead behind it."),
        ("3A 0B", 1, 4, "a count is nought; expected 1 or more."),
        ("3A 999999B", 1, 4, "the beads come to more than 100,000."),
    ],
)
def test_what_cannot_be_read_is_named_with_its_place(text: str, line: int, column: int, problem: str) -> None:
    with pytest.raises(NotationError) as refused:
        read_list(text)
    assert (refused.value.line, refused.value.column) == (line, column)
    assert refused.value.message == f"Line {line}, column {column}: {problem}"


LONG = 200_000


@pytest.mark.parametrize(
    "text",
    [
        f"A {'1' * LONG}x",
        f"A 1{' ' * LONG}2 1",
        f"A {'1 ' * LONG}",
        f"3A {'•' * LONG}x",
        f"3 A{' ' * LONG}x B !",
        f"row{' ' * LONG}1x1 !",
        f"1{' ' * LONG}. A !",
    ],
)
def test_a_long_line_of_nothing_is_refused_as_soon_as_a_short_one(text: str) -> None:
    with pytest.raises(NotationError, match="Line 1, column"):
        read_list(text)


WAYS = (
    lambda code, many: f"{many}{code}",
    lambda code, many: f"{many} x {code}",
    lambda code, many: f"{code}{many}",
    lambda code, many: f"{code} x {many}",
)
LISTS = st.lists(st.tuples(st.sampled_from("ABCD"), st.integers(1, 50)), min_size=1, max_size=30)


@given(LISTS, st.sampled_from(WAYS), st.sampled_from([" ", ", ", "\n", "; "]))
def test_a_list_written_in_one_way_is_read_bead_for_bead(told, way, apart: str) -> None:
    written = read_list(apart.join(way(code, many) for code, many in told))
    codes = [bead.code for bead in written.palette]
    assert "".join(codes[bead] for bead in written.beads) == "".join(code * many for code, many in told)
