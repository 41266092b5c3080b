"""What storage can object to.

StorageError
├── NotFound           there is no such thing in the library
├── Stale              a save made from an older state; nothing was changed
├── Rejected           more than is kept, or something that is still used; nothing was changed
└── LibraryError       the library file, a backup or its folder cannot be used
    ├── Damaged        a file that is no sound library
    ├── LibraryGone    the file that was opened is not there any more
    ├── NoLibrary      a data folder with backups, but without a library
    ├── LibraryBusy    somebody else is writing to it
    └── DiskFull       there is no room for the change
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


class Rejected(StorageError):
    """More than is kept, or something that is still used; nothing was changed."""

    code = "rejected"


class LibraryError(StorageError):
    """The library file, a backup or its folder cannot be used."""

    code = "library"


class Damaged(LibraryError):
    """A file that is no sound library."""

    code = "damaged"


class LibraryGone(LibraryError):
    """The file that was opened is not there any more, or another one stands in its place."""

    code = "gone"


class NoLibrary(LibraryError):
    """A data folder with backups, but without a library."""

    code = "no-library"


class LibraryBusy(LibraryError):
    """Somebody else is writing to the library."""

    code = "busy"


class DiskFull(LibraryError):
    """There is no room for the change."""

    code = "full"


IN_WORDS: dict[str, tuple[type[LibraryError], str]] = {
    "SQLITE_FULL": (
        DiskFull,
        "There is no room left on the disk of the library. Nothing was changed; make room first.",
    ),
    "SQLITE_READONLY": (
        LibraryError,
        "The library may only be read: the file, its folder or the disk is write-protected. Nothing was changed.",
    ),
    "SQLITE_BUSY": (
        LibraryBusy,
        "Another program is writing to the library and does not end. Nothing was changed; try again in a moment.",
    ),
    "SQLITE_LOCKED": (LibraryBusy, "The library is being written to just now. Nothing was changed; try again."),
    "SQLITE_CORRUPT": (Damaged, "The library file is damaged. Nothing was changed; go back to the last sound backup."),
    "SQLITE_NOTADB": (Damaged, "The library file is no library any more; go back to the last sound backup."),
    "SQLITE_CANTOPEN": (
        LibraryGone,
        "The library file cannot be opened: it or its folder is gone. Nothing was changed.",
    ),
    "SQLITE_IOERR": (LibraryError, "The disk of the library does not answer as it should. Nothing was changed."),
}


def library_error(error: BaseException) -> LibraryError | None:
    """The sentence for what SQLite objected to; None for what is no trouble with the file."""
    name = getattr(getattr(error, "orig", None) or error, "sqlite_errorname", None) or ""
    for beginning, (kind, sentence) in IN_WORDS.items():
        if name.startswith(beginning):
            return kind(sentence)
    return None
