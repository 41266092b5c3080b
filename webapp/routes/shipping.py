"""Files taken in, and the library as a zip: out, and in again after a look at what it would bring."""

from __future__ import annotations

from collections.abc import Iterable
from contextlib import suppress
from pathlib import Path
from time import time

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, RedirectResponse, Response, StreamingResponse

from engine.errors import EngineError
from engine.units import counted
from webapp.exchange import incoming, pattern_file
from webapp.exchange.arrived import Arrived
from webapp.exchange.shipped import ShippedWorkshop
from webapp.exchange.works import Work
from webapp.pages.addresses import PATHS
from webapp.pages.forms.sent import Sent
from webapp.pages.views.arrivals import LOOKING, TAKING, USUAL, ArrivingPage, arrivals_page, arriving_page
from webapp.pages.views.frame import Frame
from webapp.pages.views.library import import_page
from webapp.pictures.photographs import cleaned
from webapp.records import ArrivedPattern
from webapp.routes.deps import Desk, Form, TheDatabase, TheDesk, TheFrame, go, page, uploads, zip_answer
from webapp.storage import intake, patterns, workshop
from webapp.storage.errors import StorageError

router = APIRouter(include_in_schema=False)
ZIP = ".zip"
MOST_UNDONE = 1000  # as many numbers as an address carries without trouble
SOON_S = 0.6  # what is done so soon needs no page of its own

Looked = tuple[tuple[ArrivedPattern, ...], str]
Taken = tuple[tuple[int, ...], tuple[int, ...]]


@router.get(PATHS["library_zip"])
def library_out(database: TheDatabase) -> StreamingResponse:
    """Sent while it is made, so that the browser shows how far it is."""
    return zip_answer(database)


@router.get(PATHS["import"])
def import_form(frame: TheFrame) -> HTMLResponse:
    return page("library/import.html", import_page(frame))


@router.post(PATHS["import"])
def import_files(form: Form, desk: TheDesk, frame: TheFrame) -> Response:
    """Pattern files are taken in at once; a zip is looked at first."""
    files, where = uploads(form, "file"), Sent(form).one("where")
    zipped = [file for name, file in files if name.lower().endswith(ZIP)]
    if zipped or where:
        try:
            token = incoming.keep(desk.settings.data, zipped[0] if zipped else Path(where), time())
            _arrived(desk, token)
        except EngineError as error:
            return _refused(frame, Path(where).name or "The zip", error, where)
        return go("arrivals", token=token)
    taken, refused = [], []
    for name, file in files:
        try:
            found = pattern_file.read(file.read(), workshop.kinds(desk.database))
            stored = patterns.create(desk.database, found)
            taken.append((stored.id, stored.pattern.title))
        except (EngineError, StorageError) as error:
            refused.append((name, error.message))
    return page("library/import.html", import_page(frame, tuple(taken), tuple(refused)), 422 if refused else 200)


@router.get(PATHS["arrivals"])
def arrivals(token: str, desk: TheDesk, frame: TheFrame) -> Response:
    """What the zip would bring; while it is looked at or taken in, how far that is."""
    if taking := desk.works.find(_taking(token)):
        return _onwards(desk, token, taking) if taking.over() else _arriving(desk, token, frame)
    incoming.path_of(desk.settings.data, token)
    looking = desk.works.begin(_looking(token), lambda work: _look(desk, token, work))
    if not looking.over(SOON_S):
        return _arriving(desk, token, frame)
    try:
        lines, told = looking.future.result()
    except EngineError as error:
        desk.works.forget(_looking(token))
        return _refused(frame, "The zip", error)
    return page("library/arrivals.html", arrivals_page(frame, token, lines, told))


@router.get(PATHS["arriving"])
def arriving(token: str, desk: TheDesk, frame: TheFrame) -> HTMLResponse:
    return page("library/_arriving.html", _steps(desk, token, frame))


@router.post(PATHS["take_in"])
def take_in(token: str, form: Form, desk: TheDesk) -> RedirectResponse:
    incoming.path_of(desk.settings.data, token)
    taking = desk.works.begin(_taking(token), lambda work: _take(desk, token, Sent(form), work))
    return _onwards(desk, token, taking) if taking.over(SOON_S) else go("arrivals", token=token)


@router.post(PATHS["stop_arrivals"])
def stop(token: str, desk: TheDesk) -> RedirectResponse:
    """Stops looking or taking in; what was taken in before anybody could stop it stays."""
    taking = desk.works.find(_taking(token))
    for work in filter(None, (taking, desk.works.find(_looking(token)))):
        work.stop()
    if taking and not taking.future.cancelled() and not taking.future.exception():
        return _onwards(desk, token, taking)
    desk.works.forget(_looking(token), _taking(token))
    with suppress(EngineError):
        incoming.forget(desk.settings.data, token)
    return go("import", "stopped")


def _look(desk: Desk, token: str, work: Work) -> Looked:
    arrived = _arrived(desk, token)
    return intake.beside(desk.database, work.along(arrived)), _told(arrived.workshop)


def _take(desk: Desk, token: str, sent: Sent, work: Work) -> Taken:
    """As was chosen where it was looked at; the numbers of all that was taken in, and of those that were not here."""
    looked = desk.works.find(_looking(token))
    lines, _ = looked.future.result() if looked else _look(desk, token, work)
    chosen = [(sent.one(f"pattern-{place}", USUAL[line.state]), line.number) for place, line in enumerate(lines)]
    arrived = _arrived(desk, token)
    taken = intake.take_in(desk.database, work.along(arrived), chosen, arrived.workshop)
    if sent.has("workshop"):
        intake.take_workshop(desk.database, arrived.workshop)
    incoming.forget(desk.settings.data, token)
    return taken, _fresh(taken, [choice for choice, _ in chosen])


def _onwards(desk: Desk, token: str, taking: Work) -> RedirectResponse:
    """On to the library, which says what was taken in. Raises what went wrong; then nothing was taken in."""
    desk.works.forget(_looking(token), _taking(token))
    taken, fresh = taking.future.result()
    if not taken:
        return go("library", "none-taken", sort="made")
    undo = {"undo": "bin", "chosen": "-".join(map(str, fresh))} if 0 < len(fresh) <= MOST_UNDONE else {}
    return go("library", "taken-in", sort="made", **undo)


def _arriving(desk: Desk, token: str, frame: Frame) -> HTMLResponse:
    return page("library/arriving.html", _steps(desk, token, frame))


def _steps(desk: Desk, token: str, frame: Frame) -> ArrivingPage:
    taking = desk.works.find(_taking(token))
    work = taking or desk.works.find(_looking(token))
    what = TAKING if taking else LOOKING
    return arriving_page(frame, token, what, *((work.done, work.total, work.over()) if work else (0, 0, True)))


def _fresh(taken: Iterable[int], choices: Iterable[str]) -> tuple[int, ...]:
    """Those that were not here before; what became a revision is undone in the history of its pattern."""
    done = (choice for choice in choices if choice != intake.LEAVE)
    return tuple(number for number, choice in zip(taken, done, strict=True) if choice == intake.TAKE)


def _refused(frame: Frame, name: str, error: EngineError, where: str = "") -> HTMLResponse:
    return page("library/import.html", import_page(frame, refused=((name, error.message),), where=where), 422)


def _arrived(desk: Desk, token: str) -> Arrived:
    return Arrived(incoming.path_of(desk.settings.data, token), workshop.kinds(desk.database), cleaned)


def _told(found: ShippedWorkshop) -> str:
    swatches = counted(len(found.swatches), "swatch", "swatches") if found.swatches else ""
    sizes = counted(len(found.sizes), "finished size") if found.sizes else ""
    *first, last = [*filter(None, (swatches, sizes, "settings" if found.settings else ""))] or [""]
    return f"{', '.join(first)} and {last}" if first else last


def _looking(token: str) -> str:
    return f"look {token}"


def _taking(token: str) -> str:
    return f"take {token}"
