"""The booklet of a pattern: chosen, printed in a process of its own, and as bytes."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Depends
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from engine.booklet.choices import Choices, Imprint
from engine.counting.options import in_hand, read_plan, read_spare
from engine.pattern.pattern import Pattern
from webapp.exchange.pattern_file import file_name
from webapp.pages.addresses import PATHS, address
from webapp.pages.forms.booklet import BookletForm, read_booklet
from webapp.pages.views.booklet import booklet_page, job_page
from webapp.printing.jobs import Order
from webapp.printing.missing import missing_libraries
from webapp.records import MakerSettings, PrintJob, StoredPattern
from webapp.routes.deps import Asked, Asking, Form, Maker, Stored, TheDatabase, TheDesk, TheFrame, page
from webapp.routes.described import bytes_of
from webapp.storage import patterns, revisions, workshop
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
    form, own = read_booklet(asked, maker), workshop.workshop(desk.database, stored.id)
    return page("printing/booklet.html",
                booklet_page(frame, stored, form, own, missing_libraries(), desk.jobs.of(stored.id)))


@router.post(PATHS["booklet"], include_in_schema=False)
def print_it(stored: Stored, sent: Form, desk: TheDesk, frame: TheFrame, maker: Maker) -> Response:
    form, own = read_booklet(sent, maker), workshop.workshop(desk.database, stored.id)
    shown = booklet_page(frame, stored, form, own, missing_libraries(), desk.jobs.of(stored.id))
    if shown.form.errors or shown.missing:
        return page("printing/booklet.html", shown, 422)
    kept = _kept(desk.database, stored.id)
    worked = in_hand(kept.pattern, form.size.hand, form.size.keep_picture)
    job = desk.jobs.start(stored.id, Order(worked, _chosen(form, kept, maker), own))
    return RedirectResponse(address("job", job=job.id), 303)


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


@router.get("/api/patterns/{id}/booklet.pdf", tags=["patterns"], response_class=Response,
            responses=bytes_of("application/pdf"))
def get_booklet(stored: Stored, options: Asking, desk: TheDesk, maker: Maker, paper: str | None = None,
                edition: str = "standard", terms: str | None = None) -> Response:
    """The booklet as PDF, for the size asked for; a working copy is kept as a revision first."""
    kept, own = _kept(desk.database, stored.id), workshop.workshop(desk.database, stored.id)
    choices = Choices(options.question, read_plan(options.threads), paper or maker.paper, edition, terms or maker.terms,
                      read_spare(options.spare, maker.spare), maker.units, *_said(kept, maker))
    return _pdf(desk.jobs.run(Order(options.worked(kept.pattern), choices, own)), kept.pattern)


def _kept(database: Database, number: int) -> StoredPattern:
    """The newest revision, into which a working copy has gone: what is printed can be printed again."""
    return revisions.revision(database, number, revisions.keep_working(database, number))


def _chosen(form: BookletForm, kept: StoredPattern, maker: MakerSettings) -> Choices:
    size = form.size
    return Choices(size.question, size.plan, form.paper, "standard", form.terms, size.spare, maker.units,
                   *_said(kept, maker))


def _said(kept: StoredPattern, maker: MakerSettings) -> tuple[Imprint, str, int]:
    """Who sells it, and which state it is."""
    imprint = Imprint(maker.maker or kept.pattern.designer, maker.contact, maker.licence)
    return imprint, kept.revision_date.date().isoformat(), kept.revision


def _pdf(data: bytes, pattern: Pattern, attached: bool = False) -> Response:
    name = file_name(pattern.title).removesuffix(".pattern.json") + "-booklet.pdf"
    how = "attachment" if attached else "inline"
    return Response(data, media_type="application/pdf", headers={"content-disposition": f'{how}; filename="{name}"'})
