"""The maker's own words for the booklets of a pattern."""

from __future__ import annotations

from sqlalchemy import delete
from sqlmodel import col, select

from engine.booklet.own import PLACES, OwnWords
from webapp.storage.database import Database
from webapp.storage.patterns import row_of
from webapp.storage.tables import WordsRow


def load(database: Database, pattern: int) -> OwnWords:
    """The words as they stand; empty where none were written."""
    with database.reading() as session:
        rows = session.exec(select(WordsRow).where(WordsRow.pattern == pattern))
        return OwnWords(tuple((row.place, row.text) for row in rows if row.place in PLACES))


def save(database: Database, pattern: int, words: OwnWords) -> None:
    """Keeps the words in the place of those before. Raises NotFound."""
    with database.writing() as session:
        row_of(session, pattern)
        session.exec(delete(WordsRow).where(col(WordsRow.pattern) == pattern))
        session.add_all(WordsRow(pattern=pattern, place=place, text=text) for place, text in words.texts)
