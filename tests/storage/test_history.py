"""The history of a pattern: what it lists, what is named and brought back, and what thins out with age."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from webapp.storage import history, patterns, revisions
from webapp.storage.errors import NotFound
from webapp.storage.tables import EditionRow
from webapp.storage.thinning import REVISIONS

START = datetime(2026, 3, 2, 9, tzinfo=UTC)


@pytest.fixture
def number(database, pattern):
    database.now = lambda: START
    return patterns.create(database, pattern).id


def drawn(database, number, title, at):
    """A working copy of that title that becomes an automatic revision at that time."""
    database.now = lambda: at
    stored = patterns.load(database, number)
    revisions.write_working(database, number, replace(stored.pattern, title=title), stored.sequence)
    return revisions.keep_working(database, number)


def listed(database, number):
    return [kept.number for kept in history.revisions_of(database, number, per_page=1000).revisions]


def test_revisions_are_listed_the_newest_first_with_what_is_known_of_them(database, pattern, number):
    revisions.save(database, number, replace(pattern, title="Second"), 1, "Wider")
    drawn(database, number, "Third", START + timedelta(days=1))
    with database.writing() as session:
        session.add(EditionRow(pattern=number, number=1, revision=2, published=START, note="", words=""))
    history.mark(database, number, 1, "As sampled")
    found = history.revisions_of(database, number)
    assert [
        (kept.number, kept.made, kept.automatic, kept.note, kept.mark, kept.editions, kept.pattern.title)
        for kept in found.revisions
    ] == [
        (3, START + timedelta(days=1), True, "", "", (), "Third"),
        (2, START, False, "Wider", "", (1,), "Second"),
        (1, START, False, "", "As sampled", (), "Small harbour"),
    ]
    assert (found.page, found.pages, found.total, found.before, found.working) == (1, 1, 3, None, None)
    assert history.numbers_of(database, number) == (
        (3, START + timedelta(days=1), ""),
        (2, START, ""),
        (1, START, "As sampled"),
    )
    assert history.kept_revision(database, number, 2) == found.revisions[1]


def test_a_page_knows_the_state_before_its_last(database, pattern, number):
    for title in ("Second", "Third"):
        revisions.save(database, number, replace(pattern, title=title), patterns.load(database, number).revision)
    first = history.revisions_of(database, number, per_page=2)
    assert ([kept.number for kept in first.revisions], first.pages, first.before) == ([3, 2], 2, pattern)
    last = history.revisions_of(database, number, page=9, per_page=2)
    assert ([kept.number for kept in last.revisions], last.page, last.before) == ([1], 2, None)


def test_a_working_copy_is_told_beside_the_list(database, pattern, number):
    revisions.write_working(database, number, replace(pattern, title="Drawn"), 0)
    assert history.revisions_of(database, number).working == START


def test_an_old_state_brought_back_is_a_new_revision_and_can_be_undone(database, pattern, number):
    revisions.save(database, number, replace(pattern, title="Second"), 1)
    assert history.bring_back(database, number, 1) == (3, 2)
    assert patterns.load(database, number).pattern == pattern
    assert history.kept_revision(database, number, 3).note == "Revision 1 brought back"
    assert history.bring_back(database, number, 2) == (4, 3)
    assert patterns.load(database, number).pattern.title == "Second"


def test_a_working_copy_is_kept_before_an_old_state_is_brought_back(database, pattern, number):
    revisions.write_working(database, number, replace(pattern, title="Drawn"), 0)
    new, before = history.bring_back(database, number, 1)
    assert (new, before) == (3, 2)
    assert history.kept_revision(database, number, before).pattern.title == "Drawn"
    assert not patterns.load(database, number).working


def test_what_stands_already_is_not_brought_back(database, number):
    assert history.bring_back(database, number, 1) == (1, 1)
    assert listed(database, number) == [1]


@pytest.fixture
def without_newest(monkeypatch):
    """The rule for what is older than the newest ten, with fewer revisions than that."""
    monkeypatch.setattr(revisions, "REVISIONS", REVISIONS._replace(newest=0))


def test_the_newest_ten_stay_however_old_they_are(database, number):
    for hour in range(14):
        drawn(database, number, f"Hour {hour}", START + timedelta(hours=hour))
    database.now = lambda: START + timedelta(days=4000)
    assert revisions.thin(database) == 4
    assert listed(database, number) == [15, 14, 13, 12, 11, 10, 9, 8, 7, 6, 1]


@pytest.mark.usefixtures("without_newest")
def test_automatic_revisions_thin_out_as_they_grow_older(database, number):
    for hour in range(5):
        drawn(database, number, f"Morning {hour}", START + timedelta(days=1, hours=hour))
    for hour in range(3):
        drawn(database, number, f"Next {hour}", START + timedelta(days=2, hours=hour))
    assert listed(database, number) == [9, 8, 7, 6, 5, 4, 3, 2, 1]
    drawn(database, number, "Later", START + timedelta(days=9))
    assert listed(database, number) == [10, 9, 6, 1]
    database.now = lambda: START + timedelta(days=400)
    assert revisions.thin(database) == 2
    assert listed(database, number) == [10, 1]


@pytest.mark.usefixtures("without_newest")
def test_what_is_made_named_published_newest_or_worked_on_is_never_thinned(database, pattern, number):
    for hour in range(6):
        drawn(database, number, f"Hour {hour}", START + timedelta(hours=hour))
    history.mark(database, number, 3, "As sampled")
    with database.writing() as session:
        session.add(EditionRow(pattern=number, number=1, revision=4, published=START, note="", words=""))
    stored = patterns.load(database, number)
    revisions.write_working(database, number, replace(pattern, title="Drawn"), stored.sequence)
    database.now = lambda: START + timedelta(days=4000)
    assert revisions.thin(database) == 3
    assert listed(database, number) == [7, 4, 3, 1]
    assert revisions.thin(database) == 0


@pytest.mark.parametrize(
    "asked",
    [
        lambda database, number: history.mark(database, number, 9, "x"),
        lambda database, number: history.bring_back(database, number, 9),
        lambda database, number: history.kept_revision(database, number, 0),
        lambda database, number: history.revisions_of(database, 99),
        lambda database, number: history.numbers_of(database, 99),
        lambda database, number: history.kept_revision(database, number, 2**70),
    ],
)
def test_what_never_was_is_not_found(database, number, asked):
    with pytest.raises(NotFound):
        asked(database, number)
