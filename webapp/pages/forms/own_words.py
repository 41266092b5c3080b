"""The maker's own words for a booklet as sent, and a publication and a copy as asked for."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from engine.booklet.choices import DIFFICULTIES
from engine.booklet.own import PLACES, OwnWords
from engine.errors import EngineError
from webapp.pages.forms.sent import Sent

LONGEST_NAME, LONGEST_NOTE = 80, 500


@dataclass(frozen=True)
class OwnWordsForm:
    """What was typed by place, what is wrong, and the words it means; None where something is wrong.

    `difficulty` is one of DIFFICULTIES, nought for not said, None where it was not asked.
    """

    typed: Mapping[str, str]
    errors: Mapping[str, str]
    words: OwnWords | None
    difficulty: int | None = None


@dataclass(frozen=True)
class CopyForm:
    """Who is to have a copy of which booklet, as a test copy or a personal one, and what is wrong."""

    name: str = ""
    booklet: str = ""
    test: bool = False
    errors: Mapping[str, str] = field(default_factory=dict)


def words_form(words: OwnWords, difficulty: int = 0) -> OwnWordsForm:
    """The form of words that are kept."""
    return OwnWordsForm({place: words.text(place) for place in PLACES}, {}, words, difficulty)


def read_words(pairs: Iterable[tuple[str, object]]) -> OwnWordsForm:
    """The words of a form."""
    sent = Sent(pairs)
    typed, difficulty = {place: sent.one(place) for place in PLACES}, read_difficulty(sent.one("difficulty"))
    try:
        return OwnWordsForm(typed, {}, OwnWords(tuple(typed.items())), difficulty)
    except EngineError as error:
        return OwnWordsForm(typed, {error.field or "": error.message}, None, difficulty)


def read_difficulty(text: str) -> int | None:
    """How hard a pattern is, nought for not said; None for anything else."""
    return int(text) if text in {"0", *map(str, DIFFICULTIES)} else None


def read_copy(pairs: Iterable[tuple[str, object]]) -> CopyForm:
    """A copy as asked for; it needs a name."""
    sent = Sent(pairs)
    name, errors = " ".join(sent.one("name").split()), {}
    if not name:
        errors["name"] = "Whose copy is it? The name stands on every page."
    elif len(name) > LONGEST_NAME:
        errors["name"] = f"A name has at most {LONGEST_NAME} letters."
    return CopyForm(name, sent.one("booklet"), sent.one("test") == "yes", errors)


def read_note(pairs: Iterable[tuple[str, object]], name: str = "note") -> str:
    """A short note, cut to what is kept."""
    return " ".join(Sent(pairs).one(name).split())[:LONGEST_NOTE]
