"""Editions of a pattern: published from proofed prints, given out as copies, and what a later one changed."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Annotated

from fastapi import APIRouter, Depends
from fastapi.responses import HTMLResponse, PlainTextResponse, RedirectResponse, Response

from engine.booklet.errata import Errata, Published, errata
from engine.counting.questions import Question
from engine.dates import day_of
from webapp.exchange.frozen import frozen, thawed, words_of, words_text
from webapp.exchange.pattern_file import SUFFIX, file_name
from webapp.pages.addresses import PATHS
from webapp.pages.forms.own_words import CopyForm, read_copy, read_note
from webapp.pages.forms.sent import Sent
from webapp.pages.views.editions import EditionsPage, editions_page, errata_page
from webapp.pages.views.frame import Frame
from webapp.printing.card import card_html
from webapp.printing.jobs import Jobs
from webapp.printing.orders import CopyOrder, ErrataOrder
from webapp.records import Edition, FreshBooklet, StoredPattern
from webapp.routes.deps import Form, Maker, Services, Stored, TheDatabase, TheFrame, TheServices, go, page
from webapp.storage import editions, patterns, revisions
from webapp.storage.database import Database
from webapp.storage.errors import NotFound

router = APIRouter(include_in_schema=False)

NOTHING = "Choose at least one booklet whose proof found nothing that would mislead a buyer."
SAME = "Two of these are the same booklet for different sizes, and would say the same edition line. Choose one of them."
CHANGED = "The pattern has changed, or another edition was published, since these were printed. Print them again."


def _edition(stored: Stored, edition: int, database: TheDatabase) -> Edition:
    return editions.edition(database, stored.id, edition)


TheEdition = Annotated[Edition, Depends(_edition)]


@router.get(PATHS["editions"])
def all_editions(stored: Stored, services: TheServices, frame: TheFrame, made: int = 0) -> HTMLResponse:
    return page("printing/editions.html", _page_value(stored, services, frame, made=made))


@router.post(PATHS["editions"])
def publish(stored: Stored, sent: Form, services: TheServices, frame: TheFrame) -> Response:
    ready = {booklet.job for booklet in _page_value(stored, services, frame).ready if booklet.state == "ready"}
    chosen = [job for job in Sent(sent).all("job") if job in ready]
    if not chosen:
        wrong = CHANGED if Sent(sent).all("job") else NOTHING
        return page("printing/editions.html", _page_value(stored, services, frame, wrong=wrong), 422)
    if _sizes_differ(services.jobs, chosen):
        return page("printing/editions.html", _page_value(stored, services, frame, wrong=SAME), 422)
    fresh = {booklet.name: booklet for booklet in (_fresh(services.jobs, job) for job in reversed(chosen))}
    first = services.jobs.order(chosen[0])
    assert first is not None
    editions.publish(
        services.database,
        stored.id,
        stored.revision,
        tuple(fresh.values()),
        words_text(first.choices.own),
        read_note(sent),
    )
    return go("editions", "published", id=stored.id)


def _sizes_differ(jobs: Jobs, chosen: Iterable[str]) -> bool:
    """Whether two of them are the same booklet of different sizes: a buyer could not say which one is meant."""
    questions: dict[str, Question] = {}
    orders = (order for job in chosen if (order := jobs.order(job)))
    return any(questions.setdefault(order.name, order.choices.question) != order.choices.question for order in orders)


@router.get(PATHS["edition_pdf"])
def edition_pdf(stored: Stored, edition: TheEdition, database: TheDatabase, booklet: str) -> Response:
    return _pdf(
        editions.pdf(database, stored.id, edition.number, booklet), stored, f"edition-{edition.number}-{booklet}"
    )


@router.get(PATHS["edition_card"])
def edition_card(stored: Stored, edition: TheEdition, database: TheDatabase, booklet: str = "") -> Response:
    """The stringing card of that booklet's size, threads, hand and colours; without a name that of the first."""
    kept = next((one for one in edition.booklets if booklet in ("", one.name)), None)
    if kept is None:
        raise NotFound(f"booklet “{booklet}” in edition {edition.number}")
    published = revisions.revision(database, stored.id, edition.revision)
    name = file_name(f"{published.pattern.title} edition-{edition.number}-{kept.name} card").removesuffix(SUFFIX)
    return Response(
        card_html(*thawed(kept.choices, published.pattern)),
        media_type="text/html; charset=utf-8",
        headers={"content-disposition": f'attachment; filename="{name}.html"'},
    )


@router.post(PATHS["withdraw"])
def withdraw(stored: Stored, edition: TheEdition, sent: Form, database: TheDatabase) -> RedirectResponse:
    editions.withdraw(database, stored.id, edition.number, read_note(sent, "why"))
    return go("editions", "withdrawn", id=stored.id)


@router.post(PATHS["bring_back_edition"])
def bring_back(stored: Stored, edition: TheEdition, database: TheDatabase) -> RedirectResponse:
    editions.bring_back(database, stored.id, edition.number)
    return go("editions", "given-again", id=stored.id)


@router.post(PATHS["give_copy"])
def give(stored: Stored, edition: TheEdition, sent: Form, services: TheServices, frame: TheFrame) -> Response:
    form = read_copy(sent)
    if form.errors or edition.withdrawn:
        return page("printing/editions.html", _page_value(stored, services, frame, form, edition.number), 422)
    made = editions.give(services.database, stored.id, edition.number, form.booklet, form.name, form.test)
    return go("editions", "copy", id=stored.id, made=made)


@router.get(PATHS["copy_pdf"])
def copy_pdf(copy: int, services: TheServices) -> Response:
    """The copy, made anew from the kept edition; the same bytes every time."""
    given = editions.copy(services.database, copy)
    kept = editions.pdf(services.database, given.pattern, given.edition, given.booklet)
    what = "Test copy, not for sale," if given.test else "Personal copy"
    line = f"{what} for {given.name}, {day_of(given.given.date().isoformat())}. Edition {given.edition}."
    stored = patterns.load(services.database, given.pattern)
    return _pdf(services.jobs.run(CopyOrder(kept, line)), stored, f"edition-{given.edition}-{given.name}")


@router.get(PATHS["errata"])
def show_errata(
    stored: Stored, database: TheDatabase, frame: TheFrame, maker: Maker, old: int = 0, new: int = 0
) -> HTMLResponse:
    known = editions.editions(database, stored.id)
    if len(known) < 2:
        raise NotFound("second edition of this pattern yet, so there are no errata")
    old, new = old or known[1].number, new or known[0].number
    return page(
        "printing/errata.html",
        errata_page(
            frame,
            stored,
            known,
            old,
            new,
            _errata(database, stored, old, new, maker.contact),
            editions.copies(database, stored.id),
        ),
    )


@router.get(PATHS["errata_pdf"])
def errata_pdf(stored: Stored, services: TheServices, maker: Maker, old: int, new: int) -> Response:
    sheet = _errata(services.database, stored, old, new, maker.contact)
    return _pdf(services.jobs.run(ErrataOrder(sheet)), stored, f"errata-{old}-to-{new}")


@router.get(PATHS["errata_text"])
def errata_text(stored: Stored, database: TheDatabase, maker: Maker, old: int, new: int) -> PlainTextResponse:
    return PlainTextResponse(_errata(database, stored, old, new, maker.contact).text)


@router.post(PATHS["tell_errata"])
def tell(stored: Stored, sent: Form, database: TheDatabase, old: int, new: int) -> RedirectResponse:
    editions.edition(database, stored.id, new)
    numbers = [int(text) for text in Sent(sent).all("copy") if text.isdecimal() and len(text) < 18]
    editions.note_told(database, stored.id, numbers, new)
    return go("errata", "told", id=stored.id, old=old, new=new)


def _page_value(
    stored: StoredPattern,
    services: Services,
    frame: Frame,
    form: CopyForm | None = None,
    asked: int = 0,
    wrong: str = "",
    made: int = 0,
) -> EditionsPage:
    database = services.database
    return editions_page(
        frame,
        stored,
        editions.editions(database, stored.id),
        editions.copies(database, stored.id),
        services.jobs.of(stored.id),
        form,
        asked,
        wrong,
        made,
    )


def _fresh(jobs: Jobs, job: str) -> FreshBooklet:
    order, printed = jobs.order(job), jobs.find(job)
    assert order is not None and printed is not None
    kept = frozen(order.choices, order.pattern, order.workshop)
    return FreshBooklet(order.name, kept, printed.pages or 0, jobs.pdf(job))


def _errata(database: Database, stored: StoredPattern, old: int, new: int, contact: str) -> Errata:
    return errata(_published(database, stored.id, old), _published(database, stored.id, new), contact)


def _published(database: Database, pattern: int, number: int) -> Published:
    edition = editions.edition(database, pattern, number)
    kept = revisions.revision(database, pattern, edition.revision)
    return Published(number, edition.published.date().isoformat(), kept.pattern, words_of(edition.words))


def _pdf(data: bytes, stored: StoredPattern, what: str) -> Response:
    name = file_name(f"{stored.pattern.title} {what}").removesuffix(SUFFIX) + ".pdf"
    return Response(data, media_type="application/pdf", headers={"content-disposition": f'inline; filename="{name}"'})
