"""A picture that becomes a chart: handed in, looked at beside its chart, and made a pattern."""

from __future__ import annotations

from collections.abc import Iterable
from time import time

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, Response

from engine.errors import PatternError
from engine.pattern.pattern import Pattern
from webapp.pages.addresses import PATHS
from webapp.pages.forms.photograph import PhotographForm, read_cut, read_photograph
from webapp.pages.views.frame import Frame
from webapp.pages.views.photograph import hand_in_page, photograph_page
from webapp.pictures import handed_in
from webapp.pictures.cache import Wanted
from webapp.pictures.photographs import PhotographError
from webapp.pictures.unrolled import unrolled
from webapp.routes.deps import Asked, Form, Maker, Services, TheFrame, TheServices, go, page, uploads
from webapp.storage import beads, patterns, workshop

router = APIRouter(include_in_schema=False)
KEEP = {"cache-control": "private, max-age=86400, immutable"}
FLAT = 0.4  # height over width of a picture in which the rope lies straight, the middle of its chart in front


@router.get(PATHS["photograph_new"])
def hand_in(frame: TheFrame) -> HTMLResponse:
    return page("begin/hand_in.html", hand_in_page(frame))


@router.post(PATHS["photograph_new"])
def handed(form: Form, services: TheServices, frame: TheFrame) -> Response:
    files = uploads(form, "picture")
    try:
        if not files:
            raise PhotographError("Choose a picture first: a JPEG, PNG or WebP file.", "picture")
        name, file = files[0]
        with services.heavy.turn():
            png = handed_in.taken(name, file.read())
        return go("photograph_start", token=handed_in.keep(services.settings.data, png, time()))
    except PhotographError as error:
        return page("begin/hand_in.html", hand_in_page(frame, error.message), 422)


@router.get(PATHS["photograph_start"])
def look(token: str, asked: Asked, services: TheServices, frame: TheFrame) -> Response:
    return _bench(services, frame, token, _read(services, token, asked))


@router.post(PATHS["photograph_start"])
def make(token: str, form: Form, services: TheServices, frame: TheFrame, maker: Maker) -> Response:
    typed = _read(services, token, form, maker.maker)
    if typed.pattern is None:
        return _bench(services, frame, token, typed, 422)
    return go("chart", id=patterns.create(services.database, typed.pattern).id)


@router.get(PATHS["photograph_shown"])
def shown(token: str, asked: Asked, services: TheServices) -> Response:
    """The picture turned and cut as the address says."""
    path = handed_in.path_of(services.settings.data, token)
    return Response(handed_in.shown(path, *read_cut(asked)), media_type="image/webp", headers=KEEP)


@router.get(PATHS["photograph_chart"])
def chart(token: str, asked: Asked, services: TheServices) -> Response:
    return Response(unrolled(_made(services, token, asked)), media_type="image/png", headers=KEEP)


@router.get(PATHS["photograph_rope"])
def rope(token: str, asked: Asked, services: TheServices, width: int = 720) -> Response:
    """The rope of what the address says."""
    width = min(max(width, 16), 1600)
    wanted = Wanted("rope", None, width, round(width * FLAT), background=None, form="webp")
    data = services.pictures.picture(_made(services, token, asked), wanted, services.heavy.turn)
    return Response(data, media_type="image/webp", headers=KEEP)


def _bench(services: Services, frame: Frame, token: str, form: PhotographForm, status: int = 200) -> HTMLResponse:
    size_px = handed_in.turned(handed_in.path_of(services.settings.data, token), form.turn).size
    kinds = workshop.kinds(services.database)
    return page("begin/photograph.html", photograph_page(frame, token, form, kinds, size_px), status)


def _read(services: Services, token: str, pairs: Iterable[tuple[str, object]], designer: str = "") -> PhotographForm:
    path = handed_in.path_of(services.settings.data, token)
    cabinet = beads.shelf(services.database)
    with services.heavy.turn():
        return read_photograph(pairs, lambda turn, box: handed_in.summed(path, turn, box), cabinet, designer)


def _made(services: Services, token: str, asked: list[tuple[str, str]]) -> Pattern:
    form = _read(services, token, asked)
    if form.pattern is None:
        raise PatternError(next(iter(form.errors.values())))
    return form.pattern
