"""What the description of the API says of what is kept, of lists of patterns, and of every error."""

from __future__ import annotations

from typing import Any

from pydantic import BaseModel, Field

from webapp.exchange.pattern_file import PatternFields


class Objection(BaseModel):
    """What went wrong: a slug, one sentence, and the field at fault, if one is."""

    code: str
    message: str
    field: str | None


class ErrorAnswer(BaseModel):
    """Every error of the API."""

    error: Objection


class Kept(BaseModel):
    """A pattern and its newest revision."""

    id: int
    revision: int


class PatternAnswer(PatternFields):
    """A pattern file as it stands, with what it is kept under."""

    id: int
    revision: int = Field(description="The newest revision, to be sent as made_from with the next one.")
    sequence: int = Field(description="Of the working copy, to be sent with its next write.")


class StartAnswer(BaseModel):
    """A starting point: what it asks by key, and what is taken where nothing is said."""

    key: str
    label: str
    words: str
    colours: int
    asks: dict[str, str]


class RepeatsAnswer(BaseModel):
    """Small repeats as notation; `all` says that there are no others."""

    repeats: list[str]
    all: bool


class StartsAnswer(BaseModel):
    """Every starting point."""

    starts: list[StartAnswer]


class Sequence(BaseModel):
    """The sequence number of the working copy, to be sent with the next write."""

    sequence: int


class Summary(BaseModel):
    """A pattern in a list."""

    id: int
    title: str
    around: int
    beads: int
    repeat: int
    kinds: list[str]
    colours: list[str]
    tags: list[str]
    revision: int
    changed: str
    example: bool
    parts: int


class Summaries(BaseModel):
    """A page of a list; pages count from one."""

    patterns: list[Summary]
    page: int
    pages: int
    total: int


ERRORS: dict[int | str, dict[str, Any]] = {
    status: {"model": ErrorAnswer, "description": words}
    for status, words in (
        (400, "Not JSON, or not UTF-8."),
        (403, "A foreign Host or Origin."),
        (404, "Not in the library."),
        (409, "Made from an older state; nothing was changed."),
        (413, "Too large."),
        (422, "Wrong content."),
    )
}


def answers(model: type[BaseModel], status: int = 200) -> dict[int | str, dict[str, Any]]:
    """The description of a call that answers with that model, or with an error."""
    return {status: {"model": model}, **ERRORS}


def bytes_of(media_type: str) -> dict[int | str, dict[str, Any]]:
    """The description of a call that answers with bytes, or with an error."""
    return {200: {"content": {media_type: {"schema": {"type": "string", "format": "binary"}}}}, **ERRORS}
