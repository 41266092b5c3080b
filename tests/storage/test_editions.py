"""Editions are kept byte for byte and never change; copies say who has which, and what they were told."""

from datetime import UTC, datetime
from hashlib import sha256

import pytest
from sqlalchemy.exc import IntegrityError

from tests.examples import harbour
from webapp.records import FreshBooklet
from webapp.storage import editions, patterns, revisions
from webapp.storage.errors import NotFound

STANDARD = FreshBooklet("Standard, A4", "{}", 12, b"%PDF-standard")
LARGE = FreshBooklet("Large print, A4", "{}", 40, b"%PDF-large")


@pytest.fixture
def published(database):
    """A pattern with two editions of one booklet and of two."""
    number = patterns.create(database, harbour()).id
    editions.publish(database, number, 1, [STANDARD], '{"tips": "Wax it."}', "First")
    revisions.save(database, number, harbour(), 1)
    editions.publish(database, number, 2, [STANDARD, LARGE])
    return number


def test_editions_are_numbered_and_the_newest_stands_first(database, published):
    newest, first = editions.editions(database, published)
    assert (newest.number, newest.revision, first.number, first.revision, first.note) == (2, 2, 1, 1, "First")
    assert [one.name for one in newest.booklets] == ["Large print, A4", "Standard, A4"]
    assert first.words == '{"tips": "Wax it."}' and first.published.tzinfo is UTC
    assert editions.next_number(database, published) == 3


def test_a_booklet_is_given_back_byte_for_byte(database, published):
    assert editions.pdf(database, published, 2, "Large print, A4") == LARGE.pdf
    kept = editions.edition(database, published, 1).booklets[0]
    assert (kept.sha256, kept.bytes, kept.pages) == (sha256(STANDARD.pdf).hexdigest(), len(STANDARD.pdf), 12)


def test_a_withdrawn_edition_stays_and_the_first_reason_counts(database, published):
    editions.withdraw(database, published, 1, "A wrong run")
    since = editions.edition(database, published, 1).withdrawn
    editions.withdraw(database, published, 1, "Another")
    kept = editions.edition(database, published, 1)
    assert (kept.withdrawn, kept.why) == (since, "A wrong run")
    assert editions.pdf(database, published, 1, "Standard, A4") == STANDARD.pdf


def test_an_edition_withdrawn_by_mistake_is_given_out_again_as_it_was(database, published):
    before = editions.edition(database, published, 1)
    editions.withdraw(database, published, 1, "The wrong one")
    editions.bring_back(database, published, 1)
    assert editions.edition(database, published, 1) == before


def test_copies_say_who_has_which_edition_and_what_they_were_told(database, published):
    database.now = lambda: datetime(2026, 11, 25, 9, tzinfo=UTC)
    first = editions.give(database, published, 1, "Standard, A4", "Marta Lind")
    test = editions.give(database, published, 2, "Large print, A4", "Ole Berg", test=True)
    assert [
        (copy.id, copy.name, copy.edition, copy.test, copy.told) for copy in editions.copies(database, published)
    ] == [(test, "Ole Berg", 2, True, 0), (first, "Marta Lind", 1, False, 0)]
    assert editions.note_told(database, published, [first, 999], 2) == 1
    assert editions.note_told(database, published, [first], 2) == 0
    assert editions.copy(database, first).told == 2


def test_a_published_pattern_cannot_be_removed_for_good(database, published):
    patterns.put_into_bin(database, published)
    patterns.empty_bin(database)
    assert editions.edition(database, published, 1).number == 1
    with pytest.raises(IntegrityError), database.writing() as session:
        session.connection().exec_driver_sql(f"DELETE FROM pattern WHERE id = {published}")


@pytest.mark.parametrize(
    "wrong",
    [
        lambda database, number: editions.edition(database, number, 3),
        lambda database, number: editions.edition(database, number, 0),
        lambda database, number: editions.pdf(database, number, 1, "Large print, A4"),
        lambda database, number: editions.give(database, number, 1, "Large print, A4", "Marta"),
        lambda database, number: editions.publish(database, number, 9, [STANDARD]),
        lambda database, number: editions.publish(database, 99, 1, [STANDARD]),
        lambda database, number: editions.withdraw(database, number, 7),
        lambda database, number: editions.bring_back(database, number, 7),
        lambda database, number: editions.copy(database, 5),
    ],
)
def test_what_is_not_there_is_said_in_a_sentence(database, published, wrong):
    with pytest.raises(NotFound, match=r"^There is no .+\.$"):
        wrong(database, published)
    assert editions.next_number(database, published) == 3
