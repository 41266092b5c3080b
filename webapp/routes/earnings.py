"""What patterns earned: noted, as a table by month, and out for a spreadsheet."""

from __future__ import annotations

from dataclasses import replace

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from engine.errors import EngineError
from webapp.exchange.table import write_table
from webapp.pages.addresses import PATHS
from webapp.pages.forms.answers import numbered
from webapp.pages.forms.cost import EarningForm, again, blank_earning, read_earning
from webapp.pages.views.earnings import COLUMNS, earnings_page, earnings_rows
from webapp.pages.views.frame import Frame
from webapp.records import MakerSettings
from webapp.routes.deps import Asked, Form, Maker, TheDatabase, TheFrame, go, page, pattern_named
from webapp.storage import earnings, patterns
from webapp.storage.database import Database

router = APIRouter(include_in_schema=False)


@router.get(PATHS["earnings"])
def earned(
    asked: Asked, database: TheDatabase, frame: TheFrame, maker: Maker, pattern: int | None = None
) -> HTMLResponse:
    """The notes; what the address says stands in the form, such as a note that was just removed."""
    title = patterns.load(database, pattern).pattern.title if pattern is not None else ""
    named = numbered(title, pattern) if pattern is not None else ""
    form = blank_earning(asked, maker, database.now().date().isoformat(), named)
    return _page(database, frame, maker, form, pattern, title)


@router.post(PATHS["earnings"])
def note(sent: Form, database: TheDatabase, frame: TheFrame, maker: Maker) -> Response:
    form = read_earning(sent)
    try:
        stored = pattern_named(database, form.typed.pattern)
    except EngineError as error:
        return _page(database, frame, maker, form.refused(error))
    if form.earning is None:
        return _page(database, frame, maker, form, stored.id, stored.pattern.title)
    earnings.note(database, replace(form.earning, pattern=stored.id))
    return go("earnings", "earned", pattern=stored.id)


@router.post(PATHS["remove_earning"])
def remove(earning: int, database: TheDatabase) -> RedirectResponse:
    """The note is gone; it stands in the form, to be noted again where that was not meant."""
    gone = earnings.remove(database, earning)
    return go("earnings", "earned-gone", **again(gone.earning, numbered(gone.title, gone.earning.pattern)))


@router.get(PATHS["earnings_table"])
def table(database: TheDatabase, pattern: int | None = None) -> Response:
    return Response(
        write_table(COLUMNS, earnings_rows(earnings.noted(database, pattern))),
        media_type="text/csv; charset=utf-8",
        headers={"content-disposition": 'attachment; filename="earnings.csv"'},
    )


def _page(
    database: Database,
    frame: Frame,
    maker: MakerSettings,
    form: EarningForm,
    pattern: int | None = None,
    title: str = "",
) -> HTMLResponse:
    value = earnings_page(frame, form, earnings.noted(database, pattern), maker, pattern or 0, title)
    return page("earnings/page.html", value, 422 if form.errors else 200)
