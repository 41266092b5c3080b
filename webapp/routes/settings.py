"""The maker's settings, swatches, and a backup to keep elsewhere."""

from __future__ import annotations

from pathlib import Path
from tempfile import mkdtemp

from fastapi import APIRouter
from fastapi.responses import FileResponse, HTMLResponse, RedirectResponse, Response
from starlette.background import BackgroundTask

from webapp.pages.addresses import PATHS
from webapp.pages.forms.settings import SettingsForm, SwatchForm, read_settings, read_swatch, settings_of
from webapp.pages.views.settings import settings_page
from webapp.routes.deps import Desk, Form, Maker, TheDatabase, TheDesk, frame_of, go, page
from webapp.storage import backup, workshop

router = APIRouter()


@router.get(PATHS["settings"], include_in_schema=False)
def settings(desk: TheDesk, maker: Maker, said: str = "") -> HTMLResponse:
    return _page(desk, settings_of(maker), said=said)


@router.post(PATHS["settings"], include_in_schema=False)
def save_settings(form: Form, desk: TheDesk, maker: Maker) -> Response:
    given = read_settings(form, maker)
    if given.settings is None:
        return _page(desk, given, status=422)
    workshop.save_settings(desk.database, given.settings)
    return go("settings", "settings")


@router.post(PATHS["add_swatch"], include_in_schema=False)
def add_swatch(form: Form, desk: TheDesk, maker: Maker) -> Response:
    given = read_swatch(form, workshop.kinds(desk.database), maker.units)
    if given.swatch is None:
        return _page(desk, settings_of(maker), given, status=422)
    workshop.add_swatch(desk.database, given.swatch)
    return go("settings", "swatch")


@router.post(PATHS["remove_swatch"], include_in_schema=False)
def remove_swatch(swatch: int, database: TheDatabase) -> RedirectResponse:
    workshop.remove_swatch(database, swatch)
    return go("settings", "swatch-gone")


@router.get(PATHS["backup"], include_in_schema=False)
def download_backup(database: TheDatabase) -> FileResponse:
    """A consistent copy of the library, checked before it is handed out."""
    copy = Path(mkdtemp(prefix="ropewright-")) / f"ropewright-{database.now():%Y-%m-%d}.sqlite"
    backup.write(database.path, copy)
    workshop.note_backup(database)

    def forget() -> None:
        copy.unlink()
        copy.parent.rmdir()

    return FileResponse(copy, filename=copy.name, media_type="application/vnd.sqlite3",
                        background=BackgroundTask(forget))


def _page(desk: Desk, form: SettingsForm, swatch_form: SwatchForm | None = None, said: str = "",
          status: int = 200) -> HTMLResponse:
    kinds, kept = workshop.kinds(desk.database), workshop.swatches(desk.database)
    folder = str(desk.settings.data)
    value = settings_page(frame_of(desk, said), form, kept, kinds.values(), folder, swatch_form)
    return page("settings/page.html", value, status)
