"""The table of bead kinds, and the glass that its rows imply."""

from dataclasses import replace
from itertools import pairwise

from engine.counting.kinds import KINDS


def test_every_built_in_kind_is_made_of_glass_that_exists():
    assert {name: kind.likely for name, kind in KINDS.items()} == dict.fromkeys(KINDS, True)


def test_beads_grow_heavier_and_longer_with_their_diameter():
    rounds = sorted((kind for kind in KINDS.values() if not kind.cylinder), key=lambda kind: kind.diameter_mm)
    assert [kind.name for kind in rounds] == ["15/0 round", "11/0 round", "10/0 round", "8/0 round", "6/0 round"]
    for smaller, larger in pairwise(rounds):
        assert smaller.length_mm < larger.length_mm
        assert smaller.per_gram > larger.per_gram
        assert smaller.working_mm < larger.working_mm


def test_a_weight_that_no_glass_has_is_questioned():
    assert not replace(KINDS["15/0 round"], per_gram=1700).likely
    assert not replace(KINDS["8/0 round"], per_gram=400).likely
