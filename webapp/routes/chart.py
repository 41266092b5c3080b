"""The chart editor: its page, a blank chart to begin with, and what happens when a maker leaves it or names a state."""

from __future__ import annotations

from typing import Any

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, JSONResponse, Response

from engine.counting.sizes import size
from engine.pattern.words import check_line
from webapp.exchange.results.piece import PieceResult
from webapp.pages.addresses import PATHS
from webapp.pages.forms.chart import blank_form, read_blank
from webapp.pages.forms.sent import Sent
from webapp.pages.views.chart import blank_page, chart_page
from webapp.routes.deps import Asking, Form, Maker, Stored, TheDatabase, TheFrame, go, page
from webapp.routes.described import answers
from webapp.storage import patterns, revisions, workshop

router = APIRouter()
LONGEST_NOTE = 120


@router.get(PATHS["blank"], include_in_schema=False)
def blank(database: TheDatabase, frame: TheFrame) -> HTMLResponse:
    return page("chart/blank.html", blank_page(frame, blank_form(), workshop.kinds(database)))


@router.post(PATHS["blank"], include_in_schema=False)
def make_blank(form: Form, database: TheDatabase, frame: TheFrame, maker: Maker) -> Response:
    typed = read_blank(form, maker.maker)
    if typed.pattern is None:
        return page("chart/blank.html", blank_page(frame, typed, workshop.kinds(database)), 422)
    return go("chart", id=patterns.create(database, typed.pattern).id)


@router.get(PATHS["chart"], include_in_schema=False)
def chart(stored: Stored, database: TheDatabase, frame: TheFrame) -> HTMLResponse:
    return page("chart/page.html", chart_page(frame, stored, workshop.workshop(database)))


@router.get(PATHS["api_piece"], tags=["patterns"], responses=answers(PieceResult))
def piece(stored: Stored, options: Asking, database: TheDatabase, maker: Maker) -> dict[str, Any]:
    """The whole piece: how its parts lie in the size asked for, where they meet, and what stands in the middle."""
    question = options.question(workshop.own_sizes(database))
    sized = size(options.worked(stored.pattern), question, workshop.workshop(database))
    return PieceResult.of_size(sized, maker.units).model_dump()


@router.post(PATHS["chart_left"], status_code=204, include_in_schema=False)
def leave_chart(id: int, database: TheDatabase) -> Response:
    """The maker has left: the working copy becomes a revision of its own."""
    revisions.keep_working(database, id)
    return Response(status_code=204)


@router.post(PATHS["chart_state"], include_in_schema=False)
def name_state(id: int, form: Form, database: TheDatabase) -> JSONResponse:
    """Keeps the working copy as a revision with a name; `kept` is false where nothing was changed since the last."""
    name = Sent(form).one("name")
    check_line(name, "name of this state", LONGEST_NOTE, "name")
    kept = patterns.load(database, id).working
    return JSONResponse({"revision": revisions.keep_working(database, id, name), "kept": kept})
