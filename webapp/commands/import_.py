"""Takes pattern files into the library: all of them, or none."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections.abc import Collection
from contextlib import closing

from engine.errors import EngineError
from engine.pattern.pattern import Pattern
from webapp.commands import Refused, files
from webapp.commands.library import add_data
from webapp.exchange import pattern_file
from webapp.storage import patterns, workshop
from webapp.storage.library import open_library


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("files", metavar="FILE", nargs="+", help="pattern files")
    add_data(parser)


def run(chosen: Namespace) -> int:
    data = [(name, files.read_bytes(name)) for name in chosen.files]
    _read(data)  # so that files which cannot be read make no new library
    with closing(open_library(files.data_folder(chosen))) as database:
        for pattern in _read(data, workshop.kinds(database)):
            print(f"{patterns.create(database, pattern).id} {pattern.title}")
    return 0


def _read(data: list[tuple[str, bytes]], kinds: Collection[str] | None = None) -> list[Pattern]:
    """The patterns of those files. Raises Refused, naming the first file that cannot be read."""
    read = []
    for name, text in data:
        try:
            read.append(pattern_file.read(text, kinds))
        except EngineError as error:
            raise Refused(f"{name}: {error.message} Nothing was taken in.") from None
    return read
