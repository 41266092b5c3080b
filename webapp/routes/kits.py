"""The shop kit of an edition: chosen, made with progress and a way to stop it, fetched as one zip."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress
from dataclasses import replace
from functools import partial
from hashlib import sha256
from time import sleep
from typing import Annotated

from fastapi import APIRouter, Depends
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from engine.booklet.choices import MIRRORED, Photograph
from engine.errors import EngineError
from engine.pattern.pattern import left_handed
from engine.scenes.all import SCENES
from engine.scenes.scene import Scene, Subject
from engine.scenes.settings import setting
from webapp.exchange.frozen import PrintedFrom, thawed
from webapp.exchange.pattern_file import FileError
from webapp.exchange.shop_kit import (
    Kit,
    KitBooklet,
    KitFile,
    KitPicture,
    Maker,
    booklet_files,
    listing_files,
    picture_files,
    plain_name,
    zipped,
)
from webapp.exchange.works import Stopped, Work
from webapp.pages.addresses import PATHS, address
from webapp.pages.forms.kit import PRINTS, KitForm, read_kit
from webapp.pages.views.frame import Frame
from webapp.pages.views.kit import KitPage, KitWork, kit_page
from webapp.pictures.scenes import scene_bytes, scene_name
from webapp.printing.card import card_html
from webapp.printing.orders import Order
from webapp.records import Edition, EditionBooklet, StoredPattern
from webapp.routes.deps import Asked, Form, Services, Stored, TheDatabase, TheFrame, TheServices, page
from webapp.storage import editions, photographs, revisions, workshop
from webapp.storage.errors import NotFound

router = APIRouter(include_in_schema=False)

PAUSE_S = 0.05
NO_PROOF = (
    "It was not kept how edition {} was printed and proofed, so no kit can be made of it. Print its booklets anew, "
    "publish them as the next edition, and make the kit of that."
)
WITHDRAWN = "Edition {} is withdrawn, and nobody is given it any more; give it out again first."
DAMAGED = "The kept file of “{}” is not the one that was published; bring back a backup of the library."
MISLEADING = "“{}” was printed for the kit, and its proof found something that would mislead a buyer: {}"
STOPPED = "The kit was stopped; nothing was made."


def _edition(stored: Stored, edition: int, database: TheDatabase) -> Edition:
    return editions.edition(database, stored.id, edition)


TheEdition = Annotated[Edition, Depends(_edition)]


@router.get(PATHS["kit"])
def kit(stored: Stored, edition: TheEdition, asked: Asked, services: TheServices, frame: TheFrame) -> HTMLResponse:
    form = read_kit(asked, workshop.settings(services.database))
    return page("kit/page.html", _page(services, stored, edition, form, frame))


@router.post(PATHS["kit"])
def make(stored: Stored, edition: TheEdition, sent: Form, services: TheServices, frame: TheFrame) -> Response:
    maker = workshop.settings(services.database)
    form = read_kit(sent, maker)
    kept, _ = _kept(services, stored, edition)
    if form.errors or kept is None:
        return page("kit/page.html", _page(services, stored, edition, form, frame), 422)
    lengths = replace(maker, title_most=float(form.longest_title), description_most=float(form.longest_description))
    workshop.save_settings(services.database, lengths)
    name = _name(edition, kept, form)
    if (before := services.works.find(name)) and before.over():
        services.works.forget(name)
    services.works.begin(
        name, lambda work: services.pictures.get(name, lambda: _made(services, edition, kept, form, work)) and None
    )
    return _to_kit(stored, edition, form)


@router.get(PATHS["kit_steps"])
def steps(stored: Stored, edition: TheEdition, asked: Asked, services: TheServices, frame: TheFrame) -> HTMLResponse:
    form = read_kit(asked, workshop.settings(services.database))
    return page("kit/_steps.html", _page(services, stored, edition, form, frame, forget=False))


@router.post(PATHS["stop_kit"])
def stop(stored: Stored, edition: TheEdition, asked: Asked, services: TheServices) -> RedirectResponse:
    form = read_kit(asked, workshop.settings(services.database))
    kept, _ = _kept(services, stored, edition)
    if kept and (work := services.works.find(name := _name(edition, kept, form))):
        work.stop()
        services.works.forget(name)
    return _to_kit(stored, edition, form)


@router.get(PATHS["kit_zip"])
def fetch(stored: Stored, edition: TheEdition, asked: Asked, services: TheServices) -> Response:
    form = read_kit(asked, workshop.settings(services.database))
    kept, _ = _kept(services, stored, edition)
    data = services.pictures.kept(_name(edition, kept, form)) if kept else None
    if data is None:
        raise NotFound("such kit yet; make it first")
    name = f"{plain_name(stored.pattern.title)}-edition-{edition.number}.zip"
    headers = {"content-disposition": f'attachment; filename="{name}"'}
    return Response(data, media_type="application/zip", headers=headers)


def _to_kit(stored: StoredPattern, edition: Edition, form: KitForm) -> RedirectResponse:
    return RedirectResponse(address("kit", id=stored.id, edition=edition.number, **form.asked), 303)


def _page(
    services: Services, stored: StoredPattern, edition: Edition, form: KitForm, frame: Frame, forget: bool = True
) -> KitPage:
    kept, refused = _kept(services, stored, edition)
    if kept is None:
        return kit_page(frame, stored, edition, form, Subject(stored.pattern), (), refused)
    work, wrong = _how_far(services, _name(edition, kept, form), forget)
    there = {booklet.name for booklet in edition.booklets}
    more = (key for key in PRINTS if _named(_chosen(kept, key)) not in there)
    return kit_page(frame, stored, edition, form, _subject(kept), more, "", work, wrong)


def _how_far(services: Services, name: str, forget: bool) -> tuple[KitWork, str]:
    """How far the kit of that name is, and what went wrong with it, which is said once."""
    work = services.works.find(name)
    if work and not work.over():
        return KitWork("running", work.done, work.total, work.at), ""
    wrong = ""
    if work:
        problem = None if work.future.cancelled() else work.future.exception()
        if problem and not isinstance(problem, EngineError):
            raise problem
        wrong = problem.message if isinstance(problem, EngineError) else ""
        if forget:
            services.works.forget(name)
    return KitWork("done" if services.pictures.kept(name) and not wrong else "none", 0, 0, ""), wrong


def _kept(services: Services, stored: StoredPattern, edition: Edition) -> tuple[PrintedFrom | None, str]:
    """The edition in its own hand, with the choices of a booklet of it; or why there can be no kit of it."""
    if edition.withdrawn:
        return None, WITHDRAWN.format(edition.number)
    pattern = revisions.revision(services.database, stored.id, edition.revision).pattern
    try:
        every = [thawed(booklet.choices, pattern) for booklet in edition.booklets]
    except FileError:
        every = []
    if {kept.choices.published for kept in every} != {edition.number}:
        return None, NO_PROOF.format(edition.number)
    kept = min(every, key=lambda kept: (bool(kept.choices.picture), kept.choices.ink_saving))
    choices = replace(kept.choices, picture="", ink_saving=False)
    return PrintedFrom(replace(pattern, palette=kept.pattern.palette), choices, kept.workshop), ""


def card_files(kit: Kit) -> Iterator[KitFile]:
    """The stringing card, one for each hand that a booklet is for."""
    own = kit.kept.pattern
    for hand in kit.hands:
        name = "stringing-card" if hand == own.hand else f"stringing-card-{hand}-handed"
        pattern = own if hand == own.hand else left_handed(own)
        yield KitFile(f"{name}.html", card_html(pattern, kit.kept.choices, kit.kept.workshop))


MAKERS: tuple[Maker, ...] = (booklet_files, card_files, picture_files, listing_files)
"""What makes the files of a kit, in the order in which they stand in it; a further sort of file is one maker more."""


def _name(edition: Edition, kept: PrintedFrom, form: KitForm) -> str:
    """The name of the zip among kept files: a hash of the edition and of all that was chosen."""
    booklets = tuple((booklet.name, booklet.sha256) for booklet in edition.booklets)
    every = (edition.pattern, edition.number, edition.published, booklets, form.asked)
    drawn = scene_name(_subject(kept), "kit", setting(form.shape, form.ground), form.form)
    return f"{sha256(repr((every, drawn)).encode()).hexdigest()[:40]}.zip"


def _subject(kept: PrintedFrom) -> Subject:
    """What stands in the pictures: the edition as it was kept, in its colourways, with its numbers."""
    return Subject(kept.pattern, kept.workshop, kept.choices.others, kept.choices.units)


def _made(services: Services, edition: Edition, kept: PrintedFrom, form: KitForm, work: Work) -> bytes:
    """The zip: booklets fetched or printed, pictures drawn, texts written. Raises EngineError in one sentence."""
    there, subject = {booklet.name for booklet in edition.booklets}, _subject(kept)
    chosen = [_chosen(kept, key) for key in form.prints]
    scenes = [SCENES[key] for key in form.scenes if not SCENES[key].lacks(subject)]
    tasks: list[Callable[[], KitBooklet | KitPicture]] = [
        *(partial(_published, services, edition, booklet) for booklet in edition.booklets),
        *(partial(_printed, services, edition, one, work) for one in chosen if _named(one) not in there),
        *(partial(_drawn, subject, scene, form, work) for scene in scenes),
    ]
    made = [task() for task in work.along(tasks)]
    work.at = "Writing the listing and the zip"
    whole = Kit(
        title=kept.pattern.title,
        edition=edition.number,
        published=edition.published,
        kept=kept,
        booklets=tuple(one for one in made if isinstance(one, KitBooklet)),
        pictures=tuple(one for one in made if isinstance(one, KitPicture)),
        hands=_hands(edition, kept, chosen),
        longest_title=form.longest_title,
        longest_description=form.longest_description,
    )
    return zipped(whole, MAKERS)


def _hands(edition: Edition, kept: PrintedFrom, chosen: Iterable[PrintedFrom]) -> tuple[str, ...]:
    """The hands that published and chosen booklets are for, the edition's own first."""
    published = (thawed(booklet.choices, kept.pattern) for booklet in edition.booklets)
    return tuple(dict.fromkeys(one.pattern.hand for one in (kept, *published, *chosen)))


def _published(services: Services, edition: Edition, booklet: EditionBooklet) -> KitBooklet:
    """A booklet of the edition, byte for byte. Raises EngineError where it is not what was published."""
    pdf = editions.pdf(services.database, edition.pattern, edition.number, booklet.name)
    if sha256(pdf).hexdigest() != booklet.sha256:
        raise EngineError(DAMAGED.format(booklet.name))
    return KitBooklet(booklet.name, booklet.pages, pdf)


def _chosen(kept: PrintedFrom, key: str) -> PrintedFrom:
    """The edition as the print of that key shows it; in the other hand its picture is mirrored."""
    format, paper, hand = PRINTS[key]
    other = hand != kept.pattern.hand
    choices = replace(kept.choices, format=format, paper=paper, picture=MIRRORED if other else "")
    return kept._replace(pattern=left_handed(kept.pattern) if other else kept.pattern, choices=choices)


def _named(kept: PrintedFrom) -> str:
    return kept.choices.named(kept.pattern.hand)


def _printed(services: Services, edition: Edition, kept: PrintedFrom, work: Work) -> KitBooklet:
    """A booklet of the same revision, printed and proofed; the print ends where the work does. Raises EngineError."""
    order, name = _order(services, edition, kept), _named(kept)
    order.check()
    job = services.jobs.start(edition.pattern, order)
    while not job.over:
        if work.stopping:
            services.jobs.cancel(job.id)
            raise Stopped(STOPPED)
        now = next((step for step, state in job.steps if state == "running"), "Waiting its turn")
        work.at = f"Printing “{name}”: {now.lower()}"
        sleep(PAUSE_S)
        job = services.jobs.find(job.id) or replace(job, state="cancelled")
    if job.state != "done":
        raise EngineError(job.message or STOPPED)
    if job.proof is None or job.proof.blocks:
        remark = next((remark for remark in job.proof.remarks if remark.blocks), None) if job.proof else None
        raise EngineError(MISLEADING.format(name, f"{remark.where}. {remark.what}" if remark else ""))
    return KitBooklet(name, job.pages or 0, services.jobs.pdf(job.id))


def _order(services: Services, edition: Edition, kept: PrintedFrom) -> Order:
    """The order of that print, with the photographs that were in the edition as far as they are still kept."""
    shown: list[tuple[Photograph, bytes]] = []
    for photograph in kept.choices.photographs:
        with suppress(NotFound, ValueError):
            number = int(photograph.key.removeprefix("photograph-"))
            shown.append((photograph, photographs.jpeg(services.database, edition.pattern, number)))
    choices = replace(kept.choices, photographs=tuple(photograph for photograph, _ in shown))
    files = tuple((photograph.key, jpeg) for photograph, jpeg in shown)
    return Order(kept.pattern, choices, kept.workshop, proofread=True, photographs=files)


def _drawn(subject: Subject, scene: Scene, form: KitForm, work: Work) -> KitPicture:
    work.at = f"Drawing “{scene.name}”"
    data = scene_bytes(subject, scene, setting(form.shape, form.ground), form.form)
    return KitPicture(scene.key, "jpg" if form.form == "jpeg" else form.form, scene.seen(subject), data)
