"""Zips that were handed in and are looked at before they are taken in: kept for a day, each under a name of its own."""

from __future__ import annotations

import os
import re
import shutil
from pathlib import Path
from secrets import token_hex
from typing import BinaryIO

from engine.errors import shortened
from webapp.exchange.zip_manifest import ZipError

FOLDER = "incoming"
KEPT_S = 86_400
TOKEN = re.compile(r"[0-9a-f]{32}")


def keep(data: Path, source: BinaryIO | Path, now: float) -> str:
    """Keeps a zip, sent or lying on this computer, and gives its name; older ones go. Raises ZipError."""
    if isinstance(source, Path) and not _is_file(source):
        raise ZipError(f"There is no file {shortened(source, 120)}.", "where")
    folder = data / FOLDER
    folder.mkdir(0o700, parents=True, exist_ok=True)
    sweep(data, now)
    token = token_hex(16)
    target = folder / f"{token}.zip"
    try:
        with open(os.open(target, os.O_WRONLY | os.O_CREAT, 0o600), "wb") as kept:
            _copy(source, kept)
    except OSError as error:
        target.unlink(missing_ok=True)
        raise ZipError(f"The zip cannot be kept to be looked at: {error.strerror}.", "where") from None
    return token


def path_of(data: Path, token: str) -> Path:
    """Where that zip lies. Raises ZipError where it is not kept any more."""
    path = data / FOLDER / f"{token}.zip"
    if not TOKEN.fullmatch(token) or not path.is_file():
        raise ZipError("That file is not kept any more; hand it in once more.")
    return path


def prepared_path(data: Path, token: str | None = None) -> Path:
    """Where what was read of that zip lies, ready to be taken in; without one, a place of its own."""
    return data / FOLDER / f"{token or token_hex(16)}.prepared"


def forget(data: Path, token: str) -> None:
    """Lets go of a zip."""
    path = path_of(data, token)
    path.unlink(missing_ok=True)
    path.with_suffix(".prepared").unlink(missing_ok=True)


def sweep(data: Path, now: float) -> None:
    """Lets go of those that have lain there for a day."""
    for old in (data / FOLDER).glob("*"):
        if now - old.lstat().st_mtime > KEPT_S:
            old.unlink(missing_ok=True)


def _is_file(path: Path) -> bool:
    try:
        return path.expanduser().is_file()
    except (OSError, RuntimeError, ValueError):  # a name that is too long, or a person whom nobody knows
        return False


def _copy(source: BinaryIO | Path, kept: BinaryIO) -> None:
    if isinstance(source, Path):
        with source.expanduser().open("rb") as file:
            shutil.copyfileobj(file, kept)
    else:
        shutil.copyfileobj(source, kept)
