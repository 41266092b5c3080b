"""A piece in work: the list as it was begun, one thread at a time, and the place in it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Annotated

from engine.counting.answers import Answer
from engine.counting.groups import group_runs
from engine.counting.stringing import Repeated, Run, Thread
from engine.units import count, counted
from webapp.pages.addresses import address
from webapp.pages.views.frame import Frame, Head, head
from webapp.pages.views.signs import Sign, signs
from webapp.pages.views.stringing import MOST_RUNS, STATE_WORDS, ThreadList, thread_lists
from webapp.records import Piece, StoredPattern
from webapp.records.in_work import OPEN

CHANGED = "The pattern has changed since revision {}, of which this piece was begun. This is the list as it was begun."
COUNTED_ANEW = (
    "Your swatches, kinds or settings have changed since, and counted today the list would be another. This is the "
    "list as it was begun."
)


@dataclass(frozen=True)
class ThreadLink:
    """A thread of a piece, to go to."""

    number: Annotated[int, "Its number, the first worked first."]
    words: Annotated[str, "How many beads, and how far it is strung."]
    here: Annotated[bool, "Whether it is the one that is shown."]


@dataclass(frozen=True)
class PiecePage:
    """A piece in work, at `/patterns/{id}/pieces/{piece}`."""

    frame: Frame
    head: Head
    id: Annotated[int, "The number of the piece."]
    name: Annotated[str, "For whom it is, or what for."]
    wrong_name: Annotated[str, "What is wrong with a new name; may be empty."]
    begun: Annotated[datetime, "When it was begun."]
    state: Annotated[str, "open, finished or away."]
    state_words: Annotated[str, "The same in words."]
    sentence: Annotated[str, "What is made, in one sentence."]
    changed: Annotated[str, "Why the list would be another today; empty where it would not."]
    threads: Annotated[tuple[ThreadLink, ...], "The threads to go to."]
    thread: Annotated[int, "The thread that is strung, from one."]
    strung: Annotated[int, "How many entries of its list are strung."]
    entries: Annotated[int, "How many entries its list has; a group told as one is one each time."]
    sequence: Annotated[int, "Grows with every change of the place."]
    next: Annotated[str, "What is strung next; empty where all of this thread is."]
    list: Annotated[ThreadList, "Its list, or of a very long one the part that holds the place."]
    signs: Annotated[tuple[Sign, ...], "The beads, to be drawn beside their codes."]
    save: Annotated[str, "Where a script keeps the place."]
    whole: Annotated[str, "The page of all lists of this question."]


def entries_of(thread: Thread) -> tuple[tuple[Run, ...], ...]:
    """What is strung at one tick: runs, and groups where the list repeats."""
    return tuple(_entries(thread))


def _entries(thread: Thread) -> Iterator[tuple[Run, ...]]:
    told = group_runs(thread.runs)
    if told is None:
        yield from ((run,) for run in thread.runs)
        return
    yield from ((run,) for run in told.before)
    yield from (told.group for _ in range(told.times))
    yield from ((run,) for run in told.after)


def piece_page(
    frame: Frame, stored: StoredPattern, piece: Piece, begun: Answer, today: Answer | None, wrong_name: str = ""
) -> PiecePage:
    """The page of a piece: its answer as it was begun, and as the same question is answered today, if it still is."""
    threads = begun.stringing.threads
    number = min(max(piece.thread, 1), len(threads))
    entries = entries_of(threads[number - 1])
    strung = min(max(piece.strung, 0), len(entries))
    lists = tuple(thread_lists(stored.id, Repeated(threads[number - 1], (number,))))
    return PiecePage(
        frame=frame,
        head=head(stored),
        id=piece.id,
        name=piece.name,
        wrong_name=wrong_name,
        begun=piece.begun,
        state=piece.state,
        state_words=STATE_WORDS.get(piece.state, STATE_WORDS[OPEN]),
        sentence=begun.sentence,
        changed=_changed(stored, piece, begun, today),
        threads=tuple(
            ThreadLink(at, f"{count(at)}: {counted(thread.beads, 'bead')}", at == number)
            for at, thread in enumerate(threads, 1)
        ),
        thread=number,
        strung=strung,
        entries=len(entries),
        sequence=piece.sequence,
        next=", ".join(f"{run.beads} {run.code}" for run in entries[strung]) if strung < len(entries) else "",
        list=lists[min(strung // MOST_RUNS, len(lists) - 1)],
        signs=signs(begun.pattern.palette),
        save=address("api_place", id=stored.id, piece=piece.id),
        whole=f"{address('stringing', id=stored.id)}{'?' if piece.asked else ''}{piece.asked}",
    )


def _changed(stored: StoredPattern, piece: Piece, begun: Answer, today: Answer | None) -> str:
    if stored.pattern != piece.counted.pattern:
        return CHANGED.format(piece.counted.revision)
    return COUNTED_ANEW if today is None or today.stringing.threads != begun.stringing.threads else ""
