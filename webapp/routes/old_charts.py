"""An old chart on paper: its picture handed in, the lattice laid over it, read, put right, and made a pattern."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from pathlib import Path
from time import time
from typing import Annotated

from fastapi import APIRouter, Query
from fastapi.responses import HTMLResponse, Response

from engine.errors import EngineError
from engine.numbers import whole_number
from engine.pattern.old_charts.drawn import Drawn
from engine.pattern.old_charts.fitting import fitted
from engine.pattern.old_charts.marks import read_marks
from engine.pattern.old_charts.paper import Paper
from engine.pattern.old_charts.reading import Reading
from webapp.pages.addresses import PATHS
from webapp.pages.forms.old_chart import OldChartForm, read_old_chart
from webapp.pages.forms.sent import Sent
from webapp.pages.views.old_chart import old_chart_in, old_chart_page
from webapp.pictures import handed_in
from webapp.pictures.photographs import PhotographError
from webapp.routes.deps import Asked, Form, Maker, Services, TheDatabase, TheFrame, TheServices, go, page, uploads
from webapp.storage import patterns, workshop

router = APIRouter(include_in_schema=False)
KEEP = {"cache-control": "private, max-age=86400, immutable"}
SHOWN_PX = 1600
Share = Annotated[float, Query(ge=0, le=1)]


@router.get(PATHS["old_chart_new"])
def hand_in(frame: TheFrame) -> HTMLResponse:
    return page("begin/old_chart_in.html", old_chart_in(frame))


@router.post(PATHS["old_chart_new"])
def handed(form: Form, services: TheServices, frame: TheFrame) -> Response:
    files, typed = uploads(form, "picture"), Sent(form).one("page", "1") or "1"
    try:
        if not files:
            raise PhotographError("Choose a picture first: a JPEG, PNG, WebP or PDF file.", "picture")
        name, file = files[0]
        with services.heavy.turn():
            png = handed_in.taken(name, file.read(), _page_number(typed))
        return go("old_chart", token=handed_in.keep(services.settings.data, png, time()))
    except EngineError as error:
        field = "page" if error.field == "page" else "picture"
        return page("begin/old_chart_in.html", old_chart_in(frame, error.message, field, typed), 422)


@router.get(PATHS["old_chart"])
def look(token: str, asked: Asked, services: TheServices, frame: TheFrame) -> Response:
    form = _read(services, token, asked)
    return page("begin/old_chart.html", old_chart_page(frame, token, form, workshop.kinds(services.database)))


@router.post(PATHS["old_chart"])
def make(
    token: str, form: Form, services: TheServices, database: TheDatabase, frame: TheFrame, maker: Maker
) -> Response:
    """With `do` make the pattern is made, without it what was put right is looked at."""
    typed = _read(services, token, form, maker.maker)
    if typed.pattern is None or Sent(form).one("do") != "make":
        value = old_chart_page(frame, token, typed, workshop.kinds(database))
        return page("begin/old_chart.html", value, 422 if typed.errors else 200)
    return go("chart", id=patterns.create(database, typed.pattern).id)


@router.get(PATHS["old_chart_shown"])
def shown(token: str, services: TheServices) -> Response:
    path = handed_in.path_of(services.settings.data, token)
    return Response(handed_in.shown_whole(path, SHOWN_PX), media_type="image/webp", headers=KEEP)


@router.get(PATHS["old_chart_bead"])
def bead(token: str, services: TheServices, x: Share, y: Share, reach: Share) -> Response:
    """The picture round a bead."""
    path = handed_in.path_of(services.settings.data, token)
    return Response(handed_in.around_place(path, x, y, reach), media_type="image/webp", headers=KEEP)


def _read(services: Services, token: str, pairs: Iterable[tuple[str, object]], designer: str = "") -> OldChartForm:
    path = handed_in.path_of(services.settings.data, token)
    high, wide = handed_in.pixels(path).shape[:2]

    def read(paper: Paper, drawn: Drawn, many: int, fit: bool, marks: str) -> tuple[Paper, Reading]:
        with services.heavy.turn():
            laid = _fitted(path, paper, drawn) if fit else paper
            return laid, _reading(path, laid, drawn, many, marks)

    return read_old_chart(pairs, (wide, high), read, designer)


@lru_cache(8)
def _fitted(path: Path, paper: Paper, drawn: Drawn) -> Paper:
    return fitted(handed_in.pixels(path), paper, drawn)


@lru_cache(8)
def _reading(path: Path, paper: Paper, drawn: Drawn, many: int, marks: str) -> Reading:
    return read_marks(handed_in.pixels(path), paper, drawn, many, marks)


def _page_number(typed: str) -> int:
    try:
        return whole_number(typed, "which page of a PDF, such as 1")
    except EngineError as error:
        raise error.at("page") from None
