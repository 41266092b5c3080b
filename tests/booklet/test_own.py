"""The maker's own words: kept by place, bounded, set with light markup and nothing else."""

import pytest
from hypothesis import given
from hypothesis import strategies as some

from engine.booklet.markup import Block, Span, blocks, lines_taken, spans
from engine.booklet.own import PLACES, OwnWords
from engine.errors import PatternError


def test_empty_lines_part_paragraphs_and_lines_that_follow_one_another_are_one() -> None:
    assert blocks("First line\ngoes on.\n\nSecond.") == (
        Block("text", ((Span("First line goes on.", False),),)),
        Block("text", ((Span("Second.", False),),)),
    )


def test_dashes_make_a_list_and_numbers_make_steps() -> None:
    found = blocks("Sizes:\n- small\n- large\n1. Wax it\n   well.\n2) Wait.")
    assert [(block.sort, ["".join(span.text for span in line) for line in block.lines]) for block in found] == [
        ("text", ["Sizes:"]),
        ("list", ["small", "large"]),
        ("steps", ["Wax it well.", "Wait."]),
    ]


def test_a_note_takes_its_lines_and_half_a_line_behind_every_entry() -> None:
    assert lines_taken(blocks("Work it tight.\n\n- small\n- large"), 40) == 4.5
    assert lines_taken(blocks("x" * 81), 40) == 3.5 and lines_taken((), 40) == 0


@pytest.mark.parametrize(
    ("line", "strong"),
    [
        ("pull it *tight* now", ["tight"]),
        ("*all of it*", ["all of it"]),
        ("2 * 3 * 4", []),
        ("a*b*c", []),
        ("* not *", []),
        ("<b>not</b> **this**", []),
    ],
)
def test_stars_round_a_word_make_it_bold_and_nothing_else_does(line: str, strong: list[str]) -> None:
    found = spans(line)
    assert [span.text for span in found if span.strong] == strong
    assert line.replace("*", "") == "".join(span.text for span in found).replace("*", "")


@given(some.text(alphabet="ab *-1.\n<&", max_size=60))
def test_no_letter_of_a_text_is_lost(text: str) -> None:
    kept = "".join(span.text for block in blocks(text) for line in block.lines for span in line)
    letters = "ab<&"
    assert [letter for letter in kept if letter in letters] == [letter for letter in text if letter in letters]


def test_words_are_kept_in_the_order_of_the_booklet_and_empty_ones_left_out() -> None:
    own = OwnWords((("tips", " Wax it. "), ("need", ""), ("introduction", "Hello.\r\nAgain.")))
    assert own.texts == (("introduction", "Hello.\nAgain."), ("tips", "Wax it."))
    assert own.text("need") == "" and own.title == "From the maker" and bool(own) and not OwnWords()


def test_a_place_that_there_is_not_and_a_text_too_long_are_refused_at_their_place() -> None:
    with pytest.raises(PatternError, match="There is no place “cover” in a booklet"):
        OwnWords((("cover", "x"),))
    with pytest.raises(PatternError, match=r"This text has 20,001 letters; at most 20,000 are printed") as refused:
        OwnWords((("care", "x" * 20_001),))
    assert refused.value.field == "care" and "care" in PLACES


@pytest.mark.parametrize(
    ("written", "printed"),
    [
        ("8 to 10", "8 to 10 hours"),
        ("12–15", "12–15 hours"),
        ("1", "1 hour"),
        ("2.5", "2.5 hours"),
        ("two evenings", "two evenings"),
        ("", ""),
    ],
)
def test_hours_may_be_numbers_or_words(written: str, printed: str) -> None:
    assert OwnWords((("hours", written),)).hours == printed


def test_hours_have_one_short_line() -> None:
    with pytest.raises(PatternError, match="41 letters; at most 40 are printed"):
        OwnWords((("hours", "x" * 41),))
