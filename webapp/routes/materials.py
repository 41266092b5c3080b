"""The bill of materials of a pattern, as a page and as JSON."""

from __future__ import annotations

from typing import Any

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, RedirectResponse

from engine.counting.finished import NAMED
from webapp.exchange.results.lists import MaterialsResult, materials_json
from webapp.pages.addresses import PATHS
from webapp.pages.forms.sent import Sent
from webapp.pages.forms.size import read_size
from webapp.pages.views.materials import materials_page
from webapp.routes.deps import Asked, Asking, Form, Maker, Stored, TheDatabase, TheFrame, go, page
from webapp.routes.described import answers
from webapp.storage import beads, workshop

router = APIRouter()


@router.get(PATHS["materials"], include_in_schema=False)
def materials(stored: Stored, asked: Asked, database: TheDatabase, frame: TheFrame, maker: Maker) -> HTMLResponse:
    own = workshop.own_sizes(database)
    numbers = workshop.workshop(database, stored.id)
    form, cabinet = read_size(asked, maker, own), beads.by_key(database)
    return page("materials/page.html", materials_page(frame, stored, form, numbers, own, cabinet))


@router.post(PATHS["pick_sizes"], include_in_schema=False)
def pick_sizes(stored: Stored, form: Form, database: TheDatabase) -> RedirectResponse:
    known = {size.key for size in (*NAMED, *workshop.own_sizes(database))}
    workshop.pick(database, stored.id, [key for key in Sent(form).all("size") if key in known])
    return go("materials", "sizes", id=stored.id)


@router.get("/api/patterns/{id}/materials", tags=["patterns"], responses=answers(MaterialsResult))
def get_materials(stored: Stored, options: Asking, database: TheDatabase, maker: Maker) -> dict[str, Any]:
    """The bill of materials for the size asked for."""
    sizes = workshop.own_sizes(database)
    return materials_json(options.answer(stored.pattern, workshop.workshop(database), maker, sizes).materials)
