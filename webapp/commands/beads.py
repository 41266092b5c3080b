"""The cabinet as a table: written out, or a table taken in, with every row that cannot be taken named."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from contextlib import closing

from engine.cabinet.arrivals import Arrivals, arrivals
from webapp.commands import Refused, files
from webapp.commands.library import add_data, library
from webapp.exchange.bead_table import read_beads, write_beads
from webapp.records import BeadTable
from webapp.storage import beads, workshop
from webapp.storage.database import Database
from webapp.storage.library import open_library


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", nargs="?", help="a table (CSV) to import (default: write the cabinet)")
    parser.add_argument("-o", "--output", metavar="OUT.csv", help="where to write the cabinet (default: print it)")
    parser.add_argument("--look", action="store_true", help="only show what the table would change")
    add_data(parser)


def run(chosen: Namespace) -> int:
    if chosen.file and chosen.output:
        raise Refused("Name a table to import, or where to write the cabinet, not both.")
    output = files.check_folder(chosen.output) if chosen.output else None
    data = files.read_bytes(chosen.file) if chosen.file else b""
    with closing(open_library(library(chosen).parent)) as database:
        if chosen.file:
            return _take(database, data, chosen.look)
        table = write_beads(beads.cabinet(database))
    if output:
        files.write_whole(output, table.encode())
    else:
        print(table, end="")
    return 0


def _take(database: Database, data: bytes, look: bool) -> int:
    """Takes the good rows in, or only says what they are."""
    read = read_beads(data, workshop.kinds(database), workshop.settings(database).currency)
    found = arrivals(read.rows, beads.by_key(database))
    if not look:
        beads.save_all(database, [of.now for of in found.changed], [row.bead for row in found.new])
    print(f"{len(found.new):,} new, {len(found.changed):,} changed, {found.same:,} as they are.")
    for line in _not_taken(read, found):
        print(line)
    return 0


def _not_taken(read: BeadTable, found: Arrivals) -> list[str]:
    lines = [(row.number, f"{row.column}: " if row.column else "", row.sentence) for row in read.wrong]
    lines += [
        (of.number, "", f"row {of.earlier} is about the same bead and says something else.") for of in found.clashes
    ]
    return [f"Row {number} is not taken, {where}{sentence}" for number, where, sentence in sorted(lines)]
