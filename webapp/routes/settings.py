"""The maker's settings, swatches, and a backup to keep elsewhere."""

from __future__ import annotations

from urllib.parse import urlencode

from fastapi import APIRouter
from fastapi.responses import FileResponse, HTMLResponse, RedirectResponse, Response

from engine.counting.kinds import Kind
from engine.counting.questions import NamedSize
from engine.counting.rope import Swatch
from webapp.pages.addresses import PATHS, address
from webapp.pages.forms.own import KindForm, OwnSizeForm, read_kind, read_own_size
from webapp.pages.forms.sent import Sent
from webapp.pages.forms.settings import SettingsForm, SwatchForm, read_settings, read_swatch, settings_of
from webapp.pages.forms.taken_back import BACK, TakenBack, read_taken_back, typed_again
from webapp.pages.views.settings import Own, settings_page
from webapp.routes.deps import Asked, Form, Maker, Services, TheDatabase, TheServices, frame_of, go, go_back, page
from webapp.storage import backup_folder, workshop

router = APIRouter()


@router.get(PATHS["settings"], include_in_schema=False)
def settings(services: TheServices, maker: Maker, asked: Asked, said: str = "") -> HTMLResponse:
    return _page(services, settings_of(maker), said=said, removed=read_taken_back(asked))


@router.post(PATHS["settings"], include_in_schema=False)
def save_settings(form: Form, services: TheServices, maker: Maker) -> Response:
    given = read_settings(form, maker)
    if given.settings is None:
        return _page(services, given, status=422)
    workshop.save_settings(services.database, given.settings)
    return go("settings", "settings")


@router.post(PATHS["add_swatch"], include_in_schema=False)
def add_swatch(form: Form, services: TheServices, maker: Maker) -> Response:
    given = read_swatch(form, workshop.kinds(services.database), maker.units)
    if given.swatch is None:
        return _page(services, settings_of(maker), given, status=422)
    workshop.add_swatch(services.database, given.swatch)
    return go_back(Sent(form).one("back"), "swatch") or go("settings", "swatch")


@router.post(PATHS["remove_swatch"], include_in_schema=False)
def remove_swatch(swatch: int, database: TheDatabase) -> RedirectResponse:
    return _gone("swatch-gone", workshop.remove_swatch(database, swatch))


@router.post(PATHS["add_kind"], include_in_schema=False)
def add_kind(form: Form, services: TheServices, maker: Maker) -> Response:
    given = read_kind(form)
    if given.kind is None:
        return _page(services, settings_of(maker), kind_form=given, status=422)
    workshop.add_kind(services.database, given.kind)
    return go("settings", "kind")


@router.post(PATHS["remove_kind"], include_in_schema=False)
def remove_kind(form: Form, database: TheDatabase) -> RedirectResponse:
    return _gone("kind-gone", workshop.remove_kind(database, Sent(form).one("name")))


@router.post(PATHS["add_size"], include_in_schema=False)
def add_size(form: Form, services: TheServices, maker: Maker) -> Response:
    given = read_own_size(form, maker.units)
    if given.size is None:
        return _page(services, settings_of(maker), size_form=given, status=422)
    workshop.add_size(services.database, given.size)
    return go("settings", "size")


@router.post(PATHS["remove_size"], include_in_schema=False)
def remove_size(form: Form, database: TheDatabase) -> RedirectResponse:
    return _gone("size-gone", workshop.remove_size(database, Sent(form).one("name")))


@router.post(PATHS["backup"], include_in_schema=False)
def download_backup(database: TheDatabase) -> FileResponse:
    """A backup among those that are kept, and a copy of it for the browser to save."""
    made = backup_folder.make(database)
    return FileResponse(made, filename=made.name, media_type="application/vnd.sqlite3")


def _gone(said: str, removed: Swatch | Kind | NamedSize) -> RedirectResponse:
    """On to the settings, which say what is gone and offer to take it back."""
    again = typed_again(removed)
    query = urlencode([(BACK, again.what), *(pair for pair in again.typed if pair[1])])
    return RedirectResponse(f"{address('settings', said=said)}&{query}", 303)


def _page(
    services: Services,
    form: SettingsForm,
    swatch_form: SwatchForm | None = None,
    said: str = "",
    status: int = 200,
    kind_form: KindForm | None = None,
    size_form: OwnSizeForm | None = None,
    removed: TakenBack | None = None,
) -> HTMLResponse:
    kinds, kept = workshop.kinds(services.database), workshop.swatches(services.database)
    own_kinds = workshop.kind_uses(services.database, [kind.name for kind in workshop.own_kinds(services.database)])
    missed = workshop.kind_uses(services.database, [removed.named]) if removed and removed.what == "kind" else {}
    own = Own(
        kinds=own_kinds,
        sizes=workshop.own_sizes(services.database),
        kind_form=kind_form,
        size_form=size_form,
        missed=sum(missed.values()),
    )
    folder = str(services.settings.data)
    value = settings_page(frame_of(services, said), form, kept, kinds.values(), folder, swatch_form, own, removed)
    return page("settings/page.html", value, status)
