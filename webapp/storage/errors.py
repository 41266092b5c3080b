"""What storage can object to.

StorageError
├── NotFound       there is no such thing in the library
├── Stale          a save made from an older state; nothing was changed
└── LibraryError   the library file cannot be used
"""

from __future__ import annotations


class StorageError(Exception):
    """A sentence for the person."""

    code = "storage"

    def __init__(self, message: str, field: str | None = None) -> None:
        super().__init__(message)
        self.message = message
        self.field = field


class NotFound(StorageError):
    """There is no such thing in the library."""

    code = "not-found"

    def __init__(self, what: str) -> None:
        super().__init__(f"There is no {what}.")


class Stale(StorageError):
    """A save made from an older state; nothing was changed."""

    code = "stale"


class LibraryError(StorageError):
    """The library file cannot be used."""

    code = "library"
