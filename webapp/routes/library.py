"""The library: found patterns and the bin; and the list as JSON."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Annotated, Any

from fastapi import APIRouter, Header, Query
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from engine.pattern.pattern import LONGEST_TAG
from engine.pattern.words import check_line
from webapp.pages.addresses import PATHS
from webapp.pages.forms.finder import Chosen, read_chosen, read_finder
from webapp.pages.forms.own_words import read_difficulty
from webapp.pages.forms.sent import Sent
from webapp.pages.views.library import bin_page, library_page, undo_of
from webapp.records import PatternSummary, Wanted
from webapp.routes.deps import Asked, Form, TheDatabase, TheFrame, go, page, zip_answer
from webapp.routes.described import Summaries, answers
from webapp.storage import bulk as bulk_storage
from webapp.storage import finding, patterns
from webapp.storage.database import Database

router = APIRouter()
LONGEST_SERIES = 120
MOST_BINNED = 500


@router.get(PATHS["library"], include_in_schema=False)
def library(
    asked: Asked, database: TheDatabase, frame: TheFrame, hx_request: Annotated[str, Header()] = ""
) -> HTMLResponse:
    """The whole page; where only what was found is wanted, what one can narrow by is not looked up."""
    finder = read_finder(asked)
    listed = finding.find(database, finder.wanted, finder.sort, finder.page)
    examples, binned = finding.counts(database)
    sent = Sent(asked)
    chosen = sent.one("chosen")
    gone = _binned(database, chosen) if sent.one("undo") == "take-back" else ()
    undo = undo_of(sent.one("undo"), chosen, sent.one("with_tag"), gone)
    frame = replace(frame, said="") if undo and undo.told else frame
    shelves = None if hx_request else finding.shelves(database)
    value = library_page(frame, listed, finder, examples, binned, shelves, undo)
    return page("library/page.html", value)


def _binned(database: Database, chosen: str) -> tuple[str, ...]:
    """The titles of those of the chosen patterns that are in the bin."""
    found = finding.find(database, binned=True, per_page=MOST_BINNED).patterns
    titles = {summary.id: summary.title for summary in found}
    return tuple(titles[number] for number in read_chosen((("chosen", chosen),)).numbers if number in titles)


@router.post(PATHS["bulk"], include_in_schema=False)
def bulk(form: Form, database: TheDatabase) -> Response:
    """Does what was chosen to all patterns that were chosen; what was done stands on the next page with its undo."""
    chosen = read_chosen(form)
    if not chosen.numbers:
        return go("library", "none-chosen")
    if chosen.do == "export":
        return zip_answer(database, chosen.numbers)
    if chosen.do in ("tag", "untag"):
        changed = _set_tag(database, chosen)
        undo = "untag" if chosen.do == "tag" else "tag"
        return go("library", chosen.do, undo=undo, chosen=_joined(changed), with_tag=chosen.tag)
    changed = bulk_storage.set_binned(database, chosen.numbers, chosen.do == "bin")
    if chosen.do == "bin":
        return go("library", "binned", undo="take-back", chosen=_joined(changed))
    return go("library", "taken-back")


@router.post(PATHS["shelve"], include_in_schema=False)
def shelve(id: int, form: Form, database: TheDatabase) -> RedirectResponse:
    sent = Sent(form)
    series, difficulty = sent.one("series"), read_difficulty(sent.one("difficulty"))
    check_line(series, "series", LONGEST_SERIES, "series", least=0)
    patterns.shelve(database, id, series, difficulty or 0)
    return go("pattern", "shelved", id=id)


def _set_tag(database: Database, chosen: Chosen) -> tuple[int, ...]:
    check_line(chosen.tag, "tag", LONGEST_TAG, "with_tag")
    return bulk_storage.set_tag(database, chosen.numbers, chosen.tag, chosen.do == "tag")


def _joined(numbers: Iterable[int]) -> str:
    return "-".join(map(str, numbers))


@router.get(PATHS["bin"], include_in_schema=False)
def bin_(database: TheDatabase, frame: TheFrame, asked: Annotated[str, Query()] = "") -> HTMLResponse:
    listed = finding.find(database, binned=True, per_page=MOST_BINNED)
    return page("library/bin.html", bin_page(frame, listed, bool(asked)))


@router.post(PATHS["empty_bin"], include_in_schema=False)
def empty_bin(database: TheDatabase) -> RedirectResponse:
    patterns.empty_bin(database)
    return go("bin", "emptied")


@router.post(PATHS["remove_examples"], include_in_schema=False)
def remove_examples(database: TheDatabase) -> RedirectResponse:
    removed = patterns.remove_examples(database)
    return go("library", "examples", undo="take-back", chosen=_joined(removed))


@router.get("/api/patterns", tags=["patterns"], responses=answers(Summaries))
def list_patterns(database: TheDatabase, search: str = "", tag: str = "", page: int = 1) -> dict[str, Any]:
    """Summaries of the patterns found, a page at a time; pages count from one."""
    listed = finding.find(database, Wanted(search, tag), page=page)
    return {
        "patterns": [summary_json(summary) for summary in listed.patterns],
        "page": listed.page,
        "pages": listed.pages,
        "total": listed.total,
    }


def summary_json(summary: PatternSummary) -> dict[str, Any]:
    """What a list says about a pattern."""
    return {
        "id": summary.id,
        "title": summary.title,
        "around": summary.around,
        "beads": summary.beads,
        "repeat": summary.repeat,
        "kinds": list(summary.kinds),
        "colours": list(summary.colours),
        "tags": list(summary.tags),
        "revision": summary.revision,
        "changed": summary.changed.isoformat(),
        "example": summary.example,
        "parts": summary.parts,
    }
