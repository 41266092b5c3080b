"""The ways to begin a pattern: starting points as pages and as JSON."""

from __future__ import annotations

from typing import Annotated, Any

from fastapi import APIRouter, Query
from fastapi.responses import HTMLResponse, Response

from engine.errors import PatternError
from engine.pattern.starts.all import STARTS, start_of
from webapp.exchange import pattern_file
from webapp.exchange.pattern_file import PatternFields
from webapp.pages.addresses import PATHS
from webapp.pages.forms.brought import read_brought
from webapp.pages.forms.repeats import read_repeats
from webapp.pages.forms.starts import read_start
from webapp.pages.forms.symmetric import read_symmetric
from webapp.pages.views.brought import bring_page
from webapp.pages.views.repeats import repeats_page
from webapp.pages.views.starts import begin_page, start_page
from webapp.pages.views.symmetric import symmetric_page
from webapp.pictures.lettering import drawn_letters
from webapp.routes.deps import Asked, Form, Maker, TheDatabase, TheFrame, go, page
from webapp.routes.described import StartsAnswer, answers
from webapp.storage import patterns, workshop

router = APIRouter()


@router.get(PATHS["begin"], include_in_schema=False)
def begin(frame: TheFrame) -> HTMLResponse:
    return page("begin/page.html", begin_page(frame))


@router.get(PATHS["repeats"], include_in_schema=False)
def small_repeats(
    asked: Asked, database: TheDatabase, frame: TheFrame, number: Annotated[int, Query(ge=1)] = 1
) -> HTMLResponse:
    own = workshop.workshop(database)
    return page("begin/repeats.html", repeats_page(frame, read_repeats(asked, own), own.kinds, number))


@router.get(PATHS["bring"], include_in_schema=False)
def bring(frame: TheFrame, database: TheDatabase) -> HTMLResponse:
    return page("begin/bring.html", bring_page(frame, read_brought(()), workshop.kinds(database)))


@router.post(PATHS["bring"], include_in_schema=False)
def bring_along(form: Form, database: TheDatabase, frame: TheFrame, maker: Maker) -> Response:
    """Looks at what was pasted; with `do` make, the pattern is made of it."""
    brought = read_brought(form, maker.maker)
    if brought.make and brought.pattern:
        return go("chart", id=patterns.create(database, brought.pattern).id)
    return page("begin/bring.html", bring_page(frame, brought, workshop.kinds(database)), 422 if brought.make else 200)


@router.get(PATHS["symmetric"], include_in_schema=False)
def symmetric(asked: Asked, database: TheDatabase, frame: TheFrame) -> HTMLResponse:
    return page("begin/symmetric.html", symmetric_page(frame, read_symmetric(asked), workshop.kinds(database)))


@router.post(PATHS["symmetric"], include_in_schema=False)
def make_symmetric(form: Form, database: TheDatabase, frame: TheFrame, maker: Maker) -> Response:
    typed = read_symmetric(form, maker.maker)
    if typed.pattern is None:
        return page("begin/symmetric.html", symmetric_page(frame, typed, workshop.kinds(database)), 422)
    return go("chart", id=patterns.create(database, typed.pattern).id)


@router.get(PATHS["start"], include_in_schema=False)
def start(start: str, asked: Asked, database: TheDatabase, frame: TheFrame) -> HTMLResponse:
    form = read_start(start_of(start), asked, letters=drawn_letters)
    return page("begin/start.html", start_page(frame, form, workshop.kinds(database)))


@router.post(PATHS["start"], include_in_schema=False)
def make(start: str, form: Form, database: TheDatabase, frame: TheFrame, maker: Maker) -> Response:
    typed = read_start(start_of(start), form, maker.maker, drawn_letters)
    if typed.pattern is None:
        return page("begin/start.html", start_page(frame, typed, workshop.kinds(database)), 422)
    return go("chart", id=patterns.create(database, typed.pattern).id)


@router.get("/api/starts", tags=["starts"], responses=answers(StartsAnswer))
def get_starts() -> dict[str, Any]:
    """Every starting point, with what it asks."""
    return {
        "starts": [
            {
                "key": start.key,
                "label": start.label,
                "words": start.words,
                "colours": start.colours,
                "asks": {ask.key: ask.usual for ask in start.asks},
            }
            for start in STARTS.values()
        ]
    }


@router.get("/api/starts/{start}", tags=["starts"], responses=answers(PatternFields))
def get_start(
    start: str,
    asked: Asked,
    around: str = Query("8", description="Beads in one round, 3 to 60."),
    colour: list[str] = Query((), description="Colours such as #2f7f76, in the order of the codes A, B, C."),
    title: str = "",
) -> dict[str, Any]:
    """The pattern file of a starting point; what it asks stands in the address by its key."""
    form = read_start(start_of(start), asked, letters=drawn_letters)
    if form.pattern is None:
        field, sentence = next(iter(form.errors.items()))
        raise PatternError(sentence, field)
    return pattern_file.to_document(form.pattern)
