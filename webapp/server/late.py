"""The first page is answered before the routes of all others are loaded, which takes longer than everything before."""

from __future__ import annotations

import gc
from asyncio import Task, create_task, shield
from collections.abc import Sequence
from functools import cache
from typing import Any

from fastapi import APIRouter, FastAPI
from starlette.concurrency import run_in_threadpool
from starlette.routing import BaseRoute, Match
from starlette.types import ASGIApp, Receive, Scope, Send

from webapp.routes import library


class App(FastAPI):
    """An app that begins with the library's page; `complete` puts in all that follow."""

    def __init__(self, **options: Any) -> None:
        super().__init__(**options)
        self.is_complete = False
        self._put(library.router)

    @property
    def first(self) -> list[BaseRoute]:
        """Routes that are there now, without the description of the API, which tells of all."""
        return [route for route in self.routes if getattr(route, "path", None) != self.openapi_url]

    def complete(self) -> None:
        """Puts in the routes that are missing."""
        if not self.is_complete:
            self.is_complete = True
            for router in all_routers():
                if router is not library.router:
                    self._put(router)

    def _put(self, router: APIRouter) -> None:
        # include_router would work out every route once more for this app, when it is first looked at: 5 ms each
        self.router.routes.extend(router.routes)

    def openapi(self) -> dict[str, Any]:
        """The description of all of it."""
        self.complete()
        return super().openapi()


class LateRoutes:
    """Wraps the app: a request that none of its first routes answers waits until all are there.

    They are loaded in a thread, from the first answer on, and put in once; where that fails, the next request tries it
    again.
    """

    def __init__(self, app: ASGIApp, whole: App) -> None:
        self.app = app
        self.whole = whole
        self.first = whole.first
        self.completing: Task[None] | None = None

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http" or self.whole.is_complete:
            await self.app(scope, receive, send)
            return
        if not any(route.matches(scope)[0] is Match.FULL for route in self.first):
            await shield(self._begin())
        await self.app(scope, receive, send)
        self._begin()

    def _begin(self) -> Task[None]:
        if self.completing is None or (self.completing.done() and not self.whole.is_complete):
            self.completing = create_task(self._complete())
        return self.completing

    async def _complete(self) -> None:
        await run_in_threadpool(all_routers)
        self.whole.complete()


@cache
def all_routers() -> Sequence[APIRouter]:
    from webapp.routes.all import ROUTERS  # late: this is what the first page does not wait for

    gc.collect()
    gc.freeze()  # the program stays: to walk it anew for every few pages takes a tenth of a second each time
    return ROUTERS
