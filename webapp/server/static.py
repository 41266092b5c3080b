"""Gives out the files that come with the app; those asked for by their stamp are never asked for again."""

from __future__ import annotations

import os
import re
import zlib
from functools import lru_cache
from pathlib import Path

from fastapi.staticfiles import StaticFiles
from starlette.datastructures import Headers
from starlette.responses import FileResponse, Response
from starlette.staticfiles import NotModifiedResponse
from starlette.types import Scope

from webapp.pages.static import STAMP
from webapp.paths import STATIC
from webapp.server.stylesheet import joined

LASTS = "public, max-age=31536000, immutable"
PACKED = (".css", ".js", ".svg", ".txt")
MOST_PACKED = 512
GZIP = 31  # the container, as zlib calls it
REFUSED = re.compile(r"q=0(\.0*)?")
STYLES = Path("css", "layers.css")


class Static(StaticFiles):
    """Answers "/STAMP/css/base.css", to be kept for good, and "/css/base.css", to be asked for again.

    The stylesheet that pages link goes out under the stamp with all that it imports. Text goes out packed with gzip to
    whoever takes that, under an ETag of its own; a range is always one of the file.
    """

    def __init__(self) -> None:
        super().__init__(directory=STATIC)

    async def get_response(self, path: str, scope: Scope) -> Response:
        stamp, _, file = path.partition(os.sep)
        if stamp != STAMP:
            return await super().get_response(path, scope)
        response = await super().get_response(file, scope)
        if Path(file) == STYLES:
            response = styles(scope)
        response.headers["cache-control"] = LASTS
        return response

    def file_response(
        self, full_path: str | os.PathLike[str], stat_result: os.stat_result, scope: Scope, status_code: int = 200
    ) -> Response:
        path, asked = Path(full_path), Headers(scope=scope)
        if path.suffix not in PACKED:
            return super().file_response(full_path, stat_result, scope, status_code)
        if takes_gzip(asked.get("accept-encoding", "")) and "range" not in asked:
            response = self._packed(path, stat_result, scope)
        else:
            response = super().file_response(full_path, stat_result, scope, status_code)
        response.headers.add_vary_header("Accept-Encoding")
        return response

    def _packed(self, path: Path, stat_result: os.stat_result, scope: Scope) -> Response:
        headers = FileResponse(path, stat_result=stat_result).headers
        headers["etag"] = f'{headers["etag"][:-1]}-gzip"'
        if self.is_not_modified(headers, Headers(scope=scope)):
            return NotModifiedResponse(headers)
        body = packed(path, headers["etag"])
        del headers["accept-ranges"]
        headers.update({"content-encoding": "gzip", "content-length": str(len(body))})
        return Response(body if scope["method"] == "GET" else b"", headers=dict(headers))


def styles(scope: Scope) -> Response:
    """The stylesheet that pages link, with those it imports in it, packed with gzip for whoever takes that."""
    body = joined(STATIC / STYLES).encode()
    headers = {"vary": "Accept-Encoding"}
    if takes_gzip(Headers(scope=scope).get("accept-encoding", "")):
        body = zlib.compress(body, wbits=GZIP)
        headers["content-encoding"] = "gzip"
    headers["content-length"] = str(len(body))
    return Response(body if scope["method"] == "GET" else b"", headers=headers, media_type="text/css")


def takes_gzip(accepted: str) -> bool:
    """Whether an Accept-Encoding header lets gzip in, by name or by a star."""
    codings = dict(map(_coding, accepted.split(",")))
    return codings.get("gzip", codings.get("*", False))


def _coding(words: str) -> tuple[str, bool]:
    """A coding of the header, and whether it is taken."""
    name, *weight = (word.strip().lower() for word in words.split(";"))
    return name, not any(REFUSED.fullmatch(word) for word in weight)


@lru_cache(MOST_PACKED)
def packed(path: Path, etag: str) -> bytes:
    """The file packed with gzip: once for each of its states, which the ETag tells apart."""
    return zlib.compress(path.read_bytes(), wbits=GZIP)
