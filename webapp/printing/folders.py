"""The folder of one server's printed booklets, and the end of those that servers which were killed left behind."""

from __future__ import annotations

import os
import re
import shutil
import tempfile
from pathlib import Path

_NAME = re.compile(r"ropewright-prints-(\d+)-.*")


def own_folder() -> Path:
    """A new folder that only this user can read, named after this process."""
    return Path(tempfile.mkdtemp(prefix=f"ropewright-prints-{os.getpid()}-"))


def sweep(into: Path | None = None) -> None:
    """Removes the folders of processes that are no more; of others, and where that cannot be told, none."""
    for path in (into or Path(tempfile.gettempdir())).glob("ropewright-prints-*"):
        named = _NAME.fullmatch(path.name)
        if named and not _alive(int(named[1])) and path.is_dir() and not path.is_symlink():
            shutil.rmtree(path, ignore_errors=True)


def proof_path(pdf: Path) -> Path:
    """Where the proof of a printed PDF is left, pickled."""
    return pdf.with_suffix(".proof")


def _alive(pid: int) -> bool:
    if os.name == "nt":  # there, asking in this way would end the process
        return True
    try:
        os.kill(pid, 0)
    except ProcessLookupError:
        return False
    except (OSError, OverflowError):
        return True
    return True
