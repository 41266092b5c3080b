"""The library as a zip out, and a zip in again after a look at what it would bring."""

from __future__ import annotations

from collections.abc import Iterable

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
MOST_UNDONE = 1000  # as many numbers as an address carries without trouble


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
    if not taken:
        return go("library", "none-taken", sort="made")
    fresh = _fresh(taken, [choice for choice, _ in chosen])
    undo = {"undo": "bin", "chosen": "-".join(map(str, fresh))} if 0 < len(fresh) <= MOST_UNDONE else {}
    return go("library", "taken-in", sort="made", **undo)


def _fresh(taken: Iterable[int], choices: Iterable[str]) -> tuple[int, ...]:
    """Those that were not here before; what became a revision is undone in the history of its pattern."""
    done = (choice for choice in choices if choice != intake.LEAVE)
    return tuple(number for number, choice in zip(taken, done, strict=True) if choice == intake.TAKE)


def _read(desk: Desk, token: str) -> Arrived:
    return arrived.read(incoming.path_of(desk.settings.data, token), workshop.kinds(desk.database))


def _told(found: ShippedWorkshop) -> str:
    swatches = counted(len(found.swatches), "swatch", "swatches") if found.swatches else ""
    return " and ".join(filter(None, (swatches, "settings" if found.settings else "")))
