"""Writes a checked copy of the library, also while the server runs: to a file, or among the backups that are kept."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from contextlib import closing

from webapp.commands import files
from webapp.commands.library import add_data, library
from webapp.storage import backup_folder, library_file
from webapp.storage.library import open_library


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument(
        "-o",
        "--output",
        metavar="FILE",
        help="the copy to write (default: among the backups that are kept by the day, week and month)",
    )
    add_data(parser)


def run(chosen: Namespace) -> int:
    source = library(chosen)
    if chosen.output is None:
        with closing(open_library(source.parent)) as database:
            print(f"{backup_folder.make(database)}: a checked copy of {source}")
        return 0
    target = files.check_folder(chosen.output)
    library_file.write_backup(source, target)
    print(f"{target.resolve()}: a checked copy of {source}")
    return 0
