"""How the program was started: frozen, read once."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

PORT = 8620
VERSION = "0.1.0"


@dataclass(frozen=True)
class Settings:
    """The data folder and the port asked for; `browser` tells whether to open one.

    `anew` begins an empty library where only backups are left; `private` answers only who has the secret of this start.
    """

    data: Path
    port: int = PORT
    browser: bool = True
    anew: bool = False
    private: bool = False

    @property
    def cache(self) -> Path:
        """Pictures that can be made again."""
        return self.data / "pictures"
