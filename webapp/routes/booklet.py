"""The booklet of a pattern: chosen, printed in a process of its own, and as bytes."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime
from typing import Annotated, Any

from fastapi import APIRouter, Depends, Query
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from engine.booklet.choices import Choices, Imprint, Photograph, picture_in_hand
from engine.booklet.proof.edition_lines import OtherPrint, other_print
from engine.cabinet.colourways import Colourway, in_colourway
from engine.counting.options import in_hand, read_longest, read_plan, read_spare
from engine.errors import EngineError
from engine.pattern.pattern import Pattern
from webapp.exchange.pattern_file import SUFFIX, file_name
from webapp.pages.addresses import PATHS, address
from webapp.pages.forms.booklet import EDITION, BookletForm, read_booklet
from webapp.pages.views.booklet import BookletPage, booklet_page, job_page
from webapp.pages.views.colourways import OWN_NAME
from webapp.pages.views.frame import Frame
from webapp.printing.card import card_html
from webapp.printing.missing import missing_libraries
from webapp.printing.orders import Order
from webapp.records import MakerSettings, PrintJob, StoredPattern
from webapp.records import Photograph as StoredPhotograph
from webapp.routes.deps import (
    Asked,
    Asking,
    Form,
    Maker,
    Options,
    Services,
    Stored,
    TheDatabase,
    TheFrame,
    TheServices,
    page,
)
from webapp.routes.described import bytes_of
from webapp.storage import beads, colourways, editions, own_words, patterns, photographs, revisions, workshop
from webapp.storage.database import Database
from webapp.storage.errors import NotFound

router = APIRouter()


def _job(job: str, services: TheServices) -> PrintJob:
    printed = services.jobs.find(job)
    if printed is None:
        raise NotFound("print with this number")
    return printed


TheJob = Annotated[PrintJob, Depends(_job)]


@router.get(PATHS["booklet"], include_in_schema=False)
def booklet(stored: Stored, asked: Asked, services: TheServices, frame: TheFrame, maker: Maker) -> HTMLResponse:
    services.jobs.make_ready()  # whoever looks at this page is about to print
    form = read_booklet(asked, maker, workshop.own_sizes(services.database))
    return page("printing/booklet.html", _page(stored, form, services, frame))


@router.post(PATHS["booklet"], include_in_schema=False)
def print_it(stored: Stored, sent: Form, services: TheServices, frame: TheFrame, maker: Maker) -> Response:
    form = read_booklet(sent, maker, workshop.own_sizes(services.database))
    view = _page(stored, form, services, frame)
    if view.form.errors or view.missing:
        return page("printing/booklet.html", view, 422)
    kept = _kept(services.database, stored.id)
    kept, shown = _in_colourway(services.database, kept, form.colourway, form.bills)
    choices = replace(_chosen(form, kept, maker, services.database), **shown)
    order = _ordered(services.database, kept, choices, form.size.hand, form.size.keep_picture, form.size.longest_mm)
    order = replace(
        order,
        proofread=True,
        beside=_beside(services, stored.id, choices),
        cabinet=beads.cabinet(services.database),
    )
    try:
        order.check()
    except EngineError as error:
        return page("printing/booklet.html", _page(stored, form.refused(error), services, frame), 422)
    return RedirectResponse(address("job", job=services.jobs.start(stored.id, order).id), 303)


def _page(stored: StoredPattern, form: BookletForm, services: Services, frame: Frame) -> BookletPage:
    database = services.database
    return booklet_page(
        frame=frame,
        stored=stored,
        form=form,
        workshop=workshop.workshop(database, stored.id),
        missing=missing_libraries(),
        jobs=services.jobs.of(stored.id),
        next_edition=editions.next_number(database, stored.id),
        own=len(own_words.load(database, stored.id).texts),
        photographs=len(photographs.of(database, stored.id)),
        colourways=colourways.of(database, stored.id),
    )


@router.get(PATHS["job"], include_in_schema=False)
def job(job: TheJob, database: TheDatabase, frame: TheFrame) -> HTMLResponse:
    return page("printing/job.html", job_page(frame, patterns.load(database, job.pattern_id), job))


@router.get(PATHS["job_steps"], include_in_schema=False)
def job_steps(job: TheJob, database: TheDatabase, frame: TheFrame) -> HTMLResponse:
    return page("printing/_steps.html", job_page(frame, patterns.load(database, job.pattern_id), job))


@router.post(PATHS["cancel_job"], include_in_schema=False)
def cancel_job(job: TheJob, services: TheServices) -> RedirectResponse:
    services.jobs.cancel(job.id)
    return RedirectResponse(address("job", job=job.id), 303)


@router.get(PATHS["job_pdf"], include_in_schema=False)
def job_pdf(job: TheJob, services: TheServices, download: str | None = None) -> Response:
    return _pdf(
        services.jobs.pdf(job.id), patterns.load(services.database, job.pattern_id).pattern, download is not None
    )


@dataclass(frozen=True)
class BookletOptions:
    """Which booklet, as it stands in an address."""

    paper: str | None = None
    edition: str = "standard"
    terms: str | None = None
    ink_saving: bool = False
    colourway: Annotated[int, Query(description="Number of a colourway; nought: the pattern's own palette.")] = 0
    bills: Annotated[bool, Query(description="With the bills of all other colourways.")] = False


Booklet = Annotated[BookletOptions, Depends()]
API_PDF = "/api/patterns/{id}/booklet.pdf"
PDF = bytes_of("application/pdf")


@router.get(API_PDF, tags=["patterns"], response_class=Response, responses=PDF)
def get_booklet(stored: Stored, options: Asking, booklet: Booklet, services: TheServices, maker: Maker) -> Response:
    """The booklet as PDF, for the size asked for, of the pattern as it stands; a working copy is printed undated."""
    return _answered(stored, options, booklet, services, maker)


@router.post(API_PDF, tags=["patterns"], response_class=Response, responses=PDF)
def post_booklet(stored: Stored, options: Asking, booklet: Booklet, services: TheServices, maker: Maker) -> Response:
    """The same; a working copy is kept as a revision first, so that the booklet can be printed again."""
    return _answered(_kept(services.database, stored.id), options, booklet, services, maker)


@router.get("/api/patterns/{id}/card.html", tags=["patterns"], response_class=Response, responses=bytes_of("text/html"))
def get_card(
    stored: Stored,
    options: Asking,
    services: TheServices,
    maker: Maker,
    terms: str | None = None,
    colourway: Annotated[int, Query(description="Number of a colourway; nought: the pattern's own palette.")] = 0,
) -> Response:
    """The stringing card for a phone, one HTML file, for the size asked for, of the pattern as it stands."""
    order = _order(stored, options, BookletOptions(terms=terms, colourway=colourway), services, maker)
    return Response(
        card_html(order.pattern, order.choices, order.workshop),
        media_type="text/html; charset=utf-8",
        headers={"content-disposition": _disposition(order.pattern, "card.html", attached=True)},
    )


def _answered(
    stored: StoredPattern, options: Options, booklet: BookletOptions, services: Services, maker: MakerSettings
) -> Response:
    order = _order(stored, options, booklet, services, maker)
    order.check()
    return _pdf(services.jobs.run(order), stored.pattern)


def _order(
    stored: StoredPattern, options: Options, booklet: BookletOptions, services: Services, maker: MakerSettings
) -> Order:
    """What is asked for in an address, of that state of the pattern."""
    stored, shown = _in_colourway(services.database, stored, booklet.colourway, booklet.bills)
    choices = _of_state(
        stored,
        maker,
        **shown,
        question=options.question(workshop.own_sizes(services.database)),
        plan=read_plan(options.threads),
        paper=booklet.paper or maker.paper,
        format=booklet.edition,
        terms=booklet.terms or maker.terms,
        spare=read_spare(options.spare, maker.spare),
        ink_saving=booklet.ink_saving,
    )
    return _ordered(
        services.database, stored, choices, options.hand or "", options.keep_picture, read_longest(options.longest)
    )


def _beside(services: Services, pattern: int, choices: Choices) -> tuple[OtherPrint, ...]:
    """The prints that are meant for the same edition."""
    jobs = (job for job in services.jobs.of(pattern) if choices.published and job.published == choices.published)
    orders = (services.jobs.order(job.id) for job in jobs if job.state not in ("failed", "cancelled"))
    return tuple(other_print(order.pattern, order.choices) for order in orders if order)


def _in_colourway(
    database: Database, stored: StoredPattern, number: int, bills: bool
) -> tuple[StoredPattern, dict[str, Any]]:
    """The pattern in the colourway of that number, nought for its own palette, and what the choices say of it.

    Raises NotFound.
    """
    kept = colourways.of(database, stored.id)
    chosen = next((of.colourway for of in kept if of.id == number), None)
    if number and chosen is None:
        raise NotFound("such colourway of this pattern")
    own = Colourway(OWN_NAME, stored.pattern.palette)
    others = tuple(of for of in (own, *(of.colourway for of in kept)) if of != (chosen or own)) if bills else ()
    shown = {"colourway": chosen.name if chosen else "", "others": others}
    worked = in_colourway(stored.pattern, chosen) if chosen else stored.pattern
    return replace(stored, pattern=worked), shown


def _kept(database: Database, number: int) -> StoredPattern:
    """The newest revision, into which a working copy has gone: what is printed can be printed again."""
    return revisions.revision(database, number, revisions.keep_working(database, number))


def _ordered(
    database: Database,
    stored: StoredPattern,
    choices: Choices,
    hand: str,
    keep_picture: bool,
    longest_mm: float | None,
) -> Order:
    """The order with the maker's own numbers, words and photographs."""
    added = photographs.of(database, stored.id)
    shown = tuple(
        Photograph(key=_key(photo), caption=photo.caption, seen=photo.seen, width=photo.width, height=photo.height)
        for photo in added
    )
    return Order(
        in_hand(stored.pattern, hand, keep_picture),
        replace(
            choices,
            own=own_words.load(database, stored.id),
            photographs=shown,
            picture=picture_in_hand(stored.pattern, hand, keep_picture),
            difficulty=patterns.load(database, stored.id).difficulty,
        ),
        workshop.workshop(database, stored.id).with_longest(longest_mm),
        photographs=tuple((_key(photo), photographs.jpeg(database, stored.id, photo.id)) for photo in added),
    )


def _key(photograph: StoredPhotograph) -> str:
    """How a booklet names the photograph."""
    return f"photograph-{photograph.id}"


def _chosen(form: BookletForm, kept: StoredPattern, maker: MakerSettings, database: Database) -> Choices:
    size = form.size
    choices = _of_state(
        kept,
        maker,
        question=size.question,
        plan=size.plan,
        paper=form.paper,
        format=form.format,
        terms=form.terms,
        spare=size.spare,
        ink_saving=form.ink_saving,
    )
    if form.purpose != EDITION:
        return choices
    return replace(choices, published=editions.next_number(database, kept.id), date=_day(database.now()))


def _of_state(stored: StoredPattern, maker: MakerSettings, **chosen: Any) -> Choices:
    """Choices with who sells it and which state it is; a working copy is no state that could be named."""
    return Choices(
        units=maker.units,
        imprint=Imprint(maker.maker or stored.pattern.designer, maker.contact, maker.licence),
        date="" if stored.working else _day(stored.revision_date),
        revision=0 if stored.working else stored.revision,
        **chosen,
    )


def _day(moment: datetime) -> str:
    return moment.date().isoformat()


def _pdf(data: bytes, pattern: Pattern, attached: bool = False) -> Response:
    named = {"content-disposition": _disposition(pattern, "booklet.pdf", attached)}
    return Response(data, media_type="application/pdf", headers=named)


def _disposition(pattern: Pattern, what: str, attached: bool) -> str:
    """The header that names a file: "inline; filename="harbour-lights-booklet.pdf""."""
    name = file_name(pattern.title).removesuffix(SUFFIX)
    return f'{"attachment" if attached else "inline"}; filename="{name}-{what}"'
