"""The library as a zip out, and a zip in again after a look at what it would bring."""

from __future__ import annotations

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, RedirectResponse, StreamingResponse

from webapp.exchange import arrived, incoming
from webapp.exchange.arrived import Arrived
from webapp.exchange.shipped import ShippedWorkshop
from webapp.pages.addresses import PATHS
from webapp.pages.filters import counted
from webapp.pages.forms.sent import Sent
from webapp.pages.views.arrivals import USUAL, arrivals_page
from webapp.routes.deps import Desk, Form, TheDatabase, TheDesk, TheFrame, go, page, zip_answer
from webapp.storage import intake, workshop

router = APIRouter(include_in_schema=False)


@router.get(PATHS["library_zip"])
def library_out(database: TheDatabase) -> StreamingResponse:
    """Sent while it is made, so that the browser shows how far it is."""
    return zip_answer(database)


@router.get(PATHS["arrivals"])
def arrivals(token: str, desk: TheDesk, frame: TheFrame) -> HTMLResponse:
    found = _read(desk, token)
    lines = intake.beside(desk.database, found.patterns)
    return page("library/arrivals.html", arrivals_page(frame, token, lines, _told(found.workshop)))


@router.post(PATHS["take_in"])
def take_in(token: str, form: Form, desk: TheDesk) -> RedirectResponse:
    sent, found = Sent(form), _read(desk, token)
    lines = intake.beside(desk.database, found.patterns)
    chosen = [(sent.one(f"pattern-{place}", USUAL[line.state]), line.number) for place, line in enumerate(lines)]
    taken = intake.take_in(desk.database, found.patterns, chosen, found.workshop)
    if sent.has("workshop"):
        intake.take_workshop(desk.database, found.workshop)
    incoming.forget(desk.settings.data, token)
    return go("library", "taken-in" if taken else "none-taken", sort="made")


def _read(desk: Desk, token: str) -> Arrived:
    return arrived.read(incoming.path_of(desk.settings.data, token), workshop.kinds(desk.database))


def _told(found: ShippedWorkshop) -> str:
    swatches = counted(len(found.swatches), "swatch", "swatches") if found.swatches else ""
    return " and ".join(filter(None, (swatches, "settings" if found.settings else "")))
