"""The stringing list as text and as JSON."""

import json
import subprocess
import sys
from textwrap import dedent

import pytest

from tests.examples import harbour
from webapp.exchange import pattern_file
from webapp.paths import DEMO, ROOT

SMALL = {
    "format": "ropewright-pattern",
    "version": 1,
    "title": "Trial",
    "around": 3,
    "palette": [{"code": code, "name": code, "colour": "#2f7f76"} for code in "ABCD"],
    "beads": "A 3B 2C D",
}


def text(lines: str) -> str:
    return dedent(lines).lstrip("\n")


def test_without_a_length_the_list_is_of_one_pass(run, harbour_file):
    assert run("stringing", harbour_file) == (
        0,
        text("""
        Small harbour: one pass is 50 beads; 1 thread
        In stringing order: the first bead strung is the last bead worked.

        List 1, for thread 1
        50 beads in 8 runs, 0.07 m strung
          13 A
           2 B
           7 A
           2 C
           1 B
          10 A
           2 B
          13 A
             = 50 so far
        """),
        "",
    )


def test_equal_threads_are_said_once_and_a_part_of_a_pass_has_a_list_of_its_own(run, harbour_file):
    """50 beads are 70 mm; 2 cm of a rope of 12 around in 11/0 are 147 beads."""
    assert run("stringing", harbour_file, "--length", "20mm", "--threads", "chart") == (
        0,
        text("""
        Small harbour: one pass is 50 beads; 3 threads
        In stringing order: the first bead strung is the last bead worked.

        List 1, for threads 1 and 2, string this list 2 times
        50 beads in 8 runs, 0.07 m strung
          13 A
           2 B
           7 A
           2 C
           1 B
          10 A
           2 B
          13 A
             = 50 so far

        List 2, for thread 3
        47 beads in 8 runs, 0.07 m strung
          10 A
           2 B
           7 A
           2 C
           1 B
          10 A
           2 B
          13 A
             = 47 so far
        """),
        "",
    )


def test_threads_of_at_most_so_many_metres_end_with_a_round(run, harbour_file):
    """5 cm of beads 1.4 mm long are 35: two rounds of 12, and then the 26 that are left."""
    assert run("stringing", harbour_file, "--threads", "0,05") == (
        0,
        text("""
        Small harbour: one pass is 50 beads; 2 threads
        In stringing order: the first bead strung is the last bead worked.

        List 1, for thread 1
        24 beads in 3 runs, 0.03 m strung
           9 A
           2 B
          13 A
             = 24 so far

        List 2, for thread 2
        26 beads in 6 runs, 0.04 m strung
          13 A
           2 B
           7 A
           2 C
           1 B
           1 A
             = 26 so far
        """),
        "",
    )


@pytest.mark.parametrize(
    ("name", "options"),
    [
        ("stringing-45cm-clasp-whole", ("--length", "45 cm", "--closure", "clasp", "--threads", "whole")),
        ("stringing-ring-2m", ("--length", "60cm", "--closure", "ring", "--threads", "2", "--kind", "8/0 round")),
        ("stringing-wrist", ("--wrist", "6.5 in", "--ease", "15 mm", "--closure", "glued", "--round", "pass")),
    ],
)
def test_whole_lists_are_as_they_were_read(run, printed, as_json, harbour_file, name, options):
    assert run("stringing", harbour_file, *options) == (0, printed(f"{name}.txt"), "")
    assert as_json(run("stringing", harbour_file, *options, "--json").out) == as_json(printed(f"{name}.json"))


def test_json_says_one_pass_and_the_threads_of_the_size(run, harbour_file):
    runs = '[["A", 13], ["B", 2], ["A", 7], ["C", 2], ["B", 1], ["A", 10], ["B", 2], ["A", 13]]'
    assert run("stringing", harbour_file, "--json") == (
        0,
        f'{{"beads": 50, "repeat": 50, "runs": {runs}, "threads": [{{"beads": 50, "strung_mm": 70.0, "runs": {runs}}}]}}\n',
        "",
    )


def test_the_left_hand_strings_the_same_list(run, file_of):
    file = file_of(SMALL)
    assert run("stringing", file, "--hand", "left") == run("stringing", file)


def test_keeping_the_picture_in_the_other_hand_turns_every_drawn_row_round(run, file_of):
    """Rows hold four and three beads: A B B B and C C D become B B B A and D C C."""
    file = file_of(SMALL)
    assert json.loads(run("stringing", file, "--json").out)["runs"] == [["D", 1], ["C", 2], ["B", 3], ["A", 1]]
    kept = run("stringing", file, "--hand", "left", "--keep-picture", "--json")
    assert json.loads(kept.out)["runs"] == [["C", 2], ["D", 1], ["A", 1], ["B", 3]]


def test_a_pattern_may_come_through_a_pipe(harbour_file, run):
    command = [
        sys.executable,
        "-c",
        "import sys; from webapp.commands import main; sys.exit(main(sys.argv[1:]))",
        "stringing",
        "-",
    ]
    piped = subprocess.run(
        command, cwd=ROOT, input=pattern_file.write_file(harbour()), capture_output=True, encoding="utf-8", check=False
    )
    assert (piped.returncode, piped.stdout, piped.stderr) == run("stringing", harbour_file)


def test_a_reader_that_leaves_early_is_no_fault(harbour_file):
    command = f'"{sys.executable}" -c "import sys; from webapp.commands import main; sys.exit(main(sys.argv[1:]))" stringing "{harbour_file}" --length "20 m" | head -n 1'
    piped = subprocess.run(command, shell=True, cwd=ROOT, capture_output=True, encoding="utf-8", check=True)
    assert piped.stderr == ""
    assert piped.stdout.startswith("Small harbour: one pass is 50 beads; ")


def test_the_head_of_a_list_says_which_parts_it_belongs_to(run):
    told = run("stringing", DEMO / "evening-star.pattern.json", "--length", "45 cm", "--threads", "2.3").out
    assert "List 1, for thread 1 (Rope)\n" in told
    assert "(Star, Rope)" in told or "(Rope, Star)" in told
