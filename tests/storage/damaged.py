"""Libraries with a damage that only a check finds."""

from __future__ import annotations

from pathlib import Path

PAGE = 4096


def damage(path: Path) -> None:
    """Wipes the middle of a library of some size, which opens as before."""
    data = bytearray(path.read_bytes())
    middle = len(data) // PAGE // 2 * PAGE
    data[middle : middle + 8 * PAGE] = bytes(8 * PAGE)
    path.write_bytes(data)
