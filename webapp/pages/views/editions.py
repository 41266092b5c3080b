"""Editions: what stands ready to be published, what was, who has it, and the errata between two."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Annotated

from engine.booklet.errata import Errata
from webapp.pages.addresses import address
from webapp.pages.forms.own_words import CopyForm
from webapp.pages.views.frame import Frame, Head, head
from webapp.records import Edition, GivenCopy, PrintJob, StoredPattern


@dataclass(frozen=True)
class ReadyBooklet:
    """A print that may go into the next edition."""

    job: Annotated[str, "Its number."]
    name: Annotated[str, "Which booklet it is."]
    pages: Annotated[int, "Its pages."]
    state: Annotated[str, "ready, blocked or old."]
    words: Annotated[str, "What that means."]
    proof: Annotated[str, "Address of its proof."]


@dataclass(frozen=True)
class EditionLine:
    """An edition as published."""

    number: Annotated[int, "Its number."]
    revision: Annotated[int, "The revision that it is."]
    published: Annotated[datetime, "When."]
    note: Annotated[str, "What was noted; may be empty."]
    withdrawn: Annotated[datetime | None, "Since when it is withdrawn."]
    why: Annotated[str, "Why; may be empty."]
    booklets: Annotated[
        tuple[tuple[str, int, int, str, str], ...], "Name, pages, size in kB, address and card of each booklet."
    ]
    errata: Annotated[str, "Address of the errata to the newest edition; empty for that one."]
    given: Annotated[int, "How many copies were given out."]


@dataclass(frozen=True)
class CopyLine:
    """A copy that was given out."""

    id: Annotated[int, "Its number."]
    name: Annotated[str, "Whose it is."]
    sort: Annotated[str, "Test copy or personal copy."]
    edition: Annotated[int, "Of which edition."]
    booklet: Annotated[str, "Which booklet."]
    given: Annotated[datetime, "When it was given."]
    pdf: Annotated[str, "Address of the copy."]
    errata: Annotated[str, "What there is to say about errata."]


@dataclass(frozen=True)
class EditionsPage:
    """Editions and copies of a pattern, at `/patterns/{id}/editions`."""

    frame: Frame
    head: Head
    next: Annotated[int, "The number of the edition that would be published next."]
    revision: Annotated[int, "The newest revision."]
    ready: Annotated[tuple[ReadyBooklet, ...], "Prints for that edition."]
    may_publish: Annotated[bool, "Whether one of them may be published."]
    editions: Annotated[tuple[EditionLine, ...], "The editions, the newest first."]
    copies: Annotated[tuple[CopyLine, ...], "The copies given out, the newest first."]
    form: Annotated[CopyForm, "A copy as it was asked for, and what is wrong."]
    asked: Annotated[int, "The edition whose copy was asked for; nought for none."]
    wrong: Annotated[str, "Why the edition was not published; may be empty."]
    made: Annotated[CopyLine | None, "The copy that was just noted."]


@dataclass(frozen=True)
class ErrataPage:
    """The errata between two editions, at `/patterns/{id}/errata`."""

    frame: Frame
    head: Head
    old: Annotated[int, "The earlier edition."]
    new: Annotated[int, "The later edition."]
    numbers: Annotated[tuple[int, ...], "All editions, the newest first."]
    errata: Annotated[Errata, "What differs."]
    pdf: Annotated[str, "Address of the sheet as PDF."]
    text: Annotated[str, "Address of the sheet as text."]
    waiting: Annotated[tuple[CopyLine, ...], "Copies whose owners have not been sent it."]


def editions_page(
    frame: Frame,
    stored: StoredPattern,
    editions: Sequence[Edition],
    copies: Iterable[GivenCopy],
    jobs: Iterable[PrintJob] = (),
    form: CopyForm | None = None,
    asked: int = 0,
    wrong: str = "",
    made: int = 0,
) -> EditionsPage:
    """The page of editions; `jobs` are the prints for the next edition, `made` is the copy that was just noted."""
    newest = editions[0].number if editions else 0
    ready = tuple(_ready(job, stored) for job in jobs if job.state == "done" and job.published == newest + 1)
    given = tuple(copies)
    lines = tuple(_edition_line(stored.id, edition, newest, given) for edition in editions)
    copy_lines = tuple(_copy_line(copy, newest) for copy in given)
    return EditionsPage(
        frame=frame,
        head=head(stored),
        next=newest + 1,
        revision=stored.revision,
        ready=ready,
        may_publish=any(one.state == "ready" for one in ready),
        editions=lines,
        copies=copy_lines,
        form=form or CopyForm(),
        asked=asked,
        wrong=wrong,
        made=next((line for line in copy_lines if line.id == made), None),
    )


def errata_page(
    frame: Frame,
    stored: StoredPattern,
    editions: Sequence[Edition],
    old: int,
    new: int,
    errata: Errata,
    copies: Iterable[GivenCopy],
) -> ErrataPage:
    """The page of the errata from one edition to a later one."""
    waiting = tuple(_copy_line(copy, new) for copy in copies if copy.edition == old and copy.told < new)
    return ErrataPage(
        frame=frame,
        head=head(stored),
        old=old,
        new=new,
        numbers=tuple(edition.number for edition in editions),
        errata=errata,
        pdf=address("errata_pdf", id=stored.id, old=old, new=new),
        text=address("errata_text", id=stored.id, old=old, new=new),
        waiting=waiting,
    )


def _ready(job: PrintJob, stored: StoredPattern) -> ReadyBooklet:
    if stored.working or job.revision != stored.revision:
        state, words = "old", f"Of revision {job.revision}, and the pattern has changed since. Print it again."
    elif job.proof is None or job.proof.blocks:
        state, words = "blocked", "Its proof found something that would mislead a buyer."
    else:
        advice = len(job.proof.remarks)
        state = "ready"
        words = (
            "Its proof found nothing."
            if not advice
            else (f"Its proof has {advice} {'piece' if advice == 1 else 'pieces'} of advice.")
        )
    return ReadyBooklet(
        job=job.id, name=job.name, pages=job.pages or 0, state=state, words=words, proof=address("job", job=job.id)
    )


def _edition_line(pattern: int, edition: Edition, newest: int, copies: Sequence[GivenCopy]) -> EditionLine:
    booklets = tuple(
        (
            one.name,
            one.pages,
            -(-one.bytes // 1000),
            address("edition_pdf", id=pattern, edition=edition.number, booklet=one.name),
            address("edition_card", id=pattern, edition=edition.number, booklet=one.name),
        )
        for one in edition.booklets
    )
    errata = address("errata", id=pattern, old=edition.number, new=newest) if edition.number < newest else ""
    return EditionLine(
        number=edition.number,
        revision=edition.revision,
        published=edition.published,
        note=edition.note,
        withdrawn=edition.withdrawn,
        why=edition.why,
        booklets=booklets,
        errata=errata,
        given=sum(copy.edition == edition.number for copy in copies),
    )


def _copy_line(copy: GivenCopy, newest: int) -> CopyLine:
    if copy.edition >= newest:
        errata = "has the newest edition"
    elif copy.told >= newest:
        errata = f"was sent the errata up to edition {copy.told}"
    else:
        errata = f"needs the errata to edition {newest}"
    return CopyLine(
        id=copy.id,
        name=copy.name,
        sort="Test copy" if copy.test else "Personal copy",
        edition=copy.edition,
        booklet=copy.booklet,
        given=copy.given,
        pdf=address("copy_pdf", copy=copy.id),
        errata=errata,
    )
