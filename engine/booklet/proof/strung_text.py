"""The lists of a printed booklet, read from its text, as one list to be typed in: the whole rope as it is strung."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from engine.booklet.proof.printed_lists import ReadList, lists_in, wrong_sums
from engine.errors import EngineError
from engine.units import numbers_in_words

LONGEST_LINE = 200
IN_A_LINE = 10  # entries


def strung_text(pages: Iterable[tuple[int, str]]) -> str:
    """The runs of every thread, the one worked last first; empty where no list of a booklet stands on those pages.

    `pages` are numbers and texts. Raises EngineError where entries and printed sums disagree, or a list is missing.
    """
    lines = ((number, line.strip()[:LONGEST_LINE]) for number, text in pages for line in text.splitlines())
    lists = lists_in(lines)
    for read in lists:
        if remark := next(wrong_sums(read), None):
            raise EngineError(f"{remark.where}: {remark.what[0].lower()}{remark.what[1:]}")
    threads = _threads(lists)
    return "\n\n".join("\n".join(_lines(threads, number)) for number in sorted(threads, reverse=True))


def _threads(lists: Sequence[ReadList]) -> Mapping[int, ReadList]:
    """The list of every thread. Raises EngineError where one has none."""
    nameless = [read for read in lists if not read.threads]
    if nameless and len(lists) > 1:
        raise EngineError(f"List {nameless[0].number} on page {nameless[0].page} does not say for which thread it is.")
    threads = {number: read for read in lists for number in read.threads or (1,)}
    missing = [number for number in range(1, max(threads, default=0)) if number not in threads]
    if missing:
        many = "thread" if len(missing) == 1 else "threads"
        raise EngineError(f"The list of {many} {numbers_in_words(missing)} is not on these pages.")
    return threads


def _lines(threads: Mapping[int, ReadList], number: int) -> Iterator[str]:
    if len(threads) > 1:
        yield f"Thread {number}"
    entries = [f"{run.beads} {run.code}" for run in threads[number].runs]
    for first in range(0, len(entries), IN_A_LINE):
        yield "  ".join(entries[first : first + IN_A_LINE])
