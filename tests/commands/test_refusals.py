"""Whatever is wrong is said in one line on stderr, with exit 2, and nothing is written."""

import subprocess
import sys
from pathlib import Path

import pytest

from webapp.paths import ROOT

MUCH = "((((((9A)x999999)x99999)x9999)x999)x999999)x99"
KINDS = "15/0 round, 11/0 round, 10/0 round, 8/0 round, 6/0 round, 11/0 cylinder"
FILES = {
    "an unknown code": (
        {"beads": "13A 2D"},
        "Line 1, column 6: “D” is not a code of the palette; expected one of A, B, C.",
    ),
    "a count of nought": ({"beads": "0A 3B"}, "Line 1, column 1: a count is nought; expected 1 or more."),
    "an open bracket": ({"beads": "(3A 2B"}, "Line 1, column 1: this bracket is never closed; expected “)”."),
    "a bracket that closes nothing": (
        {"beads": "3A) 4B"},
        "Line 1, column 3: this bracket closes nothing; expected a count, a code or “(”.",
    ),
    "a repeat without a bracket": (
        {"beads": "3A x4"},
        "Line 1, column 4: “x” stands only behind a bracket and before a number, such as (A B)x4.",
    ),
    "a mistake on the third line": (
        {"beads": "3A\n2B\n4?"},
        "Line 3, column 1: a count has no code behind it: found “?”, expected one or two letters.",
    ),
    "too few around": ({"around": 2}, "2 around does not work; a rope has 3 to 60 beads around."),
    "too many around": ({"around": 61}, "61 around does not work; a rope has 3 to 60 beads around."),
    "text for a number": ({"around": "12"}, "“around”: expected a whole number, found “12”."),
    "yes for a number": ({"around": True}, "“around”: expected a whole number, found true."),
    "text for a list": ({"palette": "A"}, "“palette”: expected a list, found “A”."),
    "an unknown field": ({"colour": "red"}, "“colour” is not a field of a pattern file."),
    "an empty palette": ({"palette": []}, "A palette has 1 to 64 beads; this one has 0."),
    "an unknown hand": ({"hand": "both"}, "Hand: “both” is not known here; expected one of right, left."),
    "no beads": ({"beads": ""}, "Line 1, column 1: there are no beads; write counts and codes, such as 3A 2B."),
    "too many beads": (
        {"beads": "100001A"},
        "Line 1, column 1: the beads come to more than 100,000 here, which is the most a chart can have.",
    ),
    "far too many beads": (
        {"beads": MUCH},
        "Line 1, column 11: the beads come to more than 100,000 here, which is the most a chart can have.",
    ),
    "a title too long": ({"title": "x" * 121}, "The title has 121 characters; at most 120 fit."),
    "a newer version": ({"version": 2}, "“version” is “2”; this program reads version 1."),
    "another format": (
        {"format": "knots"},
        "This is not a pattern file: “format” is “knots”, expected “ropewright-pattern”.",
    ),
    "no JSON": (b'{"format"', "The file is not JSON: line 1, column 10: Expecting ':' delimiter."),
    "no UTF-8": (b"\xff\xfe", "The file is not UTF-8 text: byte 1 cannot be read."),
    "nothing": (b"", "The file is not JSON: line 1, column 1: Expecting value."),
    "a list": (b"[]", "The file is JSON but not a pattern file; expected an object in braces."),
    "brackets without end": (
        b"[" * 100_000,
        "The file is not JSON that can be read: it is nested too deep or a number is too long.",
    ),
}
ON_A_FILE = {
    "stringing": (),
    "materials": ("--json",),
    "booklet": ("-o", "out/trial.pdf"),
    "picture": ("-o", "out/trial.png"),
    "import": ("--data", "new"),
}
ARGUMENTS = {
    ("stringing", "FILE", "--length", "45"): "“45” has no unit; write mm, cm, m or in behind it, such as 45 cm.",
    ("stringing", "FILE", "--length", "45 ells"): "“ells” is not a unit of length here; use mm, cm, m, in, ft or yd.",
    (
        "materials",
        "FILE",
        "--length",
        "long",
    ): "“long” is not a length; write a number and a unit, such as 50 cm or 19.5 in.",
    (
        "materials",
        "FILE",
        "--length",
        "-5 cm",
    ): "“-5 cm” is not a length; write a number and a unit, such as 50 cm or 19.5 in.",
    (
        "materials",
        "FILE",
        "--length",
        "1mm",
    ): "That leaves 0.1 cm of rope, less than one round (0.2 cm); ask for a longer piece.",
    (
        "booklet",
        "FILE",
        "-o",
        "out/x.pdf",
        "--length",
        "45",
    ): "“45” has no unit; write mm, cm, m or in behind it, such as 45 cm.",
    (
        "booklet",
        "FILE",
        "-o",
        "out/x.pdf",
        "--terms",
        "old",
    ): "Crochet terms: “old” is not known here; expected one of us, uk.",
    ("stringing", "FILE", "--length", "45 cm", "--wrist", "16 cm"): "Give a length or a wrist, not both.",
    (
        "stringing",
        "FILE",
        "--closure",
        "knot",
    ): "Closure: “knot” is not known here; expected one of open, clasp, glued, ring, magnet, cone, button, tie.",
    ("stringing", "FILE", "--kind", "12/0"): f"Bead kind: “12/0” is not known here; expected one of {KINDS}.",
    ("stringing", "FILE", "--stitch", "chain"): "Stitch: “chain” is not known here; expected one of slip, single.",
    (
        "stringing",
        "FILE",
        "--round",
        "inch",
    ): "Round to: “inch” is not known here; expected one of bead, pass, up, down.",
    ("stringing", "FILE", "--pass-length", "2"): "“2” has no unit; write mm, cm, m or in behind it, such as 2 cm.",
    ("stringing", "FILE", "--hand", "both"): "Hand: “both” is not known here; expected one of right, left.",
    (
        "stringing",
        "FILE",
        "--threads",
        "0",
    ): "“0” is not a plan for threads; expected balanced, whole, chart or metres such as 4, or the beads after which a thread is joined: joins 480, 960.",
    ("stringing", "FILE", "--threads", "0.001"): "Not even one round fits on 0.001 m of strung beads; allow more.",
    ("materials", "FILE", "--spare", "some"): "“some” is not a spare; expected percent such as 10.",
    ("stringing", "FILE", "--data", "none"): "There is no data folder none.",
    ("booklet", "FILE", "-o", "none/x.pdf"): "The folder none does not exist; make it first or name another.",
    ("picture", "FILE", "-o", "none/x.png"): "The folder none does not exist; make it first or name another.",
    (
        "picture",
        "FILE",
        "-o",
        "out/x.png",
        "--view",
        "front",
    ): "View: “front” is not known here; expected one of rope, ring, necklace.",
    ("picture", "FILE", "-o", "out/x.png", "--width", "9"): "“9” is not a width; expected 16 to 4000 pixels.",
    ("picture", "FILE"): "The following arguments are required: -o/--output; see python3 -m webapp picture --help.",
    ("picture", "FILE", "-o", "out"): "out is a folder; expected the name of a file.",
    ("export", "-o", "none"): "The folder none does not exist; make it first or name another.",
    ("export", "seven", "-o", "out", "--data", "none"): "There is no library in HERE/none.",
    ("backup", "-o", "out/x.sqlite", "--data", "none"): "There is no library in HERE/none.",
    ("restore", "none.sqlite", "--data", "none"): "There is no file none.sqlite.",
    ("restore", "FILE", "--data", "none"): "FILE is not a library of this program.",
    ("stringing", "none.pattern.json"): "There is no file none.pattern.json.",
    ("import", "none.pattern.json", "--data", "none"): "There is no file none.pattern.json.",
    ("serve", "--port", "first"): "“first” is not a port; expected 1 to 65535.",
    ("--port", "0"): "“0” is not a port; expected 1 to 65535.",
    ("serve", "--port", "65536"): "“65536” is not a port; expected 1 to 65535.",
    (
        "weave",
    ): "“weave” is not a command; expected one of serve, stringing, materials, booklet, card, picture, start, beads, import, export, backup, restore.",
    ("stringing", "FILE", "--weave"): "Unrecognized arguments: --weave; see python3 -m webapp stringing --help.",
    ("--weave",): "Unrecognized arguments: --weave; see python3 -m webapp serve --help.",
    (
        "stringing",
        "FILE",
        "--leng",
        "45 cm",
    ): "Unrecognized arguments: --leng 45 cm; see python3 -m webapp stringing --help.",
    (
        "stringing",
        "FILE",
        "--length",
    ): "Argument --length: expected one argument; see python3 -m webapp stringing --help.",
    ("stringing",): "The following arguments are required: FILE; see python3 -m webapp stringing --help.",
    (
        "stringing",
        "FILE",
        "--two\nlines",
    ): "Unrecognized arguments: --two lines; see python3 -m webapp stringing --help.",
}


@pytest.fixture
def here(tmp_path, monkeypatch):
    """An otherwise empty folder in which the command is run, with a folder to write into."""
    folder = tmp_path / "here"
    (folder / "out").mkdir(parents=True)
    monkeypatch.chdir(folder)
    return folder


def assert_refused(outcome, sentence: str, here: Path) -> None:
    assert outcome == (2, "", f"Ropewright: {sentence}\n")
    assert sorted(path.name for path in here.rglob("*")) == ["out"]


@pytest.mark.parametrize("command", ON_A_FILE)
@pytest.mark.parametrize("wrong", FILES)
def test_a_file_that_is_no_pattern_is_refused_by_every_command(run, here, file_of, document, command, wrong):
    change, sentence = FILES[wrong]
    file = file_of({**document, **change} if isinstance(change, dict) else change)
    if command == "import":
        sentence = f"{file}: {sentence} Nothing was imported."
    assert_refused(run(command, file, *ON_A_FILE[command]), sentence, here)


@pytest.mark.parametrize("arguments", ARGUMENTS)
def test_what_cannot_be_meant_is_refused(run, here, harbour_file, arguments):
    given = [harbour_file if argument == "FILE" else argument for argument in arguments]
    sentence = ARGUMENTS[arguments].replace("FILE is", f"{harbour_file} is").replace("HERE", str(here))
    assert_refused(run(*given), sentence, here)


@pytest.mark.parametrize("wrong", ["an unknown code", "brackets without end"])
def test_a_process_of_its_own_ends_the_same_way(here, file_of, document, wrong):
    change, sentence = FILES[wrong]
    file = file_of({**document, **change} if isinstance(change, dict) else change)
    ended = subprocess.run(
        [
            sys.executable,
            "-c",
            "import sys; from webapp.commands import main; sys.exit(main(sys.argv[1:]))",
            "stringing",
            file,
        ],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert (ended.returncode, ended.stdout, ended.stderr) == (2, "", f"Ropewright: {sentence}\n")


def test_one_bad_file_among_good_ones_keeps_all_of_them_out(run, here, file_of, document, harbour_file):
    bad = file_of({**document, "beads": "3A x4"})
    assert_refused(
        run("import", harbour_file, bad, "--data", "new"),
        f"{bad}: {FILES['a repeat without a bracket'][1]} Nothing was imported.",
        here,
    )


def test_a_fault_that_nobody_foresaw_is_still_one_line(run, here, harbour_file, monkeypatch):
    def broken(*_):
        raise RuntimeError("the table\nis bare")

    monkeypatch.setattr("webapp.commands.stringing.string", broken)
    assert_refused(
        run("stringing", harbour_file),
        "This should not have happened (RuntimeError: the table is bare). Nothing was written.",
        here,
    )
