"""The cabinet on the command line: written as a table, and taken in from one."""

from dataclasses import replace

import pytest

from engine.cabinet.bead import Bead
from webapp.commands import main
from webapp.storage import beads
from webapp.storage.library import open_library

SEA = Bead("Sea", "#2f7f76", maker_code="LS-4", stock_mg=12_500, key="sea")
TABLE = (
    "kind,name,colour,finish,maker_code,supplier,pack_grams,price,currency,stock_grams,note,key\r\n"
    "11/0 round,Sea,#2f7f76,opaque,LS-4,,,,,12.5,,sea\r\n"
)


@pytest.fixture
def folder(tmp_path):
    """A data folder with one bead in its cabinet."""
    database = open_library(tmp_path / "data")
    beads.add(database, SEA)
    database.close()
    return tmp_path / "data"


def kept(folder):
    database = open_library(folder)
    try:
        return tuple(sorted(beads.cabinet(database), key=lambda bead: bead.name))
    finally:
        database.close()


def test_the_cabinet_is_printed_or_written_as_a_table(folder, tmp_path, capfd):
    assert main(["beads", "--data", str(folder)]) == 0
    assert capfd.readouterr().out.replace("\r\n", "\n") == TABLE.replace("\r\n", "\n")
    assert main(["beads", "-o", str(tmp_path / "out.csv"), "--data", str(folder)]) == 0
    assert (tmp_path / "out.csv").read_bytes() == TABLE.encode()


def test_a_table_is_looked_at_or_taken_in_and_bad_rows_are_named(folder, tmp_path, capsys):
    table = tmp_path / "in.csv"
    table.write_text(
        "name,colour,maker_code,stock_grams\nSea,#2f7f76,LS-4,9\nDusk,#4a4466,,3\nDawn,pink,,\nDusk,#000000,,1\n"
    )
    said = (
        "1 new, 1 changed, 0 as they are.\n"
        "Row 4 is not taken, colour: “pink” is not a colour; write # and six digits or letters a to f, such as #2f7f76.\n"
        "Row 5 is not taken, row 3 is about the same bead and says something else.\n"
    )
    assert main(["beads", str(table), "--look", "--data", str(folder)]) == 0
    assert capsys.readouterr().out == said
    assert kept(folder) == (SEA,)
    assert main(["beads", str(table), "--data", str(folder)]) == 0
    assert capsys.readouterr().out == said
    dusk, sea = kept(folder)
    assert sea == replace(SEA, stock_mg=9_000)
    assert (dusk.name, dusk.stock_mg) == ("Dusk", 3_000)


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (["nowhere.csv"], "There is no file nowhere.csv."),
        (["in.csv", "-o", "out.csv"], "Name a table to import, or where to write the cabinet, not both."),
        (["-o", "nowhere/out.csv"], "The folder nowhere does not exist; make it first or name another."),
    ],
)
def test_what_cannot_be_done_is_said_in_one_line(folder, arguments, sentence, capsys):
    assert main(["beads", *arguments, "--data", str(folder)]) == 2
    assert capsys.readouterr().err == f"Ropewright: {sentence}\n"
