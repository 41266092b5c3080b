"""Check of the library, for its owner; checked when she asks."""

from __future__ import annotations

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, RedirectResponse

from webapp.pages.addresses import PATHS
from webapp.pages.views.care import care_page
from webapp.routes.deps import TheDatabase, TheFrame, TheServices, go, page
from webapp.settings import VERSION
from webapp.storage import backup_folder, checkup, health

router = APIRouter(include_in_schema=False)


@router.get(PATHS["care"])
def care(services: TheServices, frame: TheFrame) -> HTMLResponse:
    database = services.database
    value = care_page(
        frame=frame,
        version=VERSION,
        folder=str(services.settings.data),
        sizes=checkup.folder_sizes(database),
        sound=backup_folder.last_sound(database),
        problems=database.health.problems,
        damaged=database.health.has(health.LIBRARY),
    )
    return page("care/page.html", value)


@router.post(PATHS["check_library"])
def check(database: TheDatabase) -> RedirectResponse:
    return go("care", "sound" if checkup.check_library(database) else "unsound")
