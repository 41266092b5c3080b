"""Writes patterns of the library as pattern files."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from contextlib import closing
from pathlib import Path

from webapp.commands import Refused, files
from webapp.commands.library import add_data, library
from webapp.exchange import pattern_file
from webapp.storage import patterns
from webapp.storage.library import open_library


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("ids", metavar="ID", nargs="*", help="numbers of patterns (default: all but those in the bin)")
    parser.add_argument("-o", "--output", metavar="DIR", required=True, help="the folder to write into")
    add_data(parser)


def run(chosen: Namespace) -> int:
    folder = Path(chosen.output)
    if not folder.is_dir():
        raise Refused(f"The folder {folder} does not exist; make it first or name another.")
    with closing(open_library(library(chosen).parent)) as database:
        numbers = [_number(text) for text in chosen.ids] or patterns.all_numbers(database)
        kept = [patterns.load(database, number) for number in numbers]
    for stored in kept:
        path = folder / f"{stored.id:04}-{pattern_file.file_name(stored.pattern.title)}"
        files.write_whole(path, pattern_file.write_file(stored.pattern).encode())
        print(path)
    return 0


def _number(text: str) -> int:
    if not (text.isascii() and text.isdigit() and len(text) < 18):
        raise Refused(f"“{text[:40]}” is not the number of a pattern.")
    return int(text)
