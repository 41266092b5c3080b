"""Takes pattern files, or the zip of a library, into the library: all of it, or nothing."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections.abc import Collection
from contextlib import closing
from pathlib import Path

from engine.errors import EngineError
from engine.pattern.pattern import Pattern
from webapp.commands import Refused, files
from webapp.commands.library import add_data
from webapp.exchange import pattern_file, uploaded_zips
from webapp.exchange.prepared import prepare
from webapp.exchange.zip_reader import LibraryZip
from webapp.pictures.photographs import cleaned
from webapp.storage import library_import, patterns, workshop
from webapp.storage.library import open_library


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument(
        "files",
        metavar="FILE",
        nargs="+",
        help="pattern files, or one zip of a library: of a zip, what is new is imported",
    )
    add_data(parser)


def run(chosen: Namespace) -> int:
    if any(name.lower().endswith(".zip") for name in chosen.files):
        return _take_zip(chosen)
    data = [(name, files.read_bytes(name)) for name in chosen.files]
    _read(data)  # so that files which cannot be read make no new library
    with closing(open_library(files.data_folder(chosen))) as database:
        for pattern in _read(data, workshop.kinds(database)):
            print(f"{patterns.create(database, pattern).id} {pattern.title}")
    return 0


def _take_zip(chosen: Namespace) -> int:
    """What is new is taken in; what is there already, or stands there under its title, is left and told."""
    if len(chosen.files) > 1:
        raise Refused("A zip is imported alone; name one file.")
    path = Path(chosen.files[0])
    if not path.is_file():
        raise Refused(f"There is no file {path}.")
    data = files.data_folder(chosen)
    prepared_path = uploaded_zips.prepared_path(data)
    with closing(open_library(data)) as database:
        try:
            opened = LibraryZip(path, workshop.kinds(database), cleaned)
            read = prepare(opened, opened.workshop, prepared_path)
            lines = library_import.compare(database, read)
            taken = iter(
                library_import.import_patterns(
                    database,
                    read,
                    [
                        (library_import.TAKE if line.state == library_import.NEW else library_import.LEAVE, 0)
                        for line in lines
                    ],
                    read.workshop,
                )
            )
        except EngineError as error:
            raise Refused(f"{path}: {error.message} Nothing was imported.") from None
        finally:
            prepared_path.unlink(missing_ok=True)
    for line in lines:
        print(
            f"{next(taken)} {line.title}" if line.state == library_import.NEW else f"left, {line.state}: {line.title}"
        )
    return 0


def _read(data: list[tuple[str, bytes]], kinds: Collection[str] | None = None) -> list[Pattern]:
    """The patterns of those files. Raises Refused, naming the first file that cannot be read."""
    read = []
    for name, text in data:
        try:
            read.append(pattern_file.read(text, kinds))
        except EngineError as error:
            raise Refused(f"{name}: {error.message} Nothing was imported.") from None
    return read
