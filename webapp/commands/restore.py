"""Puts a backup in the place of the library, the present one being kept aside; or shows what is inside the backup."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections import Counter
from contextlib import closing
from datetime import datetime
from pathlib import Path

from engine.units import count
from webapp.commands import Refused, files
from webapp.commands.library import add_data, library
from webapp.server.running import Running
from webapp.storage import backup_contents, library_file
from webapp.storage.library import open_library
from webapp.storage.restore import restore


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a backup")
    parser.add_argument(
        "--look", action="store_true", help="only show what is inside and what would become of every pattern"
    )
    add_data(parser)


def run(chosen: Namespace) -> int:
    folder, source = files.data_folder(chosen), Path(chosen.file)
    library_file.check(source)
    if chosen.look:
        return _look(chosen, source)
    with Running(folder) as running:
        if not running.alone:
            raise Refused("Ropewright is running on this library; stop it first.")
        aside = restore(folder, source, datetime.now())
    print(f"The library in {folder} is now that of {chosen.file}.")
    if aside:
        print(f"The one before is kept as {aside}.")
    return 0


def _look(chosen: Namespace, source: Path) -> int:
    with closing(open_library(library(chosen).parent)) as database:
        contents = backup_contents.compare(database, source)
    newest = f", newest change {contents.newest:%Y-%m-%d %H:%M} UTC" if contents.newest else ""
    print(f"{chosen.file}: patterns {count(contents.patterns)}, in the bin {count(contents.binned)}{newest}")
    states = Counter(line.state for line in contents.lines)
    print("; ".join(f"{state} {count(states[state])}" for state in backup_contents.STATES))
    for line in contents.lines:
        print(f"{line.state:10}  {line.title}")
    return 0
