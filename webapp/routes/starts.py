"""The ways to begin a pattern: starting points as pages and as JSON."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Annotated, Any, BinaryIO, NoReturn

from fastapi import APIRouter, Query
from fastapi.responses import HTMLResponse, Response

from engine.errors import EngineError, PatternError
from engine.pattern.notation import write
from engine.pattern.pattern import Pattern
from engine.pattern.starts.all import STARTS, start_of
from engine.pattern.starts.small_repeats import search
from webapp.exchange import pattern_file
from webapp.exchange.pattern_file import PatternFields
from webapp.pages.addresses import PATHS
from webapp.pages.forms.brought import MAKE, TAKE, read_brought
from webapp.pages.forms.repeats import read_repeats
from webapp.pages.forms.sent import Sent
from webapp.pages.forms.starts import read_start
from webapp.pages.forms.symmetric import read_symmetric
from webapp.pages.views.brought import bring_page
from webapp.pages.views.repeats import repeats_page
from webapp.pages.views.starts import begin_page, start_page
from webapp.pages.views.symmetric import symmetric_page
from webapp.pictures.lettering import drawn_letters
from webapp.pictures.list_files import list_text
from webapp.routes.deps import (
    Asked,
    Form,
    Maker,
    Pairs,
    Services,
    TheDatabase,
    TheFrame,
    TheServices,
    go,
    page,
    uploads,
)
from webapp.routes.described import RepeatsAnswer, StartsAnswer, answers
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
def bring_along(form: Form, services: TheServices, database: TheDatabase, frame: TheFrame, maker: Maker) -> Response:
    """Looks at what was pasted, or at the text of a file; with `do` make, the pattern is made of it."""
    files = uploads(form, "file")
    try:
        if not files and Sent(form).one("do") == TAKE:
            raise EngineError("Choose a file first: a PDF or plain text.", "file")
        written = [("text", _text(services, form, *files[0]))] if files else []
    except EngineError as error:
        refused = replace(read_brought(form), errors={error.field or "file": error.message})
        return page("begin/bring.html", bring_page(frame, refused, workshop.kinds(database)), 422)
    brought = read_brought([*written, *form], maker.maker)
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


@router.get("/api/starts/symmetric", tags=["starts"], responses=answers(PatternFields))
def get_symmetric(
    asked: Asked,
    around: str = Query("8", description="Beads in one round, 3 to 60."),
    group: str = Query("cmm", description="A plane group: p1, p2, pm, pg, cm, pmm, pmg, pgg, cmm, p3 or p6."),
    repeat: str = Query("", description="Beads of the repeat; the nearest that the group has is taken."),
    drawn: str = Query("", description="A letter for every bead of the cell that is free."),
) -> dict[str, Any]:
    """The pattern file of a symmetric motif."""
    form = read_symmetric(asked)
    return _document(form.pattern, form.errors)


@router.get("/api/starts/list", tags=["starts"], responses=answers(PatternFields))
def get_brought(
    asked: Asked,
    text: str = Query(description="A list in any usual way of writing, or a table, one row a line."),
    written: str = Query("strung", description="strung, worked, table (first row at the bottom) or table-down."),
    around: str = Query("8", description="Beads in one round; a table says it itself."),
) -> dict[str, Any]:
    """The pattern file of a list or a table."""
    form = read_brought([*asked, ("do", MAKE)])
    return _document(form.pattern, form.errors)


@router.get("/api/starts/repeats", tags=["starts"], responses=answers(RepeatsAnswer))
def get_repeats(
    asked: Asked,
    database: TheDatabase,
    around: str = Query("6", description="Beads in one round, 3 to 12."),
    length: str = Query("7", description="Beads of the repeat, 1 to 14."),
    colour: list[str] = Query((), description="Two to four colours such as #2f7f76."),
    count: list[str] = Query((), description="Beads of each colour, empty for any number."),
    longest_run: str = "",
    both_ways: str = Query("", description="yes: one that reads like another backwards is left out."),
    shorter: str = Query("", description="yes: those of a shorter repeat, too."),
) -> dict[str, Any]:
    """Every small repeat of those colours, at most 10,000, as notation."""
    form = read_repeats(asked, workshop.workshop(database))
    if form.wanted is None or form.palette is None:
        _refuse(form.errors)
    found = search(form.wanted)
    return {"repeats": [write(beads, form.palette.codes) for beads in found.repeats], "all": found.all}


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
    return _document(form.pattern, form.errors)


def _text(services: Services, form: Pairs, name: str, file: BinaryIO) -> str:
    with services.heavy.turn():
        return list_text(name, file.read(), Sent(form).one("pages"))


def _document(pattern: Pattern | None, errors: Mapping[str, str]) -> dict[str, Any]:
    """The pattern file; what is wrong, where there is none."""
    if pattern is None:
        _refuse(errors)
    return pattern_file.to_document(pattern)


def _refuse(errors: Mapping[str, str]) -> NoReturn:
    field, sentence = next(iter(errors.items()))
    raise PatternError(sentence, field)
