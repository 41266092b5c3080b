"""Knows whether a server runs on a data folder already, and at which address."""

from __future__ import annotations

import json
import os
from pathlib import Path
from types import TracebackType

from webapp.bootstrap import try_lock

LOCK, ADDRESS = "running.lock", "running.json"


class Running:
    """Holds the data folder for one server; the system lets go of it when the process dies.

    `alone` tells whether the folder was free; `address` is where another server answers, if one does.
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.alone = False

    def __enter__(self) -> Running:
        self.folder.mkdir(parents=True, exist_ok=True)
        self.handle = os.open(self.folder / LOCK, os.O_RDWR | os.O_CREAT, 0o600)
        self.alone = try_lock(self.handle)
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self.alone:
            (self.folder / ADDRESS).unlink(missing_ok=True)
        os.close(self.handle)

    def announce(self, address: str) -> None:
        """Says where this server answers."""
        unfinished = self.folder / f"{ADDRESS}.part"
        unfinished.write_text(json.dumps({"address": address}), encoding="utf-8")
        unfinished.replace(self.folder / ADDRESS)

    @property
    def address(self) -> str | None:
        try:
            return str(json.loads((self.folder / ADDRESS).read_text(encoding="utf-8"))["address"])
        except (OSError, ValueError, KeyError):
            return None
