"""The pattern file of a starting point."""

from __future__ import annotations

import pytest
from PIL import Image

from engine.pattern.starts.all import STARTS
from tests.photographed import photographed, random_rope, scanned
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
        (("rings", "--around", "2"), "Ropewright: 2 around does not work; a rope has 3 to 60 beads around."),
    ],
)
def test_what_cannot_be_is_refused_in_one_line_and_nothing_is_written(run, tmp_path, said, sentence):
    target = tmp_path / "made.pattern.json"
    told = run("start", *said, "--out", target)
    assert (told.status, told.out, target.exists()) == (2, "", False)
    assert told.error.startswith(sentence) or "Start" in sentence


def a_picture(folder):
    path = folder / "halves.png"
    picture = Image.new("RGB", (80, 40), "#2f7f76")
    picture.paste("#a83a2c", (0, 0, 40, 40))
    picture.save(path)
    return path


def test_a_photograph_is_written_as_a_pattern_file(run, tmp_path):
    target = tmp_path / "made.pattern.json"
    said = ("--picture", a_picture(tmp_path), "--around", "10", "--say", "many=2", "--say", "turn=180")
    assert run("start", "photograph", "--out", target, *said) == (0, "", "")
    pattern = pattern_file.read(target.read_bytes(), None)
    assert (pattern.title, pattern.around, len(pattern.chart)) == ("From a picture", 10, 252)
    assert pattern.palette[pattern.chart[3]].colour == "#2f7f76"


def test_colours_that_are_said_are_those_of_the_photograph(run, tmp_path):
    target = tmp_path / "made.pattern.json"
    said = ("--picture", a_picture(tmp_path), "--colours", "#a03030, #308070, #ffffff")
    assert run("start", "photograph", "--out", target, *said) == (0, "", "")
    palette = pattern_file.read(target.read_bytes(), None).palette
    assert [entry.colour for entry in palette] == ["#a03030", "#308070", "#ffffff"]


@pytest.mark.parametrize(
    ("said", "sentence"),
    [
        ((), "Ropewright: photograph needs a picture; say --picture FILE."),
        (("--picture", "nowhere.png"), "Ropewright: nowhere.png cannot be read: No such file or directory."),
        (("--picture", __file__), "cannot be read as a picture; a JPEG, PNG or WebP file is wanted."),
    ],
)
def test_without_a_picture_nothing_is_written(run, tmp_path, said, sentence):
    told = run("start", "photograph", "--out", tmp_path / "made.pattern.json", *said)
    assert told.status == 2 and sentence in told.error and told.error.count("\n") == 1


def test_an_old_chart_is_written_as_a_pattern_file(run, tmp_path):
    rope = random_rope(10, 24, 3, seed=4)
    taken, target = photographed(rope, long_px=900, off_px=0.5), tmp_path / "made.pattern.json"
    (tmp_path / "chart.jpg").write_bytes(taken.jpeg)
    corners = [
        ("--say", f"{name}{number}={100 * place:.2f}")
        for number, corner in enumerate(taken.corners, 1)
        for name, place in zip("xy", corner, strict=True)
    ]
    said = [*(word for pair in corners for word in pair), "--say", "many=3", "--say", "rows=24", "--around", "10"]
    assert run("start", "old-chart", "--picture", tmp_path / "chart.jpg", "--out", target, *said) == (0, "", "")
    pattern = pattern_file.read(target.read_bytes(), None)
    assert (pattern.around, len(pattern.chart), len(pattern.palette)) == (10, len(rope.chart), 3)


def test_a_scan_is_read_from_two_corners_and_a_point_along_a_row(run, tmp_path):
    rope, target = random_rope(10, 24, 3, seed=4), tmp_path / "made.pattern.json"
    scan, corners = scanned(rope, turn=-3)
    scan.save(tmp_path / "scan.png")
    (x1, y1), (x2, y2), (x3, y3), _ = corners
    marked = {"x1": x1, "y1": y1, "x3": x3, "y3": y3, "rowx": (x1 + x2) / 2, "rowy": (y1 + y2) / 2}
    said = [word for name, place in marked.items() for word in ("--say", f"{name}={100 * place:.3f}")]
    said += ["--say", "many=3", "--say", "rows=24", "--around", "10"]
    assert run("start", "old-chart", "--picture", tmp_path / "scan.png", "--out", target, *said) == (0, "", "")
    made = pattern_file.read(target.read_bytes(), None).chart
    assert len(made) == len(rope.chart) and len({*zip(made, rope.chart, strict=True)}) == 3


def test_an_old_chart_needs_to_know_how_many_go_around(run, tmp_path):
    told = run("start", "old-chart", "--picture", a_picture(tmp_path), "--out", tmp_path / "made.pattern.json")
    assert told.status == 2 and told.error.startswith("Ropewright: “” is not") and told.error.count("\n") == 1


def test_symmetric_motifs_and_lists_are_written_too(run, tmp_path):
    target = tmp_path / "made.pattern.json"
    said = ("--around", "8", "--say", "group=pm", "--say", "repeat=4", "--say", "drawn=BAAB")
    assert run("start", "symmetric", "--out", target, *said) == (0, "", "")
    assert pattern_file.read(target.read_bytes(), None).chart == bytes([1, 0, 0, 1])
    assert run("start", "list", "--out", target, "--say", "text=3 white, 2 B", "--say", "written=worked") == (0, "", "")
    assert pattern_file.read(target.read_bytes(), None).chart == bytes([0, 0, 0, 1, 1])
    refused = run("start", "list", "--out", target, "--say", "text=3A\\n4")
    assert refused.error.startswith("Ropewright: Line 2, column 1: the count 4 has no bead behind it.")
    (tmp_path / "list.txt").write_text("3 white\n2 B\n")
    assert run("start", "list", "--out", target, "--file", tmp_path / "list.txt", "--around", "5") == (0, "", "")
    assert pattern_file.read(target.read_bytes(), None).chart == bytes([1, 1, 0, 0, 0])
    refused = run("start", "list", "--out", target, "--file", "nowhere.pdf")
    assert refused.error == "Ropewright: nowhere.pdf cannot be read: No such file or directory.\n"
