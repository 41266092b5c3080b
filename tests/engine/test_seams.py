"""Seams between parts: how far they turn, and the rounds that bring them straight."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.pattern.repeats import drift
from engine.pattern.seams import seam, seam_in_words
from webapp.paths import ROOT

CASES = json.loads((ROOT / "tests" / "shared" / "seams.json").read_text(encoding="utf-8"))["seams"]


def test_seams_are_those_of_the_fixture():
    for case in CASES:
        found = seam(case["around"], 2, case["before"])
        assert found.turn == pytest.approx((case["beads"], case["degrees"]), abs=1e-8)
        assert (found.more, found.fewer, seam_in_words(found)) == (case["more"], case["fewer"], case["words"])


@given(st.integers(3, 60), st.integers(0, 5000))
def test_so_many_rounds_more_or_fewer_bring_a_part_straight(around, before):
    found = seam(around, 2, before)
    assert drift(around, before + found.more * around).beads == 0
    assert drift(around, before - found.fewer * around).beads == 0 or found.fewer == 0
    assert found.straight == (found.more == 0)
