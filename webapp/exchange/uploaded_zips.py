"""Zips that were handed in and are looked at before they are taken in: kept for a day, each under a name of its own."""

from __future__ import annotations

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
    if isinstance(source, Path) and not source.is_file():
        raise ZipError(f"There is no file {shortened(source, 120)}.", "where")
    folder = data / FOLDER
    folder.mkdir(parents=True, exist_ok=True)
    for old in folder.glob("*.zip"):
        if now - old.stat().st_mtime > KEPT_S:
            old.unlink(missing_ok=True)
    token = token_hex(16)
    target = folder / f"{token}.zip"
    if isinstance(source, Path):
        shutil.copyfile(source, target)
    else:
        with target.open("wb") as kept:
            shutil.copyfileobj(source, kept)
    return token


def path_of(data: Path, token: str) -> Path:
    """Where that zip lies. Raises ZipError where it is not kept any more."""
    path = data / FOLDER / f"{token}.zip"
    if not TOKEN.fullmatch(token) or not path.is_file():
        raise ZipError("That file is not kept any more; hand it in once more.")
    return path


def forget(data: Path, token: str) -> None:
    """Lets go of a zip."""
    path_of(data, token).unlink(missing_ok=True)
