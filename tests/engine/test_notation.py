"""Text to beads and back, and one sentence for every text that cannot be read."""

import tracemalloc

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.errors import NotationError
from engine.pattern.notation import MOST_BEADS, parse, parse_rows, write
from tests.pictures import assert_same_chart

CODES = ["A", "B", "CC", "X"]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("3A 2B", "3A 2B"),
        ("3 A,2 B", "3A 2B"),
        ("3a2b", "3A 2B"),
        ("A A\nA", "3A"),
        ("(A B)x2", "A B A B"),
        ("(A (B 2A) x2)x2 B", "A B 2A B 3A B 2A B 2A B"),
        ("(A B)", "A B"),
        ("2cc X", "2CC X"),
        ("(A) × B".replace("× ", ""), "A B"),
        ("(A)×3", "3A"),
        ("(A) X", "A X"),
    ],
)
def test_counts_codes_and_groups_are_read(text, said):
    assert write(parse(text, CODES), CODES) == said


def test_stringing_order_is_read_backwards():
    assert write(parse("3A 2B X", CODES, strung=True), CODES) == "X 2B 3A"
    assert write(parse("3A 2B", CODES), CODES, strung=True) == "2B 3A"


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("3A 2Q", "Line 1, column 5: “Q” is not a code of the palette; expected one of A, B, CC."),
        ("A\n0 B", "Line 2, column 1: a count is nought; expected 1 or more."),
        ("A (B", "Line 1, column 3: this bracket is never closed; expected “)”."),
        ("A) B", "Line 1, column 2: this bracket closes nothing; expected a count, a code or “(”."),
        ("A x4", "Line 1, column 3: “x” stands only behind a bracket and before a number, such as (A B)x4."),
        ("(A B)x", "Line 1, column 6: “x” stands only behind a bracket and before a number, such as (A B)x4."),
        ("", "Line 1, column 1: there are no beads; write counts and codes, such as 3A 2B."),
        ("A 3", "Line 1, column 3: a count has no code behind it: the text ends, expected one or two letters."),
        ("3(A)", "Line 1, column 1: a count cannot stand before a bracket; write it behind, such as (A B)x3."),
        ("A ()", "Line 1, column 3: this bracket is empty; expected beads in it."),
        ("ABC", "Line 1, column 1: “ABC” is too long for a code of one or two letters; set codes apart by spaces."),
        ("A + B", "Line 1, column 3: “+” cannot stand here; expected a count, a code or a bracket."),
        ("(A)x0", "Line 1, column 5: a count is nought; expected 1 or more."),
        ("9999999999A", "Line 1, column 1: this count is too large; a chart has at most 100,000 beads."),
    ],
)
def test_what_cannot_be_read_is_named_with_line_and_column(text, sentence):
    with pytest.raises(NotationError) as refused:
        parse(text, ["A", "B", "CC"])
    assert refused.value.message == sentence


def test_a_text_that_unfolds_to_too_many_beads_is_refused_without_unfolding_it():
    text = "(" * 8 + "A" + ")x99999" * 8
    tracemalloc.start()
    with pytest.raises(NotationError, match="more than 100,000"):
        parse(text, CODES)
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert peak < 2_000_000


def test_the_most_beads_are_read_and_one_more_is_not():
    assert len(parse(f"({MOST_BEADS // 2}A)x2", CODES)) == MOST_BEADS
    with pytest.raises(NotationError, match="more than 100,000"):
        parse(f"{MOST_BEADS}A B", CODES)


def test_brackets_are_nested_only_so_deep():
    with pytest.raises(NotationError, match="more than 40 deep"):
        parse("(" * 100_000, CODES)


@given(st.binary(min_size=1, max_size=300).map(lambda beads: bytes(bead % 4 for bead in beads)))
def test_chart_to_text_to_chart_gives_the_chart(beads):
    assert parse(write(beads, CODES), CODES) == beads
    assert parse(write(beads, CODES, strung=True), CODES, strung=True) == beads


@given(st.text(alphabet="ABCXx0123456789() ,\n×é½٣", max_size=60) | st.text(max_size=60))
def test_any_text_gives_beads_or_one_sentence(text):
    try:
        assert 1 <= len(parse(text, CODES)) <= MOST_BEADS
    except NotationError as refused:
        assert refused.message.startswith(f"Line {refused.line}, column {refused.column}: ")
        assert refused.message.endswith(".")
        assert "\n" not in refused.message


def test_rows_of_letters_are_read_as_they_are_drawn():
    beads = parse_rows(" CCC\nAABB", 3, "ABC")
    assert_same_chart(
        3,
        beads,
        """\
         C C C
        A A B B""",
    )
    assert write(beads, "ABC") == "2A 2B 3C"


def test_only_the_top_row_may_be_short():
    assert write(parse_rows("C\nAABB", 3, "ABC"), "ABC") == "2A 2B C"
    with pytest.raises(NotationError) as refused:
        parse_rows("CCC\nAAB", 3, "ABC")
    assert refused.value.message == (
        "Line 2, column 1: this row has 3 beads; expected 4, because drawn rows hold one bead more and as many as the "
        "rope is around, by turns, from the bottom."
    )


def test_a_letter_that_the_palette_lacks_is_named_by_row_and_column():
    with pytest.raises(NotationError, match="Line 1, column 4: “z” is not a code"):
        parse_rows("A Az\nAABB", 3, "ABC")


def test_no_rows_are_refused():
    with pytest.raises(NotationError, match="there are no rows"):
        parse_rows(" \n\t\n", 3, "ABC")
