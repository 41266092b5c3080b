"""What commands on the library share: which one it is."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from pathlib import Path

from webapp.commands import Refused, files
from webapp.storage.database import LIBRARY


def add_data(parser: ArgumentParser) -> None:
    parser.add_argument("--data", metavar="DIR", help="the data folder (default: the platform's own)")


def library(chosen: Namespace) -> Path:
    """The library file that is there already. Raises Refused."""
    path = files.data_folder(chosen) / LIBRARY
    if not path.is_file():
        raise Refused(f"There is no library in {path.parent}.")
    return path
