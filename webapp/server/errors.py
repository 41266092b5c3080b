"""Error to status, in one table; an address under /api answers in JSON, every other with a page."""

from __future__ import annotations

import logging
from collections.abc import Callable
from http import HTTPStatus

from fastapi import FastAPI, Request
from fastapi.exceptions import RequestValidationError
from fastapi.responses import HTMLResponse, JSONResponse
from starlette.exceptions import HTTPException
from starlette.responses import Response

from engine.errors import EngineError
from webapp.exchange.pattern_file import NotJson
from webapp.exchange.works import Busy
from webapp.pages.rendering import render
from webapp.pages.views.error import error_page
from webapp.pages.views.frame import Frame, frame
from webapp.printing.errors import PrintBusy
from webapp.server.guard import HEADERS
from webapp.storage.errors import DiskFull, LibraryBusy, LibraryError, NotFound, Rejected, Stale, StorageError

# the first that fits counts
STATUS: tuple[tuple[type[Exception], int], ...] = (
    (NotJson, 400),
    (Busy, 503),
    (PrintBusy, 503),
    (EngineError, 422),
    (NotFound, 404),
    (Stale, 409),
    (Rejected, 409),
    (LibraryBusy, 503),
    (DiskFull, 507),
    (LibraryError, 500),
    (StorageError, 500),
)
CODES = {403: "foreign", 404: "not-found", 405: "method", 408: "stalled", 413: "too-large", 500: "failed"}
RETRY_S = "10"
FAILED = "Something went wrong in Ropewright; nothing that was saved before is lost."

log = logging.getLogger("ropewright")


def add_errors(app: FastAPI, around: Callable[[], Frame] = frame) -> None:
    """Makes the app answer every error in a sentence; `around` gives what stands round an error page."""

    def objection(request: Request, error: Exception) -> Response:
        status = next((status for kind, status in STATUS if isinstance(error, kind)), 500)
        code, field = getattr(error, "code", ""), getattr(error, "field", None)
        answer = answered(request.url.path, status, str(error), code, field)
        if status == 503:
            answer.headers["retry-after"] = RETRY_S
        return answer

    def http(request: Request, error: Exception) -> Response:
        status = getattr(error, "status_code", 500)
        detail = str(getattr(error, "detail", ""))
        return answered(request.url.path, status, "" if detail == HTTPStatus(status).phrase else detail)

    def invalid(request: Request, error: Exception) -> Response:
        first = error.errors()[0] if isinstance(error, RequestValidationError) else {}
        if first.get("loc", ("",))[0] == "path":
            return answered(request.url.path, 404, "")
        field = ".".join(str(part) for part in first.get("loc", ())[1:])
        return answered(request.url.path, 422, f"“{field}”: {first.get('msg', 'not valid').lower()}.", "wrong", field)

    def failed(request: Request, error: Exception) -> Response:
        log.error("%s %s failed", request.method, request.url.path, exc_info=error)
        answer = answered(request.url.path, 500, FAILED)
        answer.headers.update(HEADERS)  # this one is made outside the guard
        return answer

    def answered(path: str, status: int, message: str, code: str = "", field: str | None = None) -> Response:
        return error_response(path, status, message, code, field, around)

    for kind in (EngineError, StorageError):
        app.add_exception_handler(kind, objection)
    app.add_exception_handler(HTTPException, http)
    app.add_exception_handler(RequestValidationError, invalid)
    app.add_exception_handler(Exception, failed)


def error_response(
    path: str, status: int, message: str, code: str = "", field: str | None = None, around: Callable[[], Frame] = frame
) -> Response:
    """The answer for an address: JSON under /api, else our own page."""
    page = error_page(around(), status, message)
    if path.startswith("/api"):
        error = {"code": code or CODES.get(status, "wrong"), "message": message or page.sentence, "field": field}
        return JSONResponse({"error": error}, status)
    return HTMLResponse(render("error.html", page), status)
