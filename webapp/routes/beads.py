"""The cabinet: its beads found, kept, archived, and their photographs."""

from __future__ import annotations

import re
from contextlib import suppress
from dataclasses import replace

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from engine.cabinet.sampled import sampled_colour
from engine.errors import EngineError
from webapp.demo import demo_beads
from webapp.pages.addresses import PATHS
from webapp.pages.forms.beads import AREAS, BeadForm, bead_form, blank_bead, read_bead, read_bead_finder, read_place
from webapp.pages.views.beads import bead_page, beads_page
from webapp.pictures.photographs import PhotographError, area_of, bead_photograph
from webapp.records import BeadPicture, KeptBead
from webapp.routes.deps import Asked, Form, Maker, Services, TheDatabase, TheFrame, TheServices, frame_of, go, page
from webapp.routes.deps import uploads as uploaded
from webapp.storage import beads, workshop
from webapp.storage.database import Database
from webapp.storage.errors import NotFound

router = APIRouter(include_in_schema=False)
_COLOUR = re.compile(r"#[0-9a-f]{6}")


@router.get(PATHS["beads"])
def cabinet(asked: Asked, database: TheDatabase, frame: TheFrame, maker: Maker) -> HTMLResponse:
    finder, archived = read_bead_finder(asked), len(beads.shelf(database, archived=True))
    shelf = beads.shelf(database, finder.archived)
    value = beads_page(frame, finder, shelf, archived, beads.uses(database), maker)
    return page("beads/page.html", value)


@router.post(PATHS["demo_beads"])
def take_demo_beads(database: TheDatabase) -> RedirectResponse:
    beads.save_all(database, (), demo_beads())
    return go("beads", "beads-demo")


@router.get(PATHS["new_bead"])
def new_bead(database: TheDatabase, frame: TheFrame, maker: Maker, copy: str = "") -> HTMLResponse:
    """An empty form, or one filled with another bead, whose stock stays where it is."""
    form = blank_bead(maker)
    if copy:
        original = beads.load(database, copy).bead
        form = bead_form(replace(original, name=f"{original.name}, another"[:120], stock_mg=0), maker)
    return page("beads/bead.html", bead_page(frame, form, workshop.kinds(database)))


@router.post(PATHS["new_bead"])
def add_bead(form: Form, database: TheDatabase, frame: TheFrame) -> Response:
    given = read_bead(form, workshop.kinds(database))
    if given.bead is None:
        return page("beads/bead.html", bead_page(frame, given, workshop.kinds(database)), 422)
    return go("bead", "bead-new", bead=beads.add(database, given.bead))


@router.get(PATHS["bead"])
def bead(bead: str, services: TheServices, maker: Maker, said: str = "", sampled: str = "") -> HTMLResponse:
    kept = beads.load(services.database, bead)
    form = bead_form(kept.bead, maker)
    if _COLOUR.fullmatch(sampled):
        form = replace(form, typed=replace(form.typed, colour=sampled))
    return _page(services, kept, form, said, sampled if _COLOUR.fullmatch(sampled) else "")


@router.post(PATHS["bead"])
def save_bead(bead: str, form: Form, services: TheServices) -> Response:
    kept = beads.load(services.database, bead)
    kinds = (*workshop.kinds(services.database), kept.bead.kind)
    given = read_bead(form, kinds, bead)
    if given.bead is None:
        return _page(services, kept, given, status=422)
    followed = beads.save(services.database, given.bead)
    return go("bead", "bead-followed" if followed else "bead", bead=bead)


@router.post(PATHS["archive_bead"])
def archive(bead: str, database: TheDatabase) -> RedirectResponse:
    beads.archive(database, bead)
    return go("bead", "bead-archived", bead=bead)


@router.post(PATHS["take_back_bead"])
def take_back(bead: str, database: TheDatabase) -> RedirectResponse:
    beads.archive(database, bead, archived=False)
    return go("bead", "bead-back", bead=bead)


@router.post(PATHS["remove_bead"])
def remove(bead: str, database: TheDatabase) -> RedirectResponse:
    beads.remove(database, bead)
    return go("beads", "bead-removed")


@router.get(PATHS["bead_picture"])
def picture(bead: str, database: TheDatabase) -> Response:
    return Response(beads.picture(database, bead).jpeg, media_type="image/jpeg")


@router.post(PATHS["set_bead_picture"])
def set_picture(bead: str, form: Form, services: TheServices, maker: Maker) -> Response:
    database = services.database
    kept = beads.load(database, bead)
    try:
        for name, file in uploaded(form, "picture")[:1]:
            with services.heavy.turn():
                beads.set_picture(database, bead, BeadPicture(*bead_photograph(name, file.read())))
            return go("bead", "bead-picture", bead=bead)
        wrong = "Choose a photograph first."
    except PhotographError as error:
        wrong = error.message
    return _page(services, kept, bead_form(kept.bead, maker), wrong=wrong, status=422)


@router.post(PATHS["remove_bead_picture"])
def remove_picture(bead: str, database: TheDatabase) -> RedirectResponse:
    beads.remove_picture(database, bead)
    return go("bead", "bead-picture-gone", bead=bead)


@router.post(PATHS["sample_bead"])
def sample(bead: str, form: Form, services: TheServices, maker: Maker) -> Response:
    """The colour of the place that was clicked, offered in the form and not kept yet."""
    kept, photograph = beads.load(services.database, bead), beads.picture(services.database, bead)
    try:
        place = read_place(form, photograph.width, photograph.height)
    except EngineError as error:
        return _page(services, kept, bead_form(kept.bead, maker), wrong=error.message, status=422)
    area = area_of(photograph.jpeg, place.across, place.down, AREAS[place.area])
    return go("bead", "bead-colour", bead=bead, sampled=sampled_colour(area))


def _page(
    services: Services,
    kept: KeptBead,
    form: BeadForm,
    said: str = "",
    sampled: str = "",
    wrong: str = "",
    status: int = 200,
) -> HTMLResponse:
    database, key = services.database, kept.bead.key
    value = bead_page(
        frame_of(services, said),
        form,
        workshop.kinds(database),
        kept,
        beads.patterns_of(database, key),
        beads.cabinet(database),
        _photograph(database, key),
        sampled,
        wrong,
    )
    return page("beads/bead.html", value, status)


def _photograph(database: Database, key: str) -> BeadPicture | None:
    with suppress(NotFound):
        return beads.picture(database, key)
    return None
