"""The maker's own words and photographs for the booklets of a pattern."""

from __future__ import annotations

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from webapp.pages.addresses import PATHS, address
from webapp.pages.forms.own_words import OwnWordsForm, read_note, read_words, words_form
from webapp.pages.forms.sent import Sent
from webapp.pages.views.frame import Frame
from webapp.pages.views.own_words import Done, OwnWordsPage, own_words_page
from webapp.pictures.photographs import PhotographError, shrunk
from webapp.records import StoredPattern
from webapp.routes.deps import Form, Stored, TheDatabase, TheFrame, TheServices, go, page, uploads
from webapp.storage import own_words, patterns, photographs
from webapp.storage.database import Database
from webapp.storage.photographs import TooMany

router = APIRouter(include_in_schema=False)


@router.get(PATHS["own_words"])
def words(stored: Stored, database: TheDatabase, frame: TheFrame, at: int | None = None, undo: int = 0) -> HTMLResponse:
    form = words_form(own_words.load(database, stored.id), stored.difficulty)
    return page("printing/own_words.html", _page_value(stored, form, database, frame, Done(at, undo)))


@router.post(PATHS["own_words"])
def keep_words(stored: Stored, sent: Form, database: TheDatabase, frame: TheFrame) -> Response:
    form = read_words(sent)
    if form.words is None:
        return page("printing/own_words.html", _page_value(stored, form, database, frame), 422)
    own_words.save(database, stored.id, form.words)
    if form.difficulty is not None:
        patterns.shelve(database, stored.id, stored.series, form.difficulty)
    return go("own_words", "words", id=stored.id)


@router.post(PATHS["add_photographs"])
def add_photographs(stored: Stored, sent: Form, services: TheServices, frame: TheFrame) -> Response:
    database, made = services.database, []
    try:
        for name, file in uploads(sent, "photographs"):
            with services.heavy.turn():
                made.append(shrunk(name, file.read()))
        added = photographs.add_all(database, stored.id, [(of.jpeg, of.width, of.height) for of in made])
    except (PhotographError, TooMany) as error:
        return _refused(stored, database, frame, error.message)
    return _back(stored, "photographs", added[0] if added else 0)


@router.get(PATHS["photograph"])
def photograph(stored: Stored, photograph: int, database: TheDatabase) -> Response:
    return Response(photographs.jpeg(database, stored.id, photograph), media_type="image/jpeg")


@router.post(PATHS["describe_photograph"])
def describe(stored: Stored, photograph: int, sent: Form, database: TheDatabase) -> RedirectResponse:
    photographs.describe(database, stored.id, photograph, read_note(sent, "caption"), read_note(sent, "seen"))
    return _back(stored, "photographs", photograph)


@router.post(PATHS["move_photograph"])
def move(stored: Stored, photograph: int, sent: Form, database: TheDatabase) -> RedirectResponse:
    photographs.move(database, stored.id, photograph, up=Sent(sent).one("way") == "up")
    return _back(stored, "photograph-moved", photograph)


@router.post(PATHS["remove_photograph"])
def remove(stored: Stored, photograph: int, database: TheDatabase) -> RedirectResponse:
    photographs.remove(database, stored.id, photograph)
    return _back(stored, "photograph-gone", undo=photograph)


@router.post(PATHS["take_back_photograph"])
def take_back(stored: Stored, photograph: int, database: TheDatabase, frame: TheFrame) -> Response:
    try:
        photographs.take_back(database, stored.id, photograph)
    except TooMany as error:
        return _refused(stored, database, frame, error.message)
    return _back(stored, "photograph-back", photograph)


@router.post(PATHS["forget_photographs"])
def forget_removed(stored: Stored, database: TheDatabase) -> RedirectResponse:
    photographs.forget_removed(database, stored.id)
    return _back(stored, "photographs-forgotten")


def _back(stored: StoredPattern, said: str, at: int = 0, undo: int | None = None) -> RedirectResponse:
    """On to the photograph in question, or to all of them, where it is said what was done."""
    place = f"photograph-{at}" if at else "photographs"
    return RedirectResponse(f"{address('own_words', id=stored.id, said=said, at=at, undo=undo)}#{place}", 303)


def _refused(stored: StoredPattern, database: Database, frame: Frame, wrong: str) -> HTMLResponse:
    form = words_form(own_words.load(database, stored.id), stored.difficulty)
    return page("printing/own_words.html", _page_value(stored, form, database, frame, Done(wrong=wrong)), 422)


def _page_value(
    stored: StoredPattern, form: OwnWordsForm, database: Database, frame: Frame, done: Done | None = None
) -> OwnWordsPage:
    return own_words_page(
        frame,
        stored,
        form,
        photographs.of(database, stored.id),
        photographs.MOST,
        photographs.removed(database, stored.id),
        done,
    )
