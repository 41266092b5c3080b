"""Gives out the files that come with the app; those asked for by their stamp are never asked for again."""

from __future__ import annotations

import os

from fastapi.staticfiles import StaticFiles
from starlette.responses import Response
from starlette.types import Scope

from webapp.pages.static import STAMP
from webapp.paths import STATIC

LASTS = "public, max-age=31536000, immutable"


class Static(StaticFiles):
    """Answers "/STAMP/css/base.css", to be kept for good, and "/css/base.css", to be asked for again."""

    def __init__(self) -> None:
        super().__init__(directory=STATIC)

    async def get_response(self, path: str, scope: Scope) -> Response:
        stamp, _, file = path.partition(os.sep)
        if stamp != STAMP:
            return await super().get_response(path, scope)
        response = await super().get_response(file, scope)
        response.headers["cache-control"] = LASTS
        return response
