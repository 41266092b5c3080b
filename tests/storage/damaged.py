"""Libraries with a damage that only a check finds."""

from __future__ import annotations

from pathlib import Path

PAGE = 4096


def damage(path: Path) -> None:
    """Wipes pages behind those that every table begins with, of a library of some size, which opens as before."""
    data = bytearray(path.read_bytes())
    place = len(data) // PAGE * 3 // 4 * PAGE
    data[place : place + 8 * PAGE] = bytes(8 * PAGE)
    path.write_bytes(data)
