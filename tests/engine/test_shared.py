"""What the engine and the chart editor's script both compute: the same fixtures are read by both (see tests/js)."""

from __future__ import annotations

import json

import pytest

from engine.counting.rope import helix
from engine.pattern.lattice import neighbours, rows
from engine.pattern.notation import parse, write
from engine.pattern.palette import ink_on
from engine.pattern.repeats import closes, drift, least_ring, repeat
from webapp.paths import ROOT


def shared(file: str, part: str):
    return json.loads((ROOT / "tests" / "shared" / f"{file}.json").read_text(encoding="utf-8"))[part]


def test_beads_touch_the_neighbours_of_the_fixture():
    cases = shared("lattice", "neighbours")
    assert [list(neighbours(case["around"], case["bead"], case.get("total"))) for case in cases] == [
        case["beads"] for case in cases
    ]


def test_beads_begin_the_rows_of_the_fixture():
    cases = shared("lattice", "rows")
    assert [rows(case["around"], case["beads"]) for case in cases] == [case["rows"] for case in cases]


def test_charts_repeat_as_the_fixture_says():
    cases = shared("repeats", "repeat")
    assert [repeat(case["beads"].encode()) for case in cases] == [case["repeat"] for case in cases]


def test_passes_drift_as_the_fixture_says():
    for case in shared("repeats", "drift"):
        assert drift(case["around"], case["beads"]) == pytest.approx((case["drift"], case["degrees"]), abs=1e-8)


def test_rings_close_as_the_fixture_says():
    for case in shared("repeats", "rings"):
        assert least_ring(case["around"]) == case["least"]
        assert closes(case["around"], case["repeat"], case["total"]) is case["closes"]


def test_the_helix_is_that_of_the_fixture():
    for case in shared("helix", "helix"):
        assert helix(case["around"]) == pytest.approx((case["radius"], case["twist"], case["rise"]), abs=1e-11)


def test_texts_are_written_and_read_as_in_the_fixture():
    for case in shared("notation", "texts"):
        assert write(bytes(case["beads"]), case["codes"]) == case["text"]
        assert list(parse(case["text"], case["codes"])) == case["beads"]


def test_ink_reads_on_the_colours_of_the_fixture():
    cases = shared("ink", "ink")
    assert [ink_on(case["colour"]) for case in cases] == [case["ink"] for case in cases]
