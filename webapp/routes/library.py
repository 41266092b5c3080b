"""The library: found patterns, the bin, files taken in; and the list as JSON."""

from __future__ import annotations

from typing import Annotated, Any

from fastapi import APIRouter, Query
from fastapi.responses import HTMLResponse, RedirectResponse

from engine.errors import EngineError
from webapp.exchange import pattern_file
from webapp.pages.addresses import PATHS
from webapp.pages.forms.finder import read_finder
from webapp.pages.views.library import bin_page, import_page, library_page
from webapp.records import PatternSummary
from webapp.routes.deps import Asked, Form, TheDatabase, TheFrame, go, page, uploads
from webapp.routes.described import Summaries, answers
from webapp.storage import patterns, workshop
from webapp.storage.errors import StorageError

router = APIRouter()


@router.get(PATHS["library"], include_in_schema=False)
def library(asked: Asked, database: TheDatabase, frame: TheFrame) -> HTMLResponse:
    finder = read_finder(asked)
    found = patterns.find(database, finder.search, finder.tag, finder.sort, finder.page)
    examples, binned = patterns.counts(database)
    return page("library/page.html", library_page(frame, found, finder, examples, binned))


@router.get(PATHS["bin"], include_in_schema=False)
def bin_(database: TheDatabase, frame: TheFrame, asked: Annotated[str, Query()] = "") -> HTMLResponse:
    found = patterns.find(database, binned=True, per_page=500)
    return page("library/bin.html", bin_page(frame, found, bool(asked)))


@router.post(PATHS["empty_bin"], include_in_schema=False)
def empty_bin(database: TheDatabase) -> RedirectResponse:
    patterns.empty_bin(database)
    return go("bin", "emptied")


@router.post(PATHS["remove_examples"], include_in_schema=False)
def remove_examples(database: TheDatabase) -> RedirectResponse:
    patterns.remove_examples(database)
    return go("library", "examples")


@router.get(PATHS["import"], include_in_schema=False)
def import_form(frame: TheFrame) -> HTMLResponse:
    return page("library/import.html", import_page(frame))


@router.post(PATHS["import"], include_in_schema=False)
async def import_files(form: Form, database: TheDatabase, frame: TheFrame) -> HTMLResponse:
    taken, refused = [], []
    for name, data in await uploads(form, "file"):
        try:
            stored = patterns.create(database, pattern_file.read(data, workshop.kinds(database)))
            taken.append((stored.id, stored.pattern.title))
        except (EngineError, StorageError) as error:
            refused.append((name, error.message))
    return page("library/import.html", import_page(frame, tuple(taken), tuple(refused)), 422 if refused else 200)


@router.get("/api/patterns", tags=["patterns"], responses=answers(Summaries))
def list_patterns(database: TheDatabase, search: str = "", tag: str = "", page: int = 1) -> dict[str, Any]:
    """Summaries of the patterns found, a page at a time; pages count from one."""
    found = patterns.find(database, search, tag, page=page)
    return {"patterns": [summary_json(summary) for summary in found.patterns], "page": found.page, "pages": found.pages,
            "total": found.total}


def summary_json(summary: PatternSummary) -> dict[str, Any]:
    """What a list says about a pattern."""
    return {"id": summary.id, "title": summary.title, "around": summary.around, "beads": summary.beads,
            "repeat": summary.repeat, "kinds": list(summary.kinds), "colours": list(summary.colours),
            "tags": list(summary.tags), "revision": summary.revision, "changed": summary.changed.isoformat(),
            "example": summary.example}
