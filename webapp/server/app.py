"""Puts the app together: database, pictures, prints, routes, static files, guard and errors."""

from __future__ import annotations

from collections.abc import AsyncIterator, Iterable
from contextlib import asynccontextmanager

from fastapi import FastAPI
from starlette.responses import Response

from engine.pattern.pattern import Pattern
from webapp.exchange.works import Turns, Works
from webapp.paths import DEMO_PICTURES
from webapp.pictures.cache import PictureCache
from webapp.printing.jobs import Jobs
from webapp.routes.deps import Services, frame_of
from webapp.server.door import Door
from webapp.server.errors import add_errors, error_response
from webapp.server.guard import Guard
from webapp.server.late import App, LateRoutes
from webapp.server.static import Static
from webapp.settings import Settings
from webapp.storage.library import open_library

HEAVY_AT_ONCE, HEAVY_WAITING = 2, 24  # a browser asks for six pictures at once, and those of a page just left wait, too


def create_app(settings: Settings, examples: Iterable[Pattern] = ()) -> FastAPI:
    """The app on a data folder; a new library begins with the examples. Raises LibraryError where it does not open."""
    database = open_library(settings.data, examples, settings.anew)
    services = Services(
        settings=settings,
        database=database,
        pictures=PictureCache(settings.cache, shipped=DEMO_PICTURES),
        jobs=Jobs(),
        works=Works(),
        heavy=Turns(HEAVY_AT_ONCE, HEAVY_WAITING),
    )

    @asynccontextmanager
    async def lifespan(app: FastAPI) -> AsyncIterator[None]:
        yield
        services.works.close()
        services.jobs.close()
        database.close()
        if app.state.door:
            app.state.door.close()

    app = App(
        title="Ropewright",
        version="1",
        lifespan=lifespan,
        docs_url=None,
        redoc_url=None,
        openapi_url="/api/openapi.json",
    )
    app.state.services = services
    app.state.door = Door(settings.data) if settings.private else None
    app.mount("/static", Static(), name="static")
    add_errors(app, lambda: frame_of(services))

    def refusal(path: str, status: int, sentence: str) -> Response:
        return error_response(path, status, sentence)

    app.add_middleware(LateRoutes, whole=app)
    app.add_middleware(Guard, refusal=refusal, door=app.state.door)
    return app
