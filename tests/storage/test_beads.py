"""The cabinet as it is kept: beads stay for the patterns that use them, and unpublished patterns follow a change."""

from dataclasses import replace

import pytest

from engine.cabinet.bead import Bead
from engine.cabinet.colourways import Colourway
from engine.pattern.palette import Palette
from webapp.records import BeadPicture, FreshBooklet
from webapp.storage import beads, colourways, editions, history, patterns, revisions
from webapp.storage.errors import NotFound, StorageError

DUSK = Bead(
    name="Dusk",
    colour="#4a4466",
    finish="matte",
    maker_code="LS-12",
    supplier="Pier Nine",
    pack_mg=20_000,
    price=350,
    currency="EUR",
    stock_mg=12_500,
    note="Left of the lamp order.",
)


@pytest.fixture
def dusk(database):
    """The bead as it is kept."""
    return replace(DUSK, key=beads.add(database, DUSK))


@pytest.fixture
def linked(database, pattern, dusk):
    """The number of a pattern whose first bead points at it."""
    entries = (dusk.entry("A"), *list(pattern.palette)[1:])
    return patterns.create(database, replace(pattern, palette=Palette(entries))).id


def first_entry(database, number):
    return patterns.load(database, number).pattern.palette[0]


def test_a_bead_is_kept_as_it_was_given(database, dusk):
    assert beads.load(database, dusk.key).bead == dusk
    assert beads.cabinet(database) == (dusk,)


def test_an_archived_bead_is_out_of_the_cabinet_and_its_patterns_keep_it(database, dusk, linked):
    beads.archive(database, dusk.key)
    assert beads.cabinet(database) == ()
    assert beads.by_key(database) == {dusk.key: dusk}
    assert first_entry(database, linked) == dusk.entry("A")
    beads.archive(database, dusk.key, archived=False)
    assert beads.cabinet(database) == (dusk,)


def test_only_an_archived_bead_that_nobody_uses_goes_for_good(database, dusk, linked):
    for archived in (False, True):
        beads.archive(database, dusk.key, archived)
        with pytest.raises(StorageError, match="Only an archived bead that no pattern uses"):
            beads.remove(database, dusk.key)
    alone = beads.add(database, DUSK)
    beads.archive(database, alone)
    beads.remove(database, alone)
    with pytest.raises(NotFound):
        beads.load(database, alone)


def test_an_unpublished_pattern_follows_its_bead_as_a_revision_of_its_own(database, dusk, linked):
    now = replace(dusk, colour="#4b4567", name="Dusk II")
    assert beads.save(database, now) == 1
    assert first_entry(database, linked) == now.entry("A")
    newest, first = history.revisions_of(database, linked).revisions
    assert (newest.note, newest.automatic) == ("A bead of the cabinet was changed", True)
    assert revisions.revision(database, linked, first.number).pattern.palette[0] == dusk.entry("A")


def test_a_working_copy_follows_without_a_revision(database, dusk, linked):
    stored = patterns.load(database, linked)
    revisions.write_working(database, linked, replace(stored.pattern, title="Drawn on"), stored.sequence)
    beads.save(database, replace(dusk, colour="#4b4567"))
    after = patterns.load(database, linked)
    assert (after.pattern.title, after.pattern.palette[0].colour) == ("Drawn on", "#4b4567")
    assert (after.working, after.revision) == (True, stored.revision)


def test_a_page_that_missed_a_change_of_the_cabinet_is_refused(database, dusk, linked):
    stored = patterns.load(database, linked)
    beads.save(database, replace(dusk, colour="#4b4567"))
    with pytest.raises(StorageError, match="Another page has written"):
        revisions.write_working(database, linked, stored.pattern, stored.sequence)


def test_what_was_published_does_not_follow(database, dusk, linked):
    editions.publish(database, linked, 1, [FreshBooklet("Standard, A4", "{}", 12, b"%PDF")])
    assert beads.save(database, replace(dusk, colour="#4b4567")) == 0
    assert first_entry(database, linked) == dusk.entry("A")
    assert editions.pdf(database, linked, 1, "Standard, A4") == b"%PDF"


def test_price_and_stock_leave_every_pattern_as_it_is(database, dusk, linked):
    before = patterns.load(database, linked)
    assert beads.save(database, replace(dusk, price=410, stock_mg=0, note="")) == 0
    assert patterns.load(database, linked) == before


def test_colourways_of_unpublished_patterns_follow_too(database, dusk, linked):
    own = patterns.load(database, linked).pattern.palette
    number = colourways.add(database, linked, Colourway("Evening", own))
    beads.save(database, replace(dusk, colour="#4b4567"))
    assert colourways.load(database, linked, number).colourway.palette[0].colour == "#4b4567"


def test_several_beads_come_in_together_or_not_at_all(database, dusk):
    with pytest.raises(NotFound):
        beads.save_all(database, [replace(dusk, note="new"), replace(DUSK, key="gone")], [replace(DUSK, name="Dawn")])
    assert beads.cabinet(database) == (dusk,)
    (key,) = beads.save_all(database, [replace(dusk, note="new")], [replace(DUSK, name="Dawn")])
    assert {bead.name: bead.note for bead in beads.cabinet(database)} == {"Dawn": DUSK.note, "Dusk": "new"}
    assert beads.load(database, key).bead.name == "Dawn"


def test_it_is_known_which_patterns_use_a_bead(database, dusk, linked):
    binned = patterns.create(database, patterns.load(database, linked).pattern).id
    patterns.put_into_bin(database, binned)
    assert beads.uses(database) == {dusk.key: 1}
    assert beads.patterns_of(database, dusk.key) == ((linked, "Small harbour"),)


def test_a_picture_is_exchanged_and_removed(database, dusk):
    beads.set_picture(database, dusk.key, BeadPicture(b"one", 30, 20))
    first = beads.load(database, dusk.key).picture
    beads.set_picture(database, dusk.key, BeadPicture(b"two", 40, 20))
    assert beads.picture(database, dusk.key) == BeadPicture(b"two", 40, 20)
    assert beads.load(database, dusk.key).picture not in ("", first)
    beads.remove_picture(database, dusk.key)
    assert beads.load(database, dusk.key).picture == ""
    with pytest.raises(NotFound):
        beads.picture(database, dusk.key)
