"""Puts a backup in the place of the library; the present one is kept aside."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from datetime import datetime
from pathlib import Path

from webapp.commands import Refused, files
from webapp.commands.library import add_data
from webapp.server.running import Running
from webapp.storage import backup


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a backup")
    add_data(parser)


def run(chosen: Namespace) -> int:
    folder, source = files.data_folder(chosen), Path(chosen.file)
    backup.check(source)
    with Running(folder) as running:
        if not running.alone:
            raise Refused("Ropewright is running on this library; stop it first.")
        aside = backup.restore(folder, source, datetime.now())
    print(f"The library in {folder} is now that of {chosen.file}.")
    if aside:
        print(f"The one before is kept as {aside}.")
    return 0
