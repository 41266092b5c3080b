"""The maker's own words and photographs for the booklets of a pattern."""

from __future__ import annotations

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from webapp.pages.addresses import PATHS
from webapp.pages.forms.own_words import OwnWordsForm, read_note, read_words, words_form
from webapp.pages.views.frame import Frame
from webapp.pages.views.own_words import OwnWordsPage, own_words_page
from webapp.pictures.photographs import PhotographError, shrunk
from webapp.records import StoredPattern
from webapp.routes.deps import Form, Stored, TheDatabase, TheFrame, go, page, uploads
from webapp.storage import own_words, photographs
from webapp.storage.database import Database
from webapp.storage.photographs import TooMany

router = APIRouter(include_in_schema=False)


@router.get(PATHS["own_words"])
def words(stored: Stored, database: TheDatabase, frame: TheFrame) -> HTMLResponse:
    form = words_form(own_words.load(database, stored.id))
    return page("printing/own_words.html", _shown(stored, form, database, frame))


@router.post(PATHS["own_words"])
def keep_words(stored: Stored, sent: Form, database: TheDatabase, frame: TheFrame) -> Response:
    form = read_words(sent)
    if form.words is None:
        return page("printing/own_words.html", _shown(stored, form, database, frame), 422)
    own_words.save(database, stored.id, form.words)
    return go("own_words", "words", id=stored.id)


@router.post(PATHS["add_photographs"])
async def add_photographs(stored: Stored, sent: Form, database: TheDatabase, frame: TheFrame) -> Response:
    try:
        made = [shrunk(name, data) for name, data in await uploads(sent, "photographs")]
        photographs.add_all(database, stored.id, [(one.jpeg, one.width, one.height) for one in made])
    except (PhotographError, TooMany) as error:
        form = words_form(own_words.load(database, stored.id))
        return page("printing/own_words.html", _shown(stored, form, database, frame, error.message), 422)
    return go("own_words", "photographs", id=stored.id)


@router.get(PATHS["photograph"])
def photograph(stored: Stored, photograph: int, database: TheDatabase) -> Response:
    return Response(photographs.jpeg(database, stored.id, photograph), media_type="image/jpeg")


@router.post(PATHS["describe_photograph"])
def describe(stored: Stored, photograph: int, sent: Form, database: TheDatabase) -> RedirectResponse:
    photographs.describe(database, stored.id, photograph, read_note(sent, "caption"), read_note(sent, "seen"))
    return go("own_words", "photographs", id=stored.id)


@router.post(PATHS["move_photograph"])
def move(stored: Stored, photograph: int, database: TheDatabase) -> RedirectResponse:
    photographs.move_up(database, stored.id, photograph)
    return go("own_words", "photographs", id=stored.id)


@router.post(PATHS["remove_photograph"])
def remove(stored: Stored, photograph: int, database: TheDatabase) -> RedirectResponse:
    photographs.remove(database, stored.id, photograph)
    return go("own_words", "photograph-gone", id=stored.id)


def _shown(stored: StoredPattern, form: OwnWordsForm, database: Database, frame: Frame,
           wrong: str = "") -> OwnWordsPage:
    return own_words_page(frame, stored, form, photographs.of(database, stored.id), photographs.MOST, wrong)
