"""Writes patterns of the library as pattern files, or the whole library as a zip."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from contextlib import closing
from pathlib import Path

from webapp.commands import Refused, files
from webapp.commands.library import add_data, library
from webapp.exchange import pattern_file, zip_writer
from webapp.storage import finding, library_export, patterns
from webapp.storage.database import Database
from webapp.storage.library import open_library
from webapp.storage.snapshot import snapshot


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("ids", metavar="ID", nargs="*", help="numbers of patterns (default: all but those in the bin)")
    parser.add_argument(
        "-o",
        "--output",
        metavar="DIR",
        required=True,
        help="the folder to write pattern files into; or a file ending in .zip, for patterns with "
        "editions, photographs and an index",
    )
    add_data(parser)


def run(chosen: Namespace) -> int:
    output = Path(chosen.output)
    zipped = output.suffix.lower() == ".zip"
    if not zipped and not output.is_dir():
        raise Refused(f"The folder {output} does not exist; make it first or name another.")
    if zipped:
        files.check_folder(chosen.output)
    with closing(open_library(library(chosen).parent)) as database:
        numbers = [_number(text) for text in chosen.ids]
        if zipped:
            return _write_zip(database, output, numbers)
        kept = [patterns.load(database, number) for number in numbers or finding.numbers(database)]
    for stored in kept:
        path = output / f"{stored.id:04}-{pattern_file.file_name(stored.pattern.title)}"
        files.write_whole(path, pattern_file.write_file(stored.pattern).encode())
        print(path)
    return 0


def _write_zip(database: Database, output: Path, numbers: list[int]) -> int:
    for number in numbers:
        patterns.load(database, number)  # so that a number that is not there is refused
    unfinished = output.with_name(f".{output.name}.part")
    try:
        with unfinished.open("wb") as file, snapshot(database) as copy:
            portable, own = library_export.export_patterns(copy, numbers or None), library_export.export_workshop(copy)
            file.writelines(zip_writer.write(portable, own, database.now()))
        unfinished.replace(output)
    finally:
        unfinished.unlink(missing_ok=True)
    print(output)
    return 0


def _number(text: str) -> int:
    if not (text.isascii() and text.isdigit() and len(text) < 18):
        raise Refused(f"“{text[:40]}” is not the number of a pattern.")
    return int(text)
