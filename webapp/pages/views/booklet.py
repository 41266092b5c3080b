"""The booklet's page, where it is chosen, and the page of a print on its way."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Annotated

from engine.booklet.proof.proof import Proof
from engine.booklet.proof.readback import Remark
from engine.counting.workshop import Workshop
from engine.units import count
from webapp.pages.addresses import address
from webapp.pages.forms.booklet import PAPERS, BookletForm
from webapp.pages.forms.size import work_size
from webapp.pages.views.frame import Frame, Head, head
from webapp.pages.views.measuring import Measuring, measuring
from webapp.records import KeptColourway, MissingLibrary, PrintJob, StoredPattern

STATES = {
    "waiting": "Waiting for the print before it",
    "running": "Printing",
    "done": "The booklet is printed",
    "failed": "The booklet could not be printed",
    "cancelled": "The print was cancelled",
}
MENDED_AT = {
    "settings": "Settings",
    "edit": "Palette and words",
    "chart": "Chart",
    "booklet": "Choices",
    "own_words": "Words and photographs",
    "colourways": "Colourways and look-alikes",
}
STEP_WORDS = {"waiting": "to come", "running": "now", "done": "done", "failed": "failed", "cancelled": "cancelled"}


@dataclass(frozen=True)
class BookletPage:
    """The booklet at `/patterns/{id}/booklet`."""

    frame: Frame
    head: Head
    form: Annotated[BookletForm, "The choices as made, and what is wrong."]
    kinds: Annotated[tuple[str, ...], "The bead kinds to choose from."]
    papers: Annotated[tuple[str, ...], "The papers to choose from."]
    hand: Annotated[str, "The hand it is worked with: right or left."]
    sentence: Annotated[str, "The size it is printed for; empty when something is wrong."]
    measuring: Annotated[Measuring | None, "What to measure, where no swatch stands behind the lengths."]
    missing: Annotated[MissingLibrary | None, "What this computer lacks for printing, if anything."]
    jobs: Annotated[tuple[PrintJob, ...], "Prints of this pattern, the newest first."]
    next_edition: Annotated[int, "The number of the edition that would be published next."]
    own: Annotated[int, "How many places of the booklet have words of the maker's own."]
    photographs: Annotated[int, "How many photographs it has."]
    colourways: Annotated[tuple[tuple[str, str], ...], "The colourways to choose from: value and words."]


@dataclass(frozen=True)
class JobStep:
    """A step of the print."""

    name: Annotated[str, "What is done in it."]
    state: Annotated[str, "waiting, running, done, failed or cancelled."]
    words: Annotated[str, "The state in a word or two."]


@dataclass(frozen=True)
class RemarkLine:
    """Something the proof remarked."""

    blocks: Annotated[bool, "Whether it would mislead a buyer."]
    where: Annotated[str, "Where it is."]
    what: Annotated[str, "What it is."]
    mend: Annotated[str, "How to mend it."]
    at: Annotated[str, "Address where it is mended; may be empty."]
    there: Annotated[str, "That page in a word or two."]


@dataclass(frozen=True)
class JobPage:
    """A print at `/jobs/{job}`; its steps are also sent alone, to be looked at again and again."""

    frame: Frame
    head: Head
    job: Annotated[PrintJob, "The print."]
    state: Annotated[str, "How it stands, in a few words."]
    steps: Annotated[tuple[JobStep, ...], "Its steps in order."]
    done: Annotated[int, "How many steps are done."]
    pdf: Annotated[str, "Address of the printed booklet; empty before it is done."]
    download: Annotated[str, "Address from which it is saved as a file; empty before it is done."]
    again: Annotated[str, "Address at which it can be printed again."]
    proof: Annotated[str, "What was read back, in a sentence; empty before it was."]
    remarks: Annotated[tuple[RemarkLine, ...], "What the proof remarked, what would mislead a buyer first."]
    publish: Annotated[str, "Address at which it can be published; empty where it cannot."]


def booklet_page(
    frame: Frame,
    stored: StoredPattern,
    form: BookletForm,
    workshop: Workshop,
    missing: MissingLibrary | None = None,
    jobs: tuple[PrintJob, ...] = (),
    next_edition: int = 1,
    own: int = 0,
    photographs: int = 0,
    colourways: Iterable[KeptColourway] = (),
) -> BookletPage:
    """The booklet page for the choices made."""
    done = work_size(stored.pattern, form.size, workshop, frame.units)
    form = replace(form, size=done.form, errors={**form.errors, **done.form.errors})
    return BookletPage(
        frame=frame,
        head=head(stored),
        form=form,
        kinds=tuple(workshop.kinds),
        papers=PAPERS,
        hand=done.pattern.hand,
        sentence=done.answer.sentence if done.answer else "",
        measuring=measuring(done.answer.size, frame) if done.answer else None,
        missing=missing,
        jobs=jobs,
        next_edition=next_edition,
        own=own,
        photographs=photographs,
        colourways=(("", "As drawn"), *((str(kept.id), kept.colourway.name) for kept in colourways)),
    )


def job_page(frame: Frame, stored: StoredPattern, job: PrintJob) -> JobPage:
    """The page of a print."""
    steps = tuple(JobStep(name, state, STEP_WORDS.get(state, state)) for name, state in job.steps)
    return JobPage(
        frame=frame,
        head=head(stored),
        job=job,
        state=STATES[job.state],
        steps=steps,
        done=sum(step.state == "done" for step in steps),
        pdf=address("job_pdf", job=job.id) if job.state == "done" else "",
        download=address("job_pdf", job=job.id, download="yes") if job.state == "done" else "",
        again=address("booklet", id=stored.id),
        proof=_proof_words(job.proof),
        remarks=tuple(_remark(stored.id, remark) for remark in job.proof.remarks) if job.proof else (),
        publish=address("editions", id=stored.id) if job.proof and job.published else "",
    )


def _proof_words(proof: Proof | None) -> str:
    if proof is None:
        return ""
    agree = "do not all agree with the chart" if proof.blocks else "agree with the chart"
    return (
        f"Read back from the finished file: {count(proof.entries)} entries of the lists and {count(proof.beads)} "
        f"drawn beads on {count(proof.pages)} pages {agree}."
    )


def _remark(pattern: int, remark: Remark) -> RemarkLine:
    name, _, place = remark.at.partition("#")
    whose = {} if name == "settings" else {"id": pattern}
    at = f"{address(name, **whose)}#{place}".rstrip("#") if name else ""
    return RemarkLine(
        blocks=remark.blocks,
        where=remark.where,
        what=remark.what,
        mend=remark.mend,
        at=at,
        there=MENDED_AT.get(name, ""),
    )
