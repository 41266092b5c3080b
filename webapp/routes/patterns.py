"""One pattern: new, at a glance, edited as text, copied, binned; and its file as JSON."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, JSONResponse, RedirectResponse, Response

from engine.pattern.pattern import LONGEST_TITLE, Pattern
from webapp.exchange import pattern_file
from webapp.pages.addresses import PATHS
from webapp.pages.forms.editor import EditorForm, blank_editor, editor_of, read_check, read_editor
from webapp.pages.views.editor import check_part, edit_page, new_page
from webapp.pages.views.glance import pattern_page
from webapp.routes.deps import Body, Form, Maker, Stored, TheDatabase, TheFrame, go, page
from webapp.routes.described import ERRORS, Kept, PatternAnswer, Sequence, answers
from webapp.storage import colourways, patterns, revisions, workshop
from webapp.storage.database import Database
from webapp.storage.errors import Stale

router = APIRouter()


class SchemaAnswer(JSONResponse):
    """A JSON Schema."""

    media_type = "application/schema+json"


@router.get(PATHS["new"], include_in_schema=False)
def new(database: TheDatabase, frame: TheFrame, maker: Maker, written: str = "working") -> HTMLResponse:
    return page("editor/page.html", new_page(frame, blank_editor(maker.maker, written), workshop.kinds(database)))


@router.post(PATHS["new"], include_in_schema=False)
def make(form: Form, database: TheDatabase, frame: TheFrame) -> Response:
    editor = read_editor(form)
    if editor.asked == "rows" or editor.pattern is None:
        return page("editor/page.html", new_page(frame, editor, workshop.kinds(database)), _status(editor))
    return go("pattern", "made", id=patterns.create(database, editor.pattern).id)


@router.post(PATHS["check"], include_in_schema=False)
def check(form: Form) -> HTMLResponse:
    return page("editor/_check.html", check_part(read_check(form)))


@router.get(PATHS["pattern"], include_in_schema=False)
def pattern(stored: Stored, database: TheDatabase, frame: TheFrame) -> HTMLResponse:
    kept = colourways.of(database, stored.id)
    return page("pattern/page.html", pattern_page(frame, stored, workshop.workshop(database), kept))


@router.get(PATHS["edit"], include_in_schema=False)
def edit(stored: Stored, database: TheDatabase, frame: TheFrame) -> HTMLResponse:
    return page("editor/page.html", edit_page(frame, stored, editor_of(stored), workshop.kinds(database)))


@router.post(PATHS["edit"], include_in_schema=False)
def save_edited(id: int, form: Form, database: TheDatabase, frame: TheFrame) -> Response:
    editor, stored, kinds = read_editor(form), patterns.load(database, id), workshop.kinds(database)
    if editor.asked == "rows" or editor.pattern is None:
        return page("editor/page.html", edit_page(frame, stored, editor, kinds), _status(editor))
    if editor.asked == "copy":
        return go("pattern", "kept", id=patterns.create(database, _copied(editor.pattern)).id)
    if (editor.pattern, editor.made_from) == (stored.pattern, stored.revision):
        return go("pattern", "unchanged", id=id)
    try:
        revisions.save(database, id, editor.pattern, editor.made_from)
    except Stale:
        return page("editor/page.html", edit_page(frame, stored, editor, kinds, stale=True), 409)
    return go("pattern", "saved", id=id)


@router.post(PATHS["copy"], include_in_schema=False)
def copy(stored: Stored, database: TheDatabase) -> RedirectResponse:
    made = patterns.create(database, _copied(stored.pattern)).id
    colourways.copy_all(database, stored.id, made)
    return go("pattern", "copied", id=made)


@router.post(PATHS["to_bin"], include_in_schema=False)
def to_bin(id: int, database: TheDatabase) -> RedirectResponse:
    patterns.put_into_bin(database, id)
    return go("library", "binned", undo="take-back", chosen=id)


@router.post(PATHS["take_back"], include_in_schema=False)
def take_back(id: int, database: TheDatabase) -> RedirectResponse:
    patterns.take_back(database, id)
    return go("pattern", "back", id=id)


@router.get(PATHS["pattern_file"], include_in_schema=False)
def download(stored: Stored) -> Response:
    name = pattern_file.file_name(stored.pattern.title)
    return Response(
        pattern_file.write_file(stored.pattern),
        media_type="application/json",
        headers={"content-disposition": f'attachment; filename="{name}"'},
    )


@router.post(
    "/api/patterns", status_code=201, tags=["patterns"], openapi_extra=pattern_file.BODY, responses=answers(Kept, 201)
)
def post_pattern(body: Body, database: TheDatabase) -> dict[str, int]:
    """Takes a pattern file into the library."""
    stored = patterns.create(database, pattern_file.read(body, workshop.kinds(database)))
    return {"id": stored.id, "revision": stored.revision}


@router.get("/api/patterns/{id}", tags=["patterns"], responses=answers(PatternAnswer))
def get_pattern(stored: Stored) -> dict[str, Any]:
    """The pattern file as it stands, with `id`, `revision` and `sequence`."""
    beside = {"id": stored.id, "revision": stored.revision, "sequence": stored.sequence}
    return {**pattern_file.to_document(stored.pattern), **beside}


@router.put("/api/patterns/{id}", tags=["patterns"], openapi_extra=pattern_file.BODY, responses=answers(Kept))
def put_pattern(id: int, body: Body, database: TheDatabase) -> dict[str, int]:
    """A new revision; `made_from` is the revision it was made from, and 409 when that is not the newest."""
    given, made_from = _read_save(body, "made_from", database, id)
    return {"id": id, "revision": revisions.save(database, id, given, made_from)}


@router.put(
    "/api/patterns/{id}/working", tags=["patterns"], openapi_extra=pattern_file.BODY, responses=answers(Sequence)
)
def put_working(id: int, body: Body, database: TheDatabase) -> dict[str, int]:
    """Overwrites the working copy; `sequence` is the number last seen, and 409 when another page has written since."""
    given, sequence = _read_save(body, "sequence", database, id)
    return {"sequence": revisions.write_working(database, id, given, sequence)}


@router.delete("/api/patterns/{id}", status_code=204, tags=["patterns"], responses=ERRORS)
def delete_pattern(id: int, database: TheDatabase) -> None:
    """Puts the pattern into the bin, from which it can be taken back."""
    patterns.put_into_bin(database, id)


@router.get("/api/pattern-file.schema.json", tags=["patterns"], response_class=SchemaAnswer)
def pattern_schema() -> JSONResponse:
    """The JSON Schema of the pattern file."""
    return SchemaAnswer(pattern_file.schema())


def _read_save(body: bytes, beside: str, database: Database, number: int) -> tuple[Pattern, int]:
    """A kind that this library lacks is no reason to refuse a pattern that has it already."""
    document = pattern_file.load(body)
    has = patterns.load(database, number).pattern
    return (
        pattern_file.to_pattern(document, {*workshop.kinds(database), *(entry.kind for entry in has.palette)}),
        pattern_file.whole_number(document, beside),
    )


def _copied(original: Pattern) -> Pattern:
    return replace(original, title=f"Copy of {original.title}"[:LONGEST_TITLE])


def _status(editor: EditorForm) -> int:
    return 200 if editor.asked == "rows" else 422
