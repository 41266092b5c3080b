"""The booklet's page, where it is chosen, and the page of a print on its way."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from engine.counting.sizes import Workshop
from webapp.pages.addresses import address
from webapp.pages.forms.booklet import PAPERS, BookletForm
from webapp.pages.views.frame import Frame, Head, head
from webapp.pages.views.working import worked
from webapp.records import MissingLibrary, PrintJob, StoredPattern

STATES = {
    "waiting": "Waiting for the print before it",
    "running": "Printing",
    "done": "The booklet is printed",
    "failed": "The booklet could not be printed",
    "cancelled": "The print was cancelled",
}
STEP_WORDS = {"waiting": "to come", "running": "now", "done": "done", "failed": "failed", "cancelled": "cancelled"}


@dataclass(frozen=True)
class BookletPage:
    """The booklet at `/patterns/{id}/booklet`."""

    frame: Annotated[Frame, "What stands round the page."]
    head: Annotated[Head, "The pattern's heading."]
    form: Annotated[BookletForm, "The choices as made, and what is wrong."]
    kinds: Annotated[tuple[str, ...], "The bead kinds to choose from."]
    papers: Annotated[tuple[str, ...], "The papers to choose from."]
    hand: Annotated[str, "The hand it is worked with: right or left."]
    sentence: Annotated[str, "The size it is printed for; empty when something is wrong."]
    source: Annotated[str, "Where the lengths come from."]
    measured: Annotated[bool, "Whether a swatch stands behind them."]
    missing: Annotated[MissingLibrary | None, "What this computer lacks for printing, if anything."]
    jobs: Annotated[tuple[PrintJob, ...], "Prints of this pattern, the newest first."]


@dataclass(frozen=True)
class JobStep:
    """A step of the print."""

    name: Annotated[str, "What is done in it."]
    state: Annotated[str, "waiting, running, done, failed or cancelled."]
    words: Annotated[str, "The state in a word or two."]


@dataclass(frozen=True)
class JobPage:
    """A print at `/jobs/{job}`; its steps are also sent alone, to be looked at again and again."""

    frame: Annotated[Frame, "What stands round the page."]
    head: Annotated[Head, "The pattern's heading."]
    job: Annotated[PrintJob, "The print."]
    state: Annotated[str, "How it stands, in a few words."]
    steps: Annotated[tuple[JobStep, ...], "Its steps in order."]
    done: Annotated[int, "How many steps are done."]
    pdf: Annotated[str, "Address of the printed booklet; empty before it is done."]
    download: Annotated[str, "Address from which it is saved as a file; empty before it is done."]
    again: Annotated[str, "Address at which it can be printed again."]


def booklet_page(frame: Frame, stored: StoredPattern, form: BookletForm, workshop: Workshop,
                 missing: MissingLibrary | None = None, jobs: tuple[PrintJob, ...] = ()) -> BookletPage:
    """The booklet page for the choices made."""
    done = worked(stored.pattern, form.size, workshop, frame.units)
    form = BookletForm(form.paper, form.terms, done.form, {**form.errors, **done.form.errors})
    return BookletPage(
        frame, head(stored), form, tuple(workshop.kinds), PAPERS, done.pattern.hand,
        done.answer.sentence if done.answer else "", done.answer.materials.source if done.answer else "",
        bool(done.answer and done.answer.size.rope.measured), missing, jobs)


def job_page(frame: Frame, stored: StoredPattern, job: PrintJob) -> JobPage:
    """The page of a print."""
    steps = tuple(JobStep(name, state, STEP_WORDS.get(state, state)) for name, state in job.steps)
    return JobPage(
        frame, head(stored), job, STATES[job.state], steps, sum(step.state == "done" for step in steps),
        address("job_pdf", job=job.id) if job.state == "done" else "",
        address("job_pdf", job=job.id, download="yes") if job.state == "done" else "", address("booklet", id=stored.id))
