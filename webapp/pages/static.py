"""The files that come with the app, at an address that holds a stamp of them all, so that browsers keep them."""

from __future__ import annotations

from hashlib import sha256

from webapp.pages.addresses import address
from webapp.paths import STATIC


def _stamp() -> str:
    """Twelve hex digits that change with the name or the content of any file."""
    sums = sha256()
    for path in sorted(path for path in STATIC.rglob("*") if path.is_file()):
        sums.update(f"{path.relative_to(STATIC).as_posix()}\n".encode())
        sums.update(sha256(path.read_bytes()).digest())
    return sums.hexdigest()[:12]


STAMP = _stamp()


def static(file: str) -> str:
    """The address of a file that comes with the app."""
    return address("static", stamp=STAMP, file=file)
