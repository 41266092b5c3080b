"""The schema is brought up to date after a copy, and a file from a newer program is left alone."""

import gzip
import sqlite3
from contextlib import closing
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest

from engine.cabinet.bead import Bead
from engine.pattern.colour import lab
from engine.pattern.palette import Palette
from engine.pattern.part import Part
from webapp.records import Counted
from webapp.storage import beads, colourways, finding, given_answers, in_work, patterns, revisions, upgrade, workshop
from webapp.storage.database import LIBRARY
from webapp.storage.errors import LibraryError
from webapp.storage.library import open_library

SCHEMAS = Path(__file__).parent / "schemas"


def test_a_new_library_has_the_newest_schema_and_needs_no_copy(database):
    assert upgrade.revision_of(database) == upgrade.newest_revision()
    assert not (database.folder / upgrade.COPIES).exists()


def test_the_file_is_copied_before_a_migration(database, monkeypatch, pattern):
    patterns.create(database, pattern)
    present = upgrade.newest_revision()
    monkeypatch.setattr(upgrade, "newest_revision", lambda: "9998")
    upgrade.upgrade(database)
    copy = database.folder / upgrade.COPIES / f"before-9998-from-{present}.sqlite"
    with closing(sqlite3.connect(copy)) as opened:
        assert opened.execute("SELECT title FROM pattern").fetchall() == [("Small harbour",)]


def test_a_file_from_a_newer_program_is_refused_in_words_and_left_alone(database, tmp_path):
    with database.writing() as session:
        session.connection().exec_driver_sql("UPDATE alembic_version SET version_num = '9999'")
    database.close()
    before = (database.folder / LIBRARY).read_bytes()
    with pytest.raises(LibraryError, match=r"was written by a newer Ropewright \(schema 9999\); it is left as it is"):
        open_library(database.folder)
    assert (database.folder / LIBRARY).read_bytes() == before


@pytest.mark.parametrize("schema", ["0001", "0002", "0003", "0004", "0005", "0006", "0007"])
def test_a_library_of_an_earlier_schema_keeps_everything(schema, tmp_path):
    folder = earlier(schema, tmp_path / "data")
    before = rows(folder / LIBRARY)
    library = open_library(folder)
    try:
        assert rows(folder / LIBRARY, columns_of(before)) == before
        assert upgrade.revision_of(library) == upgrade.newest_revision()
        assert rows(folder / upgrade.COPIES / f"before-{upgrade.newest_revision()}-from-{schema}.sqlite") == before
        assert workshop.settings(library).maker == "Lantern Street Beads"
        assert [kept.swatch.beads for kept in workshop.swatches(library)] == [480]
        assert patterns.load(library, 1).pattern.title.startswith("Meadow Path")
    finally:
        library.close()


def test_bead_kinds_of_the_fourth_schema_hold_fewer_in_a_gram_by_an_estimate(tmp_path):
    library = open_library(earlier("0004", tmp_path / "data"))
    try:
        kind = workshop.kinds(library)["5 mm pebble"]
        assert (kind.fewest_per_gram, kind.fewest) == (0, pytest.approx(9 * 0.92))
        workshop.add_kind(library, replace(kind, fewest_per_gram=8.5))
        assert workshop.kinds(library)["5 mm pebble"].fewest == 8.5
    finally:
        library.close()


def test_a_library_of_the_fifth_schema_gains_a_cabinet_that_its_patterns_may_point_at(tmp_path):
    library = open_library(earlier("0005", tmp_path / "data"))
    try:
        dusk = replace(Bead("Dusk", "#4a4466"), key=beads.add(library, Bead("Dusk", "#4a4466")))
        stored = patterns.load(library, 1)
        palette = Palette((dusk.entry("A"), *list(stored.pattern.palette)[1:]))
        revisions.save(library, 1, replace(stored.pattern, palette=palette), stored.revision)
        assert beads.uses(library) == {dusk.key: 1}
        assert colourways.of(library, 1) == ()
    finally:
        library.close()


def test_patterns_of_the_sixth_schema_are_of_one_part_and_may_become_several(tmp_path):
    library = open_library(earlier("0006", tmp_path / "data"))
    try:
        stored = patterns.load(library, 1)
        assert [summary.parts for summary in finding.find(library).patterns if summary.id == 1] == [1]
        parts = (*stored.pattern.parts, Part("Tassel", b"\0\1"))
        revisions.save(library, 1, replace(stored.pattern.alone(b"\0"), chart=b"", in_parts=parts), stored.revision)
        (found,) = finding.find(library, "tassel").patterns
        assert (found.id, found.parts, found.beads) == (1, 2, stored.pattern.beads + 2)
    finally:
        library.close()


def test_a_library_of_the_seventh_schema_keeps_pieces_in_work_and_answers(tmp_path):
    library = open_library(earlier("0007", tmp_path / "data"))
    try:
        counted = Counted(patterns.load(library, 1).pattern, 1, "{}")
        piece = in_work.begin(library, 1, "Marta", counted, "length=45+cm")
        answer = given_answers.keep(library, 1, "Marta", counted, "pattern=1", "3,119 beads", 3119)
        assert in_work.piece(library, 1, piece).name == given_answers.load(library, answer).name == "Marta"
    finally:
        library.close()


def test_a_library_of_the_first_schema_gains_sizes(tmp_path):
    library = open_library(earlier("0001", tmp_path / "data"))
    try:
        workshop.pick(library, 1, ("choker",))
        assert [size.name for size in workshop.workshop(library, 1).sizes] == ["Choker"]
    finally:
        library.close()


def test_swatches_of_the_second_schema_have_no_thread_measured(tmp_path):
    library = open_library(earlier("0002", tmp_path / "data"))
    try:
        assert [kept.swatch.unravelled_mm for kept in workshop.swatches(library)] == [0.0]
    finally:
        library.close()


def test_a_library_of_the_third_schema_can_be_searched_and_has_its_dates(tmp_path):
    library = open_library(earlier("0003", tmp_path / "data"))
    try:
        (found,) = finding.find(library, "meadow legere ete").patterns
        with closing(sqlite3.connect(library.path)) as opened:
            (first,) = opened.execute("SELECT min(made) FROM revision WHERE pattern = 1").fetchone()
            kept = opened.execute("SELECT light, a, b FROM colour WHERE pattern = 1 ORDER BY place").fetchall()
        assert found.made == datetime.fromisoformat(first).replace(tzinfo=UTC)
        assert kept == [pytest.approx(of) for of in lab(found.colours)]
        assert (found.published, found.series, found.difficulty) == (True, "", 0)
    finally:
        library.close()


def earlier(schema, folder):
    """A data folder with the library that was kept of that schema."""
    folder.mkdir()
    (folder / LIBRARY).write_bytes(gzip.decompress((SCHEMAS / f"{schema}.sqlite.gz").read_bytes()))
    return folder


def rows(path, columns=None):
    """Every row by table, as dictionaries; only these columns of these tables, where they are given."""
    with closing(sqlite3.connect(path)) as opened:
        opened.row_factory = sqlite3.Row
        names = columns or {
            name: ("*",)
            for (name,) in opened.execute(
                "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND name <> 'alembic_version'"
            )
        }
        return {
            table: [dict(row) for row in opened.execute(f"SELECT {', '.join(of)} FROM {table} ORDER BY 1, 2")]
            for table, of in names.items()
        }


def columns_of(found):
    """The columns of those rows by table."""
    return {table: tuple(of[0]) if of else ("*",) for table, of in found.items()}
