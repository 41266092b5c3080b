"""Work that takes a while: done in a thread of its own, with how far it is, and a way to stop it."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Iterator
from concurrent.futures import Future, ThreadPoolExecutor, wait
from contextlib import contextmanager
from threading import Event, Lock, Semaphore
from typing import Any, Protocol, TypeVar

from engine.errors import EngineError

T = TypeVar("T", covariant=True)

MOST_KEPT = 20


class Stopped(EngineError):
    """Somebody stopped the work."""

    code = "stopped"


class Busy(EngineError):
    """Too many ask for the same at once."""

    code = "busy"


class Turns:
    """Lets so many at once do what takes much memory; others wait, and are rejected where too many wait already."""

    def __init__(self, at_once: int, most_waiting: int) -> None:
        self._at_once = Semaphore(at_once)
        self._places = Semaphore(at_once + most_waiting)

    @contextmanager
    def turn(self) -> Iterator[None]:
        """Raises Busy."""
        if not self._places.acquire(blocking=False):
            raise Busy("Too many pictures are asked for at once; try again in a moment.")
        try:
            with self._at_once:
                yield
        finally:
            self._places.release()


class Counted(Protocol[T]):
    """Things whose number is known, to be gone through."""

    def __len__(self) -> int: ...

    def __iter__(self) -> Iterator[T]: ...


class Work:
    """One such work: what it comes to stands in `future`; `done` of `total` things are through, `at` says at which."""

    def __init__(self) -> None:
        self.future: Future[Any]
        self.done = self.total = 0
        self.at = ""
        self._stop = Event()

    def along(self, things: Counted[T]) -> Iterator[T]:
        """Those things one after the other, counted. Raises Stopped where the work is to end."""
        self.done, self.total = 0, len(things)
        for number, thing in enumerate(things):
            self.done = number
            if self._stop.is_set():
                raise Stopped("That was stopped; nothing was imported.")
            yield thing
        self.done = self.total

    @property
    def stopping(self) -> bool:
        """Whether somebody wants it to end."""
        return self._stop.is_set()

    def stop(self) -> None:
        """Ends the work at its next thing, if it is not over; waits until it has ended."""
        self._stop.set()
        if not self.future.cancel():
            wait([self.future])

    def over(self, patience_s: float = 0.0) -> bool:
        """Whether it is over, or gets over within so many seconds."""
        return bool(wait([self.future], patience_s).done)


class Works:
    """The works of one server by their keys. Safe for threads; what came of the last MOST_KEPT is kept."""

    def __init__(self) -> None:
        self._pool = ThreadPoolExecutor(1, "work")
        self._lock = Lock()
        self._works: OrderedDict[str, Work] = OrderedDict()

    def begin(self, key: str, do: Callable[[Work], object]) -> Work:
        """Begins a work, which may wait for another; where there is one of that key, that one stays."""
        with self._lock:
            if key in self._works:
                return self._works[key]
            work = Work()
            work.future = self._pool.submit(do, work)
            self._works[key] = work
            over = [old for old, kept in self._works.items() if kept.future.done()]
            for old in over[: max(0, len(self._works) - MOST_KEPT)]:
                del self._works[old]
            return work

    def find(self, key: str) -> Work | None:
        """The work of that key."""
        with self._lock:
            return self._works.get(key)

    def forget(self, *keys: str) -> None:
        """Lets go of what came of those works."""
        with self._lock:
            for key in keys:
                self._works.pop(key, None)

    def close(self) -> None:
        """Stops every work."""
        with self._lock:
            works = list(self._works.values())
        for work in works:
            work.stop()
        self._pool.shutdown()
