"""What `python3 -m tests bare` reads from this computer, and that it never passes where it cannot be tried."""

import os
import shutil
import subprocess

import pytest

from tests import __main__ as checks
from tests import bare
from tests.bare import Ended, Failed, Source, expect, read_sources, variables

TARGETS = """Packages http://mirror.example/debian/ trixie main
Packages http://mirror.example/debian/ trixie contrib
Packages http://mirror.example/debian/ trixie-updates main
Translations http://mirror.example/debian/ trixie main
Packages http://mirror.example/debian-security/ trixie-security main
Packages https://other.example/tool stable main
"""
SYSTEM = 'PRETTY_NAME="Debian"\nVERSION_CODENAME=trixie\nID=debian\n'


def test_debians_sources_are_taken_over_for_the_release_that_is_tried() -> None:
    assert read_sources(TARGETS, SYSTEM) == [
        Source("http://mirror.example/debian/", "bookworm"),
        Source("http://mirror.example/debian-security/", "bookworm-security"),
        Source("http://mirror.example/debian/", "bookworm-updates"),
    ]


def test_another_system_names_no_debian() -> None:
    assert read_sources(TARGETS, SYSTEM.replace("ID=debian", "ID=other")) == []


def test_only_what_reaches_packages_is_kept_of_the_environment() -> None:
    here = {"PIP_INDEX_URL": "http://index.example", "https_proxy": "http://proxy.example", "PYTHONPATH": "x", "A": "1"}
    assert variables(here) == [
        "HOME=/root",
        "PATH=/usr/sbin:/usr/bin:/sbin:/bin",
        "LANG=C.UTF-8",
        "PIP_INDEX_URL=http://index.example",
        "https_proxy=http://proxy.example",
    ]


@pytest.mark.parametrize(
    ("line", "kept"),
    [
        ('Acquire::http::Proxy "http://proxy.example";', True),
        ('Acquire::Check-Valid-Until "false";', True),
        ('Acquire::http::Proxy-Auto-Detect "/usr/bin/detect";', False),
        ('Acquire::IndexTargets::deb::Packages::Optional "0";', False),
    ],
)
def test_apt_keeps_how_it_reaches_the_network(line: str, kept: bool) -> None:
    assert bool(bare.APT_SETTINGS.match(line)) is kept


def test_settings_are_copied_over_what_the_root_has(tmp_path) -> None:
    (tmp_path / "here").mkdir()
    (tmp_path / "here/pip.conf").write_text("ours")
    (tmp_path / "root").symlink_to("nowhere")
    bare.copy(tmp_path / "here/pip.conf", tmp_path / "root")
    bare.copy(tmp_path / "here", tmp_path / "folder")
    bare.copy(tmp_path / "none", tmp_path / "nothing")
    assert (tmp_path / "root").read_text() == (tmp_path / "folder/pip.conf").read_text() == "ours"
    assert not (tmp_path / "nothing").exists()


@pytest.mark.parametrize(
    ("tools", "user", "sentence"),
    [
        ({"debootstrap", "git"}, 0, "debootstrap, git missing; on Debian: apt-get install debootstrap git util-linux."),
        (set(), 1000, "only root can make a Debian root; start it as root."),
    ],
)
def test_where_it_cannot_be_tried_that_is_said_and_nothing_passes(monkeypatch, capsys, tools, user, sentence) -> None:
    monkeypatch.setattr(bare.sys, "platform", "linux")
    monkeypatch.setattr(shutil, "which", lambda tool: None if tool in tools else f"/usr/bin/{tool}")
    monkeypatch.setattr(os, "geteuid", lambda: user)
    assert checks.main(["bare"]) == 2
    assert capsys.readouterr().out == f"Not run, so nothing is proved: {sentence}\n"


def test_set_ups_are_counted_in_what_a_start_printed() -> None:
    first = ["Setting up Ropewright (once, about half a minute): making .venv …\n", "Set up in 31 seconds.\n"]
    assert (Ended(0, first, 1.0).set_up, Ended(0, first * 2, 1.0).set_up, Ended(0, [], 1.0).set_up) == (1, 2, 0)


def test_what_goes_otherwise_ends_it() -> None:
    expect(True, "nothing")
    with pytest.raises(Failed, match=r"^the first start set up 2 times\.$"):
        expect(False, "the first start set up 2 times")
    with pytest.raises(Failed, match=r"oh\n\nsh ended with status 3\."):
        bare.quietly("sh", "-c", "echo oh; exit 3")


def test_what_is_left_running_in_a_root_is_ended(tmp_path, monkeypatch) -> None:
    left = subprocess.Popen(["sleep", "60"])
    monkeypatch.setattr(bare.Path, "readlink", lambda path: tmp_path if str(left.pid) in path.parts else bare.Path("/"))
    bare.end_what_runs_in(tmp_path)
    assert left.wait(20) == -9
