"""The booklet of a pattern: chosen, printed in a process of its own, and as bytes."""

from __future__ import annotations

from dataclasses import replace
from typing import Annotated

from fastapi import APIRouter, Depends
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from engine.booklet.choices import Choices, Imprint, Photograph
from engine.counting.options import in_hand, read_plan, read_spare
from engine.errors import EngineError
from engine.pattern.pattern import Pattern
from webapp.exchange.pattern_file import file_name
from webapp.pages.addresses import PATHS, address
from webapp.pages.forms.booklet import EDITION, BookletForm, read_booklet
from webapp.pages.views.booklet import BookletPage, booklet_page, job_page
from webapp.pages.views.frame import Frame
from webapp.printing.jobs import Order
from webapp.printing.missing import missing_libraries
from webapp.records import MakerSettings, PrintJob, StoredPattern
from webapp.routes.deps import Asked, Asking, Desk, Form, Maker, Stored, TheDatabase, TheDesk, TheFrame, page
from webapp.routes.described import bytes_of
from webapp.storage import editions, own_words, patterns, photographs, revisions, workshop
from webapp.storage.database import Database
from webapp.storage.errors import NotFound

router = APIRouter()


def _job(job: str, desk: TheDesk) -> PrintJob:
    found = desk.jobs.find(job)
    if found is None:
        raise NotFound("print with this number")
    return found


TheJob = Annotated[PrintJob, Depends(_job)]


@router.get(PATHS["booklet"], include_in_schema=False)
def booklet(stored: Stored, asked: Asked, desk: TheDesk, frame: TheFrame, maker: Maker) -> HTMLResponse:
    return page(
        "printing/booklet.html",
        _shown(stored, read_booklet(asked, maker, workshop.own_sizes(desk.database)), desk, frame),
    )


@router.post(PATHS["booklet"], include_in_schema=False)
def print_it(stored: Stored, sent: Form, desk: TheDesk, frame: TheFrame, maker: Maker) -> Response:
    form = read_booklet(sent, maker, workshop.own_sizes(desk.database))
    shown = _shown(stored, form, desk, frame)
    if shown.form.errors or shown.missing:
        return page("printing/booklet.html", shown, 422)
    kept = _kept(desk.database, stored.id)
    order = replace(
        _ordered(
            desk.database, kept, _chosen(form, kept, maker, desk.database), form.size.hand, form.size.keep_picture
        ),
        proofread=True,
    )
    try:
        order.check()
    except EngineError as error:
        return page("printing/booklet.html", _shown(stored, form.refused(error), desk, frame), 422)
    return RedirectResponse(address("job", job=desk.jobs.start(stored.id, order).id), 303)


def _shown(stored: StoredPattern, form: BookletForm, desk: Desk, frame: Frame) -> BookletPage:
    database = desk.database
    return booklet_page(
        frame,
        stored,
        form,
        workshop.workshop(database, stored.id),
        missing_libraries(),
        desk.jobs.of(stored.id),
        editions.next_number(database, stored.id),
        len(own_words.load(database, stored.id).texts),
        len(photographs.of(database, stored.id)),
    )


@router.get(PATHS["job"], include_in_schema=False)
def job(job: TheJob, database: TheDatabase, frame: TheFrame) -> HTMLResponse:
    return page("printing/job.html", job_page(frame, patterns.load(database, job.pattern_id), job))


@router.get(PATHS["job_steps"], include_in_schema=False)
def job_steps(job: TheJob, database: TheDatabase, frame: TheFrame) -> HTMLResponse:
    return page("printing/_steps.html", job_page(frame, patterns.load(database, job.pattern_id), job))


@router.post(PATHS["cancel_job"], include_in_schema=False)
def cancel_job(job: TheJob, desk: TheDesk) -> RedirectResponse:
    desk.jobs.cancel(job.id)
    return RedirectResponse(address("job", job=job.id), 303)


@router.get(PATHS["job_pdf"], include_in_schema=False)
def job_pdf(job: TheJob, desk: TheDesk, download: str | None = None) -> Response:
    return _pdf(desk.jobs.pdf(job.id), patterns.load(desk.database, job.pattern_id).pattern, download is not None)


@router.get(
    "/api/patterns/{id}/booklet.pdf", tags=["patterns"], response_class=Response, responses=bytes_of("application/pdf")
)
def get_booklet(
    stored: Stored,
    options: Asking,
    desk: TheDesk,
    maker: Maker,
    paper: str | None = None,
    edition: str = "standard",
    terms: str | None = None,
    ink_saving: bool = False,
) -> Response:
    """The booklet as PDF, for the size asked for; a working copy is kept as a revision first."""
    kept = _kept(desk.database, stored.id)
    choices = Choices(
        options.question(workshop.own_sizes(desk.database)),
        read_plan(options.threads),
        paper or maker.paper,
        edition,
        terms or maker.terms,
        read_spare(options.spare, maker.spare),
        maker.units,
        *_said(kept, maker),
        ink_saving=ink_saving,
    )
    order = _ordered(desk.database, kept, choices, options.hand or "", options.keep_picture)
    return _pdf(desk.jobs.run(order), kept.pattern)


def _kept(database: Database, number: int) -> StoredPattern:
    """The newest revision, into which a working copy has gone: what is printed can be printed again."""
    return revisions.revision(database, number, revisions.keep_working(database, number))


def _ordered(database: Database, kept: StoredPattern, choices: Choices, hand: str, keep_picture: bool) -> Order:
    """The order with the maker's own numbers, words and photographs."""
    seen = photographs.of(database, kept.id)
    named = tuple(Photograph(f"photograph-{one.id}", *one[1:]) for one in seen)
    return Order(
        in_hand(kept.pattern, hand, keep_picture),
        replace(choices, own=own_words.load(database, kept.id), photographs=named),
        workshop.workshop(database, kept.id),
        photographs=tuple((f"photograph-{one.id}", photographs.jpeg(database, kept.id, one.id)) for one in seen),
    )


def _chosen(form: BookletForm, kept: StoredPattern, maker: MakerSettings, database: Database) -> Choices:
    size = form.size
    chosen = Choices(
        size.question,
        size.plan,
        form.paper,
        form.edition,
        form.terms,
        size.spare,
        maker.units,
        *_said(kept, maker),
        ink_saving=form.ink_saving,
    )
    if form.purpose != EDITION:
        return chosen
    return replace(chosen, published=editions.next_number(database, kept.id), date=database.now().date().isoformat())


def _said(kept: StoredPattern, maker: MakerSettings) -> tuple[Imprint, str, int]:
    """Who sells it, and which state it is."""
    imprint = Imprint(maker.maker or kept.pattern.designer, maker.contact, maker.licence)
    return imprint, kept.revision_date.date().isoformat(), kept.revision


def _pdf(data: bytes, pattern: Pattern, attached: bool = False) -> Response:
    name = file_name(pattern.title).removesuffix(".pattern.json") + "-booklet.pdf"
    how = "attachment" if attached else "inline"
    return Response(data, media_type="application/pdf", headers={"content-disposition": f'{how}; filename="{name}"'})
