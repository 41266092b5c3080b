"""Backups: made, listed, looked into, put back and undone; and the folder that they are kept in."""

from __future__ import annotations

from fastapi import APIRouter
from fastapi.responses import FileResponse, HTMLResponse, RedirectResponse, Response

from webapp.pages.addresses import PATHS
from webapp.pages.forms.sent import Sent
from webapp.pages.views.backups import backups_page, inside_page
from webapp.routes.deps import Form, TheDatabase, TheFrame, go, page
from webapp.storage import backups, restoring
from webapp.storage.errors import LibraryError

router = APIRouter(include_in_schema=False)


@router.get(PATHS["backups"])
def listed(database: TheDatabase, frame: TheFrame, undo: str = "") -> HTMLResponse:
    kept = backups.all_kept(database)
    known = undo if any(one.path.name == undo for one in kept) else ""
    return page("backups/page.html", backups_page(frame, kept, backups.folder(database), undo=known))


@router.post(PATHS["make_backup"])
def make(database: TheDatabase) -> RedirectResponse:
    backups.make(database)
    return go("backups", "backed-up")


@router.post(PATHS["backup_folder"])
def choose_folder(form: Form, database: TheDatabase, frame: TheFrame) -> Response:
    typed = Sent(form).one("folder")
    try:
        backups.choose(database, typed)
    except LibraryError as error:
        shown = backups_page(frame, backups.all_kept(database), backups.folder(database), typed, error.message)
        return page("backups/page.html", shown, 422)
    return go("backups", "backup-folder")


@router.get(PATHS["backup_inside"])
def inside(file: str, database: TheDatabase, frame: TheFrame) -> HTMLResponse:
    found = restoring.inside(database, backups.path_of(database, file))
    return page("backups/inside.html", inside_page(frame, found))


@router.get(PATHS["backup_file"])
def download(file: str, database: TheDatabase) -> FileResponse:
    return FileResponse(backups.path_of(database, file), filename=file, media_type="application/vnd.sqlite3")


@router.post(PATHS["restore_backup"])
def restore(form: Form, database: TheDatabase) -> RedirectResponse:
    sent = Sent(form)
    aside = restoring.put_back(database, backups.path_of(database, sent.one("file")))
    if sent.has("undoing"):
        return go("backups", "restore-undone")
    return go("backups", "restored", undo=aside.name)
