"""All short repeats: as many as the theory of necklaces and bracelets says, and each as it was wanted."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.errors import EngineError
from engine.pattern.repeats import repeat
from engine.pattern.starts.small_repeats import (
    MOST_FOUND,
    Wanted,
    bracelets,
    first_rotation,
    longest_run,
    necklaces,
    search,
)

# Counted by the formulas that are published for necklaces, bracelets and Lyndon words (OEIS A000031, A000029, A001037).
NECKLACES = [2, 3, 4, 6, 8, 14, 20, 36, 60, 108, 188, 352]
OF_THREE = [3, 6, 11, 24, 51, 130, 315, 834]
BRACELETS = [2, 3, 4, 6, 8, 13, 18, 30, 46, 78, 126, 224]
LYNDON = [2, 1, 2, 3, 6, 9, 18, 30, 56, 99, 186, 335]


def found(length: int, colours: int = 2, **others: object) -> int:
    result = search(Wanted(length, colours, **{"whole": False, "every": False, **others}))
    assert result.all
    return len(result.repeats)


def test_there_are_as_many_repeats_as_necklaces() -> None:
    assert [found(length) for length in range(1, 13)] == NECKLACES
    assert [found(length, 3) for length in range(1, 9)] == OF_THREE
    assert [necklaces(length, 2) for length in range(1, 13)] == NECKLACES
    assert [necklaces(length, 3) for length in range(1, 9)] == OF_THREE


def test_with_reversals_there_are_as_many_as_bracelets() -> None:
    assert [found(length, both_ways=True) for length in range(1, 13)] == BRACELETS
    assert [bracelets(length, 2) for length in range(1, 13)] == BRACELETS


def test_those_with_no_shorter_repeat_are_as_many_as_lyndon_words() -> None:
    assert [found(length, whole=True) for length in range(1, 13)] == LYNDON


@given(st.integers(2, 7), st.integers(2, 4), st.data())
def test_what_is_found_is_as_it_was_wanted_and_nothing_that_fits_is_missing(length: int, colours: int, data) -> None:
    counts = data.draw(st.lists(st.none() | st.integers(0, length), max_size=colours))
    run, both_ways = data.draw(st.integers(0, length)), data.draw(st.booleans())
    whole, every = data.draw(st.booleans()), data.draw(st.booleans())
    if sum(count or 0 for count in counts) > length:
        return
    wanted = Wanted(length, colours, tuple(counts), run, whole, both_ways, every)
    some = bytes(data.draw(st.lists(st.integers(0, colours - 1), min_size=length, max_size=length)))
    repeats = search(wanted).repeats
    assert list(repeats) == sorted(set(repeats))
    assert all(first_rotation(beads) == beads for beads in repeats)
    anything = [colour for colour in range(colours) if (*counts, *[None] * colours)[colour] is None]
    told = min(first_rotation(some), first_rotation(some[::-1])) if both_ways else first_rotation(some)
    fits = (
        all(count is None or some.count(colour) == count for colour, count in enumerate(counts))
        and not 0 < run < longest_run(some)
        and not (whole and repeat(some) < length)
        and not (every and any(some.count(colour) == 0 for colour in anything))
    )
    assert (told in repeats) == fits


def test_beads_that_are_few_bound_a_colour() -> None:
    repeats = search(Wanted(6, 2, most=(2, None))).repeats
    assert {beads.count(0) for beads in repeats} == {1, 2}


def test_a_search_without_end_stops_and_says_that_there_are_more() -> None:
    result = search(Wanted(14, 4))
    assert (len(result.repeats), result.all) == (MOST_FOUND, False)


@pytest.mark.parametrize(
    ("wanted", "field", "sentence"),
    [
        ({"length": 15, "colours": 2}, "length", "A repeat of 15 beads is not searched; expected 1 to 14."),
        ({"length": 4, "colours": 5}, "colours", "5 colours are not searched; expected 2 to 4."),
        ({"length": 4, "colours": 2, "counts": (3, 2)}, "counts", "The colours come to 5 beads; the repeat has 4."),
    ],
)
def test_what_cannot_be_searched_is_refused(wanted, field, sentence) -> None:
    with pytest.raises(EngineError) as refused:
        Wanted(**wanted)
    assert (refused.value.message, refused.value.field) == (sentence, field)
