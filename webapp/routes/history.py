"""The history of a pattern: revisions listed, looked at, compared, named and brought back."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Depends, Query
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from engine.drawing.charts import chart, strip
from engine.drawing.svg import to_svg
from engine.errors import PatternError
from engine.pattern.pattern import Pattern
from engine.pattern.words import check_line
from webapp.pages.addresses import PATHS
from webapp.pages.forms.sent import Sent
from webapp.pages.views.compared import NOW, compare_page, compared_chart
from webapp.pages.views.history import history_page, revision_page
from webapp.records import KeptRevision
from webapp.routes.deps import Form, Stored, TheDatabase, TheFrame, go, page
from webapp.storage import history

router = APIRouter(include_in_schema=False)
LONGEST_MARK = 80
STRIP_BEADS, CHART_BEADS = 600, 6000
SVG = "image/svg+xml"
First = Annotated[int | None, Query(ge=0, le=100_000)]


def _revision(id: int, revision: int, database: TheDatabase) -> KeptRevision:
    return history.kept_revision(database, id, revision)


TheRevision = Annotated[KeptRevision, Depends(_revision)]


def _pair(
    stored: Stored, database: TheDatabase, old: int = NOW, new: int = NOW
) -> tuple[tuple[int, Pattern], tuple[int, Pattern]]:
    """The two states that are compared, each with its number."""

    def state(number: int) -> tuple[int, Pattern]:
        kept = stored if number == NOW else history.kept_revision(database, stored.id, number)
        return number, kept.pattern

    return state(old), state(new)


Pair = Annotated[tuple[tuple[int, Pattern], tuple[int, Pattern]], Depends(_pair)]


@router.get(PATHS["history"])
def revisions(
    stored: Stored,
    database: TheDatabase,
    frame: TheFrame,
    page_: Annotated[int, Query(alias="page")] = 1,
    undo: Annotated[int, Query(ge=0)] = 0,
) -> HTMLResponse:
    kept = history.revisions_of(database, stored.id, page_)
    return page("history/page.html", history_page(frame, stored, kept, undo))


@router.get(PATHS["compare"])
def compare(
    pair: Pair, stored: Stored, database: TheDatabase, frame: TheFrame, first: First = None, part: str = ""
) -> HTMLResponse:
    numbers = history.numbers_of(database, stored.id)
    return page("history/compare.html", compare_page(frame, stored, numbers, *pair, first, part))


@router.get(PATHS["compare_chart"])
def compare_chart(pair: Pair, side: str = "new", first: First = None, part: str = "") -> Response:
    (_, old), (_, new) = pair
    return Response(compared_chart(old, new, side, first, part), media_type=SVG)


@router.get(PATHS["revision"])
def revision(kept: TheRevision, stored: Stored, frame: TheFrame) -> HTMLResponse:
    return page("history/revision.html", revision_page(frame, stored, kept))


@router.get(PATHS["revision_strip"])
def revision_strip(kept: TheRevision) -> Response:
    return Response(to_svg(strip(kept.pattern, 0, min(STRIP_BEADS, len(kept.pattern.main.beads)))), media_type=SVG)


@router.get(PATHS["revision_chart"])
def revision_chart(kept: TheRevision) -> Response:
    drawn = min(CHART_BEADS, len(kept.pattern.main.beads))
    return Response(to_svg(chart(kept.pattern, 0, drawn, 4.0, upright=False)), media_type=SVG)


@router.post(PATHS["mark_revision"])
def mark(id: int, revision: int, form: Form, stored: Stored, database: TheDatabase, frame: TheFrame) -> Response:
    name = Sent(form).one("name")
    try:
        check_line(name, "name of a revision", LONGEST_MARK, "name", least=0)
    except PatternError as error:
        value = history_page(frame, stored, history.revisions_of(database, id), wrong=error.message)
        return page("history/page.html", value, 422)
    history.mark(database, id, revision, name)
    return go("history", "marked" if name else "unmarked", id=id)


@router.post(PATHS["bring_back"])
def bring_back(id: int, revision: int, form: Form, database: TheDatabase) -> RedirectResponse:
    new, before = history.bring_back(database, id, revision)
    if new == before:
        return go("history", "stands", id=id)
    if Sent(form).has("undoing"):
        return go("history", "undone", id=id)
    return go("history", "brought", id=id, undo=before)
