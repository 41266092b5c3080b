"""Printed booklets of a server that was killed are swept away; those of a running one never."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

from webapp.printing.folders import own_folder, sweep


def ended_pid() -> int:
    process = subprocess.Popen((sys.executable, "-c", ""))
    process.wait()
    return process.pid


def test_only_the_folder_of_a_process_that_is_no_more_is_removed(tmp_path: Path) -> None:
    dead, living, other, strange = (
        tmp_path / name
        for name in (
            f"ropewright-prints-{ended_pid()}-a1",
            f"ropewright-prints-{os.getpid()}-b2",
            "ropewright-prints-notes",
            "letters",
        )
    )
    for folder in (dead, living, other, strange):
        folder.mkdir()
        (folder / "booklet.pdf").write_bytes(b"%PDF")
    sweep(tmp_path)
    assert sorted(tmp_path.iterdir()) == sorted((living, other, strange))
    assert (living / "booklet.pdf").read_bytes() == b"%PDF"


def test_a_link_to_a_folder_elsewhere_is_not_followed(tmp_path: Path) -> None:
    kept = tmp_path / "kept"
    kept.mkdir()
    (tmp_path / f"ropewright-prints-{ended_pid()}-a1").symlink_to(kept)
    sweep(tmp_path)
    assert kept.is_dir()


def test_an_own_folder_is_named_after_this_process_and_outlives_a_sweep() -> None:
    folder = own_folder()
    try:
        sweep()
        assert folder.is_dir() and str(os.getpid()) in folder.name
    finally:
        folder.rmdir()
