"""Backups: made, listed, looked into, put back and undone; and the folder that they are kept in."""

from __future__ import annotations

from fastapi import APIRouter
from fastapi.responses import FileResponse, HTMLResponse, RedirectResponse, Response

from webapp.pages.addresses import PATHS
from webapp.pages.forms.sent import Sent
from webapp.pages.views.backups import backups_page, inside_page
from webapp.routes.deps import Form, TheDatabase, TheFrame, go, page
from webapp.storage import backup_contents, backup_folder, clock, health
from webapp.storage.errors import LibraryError
from webapp.storage.restore import put_back

router = APIRouter(include_in_schema=False)


@router.get(PATHS["backups"])
def listed(database: TheDatabase, frame: TheFrame, undo: str = "") -> HTMLResponse:
    kept = backup_folder.all_kept(database)
    known = undo if any(backup.path.name == undo for backup in kept) else ""
    folder = backup_folder.folder_while_library_is_gone(database)
    return page(
        "backups/page.html", backups_page(frame, kept, folder, undo=known, clock_asks=database.health.has(health.CLOCK))
    )


@router.post(PATHS["make_backup"])
def make(database: TheDatabase) -> RedirectResponse:
    backup_folder.make(database)
    return go("backups", "backed-up")


@router.post(PATHS["backup_folder"])
def choose_folder(form: Form, database: TheDatabase, frame: TheFrame) -> Response:
    typed = Sent(form).one("folder")
    try:
        backup_folder.choose(database, typed)
    except LibraryError as error:
        value = backups_page(
            frame, backup_folder.all_kept(database), backup_folder.folder(database), typed, error.message
        )
        return page("backups/page.html", value, 422)
    return go("backups", "backup-folder")


@router.get(PATHS["backup_inside"])
def inside(file: str, database: TheDatabase, frame: TheFrame) -> HTMLResponse:
    contents = backup_contents.compare(database, backup_folder.path_of(database, file))
    return page("backups/inside.html", inside_page(frame, contents))


@router.get(PATHS["backup_file"])
def download(file: str, database: TheDatabase) -> FileResponse:
    return FileResponse(backup_folder.path_of(database, file), filename=file, media_type="application/vnd.sqlite3")


@router.post(PATHS["restore_backup"])
def restore(form: Form, database: TheDatabase) -> RedirectResponse:
    sent = Sent(form)
    aside = put_back(database, backup_folder.path_of(database, sent.one("file")))
    if sent.has("undoing"):
        return go("backups", "restore-undone")
    return go("backups", "restored", undo=aside.name if aside else "")


@router.post(PATHS["trust_clock"])
def trust_clock(database: TheDatabase) -> RedirectResponse:
    """The person says that the date is right."""
    clock.trust(database)
    database.health.clear(health.CLOCK)
    return go("backups", "clock")
