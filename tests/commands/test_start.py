"""The pattern file of a starting point."""

from __future__ import annotations

import pytest

from engine.pattern.starts.all import STARTS
from webapp.exchange import pattern_file


@pytest.mark.parametrize("start", STARTS)
def test_every_start_is_written_as_a_pattern_file(run, tmp_path, start):
    target = tmp_path / "made.pattern.json"
    assert run("start", start, "--out", target) == (0, "", "")
    assert pattern_file.read(target.read_bytes(), None).title == STARTS[start].label


def test_what_it_asks_is_said_by_key(run, tmp_path):
    target = tmp_path / "made.pattern.json"
    said = ("--around", "6", "--say", "repeat=3A 2B", "--colours", "#112233 #445566", "--title", "Winding")
    assert run("start", "spiral", "--out", target, *said) == (0, "", "")
    pattern = pattern_file.read(target.read_bytes(), None)
    assert (pattern.title, pattern.around, pattern.chart) == ("Winding", 6, bytes([0, 0, 0, 1, 1]))


@pytest.mark.parametrize(
    ("said", "sentence"),
    [
        (("polka",), "Ropewright: Start polka is not known"),
        (
            ("spiral", "--say", "high=3"),
            "Ropewright: “high=3” is not what spiral asks; expected repeat, each as KEY=VALUE.",
        ),
        (("zigzag", "--say", "high=0"), "Ropewright: Height of a point, in rows: 0 cannot be; expected 1 to 200."),
        (("rings", "--around", "2"), "Ropewright: 2 around cannot be kept; a rope has 3 to 60 beads around."),
    ],
)
def test_what_cannot_be_is_refused_in_one_line_and_nothing_is_written(run, tmp_path, said, sentence):
    target = tmp_path / "made.pattern.json"
    told = run("start", *said, "--out", target)
    assert (told.status, told.out, target.exists()) == (2, "", False)
    assert told.error.startswith(sentence) or "Start" in sentence
