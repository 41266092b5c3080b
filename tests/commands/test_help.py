"""Every command tells all that it takes."""

import subprocess
import sys

import pytest

from webapp.commands import COMMANDS
from webapp.paths import ROOT

SIZE = {
    "--length",
    "--closure",
    "--kind",
    "--stitch",
    "--wrist",
    "--ease",
    "--round",
    "--pass-length",
    "--hand-girth",
    "--inner",
    "--neck",
    "--closure-length",
    "--middle",
}
ON_A_FILE = {"--help", "--data", "--hand", "--keep-picture"}
OPTIONS = {
    "serve": {"--help", "--port", "--data", "--no-browser", "--new", "--private"},
    "stringing": {*ON_A_FILE, *SIZE, "--json", "--threads", "--longest"},
    "materials": {*ON_A_FILE, *SIZE, "--json", "--threads", "--longest", "--spare"},
    "booklet": {
        *ON_A_FILE,
        *SIZE,
        "--output",
        "--paper",
        "--edition",
        "--ink-saving",
        "--terms",
        "--threads",
        "--longest",
        "--spare",
    },
    "card": {*ON_A_FILE, *SIZE, "--output", "--terms", "--threads", "--longest"},
    "picture": {*ON_A_FILE, "--output", "--view", "--width", "--scene", "--shape", "--ground", "--turning"},
    "start": {"--help", "--out", "--around", "--colours", "--title", "--say", "--picture", "--file", "--page"},
    "beads": {"--help", "--data", "--output", "--look"},
    "import": {"--help", "--data"},
    "export": {"--help", "--data", "--output"},
    "backup": {"--help", "--data", "--output"},
    "restore": {"--help", "--data", "--look"},
}
WORDS = {
    "stringing": (
        "FILE",
        "50 cm",
        "whole, chart",
        "metres",
        "open, clasp, glued, ring",
        "right, left",
        "slip, single",
        "bead, pass, up, down",
    ),
    "materials": ("FILE", "default 10", "open, clasp, glued, ring"),
    "booklet": ("FILE", "OUT.pdf", "A4, Letter", "standard", "us, uk"),
    "card": ("FILE", "OUT.html", "us, uk"),
    "picture": ("FILE", "OUT.png", "rope, ring, necklace"),
    "start": ("KIND", "OUT.pattern.json", "zigzag", "KEY=VALUE"),
    "beads": ("FILE", "CSV"),
    "import": ("FILE",),
    "export": ("ID", "DIR"),
    "backup": ("FILE",),
    "restore": ("FILE",),
    "serve": ("default 8620",),
}


@pytest.fixture
def helped(capsys):
    """The help of a command, however wide the terminal."""
    from webapp.commands import main

    def helped(*arguments):
        with pytest.raises(SystemExit) as left:
            main([*arguments, "--help"])
        assert left.value.code == 0
        said = capsys.readouterr()
        assert said.err == ""
        return " ".join(said.out.split())

    return helped


@pytest.mark.parametrize("command", COMMANDS)
def test_the_help_lists_every_option_and_what_it_takes(helped, command):
    told = helped(command)
    assert {word.strip("[],") for word in told.split() if word.strip("[],").startswith("--")} == OPTIONS[command]
    assert [words for words in WORDS[command] if words not in told] == []


def test_the_overview_names_every_command(run):
    told = run("--help")
    assert (told.status, told.error) == (0, "")
    assert (
        [line.split()[0] for line in told.out.splitlines() if line.startswith("  ")] == list(COMMANDS) == list(OPTIONS)
    )


def test_the_help_comes_before_the_first_look_at_a_library():
    told = subprocess.run(
        [sys.executable, "-X", "importtime", "-c", "import sys; from webapp.commands import main; main(['--help'])"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    assert "sqlalchemy" not in told.stderr
