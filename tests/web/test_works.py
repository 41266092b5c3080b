"""Work that takes a while is counted, waits its turn, and can be stopped."""

from concurrent.futures import ThreadPoolExecutor, as_completed
from threading import Barrier, Event, Lock

import pytest

from webapp.exchange.works import MOST_KEPT, Busy, Stopped, Turns, Works


@pytest.fixture
def works():
    works = Works()
    yield works
    works.close()


def test_a_work_is_counted_thing_by_thing_and_what_came_of_it_is_kept(works):
    seen = []

    def do(work):
        for thing in work.along("abc"):
            seen.append((thing, work.done, work.total))
        return "done"

    work = works.begin("letters", do)
    assert work.future.result() == "done" and works.find("letters") is work
    assert seen == [("a", 0, 3), ("b", 1, 3), ("c", 2, 3)] and (work.done, work.over()) == (3, True)


def test_a_work_that_is_begun_twice_is_done_once(works):
    release, begun = Event(), []

    def do(work):
        begun.append(work)
        release.wait()

    assert works.begin("one", do) is works.begin("one", do)
    release.set()
    works.find("one").future.result()
    assert len(begun) == 1


def test_a_work_that_is_stopped_ends_at_its_next_thing(works):
    reached, release = Event(), Event()

    def do(work):
        for _ in work.along("abc"):
            reached.set()
            release.wait()

    work = works.begin("letters", do)
    waiting = works.begin("later", lambda work: None)
    assert reached.wait(10) and not work.over()
    waiting.stop()
    assert waiting.future.cancelled()
    work._stop.set()
    release.set()
    with pytest.raises(Stopped, match="nothing was imported"):
        work.future.result()
    assert work.done == 1


def test_closing_stops_what_is_under_way():
    works, reached = Works(), Event()

    def do(work):
        for _ in work.along(range(10**9)):
            reached.set()

    work = works.begin("for ever", do)
    assert reached.wait(10)
    works.close()
    assert isinstance(work.future.exception(), Stopped)


def test_only_what_came_last_is_kept(works):
    for number in range(MOST_KEPT + 5):
        works.begin(str(number), lambda work: None).future.result()
    works.forget(str(MOST_KEPT + 4))
    assert (
        works.find("0") is None
        and works.find(str(MOST_KEPT + 4)) is None
        and works.find(str(MOST_KEPT + 3)) is not None
    )


def test_two_at_once_have_their_turn_others_wait_and_too_many_are_refused():
    turns, lock, full = Turns(2, 3), Lock(), Event()
    inside, most, begun = [0], [0], Barrier(6)

    def heavy():
        begun.wait(10)
        with turns.turn():
            with lock:
                inside[0] += 1
                most[0] = max(most[0], inside[0])
            full.wait(10)
            with lock:
                inside[0] -= 1

    with ThreadPoolExecutor(6) as pool:
        asked = [pool.submit(heavy) for _ in range(6)]
        refused = next(one for one in as_completed(asked, 10) if one.exception())
        full.set()
    assert isinstance(refused.exception(), Busy)
    assert sum(isinstance(one.exception(), Busy) for one in asked) == 1
    assert most == [2]
