"""Mistakes in a stretch that was strung: found, named by run and round, with what to do; and places told honestly."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.alignment import EXTRA, MISSING, least_changes, steps
from engine.counting.mistakes import UNKNOWN, find_mistakes, mistake_in_words, read_stretch, remedy_in_words
from engine.counting.questions import Question
from engine.counting.sizes import size
from engine.counting.stringing import string
from engine.errors import EngineError
from engine.pattern.notation import parse
from engine.pattern.pattern import Pattern
from tests.pictures import palette

CHART = parse("3A 2B 4C A 2D 5A B 3C 2A 4B C 2A 3D", "ABCD")
SIZE = size(Pattern("Trial", 6, palette(), CHART), Question())
LIST = string(SIZE)


def found(text: str, strung: bool = False):
    return find_mistakes(SIZE, LIST, read_stretch(text, SIZE.pattern.palette), strung)


def words(text: str, strung: bool = False) -> list[str]:
    return [mistake_in_words(mistake, strung) for mistake in found(text, strung).mistakes]


def test_a_right_stretch_fits_without_a_mistake_also_from_the_middle_of_a_run() -> None:
    fit = found("1B 4C A 2D 4A")
    assert (fit.first, fit.last, fit.turned, fit.mistakes) == (5, 16, False, ())


def test_a_missing_bead_is_named_by_its_run_or_by_its_round() -> None:
    assert words("3A 2B 3C A 2D 5A") == ["Round 1, place 6: 3 C, where 4 C belong; 1 bead is missing."]
    assert words("5A 2D A 3C 2B 3A", strung=True) == ["Run 11 of thread 1: 3 C, where 4 C belong; 1 bead is missing."]


def test_a_bead_too_many_a_wrong_colour_and_exchanged_runs_are_told_apart() -> None:
    assert words("2B 4C A 3D 5A B 3C") == ["Round 2, place 5: 3 D, where 2 D belong; 1 bead too many."]
    assert words("2B 4C D 2D 5A B 3C") == ["Round 2, place 4: 1 D, where 1 A belongs; a wrong colour."]
    assert words("2B 4C A 2D 5A 3C B 2A 4B C") == [
        "Round 3, place 6: 3 C 1 B, where 1 B 3 C belong; two runs are exchanged."
    ]


def test_several_mistakes_stand_in_the_order_of_the_stretch() -> None:
    kinds = [mistake.kind for mistake in found("3A 2B 3C A 2D 5A B 3C 2A 5B C 2A 3D").mistakes]
    assert kinds == ["missing", "too many"]
    backwards = [mistake.kind for mistake in found("3D 2A C 5B 2A 3C B 5A 2D A 3C 2B 3A", True).mistakes]
    assert backwards == ["too many", "missing"]


def test_a_stretch_that_was_read_the_other_way_is_said_to_be() -> None:
    fit = found("5A 2D A 4C 2B 3A")
    assert (fit.turned, fit.mistakes) == (True, ())


def test_where_several_places_fit_it_says_how_many() -> None:
    plain = size(Pattern("Plain", 6, palette(), parse("(5A B)x4 2C", "ABCD")), Question())
    fit = find_mistakes(plain, string(plain), read_stretch("5A B 3A", palette()), False)
    assert (fit.places, fit.mistakes) == (3, ())
    rope = size(Pattern("Rope", 6, palette(), parse("5A B", "AB")), Question(length_mm=300))
    assert find_mistakes(rope, string(rope), read_stretch("3A B 5A B", palette()), False).places == 1


def test_of_several_repeats_the_one_that_is_strung_or_worked_first_is_taken() -> None:
    rope = size(Pattern("Rope", 6, palette(), CHART), Question(length_mm=300))
    worked = find_mistakes(rope, string(rope), read_stretch("3A 2B 4C", palette()), False)
    strung = find_mistakes(rope, string(rope), read_stretch("4C 2B 3A", palette()), True)
    assert worked.first == 1
    assert strung.last > rope.beads - len(CHART)


def test_what_fits_nowhere_is_said_to() -> None:
    assert found("D C D C D C D C D C D C") is None


def test_a_bead_that_the_pattern_does_not_have_is_a_wrong_one() -> None:
    assert read_stretch("3A 2X", palette()) == bytes([0, 0, 0, UNKNOWN, UNKNOWN])
    assert words("3A 2B 3C E A 2D") == ["Round 2, place 3: 3 C 1 ?, where 4 C belong; a wrong colour."]


def test_names_of_beads_are_read_as_well_as_codes() -> None:
    assert read_stretch("3 x bead A, 2 x bead B", palette()) == bytes([0, 0, 0, 1, 1])


def test_what_to_do_begins_with_what_is_easiest() -> None:
    missing, too_many = found("3A 2B 3C A 2D 5A").mistakes[0], found("2B 4C A 3D 5A B 3C").mistakes[0]
    assert "sew it on with a needle" in remedy_in_words(missing)
    assert "eyes covered" in remedy_in_words(too_many)


@pytest.mark.parametrize("text", ["3A", "2001A"])
def test_too_short_or_too_long_a_stretch_is_refused(text: str) -> None:
    with pytest.raises(EngineError, match="cannot be looked for; type 6 to 2,000 of what was strung") as refused:
        found(text)
    assert refused.value.field == "stretch"


ROWS = st.binary(min_size=1, max_size=12).map(lambda some: bytes(bead % 3 for bead in some))


@given(ROWS, ROWS)
def test_the_fewest_changes_are_those_of_the_textbook(long: bytes, short: bytes) -> None:
    """The edit distance to every stretch of the long row, worked out cell by cell."""

    def distance(one: bytes, other: bytes) -> int:
        row = list(range(len(other) + 1))
        for i, bead in enumerate(one, 1):
            before, row[0] = row[0], i
            for j, own in enumerate(other, 1):
                before, row[j] = row[j], min(before + (bead != own), row[j] + 1, row[j - 1] + 1)
        return row[-1]

    least = [min(distance(long[first:end], short) for first in range(end + 1)) for end in range(len(long) + 1)]
    assert list(least_changes(long, short)) == least


@given(ROWS, ROWS)
def test_the_steps_turn_the_stretch_into_what_the_rope_has(long: bytes, short: bytes) -> None:
    sums = least_changes(long, short)
    end = int(sums.argmin())
    taken = steps(long, short, end, int(sums[end]))
    assert bytes(short[step.short] for step in taken if step.kind != MISSING) == short
    laid = [step.long for step in taken if step.kind != EXTRA]
    assert laid == list(range(end - len(laid), end))
    assert sum(step.kind != "same" for step in taken) == sums[end]
