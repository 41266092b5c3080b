"""Prints of booklets, each in a process of its own: at most two at once, with real steps and a cancel that ends it."""

from __future__ import annotations

import pickle
import shutil
from collections import OrderedDict
from concurrent.futures import CancelledError, Future, ThreadPoolExecutor
from contextlib import suppress
from dataclasses import replace
from pathlib import Path
from threading import Event, Lock, Semaphore
from typing import TYPE_CHECKING
from uuid import uuid4

from webapp.printing.errors import PrintBusy, PrintError
from webapp.printing.folders import own_folder, proof_path, sweep
from webapp.printing.process import DIED, Stopped, WorkerProcess
from webapp.records import PrintJob

if TYPE_CHECKING:  # what a print needs is loaded where it is printed
    from engine.booklet.proof.proof import Proof
    from webapp.printing.orders import AnyOrder, Order

AT_ONCE = 2
MOST_WAITING = 6  # of those that somebody waits for: each holds up a thread of the server
MOST_ORDERED = 60
MOST_KEPT = 20
BUSY = "Too many booklets are being printed at once; try again in a moment."
GONE = "The printed booklet is no longer kept; please print it again."


class Jobs:
    """The prints of one server. Safe for threads; PDFs are kept in a folder that `close` removes."""

    def __init__(self) -> None:
        sweep()
        self._folder = own_folder()
        self._pool = ThreadPoolExecutor(AT_ONCE, "print")
        self._lock = Lock()
        self._jobs: OrderedDict[str, PrintJob] = OrderedDict()
        self._orders: dict[str, AnyOrder] = {}
        self._workers: dict[str, WorkerProcess] = {}
        self._spare: WorkerProcess | None = None
        self._closed = Event()
        self._places = Semaphore(AT_ONCE + MOST_WAITING)

    def make_ready(self) -> None:
        """Has a process load what the next print needs, which the first one after a start would wait for."""
        self._pool.submit(self._have_spare)

    def start(self, pattern_id: int, order: AnyOrder) -> PrintJob:
        """Puts a print on its way; it waits while two others are running. Raises PrintBusy."""
        with self._lock:
            if sum(not job.over for job in self._jobs.values()) >= MOST_ORDERED:
                raise PrintBusy(BUSY)
        return self._begin(pattern_id, order)[0]

    def find(self, job_id: str) -> PrintJob | None:
        """How the print stands."""
        with self._lock:
            return self._jobs.get(job_id)

    def of(self, pattern_id: int) -> tuple[PrintJob, ...]:
        """The prints of a pattern, the newest first."""
        with self._lock:
            return tuple(job for job in reversed(self._jobs.values()) if job.pattern_id == pattern_id)

    def cancel(self, job_id: str) -> None:
        """Ends the print, if it is not over."""
        with self._lock:
            job, worker = self._jobs.get(job_id), self._workers.get(job_id)
            if job is None or job.over:
                return
            self._jobs[job_id] = _ended(job, "cancelled")
        if worker is not None:
            worker.kill()

    def order(self, job_id: str) -> Order | None:
        """The booklet that was ordered."""
        with self._lock:
            order = self._orders.get(job_id)
        return order.booklet if order else None

    def pdf(self, job_id: str) -> bytes:
        """The printed booklet. Raises PrintError where there is none."""
        try:
            return self._path(job_id).read_bytes()
        except OSError as error:
            raise PrintError(GONE) from error

    def run(self, order: AnyOrder) -> bytes:
        """Prints and waits for it.

        Raises PrintBusy where too many wait already, PrintError with one sentence. An order that may ask
        for the impossible is checked before it is run.
        """
        if not self._places.acquire(blocking=False):
            raise PrintBusy(BUSY)
        try:
            return self._run(order)
        finally:
            self._places.release()

    def _run(self, order: AnyOrder) -> bytes:
        job, done = self._begin(0, order)
        with suppress(CancelledError):
            done.result()
        with self._lock:
            ended = self._jobs.pop(job.id)
            del self._orders[job.id]
        if ended.state != "done":
            raise PrintError(ended.message or "The print was cancelled.")
        pdf = self.pdf(job.id)
        self._remove(job.id)
        return pdf

    def close(self) -> None:
        """Ends every print and removes what was printed."""
        self._closed.set()
        with self._lock:
            running = [job.id for job in self._jobs.values() if not job.over]
        for job_id in running:
            self.cancel(job_id)
        self._pool.shutdown(cancel_futures=True)
        if self._spare is not None:
            self._spare.kill()
        shutil.rmtree(self._folder, ignore_errors=True)

    def _begin(self, pattern_id: int, order: AnyOrder) -> tuple[PrintJob, Future[None]]:
        job = PrintJob(
            id=uuid4().hex[:12],
            pattern_id=pattern_id,
            state="waiting",
            steps=tuple((name, "waiting") for name in order.steps),
            name=order.name,
            revision=order.revision,
            published=order.published,
        )
        with self._lock:
            self._jobs[job.id], self._orders[job.id] = job, order
        self._forget_oldest()
        return job, self._pool.submit(self._print, job.id, order)

    def _forget_oldest(self) -> None:
        with self._lock:
            over = [job.id for job in self._jobs.values() if job.over and job.pattern_id]
            for job_id in over[: max(0, len(over) - MOST_KEPT)]:
                del self._jobs[job_id], self._orders[job_id]
                self._remove(job_id)

    def _print(self, job_id: str, order: AnyOrder) -> None:
        """One print from beginning to end, in a thread of the pool."""
        worker = self._take_worker(job_id)
        if worker is None:
            return
        try:
            pages = worker.print(order, self._path(job_id), lambda name: self._note_step(job_id, name))
            self._set(job_id, "done", pages=pages, proof=self._proof(job_id))
        except Stopped as error:
            self._set(job_id, "failed", str(error))
        except (OSError, ValueError):
            self._set(job_id, "failed", DIED)
        finally:
            with self._lock:
                self._workers.pop(job_id, None)
            worker.kill()

    def _take_worker(self, job_id: str) -> WorkerProcess | None:
        """A worker for a job that is still wanted: the spare one if it stands ready; another takes its place."""
        with self._lock:
            if self._closed.is_set() or self._jobs[job_id].over:
                return None
            spare, self._spare = self._spare, None
            worker = spare if spare is not None and spare.alive else WorkerProcess()
            self._workers[job_id] = worker
            self._jobs[job_id] = replace(self._jobs[job_id], state="running")
            return worker

    def _note_step(self, job_id: str, name: str) -> None:
        with self._lock:
            job = self._jobs[job_id]
            if not job.over:
                self._jobs[job_id] = replace(job, steps=_steps_at(name, self._orders[job_id].steps))

    def _set(
        self, job_id: str, state: str, message: str = "", pages: int | None = None, proof: Proof | None = None
    ) -> None:
        with self._lock:
            job = self._jobs[job_id]
            if not job.over:
                self._jobs[job_id] = _ended(job, state, message, pages, proof)
        if state == "done":
            self._have_spare()

    def _have_spare(self) -> None:
        with self._lock:
            if not self._closed.is_set() and (self._spare is None or not self._spare.alive):
                self._spare = WorkerProcess()

    def _proof(self, job_id: str) -> Proof | None:
        left = proof_path(self._path(job_id))
        return pickle.loads(left.read_bytes()) if left.exists() else None

    def _path(self, job_id: str) -> Path:
        self._folder.mkdir(0o700, exist_ok=True)  # somebody may clean the temporary folder
        return self._folder / f"{job_id}.pdf"

    def _remove(self, job_id: str) -> None:
        for path in (self._path(job_id), proof_path(self._path(job_id))):
            path.unlink(missing_ok=True)


def _steps_at(name: str, steps: tuple[str, ...]) -> tuple[tuple[str, str], ...]:
    """The steps when that one has begun."""
    now = steps.index(name)
    return tuple((step, "done" if i < now else "running" if i == now else "waiting") for i, step in enumerate(steps))


def _ended(
    job: PrintJob, state: str, message: str = "", pages: int | None = None, proof: Proof | None = None
) -> PrintJob:
    """The job when it is over; the step it was at ends in the same way."""
    steps = tuple(
        (name, "done" if state == "done" or was == "done" else state if was == "running" else "waiting")
        for name, was in job.steps
    )
    return replace(job, state=state, steps=steps, message=message, pages=pages, proof=proof)
