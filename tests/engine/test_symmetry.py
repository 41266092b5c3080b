"""Plane groups on a rope: the lattice allows what is published, and what is drawn is kept by every move."""

from __future__ import annotations

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.errors import ChoiceError, EngineError
from engine.pattern.repeats import repeat
from engine.pattern.starts.symmetry import (
    AXES,
    FORBIDDEN,
    GROUPS,
    HALF,
    SIXTH,
    THIRD,
    symmetries,
    symmetry_of,
)

MATRICES = {"half": HALF, "third": THIRD, "sixth": SIXTH, **AXES}


def test_all_eleven_groups_occur_that_are_published_as_possible() -> None:
    """p1, p2, p3, p6, pg, pgg, pmg, pm, cmm, cm and pmm (Baker and Goldstine, gallery of the JMM 2012)."""
    assert set(GROUPS) == {"p1", "p2", "p3", "p6", "pg", "pgg", "pmg", "pm", "cmm", "cm", "pmm"}
    assert {group for group in GROUPS if any(symmetries(around, group) for around in range(3, 13))} == set(GROUPS)


@pytest.mark.parametrize("group", FORBIDDEN)
def test_groups_that_the_lattice_forbids_are_not_offered(group: str) -> None:
    with pytest.raises(ChoiceError, match="expected one of p1, p2"):
        symmetries(8, group)


@given(st.integers(3, 12), st.integers(3, 240))
def test_thirds_of_a_turn_need_a_repeat_that_divides_n_squared_and_n_and_one(around: int, length: int) -> None:
    allowed = (around * around + around + 1) % length == 0
    assert (symmetry_of(around, "p3", length) is not None) == allowed
    assert (symmetry_of(around, "p6", length) is not None) == allowed


@given(st.integers(3, 12), st.integers(3, 240))
def test_reflections_need_a_repeat_that_divides_one_of_three_numbers(around: int, length: int) -> None:
    allowed = any(number % length == 0 for number in (2 * around + 1, around * (around + 2), around * around - 1))
    found = any(symmetry_of(around, group, length) for group in ("pm", "pg", "cm"))
    assert found == allowed


def test_half_turns_and_moves_alone_are_always_there() -> None:
    assert [len(symmetries(around, "p2")) for around in (3, 8, 12)] == [238] * 3
    assert len(symmetry_of(8, "p1", 50).free) == 50
    assert len(symmetry_of(8, "p2", 50).free) == 26


CASES = [(around, group) for around, group in product((4, 5, 6, 8, 12), GROUPS) if symmetries(around, group)]


@pytest.mark.parametrize(("around", "group"), CASES)
def test_what_is_drawn_is_kept_by_moves_of_the_plane(around: int, group: str) -> None:
    """The repeat laid out flat, turned or reflected as the group says, lies on itself somewhere."""
    one = symmetries(around, group)[-1]
    colours = one.beads(bytes(k * k % 7 for k in range(len(one.free))))

    def colour(x: int, y: int) -> int:
        return colours[(x + around * y) % one.repeat]

    window = list(product(range(-6, 7), repeat=2))
    for times, plus in one.moves:
        kept = [
            name
            for name, matrix in MATRICES.items()
            if (matrix.a1[0] + around * matrix.a1[1]) % one.repeat == times
            and all(colour(matrix.of(x, y)[0] + plus, matrix.of(x, y)[1]) == colour(x, y) for x, y in window)
        ]
        assert kept, (times, plus)


@pytest.mark.parametrize(("around", "group"), CASES)
def test_every_bead_is_free_once(around: int, group: str) -> None:
    for one in symmetries(around, group)[-3:]:
        assert sorted(place for orbit in one.free for place in orbit) == list(range(one.repeat))
        assert repeat(one.beads(bytes(range(len(one.free))))) <= one.repeat


def test_glides_are_told_from_mirrors() -> None:
    """Eight around, forty beads: pm leaves the beads on its mirrors alone, so that more are free than with glides."""
    free = {group: len(symmetry_of(8, group, 40).free) for group in ("pm", "pg", "pmm", "pmg", "pgg")}
    assert free == {"pm": 25, "pg": 20, "pmm": 15, "pmg": 13, "pgg": 10}


def test_another_number_of_beads_than_are_free_is_refused() -> None:
    with pytest.raises(EngineError, match="3 beads are drawn; this cell has 25 to draw") as refused:
        symmetry_of(8, "pm", 40).beads(bytes(3))
    assert refused.value.field == "drawn"
