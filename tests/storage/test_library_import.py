"""The library given out and taken in again, into an empty library or a full one."""

from dataclasses import replace
from datetime import UTC, datetime
from hashlib import sha256

import pytest

from engine.cabinet.bead import Bead
from engine.cabinet.colourways import Colourway
from engine.counting.kinds import Kind
from engine.counting.questions import NamedSize, Question
from engine.counting.rope import Swatch
from engine.pattern.palette import Palette
from webapp.exchange import pattern_file
from webapp.exchange.portable import PortablePattern, PortableWorkshop
from webapp.records import BeadPicture, MakerSettings
from webapp.storage import (
    beads,
    colourways,
    editions,
    finding,
    history,
    library_export,
    library_import,
    patterns,
    revisions,
    workshop,
)
from webapp.storage.errors import NotFound
from webapp.storage.library import open_library
from webapp.storage.tables import EditionBookletRow, EditionRow, PhotographRow, WordsRow

START = datetime(2026, 3, 2, 9, tzinfo=UTC)
SWATCH = Swatch("11/0 round", 12, "single", 480, 62.0, "2026-03-01")
SEA = Bead("Sea", "#2f7f76", pack_mg=20_000, price=350, currency="EUR", stock_mg=5_000, note="Pier")
STALL = NamedSize("Own", "Stall", Question(210.0, "ring", over_hand=True))
PEBBLE = Kind("5 mm pebble", 5.0, 4.0, 1.2, 9.0, 4.8)


@pytest.fixture
def full(database, pattern):
    """A pattern with everything that can belong to one, published in an older state, and a plain one."""
    database.now = lambda: START
    number = patterns.create(database, pattern).id
    revisions.save(database, number, replace(pattern, title="Harbour, wider"), 1)
    patterns.shelve(database, number, "Coast", 3)
    patterns.create(database, replace(pattern, title="Plain"))
    pdf = b"%PDF-1.7 booklet"
    with database.writing() as session:
        session.add(EditionRow(pattern=number, number=1, revision=1, published=START, note="First", words="w"))
        session.flush()
        session.add(
            EditionBookletRow(
                pattern=number,
                edition=1,
                name="standard",
                choices="{}",
                pages=4,
                pdf=pdf,
                sha256=sha256(pdf).hexdigest(),
            )
        )
        session.add(
            PhotographRow(pattern=number, place=1, caption="c", seen="s", width=3, height=2, jpeg=b"\xff\xd8\xff.")
        )
        session.add(WordsRow(pattern=number, place="introduction", text="Hello"))
    colourways.add(database, number, Colourway("Dusk", pattern.palette))
    return database


@pytest.fixture
def stocked(full):
    """The library with two beads, one with a picture that a pattern points at, and one that is archived."""
    sea = beads.add(full, SEA)
    beads.set_picture(full, sea, BeadPicture(b"\xff\xd8\xff.", 30, 20))
    beads.archive(full, beads.add(full, replace(SEA, name="Old sea")))
    stored = patterns.load(full, 2)
    palette = Palette((replace(SEA, key=sea).entry("A"), *list(stored.pattern.palette)[1:]))
    revisions.save(full, 2, replace(stored.pattern, palette=palette), stored.revision)
    return full


def cabinet_of(database):
    """Beads, whether they are archived, and their pictures."""
    return [
        (bead, archived, photograph and tuple(photograph.read()))
        for bead, archived, photograph in library_export.export_workshop(database).beads
    ]


def test_the_cabinet_arrives_as_it_was_with_its_pictures(stocked, empty):
    library_import.import_workshop(empty, library_export.export_workshop(stocked))
    assert cabinet_of(empty) == cabinet_of(stocked)
    assert [(bead.name, archived, bool(picture)) for bead, archived, picture in cabinet_of(empty)] == [
        ("Old sea", True, False),
        ("Sea", False, True),
    ]


def test_patterns_bring_the_beads_that_they_point_at_and_no_others(stocked, empty):
    sent = arrivals(library_export.export_patterns(stocked))
    library_import.import_patterns(empty, sent, [("take", 0)] * 2, library_export.export_workshop(stocked))
    assert [bead.name for bead in beads.cabinet(empty)] == ["Sea"]
    assert len(beads.everything(empty)) == 1


def test_a_bead_that_is_here_already_stays_as_it_is(stocked, empty):
    (sea,) = beads.cabinet(stocked)
    beads.add(empty, replace(sea, stock_mg=99))
    library_import.import_workshop(empty, library_export.export_workshop(stocked))
    assert beads.load(empty, sea.key).bead.stock_mg == 99


@pytest.fixture
def empty(tmp_path):
    database = open_library(tmp_path / "empty")
    database.now = lambda: datetime(2027, 1, 1, tzinfo=UTC)
    yield database
    database.close()


def arrivals(portable):
    return [(pattern_file.read(one.document), one) for one in portable]


def states(database, arrived):
    return [line.state for line in library_import.compare(database, arrived)]


def test_a_library_that_travels_arrives_as_it_was(full, empty):
    sent = list(library_export.export_patterns(full))
    arrived = arrivals(sent)
    assert states(empty, arrived) == ["new", "new"]
    assert library_import.import_patterns(empty, arrived, [("take", 0)] * 2) == (1, 2)
    assert list(library_export.export_patterns(empty)) == sent
    assert states(empty, arrived) == states(full, arrived) == ["same", "same"]


def test_a_booklet_is_read_from_the_library_when_it_is_wanted(full):
    sent = list(library_export.export_patterns(full, [1]))
    (booklet,) = sent[0].editions[0].booklets
    assert booklet.pdf.read() == b"%PDF-1.7 booklet"
    with full.writing() as session:
        session.connection().exec_driver_sql("DELETE FROM edition_booklet")
    with pytest.raises(NotFound, match="There is no booklet “standard”"):
        booklet.pdf.read()


def test_what_was_published_is_a_revision_before_what_stands(full, empty, pattern):
    library_import.import_patterns(empty, arrivals(library_export.export_patterns(full)), [("take", 0)] * 2)
    assert [kept.pattern.title for kept in history.revisions_of(empty, 1).revisions] == [
        "Harbour, wider",
        "Small harbour",
    ]
    assert history.kept_revision(empty, 1, 1).editions == (1,)
    assert editions.pdf(empty, 1, 1, "standard") == b"%PDF-1.7 booklet"


def test_the_bin_stays_at_home_and_only_what_is_asked_for_travels(full):
    assert [one.series for one in library_export.export_patterns(full, [1])] == ["Coast"]
    patterns.put_into_bin(full, 1)
    assert len(list(library_export.export_patterns(full))) == 1


def test_a_pattern_of_the_same_title_that_differs_is_told_and_taken_as_was_chosen(full, pattern):
    other = replace(pattern, title="plain", chart=pattern.chart[:-1])
    arrived = [(other, PortablePattern(pattern_file.write_file(other)))]
    assert library_import.compare(full, arrived) == (("plain", "different", 2),)
    assert library_import.import_patterns(full, arrived, [("leave", 0)]) == ()
    assert library_import.import_patterns(full, arrived, [("revise", 2)]) == (2,)
    assert patterns.load(full, 2).pattern == other
    assert history.kept_revision(full, 2, 2).note == "Imported from a file"
    assert library_import.import_patterns(full, arrived, [("take", 0)]) == (3,)


def test_where_one_of_many_cannot_be_taken_none_is(full, pattern):
    one = (pattern, PortablePattern(pattern_file.write_file(pattern)))
    with pytest.raises(NotFound):
        library_import.import_patterns(full, [one, one], [("take", 0), ("revise", 99)])
    assert finding.find(full).total == 2


def test_bead_kinds_come_with_patterns_and_never_in_the_place_of_ones_own(empty):
    workshop.add_kind(empty, PEBBLE)
    library_import.import_patterns(
        empty, (), (), PortableWorkshop(kinds=(replace(PEBBLE, per_gram=1.0), replace(PEBBLE, name="Other")))
    )
    assert workshop.own_kinds(empty) == (PEBBLE, replace(PEBBLE, name="Other"))


def test_the_workshop_is_taken_where_there_was_none(full, empty):
    workshop.add_swatch(full, SWATCH)
    workshop.add_size(full, STALL)
    workshop.save_settings(
        full, MakerSettings(maker="Lantern Street Beads", spare=12.0, units="in", terms="uk", look="dark")
    )
    sent = library_export.export_workshop(full)
    for _ in range(2):
        library_import.import_workshop(empty, sent)
    assert [kept.swatch for kept in workshop.swatches(empty)] == [SWATCH]
    assert workshop.own_sizes(empty) == (STALL,)
    assert workshop.settings(empty) == MakerSettings(maker="Lantern Street Beads", spare=12.0, units="in", terms="uk")
    workshop.save_settings(empty, MakerSettings(maker="Other"))
    library_import.import_workshop(empty, sent)
    assert workshop.settings(empty).maker == "Other"


def test_a_finished_size_of_ones_own_stays(full, empty):
    workshop.add_size(full, STALL)
    mine = NamedSize("Own", "Stall", Question(400.0, "glued"))
    workshop.add_size(empty, mine)
    library_import.import_workshop(empty, library_export.export_workshop(full))
    assert workshop.own_sizes(empty) == (mine,)


@pytest.mark.parametrize(
    "settings",
    [
        {"spare": "lots"},
        {"spare": "nan"},
        {"spare": "-3"},
        {"maker": "x" * 2001},
        {"look": "dark"},
        {"units": "ells"},
        {"paper": "B5"},
        {"last backup": "x"},
    ],
)
def test_settings_that_make_no_sense_are_left_out(empty, settings):
    library_import.import_workshop(empty, PortableWorkshop(settings))
    assert workshop.settings(empty) == MakerSettings()
    assert workshop.last_backup(empty) is None
