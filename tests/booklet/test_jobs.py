"""Prints in processes of their own: real steps, a cancel that ends them, nothing left behind."""

from __future__ import annotations

import os
import pickle
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from threading import Event

import pytest

from engine.booklet.errata import Errata
from engine.counting.workshop import Workshop
from tests.booklets import Choices, clasp, scattered
from tests.printing_here import PrintsHere
from webapp.paths import ROOT
from webapp.printing import process
from webapp.printing.errors import PrintError
from webapp.printing.jobs import AT_ONCE, Jobs
from webapp.printing.orders import READING, STEPS, ErrataOrder, Order, printed
from webapp.printing.process import DIED, Stopped, WorkerProcess

WALL = scattered(12, 240)
ORDER = Order(WALL, Choices(), Workshop())
SHORT = ErrataOrder(Errata("Errata", "What changed.", (), "No more."))
IMPOSSIBLE = Order(WALL, clasp(26.0), Workshop())


@pytest.fixture
def jobs() -> Iterator[Jobs]:
    made = Jobs()
    yield made
    made.close()


@pytest.fixture(scope="module")
def real_jobs() -> Iterator[Jobs]:
    """Prints in processes of their own, one of which is loaded already when the next print begins."""
    made = Jobs()
    yield made
    made.close()


@pytest.fixture
def held(monkeypatch: pytest.MonkeyPatch) -> Event:
    """Prints without a process of their own that wait until this is set."""
    gate = Event()

    class Held(PrintsHere):
        def print(self, order, path, step):
            assert gate.wait(60)
            return super().print(order, path, step)

    monkeypatch.setattr("webapp.printing.jobs.WorkerProcess", Held)
    return gate


def until(true: Callable[[], bool], seconds: float = 60.0) -> None:
    """Waits until something is so, and fails when it is not in a minute."""
    end = time.monotonic() + seconds
    while not true():
        assert time.monotonic() < end, "it never came"
        time.sleep(0.02)


def gone(pid: int) -> bool:
    """Whether there is no such process any more; one that has ended and waits for its parent counts as gone."""
    state = Path(f"/proc/{pid}/stat")
    if Path("/proc/self/stat").exists():
        return not state.exists() or state.read_text().rsplit(")", 1)[1].split()[0] == "Z"
    try:
        os.kill(pid, 0)
    except ProcessLookupError:
        return True
    return False


def test_a_print_goes_through_its_steps_and_ends_with_the_booklet_and_its_proof(real_jobs: Jobs) -> None:
    job = real_jobs.start(7, replace(ORDER, proofread=True))
    steps = (*STEPS, READING)
    assert job.pattern_id == 7 and tuple(name for name, _ in job.steps) == steps
    seen = set()
    until(lambda: seen.add(real_jobs.find(job.id).steps) or real_jobs.find(job.id).over)
    done = real_jobs.find(job.id)
    here = printed(ORDER)
    assert (done.state, done.pages, done.message) == ("done", here.pages, "")
    assert (done.name, done.revision) == ("Standard, A4", 0)
    assert done.steps == tuple((name, "done") for name in steps)
    assert real_jobs.pdf(job.id) == here.pdf
    assert done.proof is not None and not done.proof.blocks and done.proof.pages == done.pages
    assert real_jobs.order(job.id).pattern == WALL
    for states in seen:
        assert [state for _, state in states].count("running") <= 1
        assert [state for _, state in states] == sorted(
            (state for _, state in states), key=("done", "running", "waiting").index
        )


def test_prints_of_a_pattern_are_listed_the_newest_first(jobs: Jobs, prints_here: None) -> None:
    ids = [jobs.start(7, IMPOSSIBLE).id for _ in range(3)]
    jobs.start(8, IMPOSSIBLE)
    assert [job.id for job in jobs.of(7)] == ids[::-1]
    assert jobs.of(9) == () and jobs.find("nothing") is None


def test_the_next_print_takes_the_process_that_was_made_ready(jobs: Jobs, monkeypatch: pytest.MonkeyPatch) -> None:
    made, printed = [], []

    class Counted(PrintsHere):
        def __init__(self):
            made.append(self)

        def print(self, order, path, step):
            printed.append(self)
            return super().print(order, path, step)

    monkeypatch.setattr("webapp.printing.jobs.WorkerProcess", Counted)
    jobs.make_ready()
    until(lambda: len(made) == 1)
    jobs.make_ready()
    jobs.run(SHORT)
    until(lambda: len(made) == 2)
    assert printed == made[:1]


def test_only_so_many_print_at_once(jobs: Jobs, held: Event) -> None:
    ids = [jobs.start(1, order).id for order in (*(IMPOSSIBLE,) * AT_ONCE, SHORT, SHORT)]
    until(lambda: [jobs.find(id).state for id in ids] == [*("running",) * AT_ONCE, "waiting", "waiting"])
    held.set()
    until(lambda: all(jobs.find(id).over for id in ids))
    assert [jobs.find(id).state for id in ids] == [*("failed",) * AT_ONCE, "done", "done"]


def test_cancel_ends_the_process_and_the_next_print_goes_on(real_jobs: Jobs) -> None:
    job = real_jobs.start(1, Order(scattered(40, 30_000), Choices(), Workshop()))
    until(lambda: real_jobs.find(job.id).steps[0][1] != "waiting")
    pid = real_jobs._workers[job.id].child.pid
    real_jobs.cancel(job.id)
    assert real_jobs.find(job.id).state == "cancelled"
    assert {state for _, state in real_jobs.find(job.id).steps} <= {"done", "cancelled", "waiting"}
    until(lambda: gone(pid))
    with pytest.raises(PrintError, match="no longer kept"):
        real_jobs.pdf(job.id)
    assert real_jobs.run(SHORT).startswith(b"%PDF")
    assert real_jobs.find(job.id).state == "cancelled"


def test_a_print_that_waits_can_be_cancelled_before_it_begins(jobs: Jobs, held: Event) -> None:
    busy = [jobs.start(1, IMPOSSIBLE) for _ in range(AT_ONCE)]
    waiting = jobs.start(1, ORDER)
    jobs.cancel(waiting.id)
    held.set()
    assert jobs.find(waiting.id).steps == tuple((name, "waiting") for name in STEPS)
    until(lambda: all(jobs.find(job.id).over for job in busy))
    assert jobs.find(waiting.id).state == "cancelled"


def test_what_is_over_cannot_be_cancelled(jobs: Jobs, prints_here: None) -> None:
    job = jobs.start(1, IMPOSSIBLE)
    until(lambda: jobs.find(job.id).over)
    jobs.cancel(job.id)
    jobs.cancel("nothing")
    assert jobs.find(job.id).state == "failed"


def test_a_print_that_cannot_be_worked_fails_with_the_engines_sentence(real_jobs: Jobs) -> None:
    job = real_jobs.start(3, IMPOSSIBLE)
    until(lambda: real_jobs.find(job.id).over)
    assert (
        real_jobs.find(job.id).message
        == "That leaves 0.1 cm of rope, less than one round (0.2 cm); ask for a longer piece."
    )
    assert real_jobs.find(job.id).steps[0] == (STEPS[0], "failed")


def test_a_worker_that_dies_is_said_to_have_stopped(real_jobs: Jobs) -> None:
    job = real_jobs.start(1, Order(scattered(40, 30_000), Choices(), Workshop()))
    until(lambda: real_jobs.find(job.id).steps[0][1] != "waiting")
    os.kill(real_jobs._workers[job.id].child.pid, signal.SIGKILL)
    until(lambda: real_jobs.find(job.id).over)
    assert (real_jobs.find(job.id).state, real_jobs.find(job.id).message) == ("failed", DIED)


def test_after_a_print_another_worker_stands_ready(real_jobs: Jobs) -> None:
    real_jobs.make_ready()
    until(lambda: real_jobs._spare is not None)
    spare = real_jobs._spare
    assert real_jobs.run(SHORT).startswith(b"%PDF")
    until(lambda: real_jobs._spare is not spare)
    until(lambda: gone(spare.child.pid))


def test_a_spare_worker_that_has_died_is_not_taken(real_jobs: Jobs) -> None:
    real_jobs.make_ready()
    until(lambda: real_jobs._spare is not None)
    real_jobs._spare.kill()
    assert real_jobs.run(SHORT).startswith(b"%PDF")


def test_closing_ends_a_print_on_its_way_and_removes_what_was_printed() -> None:
    jobs = Jobs()
    kept = jobs.start(1, SHORT)
    until(lambda: jobs.find(kept.id).over)
    assert [path.suffix for path in jobs._folder.iterdir()] == [".pdf"]
    running = jobs.start(1, Order(scattered(40, 30_000), Choices(), Workshop()))
    until(lambda: running.id in jobs._workers)
    pid = jobs._workers[running.id].child.pid
    jobs.close()
    assert gone(pid) and not jobs._folder.exists()


def test_closing_ends_the_worker_that_stands_ready() -> None:
    jobs = Jobs()
    jobs.make_ready()
    until(lambda: jobs._spare is not None)
    pid = jobs._spare.child.pid
    jobs.close()
    assert gone(pid)


def test_a_server_that_is_killed_leaves_no_worker_behind() -> None:
    script = (
        "import sys, time; from webapp.printing.process import WorkerProcess; workers = [WorkerProcess(), WorkerProcess()]\n"
        "print(*(worker.child.pid for worker in workers), flush=True); time.sleep(100)"
    )
    with subprocess.Popen((sys.executable, "-c", script), cwd=ROOT, stdout=subprocess.PIPE, text=True) as server:
        assert server.stdout is not None
        pids = [int(pid) for pid in server.stdout.readline().split()]
        assert len(pids) == 2 and not any(gone(pid) for pid in pids)
        server.send_signal(signal.SIGKILL)
    until(lambda: all(gone(pid) for pid in pids))


def test_a_worker_ends_when_its_server_dies_in_the_middle_of_a_print(tmp_path: Path) -> None:
    worker = WorkerProcess()
    worker.child.send((Order(scattered(40, 30_000), Choices(), Workshop()), tmp_path / "out.pdf"))
    assert [worker.child.output.readline().split()[0] for _ in range(2)] == [b"ready", b"step"]
    worker.child.input.close()
    until(lambda: gone(worker.child.pid))
    worker.kill()
    assert not (tmp_path / "out.pdf").exists()


def test_a_worker_that_says_something_unknown_is_not_believed(monkeypatch, tmp_path: Path) -> None:
    monkeypatch.setattr(process.sys, "executable", "/bin/echo")
    worker = WorkerProcess()
    with pytest.raises(Stopped, match=DIED):
        worker.print(ORDER, tmp_path / "out.pdf", lambda name: None)
    worker.kill()


def test_an_order_can_be_pickled_with_the_kinds_as_they_come() -> None:
    assert pickle.loads(pickle.dumps(ORDER)) == ORDER
    assert dict(ORDER.workshop.kinds) == dict(Workshop().kinds)


def test_setting_pages_is_loaded_only_when_a_booklet_is_printed() -> None:
    script = "import sys; import webapp.printing.jobs; print('weasyprint' in sys.modules)"
    said = subprocess.run(
        (sys.executable, "-c", script), cwd=ROOT, stdout=subprocess.PIPE, text=True, check=True
    ).stdout
    assert said == "False\n"


def test_a_temporary_folder_that_somebody_cleaned_does_no_harm(held: Event) -> None:
    jobs = Jobs()
    shutil.rmtree(jobs._folder)
    held.set()
    assert jobs.run(SHORT).startswith(b"%PDF")
    jobs.close()
