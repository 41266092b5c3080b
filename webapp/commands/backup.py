"""Writes a checked copy of the library, also while the server runs."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace

from webapp.commands import files
from webapp.commands.library import add_data, library
from webapp.storage import backup


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("-o", "--output", metavar="FILE", required=True, help="the copy to write")
    add_data(parser)


def run(chosen: Namespace) -> int:
    source, target = library(chosen), files.check_folder(chosen.output)
    backup.write(source, target)
    print(f"{target.resolve()}: a checked copy of {source}")
    return 0
