"""How parts share a rope: fixed parts as they are, the rest evenly, and every seam as it is drawn."""

import itertools
import json
from math import ceil, floor

from hypothesis import given
from hypothesis import strategies as st

from engine.pattern.part import Part
from engine.pattern.shares import lay, shared, whole_passes
from engine.units import whole
from webapp.paths import ROOT

CASES = json.loads((ROOT / "tests" / "shared" / "seams.json").read_text(encoding="utf-8"))["shares"]


def letters(parts, between):
    """The worked rope in letters."""
    told = [Part(name, name.encode(), times) for name, times in parts]
    laid = lay(told, shared(told, between))
    return " ".join(part.worked.decode() for part in laid if part.beads)


def test_a_fill_is_cut_where_the_rope_begins_or_ends_so_that_seams_are_as_drawn():
    assert letters([("abc", None)], 7) == "abcabca"
    assert letters([("S", 1), ("abc", None)], 7) == "S abcabca"
    assert letters([("abc", None), ("E", 1)], 7) == "cabcabc E"
    assert letters([("abc", None), ("MM", 2), ("xyz", None)], 9) == "bcabc MMMM xyzx"


def test_a_fill_between_fixed_parts_takes_whole_passes_and_the_ends_share_the_rest():
    assert letters([("abc", None), ("M", 1), ("xy", None), ("N", 1), ("abc", None)], 13) == "bcabc M xyxy N abca"
    assert letters([("S", 1), ("abc", None), ("M", 1), ("xy", None), ("E", 1)], 10) == "S abcabc M xyxy E"


def test_what_is_no_whole_pass_between_fixed_parts_is_cut_off_where_the_last_part_begins():
    assert letters([("S", 1), ("abc", None), ("E", 1)], 7) == "S abcabca E"


def test_fills_share_the_length_where_their_beads_are_not_alike():
    rope = [Part("Fine", b"a", None), Part("Focal", b"b"), Part("Bold", b"c", None)]
    assert shared(rope, 30, (1.0, 2.0)) == (20, 10)


def test_whole_passes_are_one_or_more_for_every_fill():
    rope = [Part("Fine", b"aaaa", None), Part("Focal", b"b"), Part("Bold", b"ccc", None)]
    assert [whole_passes(rope, 22, rounded) for rounded in (whole, floor, ceil)] == [(12, 12), (8, 9), (12, 12)]
    assert whole_passes(rope, 0, whole) == (4, 3)


def test_ropes_are_shared_as_in_the_fixture():
    for case in CASES:
        parts = [Part("P", bytes(beads), None if times == "fill" else times) for beads, times in case["parts"]]
        laid = lay(parts, shared(parts, case["between"]))
        assert list(shared(parts, case["between"])) == case["shares"]
        assert [part.first for part in laid] == case["first"]
        assert [part.cut_first for part in laid] == case["cut_first"]


fixed = st.builds(Part, st.just("Fixed"), st.binary(min_size=1, max_size=9), st.integers(1, 4))
filling = st.builds(Part, st.just("Fill"), st.binary(min_size=1, max_size=9), st.none())


@st.composite
def ropes(draw):
    """Parts in which no two fills stand side by side, one of them a fill."""
    parts = draw(st.lists(fixed, min_size=1, max_size=6))
    for place in sorted(draw(st.sets(st.integers(0, len(parts)), min_size=1)), reverse=True):
        parts.insert(place, draw(filling))
    return parts


@given(ropes(), st.integers(0, 200))
def test_shares_come_to_what_is_between_and_seams_are_as_drawn(parts, between):
    shares = shared(parts, between)
    assert sum(shares) == between
    assert min(shares) >= 0
    for place, part in enumerate(lay(parts, shares)):
        chart = part.part.beads
        if place:
            assert part.worked.startswith(chart[: part.beads])
        if part.part.fills and place < len(parts) - 1 and (place == 0 or parts[0].fills or parts[-1].fills):
            assert part.worked.endswith(chart[max(0, len(chart) - part.beads) :])


@given(ropes(), st.integers(0, 200))
def test_passes_end_where_the_next_begins(parts, between):
    for part in lay(parts, shared(parts, between)):
        bounds = (part.first, *part.pass_ends)
        assert bounds == tuple(sorted(set(bounds)))
        assert bounds[-1] == part.last
        assert all(end - first <= len(part.part.beads) for first, end in itertools.pairwise(bounds))
