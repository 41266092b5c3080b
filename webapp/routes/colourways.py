"""The colourways of a pattern: made, changed bead by bead, removed; and codes and symbols given out anew."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Annotated

from fastapi import APIRouter, Depends
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from engine.cabinet.bead import Bead
from engine.cabinet.colourways import Colourway, matched
from engine.cabinet.linking import as_in_cabinet, linked
from engine.cabinet.stock import mg_of
from engine.counting.answers import answer
from engine.counting.questions import Question
from engine.drawing.telling_apart import told_apart
from engine.errors import EngineError
from engine.pattern.palette import Entry, Palette
from webapp.pages.addresses import PATHS
from webapp.pages.forms.beads import read_bead_finder
from webapp.pages.forms.colourways import (
    BEFORE,
    STOCK,
    ColourwayForm,
    EntryForm,
    TypedEntry,
    blank_colourway,
    entry_form,
    read_colourway,
    read_entry,
    typed_before,
    typed_entry,
)
from webapp.pages.forms.sent import Sent
from webapp.pages.views.colourways import (
    OWN,
    codes_page,
    colourways_page,
    in_way,
    pick_finder,
    pick_page,
    way_page,
)
from webapp.pages.views.frame import Frame
from webapp.pictures.cache import Wanted
from webapp.records import KeptColourway, StoredPattern
from webapp.routes.deps import (
    Asked,
    Form,
    Maker,
    Services,
    Stored,
    TheDatabase,
    TheFrame,
    TheServices,
    frame_of,
    go,
    page,
)
from webapp.storage import beads, colourways, editions, revisions, workshop
from webapp.storage.database import Database
from webapp.storage.errors import NotFound, Rejected

router = APIRouter(include_in_schema=False)
KEEP = {"cache-control": "private, max-age=31536000, immutable"}
ROPE_SHAPE = 1 / 4  # height of a rope's picture, a share of its width
WIDEST = 1600


def _way(id: int, way: int, database: TheDatabase) -> KeptColourway | None:
    """The colourway of the address; None for the pattern's own palette."""
    return None if way == OWN else colourways.load(database, id, way)


Way = Annotated[KeptColourway | None, Depends(_way)]


@router.get(PATHS["colourways"])
def all_colourways(stored: Stored, services: TheServices, frame: TheFrame, removed: int = 0) -> HTMLResponse:
    return _all(stored, services.database, frame, blank_colourway(), removed)


@router.post(PATHS["colourways"])
def add(stored: Stored, sent: Form, services: TheServices, frame: TheFrame, maker: Maker) -> Response:
    form, database = read_colourway(sent, maker.units), services.database
    if form.errors:
        return _all(stored, database, frame, form)
    try:
        palette = stored.pattern.palette if form.begins != STOCK else _of_stock(stored, form, database)
        number = colourways.add(database, stored.id, Colourway(form.name, palette))
    except (EngineError, Rejected) as error:
        return _all(stored, database, frame, form.refused(error.field or "name", error.message))
    return go("colourway", "colourway", id=stored.id, way=number)


@router.get(PATHS["colourway"])
def colourway(
    stored: Stored, way: Way, asked: Asked, services: TheServices, said: str = "", undo: str = ""
) -> HTMLResponse:
    return _one(stored, way, services, said=said, undo=undo, was=typed_before(asked))


@router.post(PATHS["colourway"])
def rename(stored: Stored, way: Way, sent: Form, services: TheServices) -> Response:
    if way is None:
        raise NotFound("name of the palette as drawn to be changed")
    try:
        renamed = replace(way.colourway, name=Sent(sent).one("name"))
        colourways.save(services.database, stored.id, way.id, renamed)
    except EngineError as error:
        return _one(stored, way, services, wrong=error.message)
    return go("colourway", "colourway", id=stored.id, way=way.id)


@router.get(PATHS["colourway_picture"])
def picture(stored: Stored, way: Way, services: TheServices, width: int = 640, version: str = "") -> Response:
    width = min(max(width, 16), WIDEST)
    worked = in_way(stored.pattern, way.colourway if way else None)
    wanted = Wanted("rope", None, width, round(width * ROPE_SHAPE), background=None, form="webp")
    data = services.pictures.picture(worked, wanted, services.heavy.turn)
    return Response(data, media_type="image/webp", headers=KEEP if version else {})


@router.post(PATHS["remove_colourway"])
def remove(id: int, way: int, database: TheDatabase) -> RedirectResponse:
    colourways.remove(database, id, way)
    return go("colourways", "colourway-gone", id=id, removed=way)


@router.post(PATHS["take_back_colourway"])
def take_back(id: int, way: int, database: TheDatabase) -> RedirectResponse:
    colourways.take_back(database, id, way)
    return go("colourways", "colourway-back", id=id)


@router.post(PATHS["link_beads"])
def link(stored: Stored, way: Way, sent: Form, database: TheDatabase) -> RedirectResponse:
    palette = in_way(stored.pattern, way.colourway if way else None).palette
    found = linked(palette, beads.cabinet(database), beads.by_key(database))
    if found == palette:
        return go("colourway", "colourway-same", id=stored.id, way=way.id if way else OWN)
    return _keep(stored, way, found, sent, database, "linked")


@router.post(PATHS["refresh_beads"])
def refresh(stored: Stored, way: Way, sent: Form, database: TheDatabase) -> RedirectResponse:
    palette = in_way(stored.pattern, way.colourway if way else None).palette
    return _keep(stored, way, as_in_cabinet(palette, beads.by_key(database)), sent, database, "refreshed")


@router.get(PATHS["pick_bead"])
def pick(stored: Stored, way: Way, code: str, asked: Asked, database: TheDatabase, frame: TheFrame) -> HTMLResponse:
    return _pick(stored, way, code, asked, database, frame, entry_form(_entry(stored, way, code)))


@router.post(PATHS["pick_bead"])
def exchange(stored: Stored, way: Way, code: str, sent: Form, database: TheDatabase, frame: TheFrame) -> Response:
    """A bead of the cabinet in the place of that code, or one that stands alone."""
    was, key = _entry(stored, way, code), Sent(sent).one("bead")
    if key:
        now = beads.load(database, key).bead.entry(was.code, was.symbol)
        return _keep(stored, way, _with(stored, way, now), sent, database, was=was)
    form = read_entry(sent, was, workshop.kinds(database))
    if form.entry is None:
        return _pick(stored, way, code, (), database, frame, form)
    return _keep(stored, way, _with(stored, way, form.entry), sent, database, was=was)


@router.get(PATHS["codes"])
def codes(stored: Stored, frame: TheFrame) -> HTMLResponse:
    return page("colourways/codes.html", codes_page(frame, stored))


@router.post(PATHS["codes"])
def recode(stored: Stored, sent: Form, database: TheDatabase) -> RedirectResponse:
    colourways.recode(database, stored.id, told_apart(stored.pattern), _sequence(sent, stored))
    return go("colourways", "codes", id=stored.id)


def _all(
    stored: StoredPattern, database: Database, frame: Frame, form: ColourwayForm, removed: int = 0
) -> HTMLResponse:
    value = colourways_page(frame, stored, colourways.of(database, stored.id), beads.cabinet(database), form, removed)
    return page("colourways/page.html", value, 422 if form.errors else 200)


def _one(
    stored: StoredPattern,
    way: KeptColourway | None,
    services: Services,
    said: str = "",
    wrong: str = "",
    undo: str = "",
    was: TypedEntry | None = None,
) -> HTMLResponse:
    database = services.database
    value = way_page(
        frame=frame_of(services, said),
        stored=stored,
        kept=way,
        cabinet=beads.by_key(database),
        beads=beads.cabinet(database),
        published=bool(editions.editions(database, stored.id)),
        wrong=wrong,
        undo=undo,
        was=was,
    )
    return page("colourways/way.html", value, 422 if wrong else 200)


def _pick(
    stored: StoredPattern,
    way: KeptColourway | None,
    code: str,
    asked: Sequence[tuple[str, object]],
    database: Database,
    frame: Frame,
    form: EntryForm,
) -> HTMLResponse:
    entry = _entry(stored, way, code)
    narrowed = any(name in ("search", "kind", "stock") for name, _ in asked)
    value = pick_page(
        frame=frame,
        stored=stored,
        kept=way,
        code=entry.code,
        beads=beads.cabinet(database),
        finder=pick_finder(read_bead_finder(asked), entry.kind, narrowed),
        form=form,
        kinds=tuple(workshop.kinds(database)),
    )
    return page("colourways/pick.html", value, 422 if form.errors else 200)


def _entry(stored: StoredPattern, way: KeptColourway | None, code: str) -> Entry:
    palette = in_way(stored.pattern, way.colourway if way else None).palette
    if code not in palette.codes:
        raise NotFound(f"bead {code[:2]} in this palette")
    return palette[palette.index(code)]


def _with(stored: StoredPattern, way: KeptColourway | None, now: Entry) -> Palette:
    palette = in_way(stored.pattern, way.colourway if way else None).palette
    return Palette(tuple(now if entry.code == now.code else entry for entry in palette))


def _keep(
    stored: StoredPattern,
    way: KeptColourway | None,
    palette: Palette,
    sent: Form,
    database: Database,
    said: str = "picked",
    was: Entry | None = None,
) -> RedirectResponse:
    """Keeps the palette: of a colourway at once, the pattern's own as its working copy; `was` can be put back."""
    if way is None:
        revisions.write_working(database, stored.id, replace(stored.pattern, palette=palette), _sequence(sent, stored))
    else:
        colourways.save(database, stored.id, way.id, replace(way.colourway, palette=palette))
    undo = {f"{BEFORE}{name}": text for name, text in vars(typed_entry(was)).items()} if was else {}
    return go("colourway", said, id=stored.id, way=way.id if way else OWN, undo=was.code if was else "", **undo)


def _sequence(sent: Form, stored: StoredPattern) -> int:
    """How often the pattern had been written when the page was made; a script that says nothing means now."""
    text = Sent(sent).one("sequence", str(stored.sequence))
    return int(text) if text.isascii() and text.isdigit() and len(text) < 10 else -1


def _of_stock(stored: StoredPattern, form: ColourwayForm, database: Database) -> Palette:
    """The nearest beads in stock; enough for a rope of that length where one was said."""
    pattern, own = stored.pattern, workshop.workshop(database)
    least: dict[str, int] = {}
    if form.length_mm is not None:
        bill = answer(pattern, Question(form.length_mm), own).materials
        least = {need.code: mg_of(need.beads, need.kind) for need in bill.colours if need.beads}
    uses = [pattern.drawn.count(place) for place in range(len(pattern.palette))]
    stocked: list[Bead] = [bead for bead in beads.cabinet(database) if bead.stock_mg]
    return matched(pattern.palette, stocked, uses, least).palette
