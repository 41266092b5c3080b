"""Pictures for a listing: scenes on their grounds, and a rope that turns, drawn frame by frame with progress."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Query
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from engine.errors import EngineError
from engine.scenes.all import scene_named
from engine.scenes.scene import Subject
from engine.scenes.settings import GROUNDS, setting
from engine.scenes.turning import FRAMES, HEIGHT, WIDTH, turned_frame
from webapp.exchange.pattern_file import SUFFIX, file_name
from webapp.exchange.works import Work
from webapp.pages.addresses import PATHS
from webapp.pages.forms.pictures import TURNING, PicturesForm, read_pictures
from webapp.pages.views.pictures import TurningPart, pictures_page, turning_part
from webapp.pictures.images import MEDIA_TYPES, check_form
from webapp.pictures.scenes import scene_bytes, scene_name
from webapp.pictures.turning import MOVING, check_moving, moving
from webapp.records import StoredPattern
from webapp.routes.deps import Asked, Services, Stored, TheFrame, TheServices, go, page
from webapp.routes.described import bytes_of
from webapp.storage import colourways, workshop
from webapp.storage.errors import NotFound

router = APIRouter()
SceneWidth = Annotated[int | None, Query(ge=64, le=4000, description="In pixels; without it, as is usual.")]


@router.get(PATHS["pictures"], include_in_schema=False)
def pictures(stored: Stored, asked: Asked, services: TheServices, frame: TheFrame) -> HTMLResponse:
    form, subject = read_pictures(asked), _subject(stored, services)
    turning = _turning(services, subject, form) if form.turning else None
    return page("pictures/page.html", pictures_page(frame, stored, subject, form, turning))


@router.get(PATHS["scene_picture"], include_in_schema=False)
def scene_picture(
    stored: Stored, asked: Asked, services: TheServices, width: SceneWidth = None, download: str = ""
) -> Response:
    form = read_pictures(asked)
    data = _scene(_subject(stored, services), services, form.scene, form.shape, form.ground, form.form, width)
    return _file(data, stored, form.scene, form.form, bool(download))


@router.get(PATHS["turning"], include_in_schema=False)
def turning(stored: Stored, asked: Asked, services: TheServices, download: str = "") -> Response:
    form = read_pictures((("scene", TURNING), *asked))
    data = services.pictures.kept(_turning_name(_subject(stored, services), form))
    if data is None:
        raise NotFound("turning rope of this form yet; draw it first")
    return _file(data, stored, TURNING, form.form, bool(download))


@router.post(PATHS["turning"], include_in_schema=False)
def draw_turning(stored: Stored, asked: Asked, services: TheServices) -> RedirectResponse:
    form, subject = read_pictures((("scene", TURNING), *asked)), _subject(stored, services)
    check_moving(form.form, GROUNDS[form.ground])
    name = _turning_name(subject, form)
    services.works.begin(name, lambda work: services.pictures.get(name, lambda: _drawn(subject, form, work)) and None)
    return _to_turning(stored, form)


@router.get(PATHS["turning_steps"], include_in_schema=False)
def turning_steps(stored: Stored, asked: Asked, services: TheServices, frame: TheFrame) -> HTMLResponse:
    form, subject = read_pictures((("scene", TURNING), *asked)), _subject(stored, services)
    turning = _turning(services, subject, form)
    return page("pictures/_turning.html", pictures_page(frame, stored, subject, form, turning))


@router.post(PATHS["stop_turning"], include_in_schema=False)
def stop_turning(stored: Stored, asked: Asked, services: TheServices) -> RedirectResponse:
    form = read_pictures((("scene", TURNING), *asked))
    name = _turning_name(_subject(stored, services), form)
    if work := services.works.find(name):
        work.stop()
        services.works.forget(name)
    return _to_turning(stored, form)


@router.get(PATHS["api_scene"], tags=["patterns"], response_class=Response, responses=bytes_of("image/png"))
def scene(
    stored: Stored,
    services: TheServices,
    scene: str = "close-up",
    shape: str = "4:3",
    ground: str = "paper",
    form: Annotated[str, Query(description="png, jpeg or webp.")] = "png",
    width: SceneWidth = None,
) -> Response:
    """A scene for a listing as PNG, JPEG or WebP: close-up, table, ring, worn-princess and others."""
    data = _scene(_subject(stored, services), services, scene, shape, ground, form, width)
    return Response(data, media_type=MEDIA_TYPES[form])


def _subject(stored: StoredPattern, services: Services) -> Subject:
    """The pattern with the maker's own numbers and all its colourways."""
    database = services.database
    return Subject(
        stored.pattern,
        workshop.workshop(database, stored.id),
        tuple(kept.colourway for kept in colourways.of(database, stored.id)),
        workshop.settings(database).units,
    )


def _scene(
    subject: Subject, services: Services, key: str, shape: str, ground: str, form: str, width: int | None
) -> bytes:
    """The file of that scene, drawn in its turn if it is not kept. Raises an EngineError naming the option."""
    chosen, taken_in = scene_named(key), setting(shape, ground, width)
    check_form(form, taken_in.ground.colour is None)
    if lacking := chosen.lacks(subject):
        raise EngineError(lacking, "scene")

    def drawn() -> bytes:
        with services.heavy.turn():
            return scene_bytes(subject, chosen, taken_in, form)

    return services.pictures.get(scene_name(subject, key, taken_in, form), drawn)


def _turning(services: Services, subject: Subject, form: PicturesForm) -> TurningPart:
    """How far the turning rope is. Raises what went wrong while it was drawn."""
    name = _turning_name(subject, form)
    if (work := services.works.find(name)) and not work.over():
        return turning_part("running", work.done)
    if work:
        services.works.forget(name)
        work.future.result()
    return turning_part("done" if services.pictures.kept(name) else "none")


def _drawn(subject: Subject, form: PicturesForm, work: Work) -> bytes:
    frames = (turned_frame(subject, GROUNDS[form.ground], number) for number in work.along(range(FRAMES)))
    return moving(frames, form.form)


def _turning_name(subject: Subject, form: PicturesForm) -> str:
    taken_in = setting("wide", form.ground, WIDTH)
    return scene_name(subject, f"{TURNING} {HEIGHT}", taken_in, form.form)


def _to_turning(stored: StoredPattern, form: PicturesForm) -> RedirectResponse:
    return go("pictures", id=stored.id, scene=TURNING, shape=form.shape, ground=form.ground, form=form.form)


def _file(data: bytes, stored: StoredPattern, what: str, form: str, attached: bool) -> Response:
    name = f"{file_name(stored.pattern.title).removesuffix(SUFFIX)}-{what}.{'jpg' if form == 'jpeg' else form}"
    how = "attachment" if attached else "inline"
    headers = {"content-disposition": f'{how}; filename="{name}"'}
    return Response(data, media_type={**MEDIA_TYPES, **MOVING}[form], headers=headers)
