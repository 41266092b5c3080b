"""How long a print may take, and how much memory: one that passes a bound is ended with a sentence that says which."""

from __future__ import annotations

from contextlib import suppress
from pathlib import Path
from threading import Event, Thread
from time import monotonic
from types import TracebackType
from typing import Protocol

# A net below the check of orders, after which a print takes less than 60 s of processor time and 800 MB. This time is
# that of a clock on the wall: a slow computer with two prints at once and other work must stay inside, too.
MOST_S, MOST_MB = 300, 1000
LOOKS_S = 0.5
TOO_LONG = "The print took longer than {} minutes and was ended; print fewer beads, or a plain list, at a time."
TOO_LARGE = "The print took more than {} MB of memory and was ended; print fewer beads, or a plain list, at a time."


class Process(Protocol):
    """A process that can be ended."""

    @property
    def pid(self) -> int: ...

    def kill(self) -> None: ...


class Bounds:
    """Watches a process from its order to its end; `passed` says which bound it passed, if it did."""

    def __init__(self, child: Process) -> None:
        self.passed = ""
        self._child = child
        self._over = Event()
        self._thread = Thread(target=self._watch, daemon=True)

    def __enter__(self) -> Bounds:
        self._thread.start()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._over.set()
        self._thread.join()

    def _watch(self) -> None:
        due = monotonic() + MOST_S
        while not self._over.wait(LOOKS_S):
            if monotonic() > due:
                self.passed = TOO_LONG.format(MOST_S // 60)
            elif memory_mb(self._child.pid) > MOST_MB:
                self.passed = TOO_LARGE.format(f"{MOST_MB:,}")
            if self.passed:
                self._child.kill()
                return


def memory_mb(pid: int) -> float:
    """What a process holds in memory; nought where the system does not say."""
    with suppress(OSError, ValueError, IndexError):
        for line in Path(f"/proc/{pid}/status").read_text().splitlines():
            if line.startswith("VmRSS:"):
                return int(line.split()[1]) / 1000
    return 0.0
