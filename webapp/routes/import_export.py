"""Files taken in, and the library as a zip: out, and in again after a look at what it would bring."""

from __future__ import annotations

from collections.abc import Iterable
from contextlib import suppress
from pathlib import Path
from time import time
from typing import NamedTuple

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, RedirectResponse, Response, StreamingResponse

from engine.errors import EngineError
from engine.units import counted
from webapp.exchange import pattern_file, uploaded_zips
from webapp.exchange.portable import PortableWorkshop
from webapp.exchange.prepared import Prepared, prepare
from webapp.exchange.works import Work
from webapp.exchange.zip_reader import LibraryZip
from webapp.pages.addresses import PATHS
from webapp.pages.forms.sent import Sent
from webapp.pages.views.frame import Frame
from webapp.pages.views.import_preview import (
    LOOKING,
    TAKING,
    USUAL,
    ImportProgressPage,
    import_preview_page,
    import_progress_page,
)
from webapp.pages.views.library import import_page
from webapp.pictures.photographs import cleaned
from webapp.records import PatternInZip
from webapp.routes.deps import Form, Services, TheDatabase, TheFrame, TheServices, go, page, uploads, zip_answer
from webapp.storage import library_import, patterns, workshop
from webapp.storage.errors import StorageError

router = APIRouter(include_in_schema=False)
ZIP = ".zip"
MOST_UNDONE = 1000  # as many numbers as an address carries without trouble
SOON_S = 0.6  # what is done so soon needs no page of its own


class Preview(NamedTuple):
    """A zip that was read: its patterns, what each is beside the library, and what else it brings, in words."""

    prepared: Prepared
    lines: tuple[PatternInZip, ...]
    workshop: str


Imported = tuple[tuple[int, ...], tuple[int, ...]]


@router.get(PATHS["library_zip"])
def library_out(database: TheDatabase) -> StreamingResponse:
    """Sent while it is made, so that the browser shows how far it is."""
    return zip_answer(database)


@router.get(PATHS["import"])
def import_form(frame: TheFrame) -> HTMLResponse:
    return page("library/import.html", import_page(frame))


@router.post(PATHS["import"])
def import_files(form: Form, services: TheServices, frame: TheFrame) -> Response:
    """Pattern files are taken in at once; a zip is looked at first."""
    files, where = uploads(form, "file"), Sent(form).one("where")
    zipped = [file for name, file in files if name.lower().endswith(ZIP)]
    if zipped or where:
        try:
            token = uploaded_zips.keep(services.settings.data, zipped[0] if zipped else Path(where), time())
            _check(services, token)
        except EngineError as error:
            return _refused(frame, Path(where).name or "The zip", error, where)
        return go("import_preview", token=token)
    taken, refused = [], []
    for name, file in files:
        try:
            pattern = pattern_file.read(file.read(), workshop.kinds(services.database))
            stored = patterns.create(services.database, pattern)
            taken.append((stored.id, stored.pattern.title))
        except (EngineError, StorageError) as error:
            refused.append((name, error.message))
    return page("library/import.html", import_page(frame, tuple(taken), tuple(refused)), 422 if refused else 200)


@router.get(PATHS["import_preview"])
def preview(token: str, services: TheServices, frame: TheFrame) -> Response:
    """What the zip would bring; while it is looked at or taken in, how far that is."""
    if taking := services.works.find(_taking(token)):
        return _to_library(services, token, taking) if taking.over() else _running_page(services, token, frame)
    uploaded_zips.path_of(services.settings.data, token)
    looking = services.works.begin(_looking(token), lambda work: _preview(services, token, work))
    if not looking.over(SOON_S):
        return _running_page(services, token, frame)
    try:
        preview: Preview = looking.future.result()
    except EngineError as error:
        services.works.forget(_looking(token))
        with suppress(EngineError):
            uploaded_zips.forget(services.settings.data, token)
        return _refused(frame, "The zip", error)
    return page("library/import_preview.html", import_preview_page(frame, token, preview.lines, preview.workshop))


@router.get(PATHS["import_progress"])
def progress(token: str, services: TheServices, frame: TheFrame) -> HTMLResponse:
    return page("library/_import_progress.html", _progress_page(services, token, frame))


@router.post(PATHS["take_import"])
def take(token: str, form: Form, services: TheServices) -> RedirectResponse:
    uploaded_zips.path_of(services.settings.data, token)
    taking = services.works.begin(_taking(token), lambda work: _import(services, token, Sent(form), work))
    return _to_library(services, token, taking) if taking.over(SOON_S) else go("import_preview", token=token)


@router.post(PATHS["stop_import"])
def stop(token: str, services: TheServices) -> RedirectResponse:
    """Stops looking or taking in; what was taken in before anybody could stop it stays."""
    taking = services.works.find(_taking(token))
    for work in filter(None, (taking, services.works.find(_looking(token)))):
        work.stop()
    if taking and not taking.future.cancelled() and not taking.future.exception():
        return _to_library(services, token, taking)
    services.works.forget(_looking(token), _taking(token))
    with suppress(EngineError):
        uploaded_zips.forget(services.settings.data, token)
    return go("import", "stopped")


def _preview(services: Services, token: str, work: Work) -> Preview:
    prepared = _prepare(services, token, work)
    return Preview(prepared, library_import.compare(services.database, prepared), _workshop_in_words(prepared.workshop))


def _prepare(services: Services, token: str, work: Work) -> Prepared:
    """Everything that takes long, photographs above all, is done before anything is written."""
    read = _open_zip(services, token)
    return prepare(work.along(read), read.workshop, uploaded_zips.prepared_path(services.settings.data, token))


def _import(services: Services, token: str, sent: Sent, work: Work) -> Imported:
    """As was chosen where it was looked at; the numbers of all that was taken in, and of those that were not here."""
    looked = services.works.find(_looking(token))
    preview: Preview = looked.future.result() if looked else _preview(services, token, work)
    chosen = [
        (sent.one(f"pattern-{place}", USUAL[line.state]), line.number) for place, line in enumerate(preview.lines)
    ]
    prepared = preview.prepared
    taken = library_import.import_patterns(services.database, work.along(prepared), chosen, prepared.workshop)
    if sent.has("workshop"):
        library_import.import_workshop(services.database, prepared.workshop)
    uploaded_zips.forget(services.settings.data, token)
    return taken, _new_numbers(taken, [choice for choice, _ in chosen])


def _to_library(services: Services, token: str, taking: Work) -> RedirectResponse:
    """On to the library, which says what was taken in. Raises what went wrong; then nothing was taken in."""
    services.works.forget(_looking(token), _taking(token))
    taken, new = taking.future.result()
    if not taken:
        return go("library", "none-taken", sort="made")
    undo = {"undo": "bin", "chosen": "-".join(map(str, new))} if 0 < len(new) <= MOST_UNDONE else {}
    return go("library", "taken-in", sort="made", **undo)


def _running_page(services: Services, token: str, frame: Frame) -> HTMLResponse:
    return page("library/import_running.html", _progress_page(services, token, frame))


def _progress_page(services: Services, token: str, frame: Frame) -> ImportProgressPage:
    taking = services.works.find(_taking(token))
    work = taking or services.works.find(_looking(token))
    what = TAKING if taking else LOOKING
    return import_progress_page(frame, token, what, *((work.done, work.total, work.over()) if work else (0, 0, True)))


def _new_numbers(taken: Iterable[int], choices: Iterable[str]) -> tuple[int, ...]:
    """Those that were not here before; what became a revision is undone in the history of its pattern."""
    done = (choice for choice in choices if choice != library_import.LEAVE)
    return tuple(number for number, choice in zip(taken, done, strict=True) if choice == library_import.TAKE)


def _check(services: Services, token: str) -> None:
    """Raises ZipError for a file that is no zip of ours, which is not kept."""
    try:
        _open_zip(services, token)
    except EngineError:
        uploaded_zips.forget(services.settings.data, token)
        raise


def _refused(frame: Frame, name: str, error: EngineError, where: str = "") -> HTMLResponse:
    return page("library/import.html", import_page(frame, refused=((name, error.message),), where=where), 422)


def _open_zip(services: Services, token: str) -> LibraryZip:
    return LibraryZip(uploaded_zips.path_of(services.settings.data, token), workshop.kinds(services.database), cleaned)


def _workshop_in_words(workshop_in_zip: PortableWorkshop) -> str:
    swatches = counted(len(workshop_in_zip.swatches), "swatch", "swatches") if workshop_in_zip.swatches else ""
    sizes = counted(len(workshop_in_zip.sizes), "finished size") if workshop_in_zip.sizes else ""
    beads = counted(len(workshop_in_zip.beads), "bead of the cabinet", "beads of the cabinet")
    cabinet = beads if workshop_in_zip.beads else ""
    *first, last = [*filter(None, (cabinet, swatches, sizes, "settings" if workshop_in_zip.settings else ""))] or [""]
    return f"{', '.join(first)} and {last}" if first else last


def _looking(token: str) -> str:
    return f"look {token}"


def _taking(token: str) -> str:
    return f"take {token}"
