"""The cabinet as a table: out for a spreadsheet, and in again after a look at what it would bring."""

from __future__ import annotations

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, Response

from engine.cabinet.arrivals import Arrivals, arrivals
from engine.cabinet.finding import find_beads
from engine.errors import EngineError
from webapp.exchange.bead_table import COLUMNS, LARGEST_BYTES, read_beads, write_beads
from webapp.pages.addresses import PATHS
from webapp.pages.forms.beads import read_bead_finder
from webapp.pages.forms.sent import Sent
from webapp.pages.views.bead_table import bead_preview_page, bead_table_page
from webapp.pages.views.frame import Frame
from webapp.records import BeadTable, MakerSettings
from webapp.routes.deps import Asked, Form, Maker, TheDatabase, TheFrame, go, page, uploads
from webapp.storage import beads, workshop
from webapp.storage.database import Database

router = APIRouter(include_in_schema=False)


@router.get(PATHS["bead_table"])
def table(asked: Asked, database: TheDatabase) -> Response:
    """The beads that were found, all pages of them."""
    finder = read_bead_finder(asked)
    shelf = beads.shelf(database, finder.archived)
    return Response(
        write_beads(find_beads(shelf, finder.wanted, finder.sort)),
        media_type="text/csv; charset=utf-8",
        headers={"content-disposition": 'attachment; filename="beads.csv"'},
    )


@router.get(PATHS["import_beads"])
def import_form(frame: TheFrame) -> HTMLResponse:
    return _form(frame)


@router.post(PATHS["import_beads"])
def look(form: Form, database: TheDatabase, frame: TheFrame, maker: Maker) -> HTMLResponse:
    """What the table would bring; nothing is kept yet."""
    files = uploads(form, "file")
    try:
        data = files[0][1].read() if files else b""
        read, found = _read(data, database, maker)
    except EngineError as error:
        wrong = error.message if files else "Choose a file first."
        return _form(frame, wrong)
    return page("beads/import_preview.html", bead_preview_page(frame, read, found, data.decode("utf-8-sig"), maker))


@router.post(PATHS["take_beads"])
def take(form: Form, database: TheDatabase, frame: TheFrame, maker: Maker) -> Response:
    try:
        _, found = _read(Sent(form).one("table"), database, maker)
    except EngineError as error:
        return _form(frame, error.message)
    if not found.new and not found.changed:
        return go("beads", "beads-same")
    beads.save_all(database, [of.now for of in found.changed], [row.bead for row in found.new])
    return go("beads", "beads-taken")


def _form(frame: Frame, wrong: str = "") -> HTMLResponse:
    return page("beads/import.html", bead_table_page(frame, COLUMNS, LARGEST_BYTES, wrong), 422 if wrong else 200)


def _read(data: bytes | str, database: Database, maker: MakerSettings) -> tuple[BeadTable, Arrivals]:
    read = read_beads(data, workshop.kinds(database), maker.currency)
    return read, arrivals(read.rows, beads.by_key(database))
