"""The stringing list on the page: one list per different thread, in columns, with running totals."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from itertools import accumulate
from typing import Annotated
from zlib import crc32

from engine.counting.groups import Grouped, group_runs
from engine.counting.stringing import Repeated, Run
from engine.counting.workshop import Workshop
from engine.pattern.pattern import Pattern
from engine.units import count, counted, numbers_in_words
from webapp.pages.addresses import address
from webapp.pages.forms.size import SizeForm, WorkedSize, work_size
from webapp.pages.views.frame import HANDED, Frame, Head, head, in_terms
from webapp.pages.views.signs import Sign, signs
from webapp.records import Piece, StoredPattern
from webapp.records.in_work import AWAY, FINISHED, OPEN

TEN = 10
COLUMN = 20
STATE_WORDS = {OPEN: "in work", FINISHED: "finished", AWAY: "put away"}
NOT_ASKED = ("part", "id", "name", "said")  # of an address: they belong to the page, not to the list
MOST_RUNS = 3000  # on one page: of more, a browser is slow to show


@dataclass(frozen=True)
class RunLine:
    """One run of the list."""

    number: Annotated[int, "Its number in the list, from one."]
    code: Annotated[str, "The code of its bead."]
    beads: Annotated[int, "How many beads."]
    upto: Annotated[int, "Beads strung when this run is done."]


@dataclass(frozen=True)
class Ten:
    """Ten runs and the total after them."""

    runs: Annotated[tuple[RunLine, ...], "The runs."]
    total: Annotated[int, "Beads strung after them, counted from the list's beginning."]


@dataclass(frozen=True)
class Column:
    """A column of the list."""

    first: Annotated[int, "Number of its first run."]
    last: Annotated[int, "Number of its last run."]
    tens: Annotated[tuple[Ten, ...], "Its runs, ten by ten."]
    beads: Annotated[int, "Beads in this column alone."]
    total: Annotated[int, "Beads strung after it, counted from the list's beginning."]


@dataclass(frozen=True)
class TenTimes:
    """Ten groups and the total after them."""

    numbers: Annotated[tuple[int, ...], "The groups, counted from one."]
    total: Annotated[int, "Beads strung after them, counted from the list's beginning."]


@dataclass(frozen=True)
class GroupPart:
    """The part of a list that says the same group again and again."""

    runs: Annotated[tuple[Run, ...], "The runs of one group, in stringing order."]
    text: Annotated[str, "The same in words: “1 D, 2 C”."]
    beads: Annotated[int, "Beads of one group."]
    times: Annotated[int, "How often it is strung."]
    tens: Annotated[tuple[TenTimes, ...], "A box for each time, ten by ten."]


@dataclass(frozen=True)
class ThreadList:
    """A list, and the threads it is strung for."""

    key: Annotated[str, "A name for the kept place, which changes when the list does."]
    title: Annotated[str, "Which threads: “Thread 3”, “Threads 1 to 8”."]
    parts: Annotated[str, "Which parts of the rope they belong to; empty where there is one."]
    say: Annotated[str, "How often it is strung, when more than once."]
    runs: Annotated[int, "How many runs it has."]
    beads: Annotated[int, "How many beads."]
    strung_mm: Annotated[float, "How long they are when strung."]
    columns: Annotated[tuple[Column, ...], "The runs in stringing order; those before the groups where there are some."]
    group: Annotated[GroupPart | None, "What is strung again and again, where the list repeats."]
    after: Annotated[tuple[Column, ...], "The runs behind the groups."]
    earlier: Annotated[int, "How many runs of the whole list stand on the pages before; nought where all are here."] = 0
    of: Annotated[int, "How many runs the whole list has, where it is a part; nought where all are here."] = 0

    @property
    def listed(self) -> int:
        """How many things there are to tick."""
        if self.group is None:
            return self.runs
        return sum(column.last - column.first + 1 for column in (*self.columns, *self.after)) + self.group.times


@dataclass(frozen=True)
class PieceLine:
    """A piece in a list of pieces."""

    name: Annotated[str, "For whom it is, or what for."]
    begun: Annotated[datetime, "When it was begun."]
    place: Annotated[str, "How far it is strung."]
    state: Annotated[str, "Whether it is in work, finished or put away."]
    link: Annotated[str, "Its address."]


@dataclass(frozen=True)
class StringingPage:
    """The list at `/patterns/{id}/stringing`."""

    frame: Frame
    head: Head
    form: Annotated[SizeForm, "The size fields as typed, and what is wrong."]
    kinds: Annotated[tuple[str, ...], "The bead kinds to choose from."]
    hand: Annotated[str, "The hand it is worked with: right or left."]
    sentence: Annotated[str, "What is strung, in one sentence; empty when something is wrong."]
    source: Annotated[str, "Where the lengths come from."]
    measured: Annotated[bool, "Whether a measured sample stands behind them."]
    mirrored: Annotated[str, "What the other hand does to the picture; empty for the pattern's own hand."]
    joins: Annotated[int, "How often a thread is added."]
    signs: Annotated[tuple[Sign, ...], "The beads, to be drawn beside their codes."]
    lists: Annotated[tuple[ThreadList, ...], "One list per different thread, the first worked first."]
    part: Annotated[int, "Which page of very long lists this is, from one."]
    parts: Annotated[int, "How many such pages there are."]
    earlier: Annotated[str, "Address of the page before; empty on the first."]
    later: Annotated[str, "Address of the page after; empty on the last."]
    asked: Annotated[tuple[tuple[str, str], ...], "The fields of the size as they were sent."]
    pieces: Annotated[tuple[PieceLine, ...], "Pieces of this pattern that are in work, the newest first."]
    over: Annotated[tuple[PieceLine, ...], "Pieces that are finished or put away."]
    name: Annotated[str, "The name of a new piece as typed."]
    wrong_name: Annotated[str, "What is wrong with it; may be empty."]


def stringing_page(
    frame: Frame,
    stored: StoredPattern,
    form: SizeForm,
    workshop: Workshop,
    part: int = 1,
    asked: Iterable[tuple[str, str]] = (),
    pieces: Iterable[Piece] = (),
    name: str = "",
    wrong_name: str = "",
) -> StringingPage:
    """The stringing page for what the form asks; of very long lists the part that is asked for.

    `pieces` are those of the pattern; a new one has been asked for by that `name`.
    """
    done = work_size(stored.pattern, form, workshop, frame.units)
    distinct = done.answer.stringing.distinct if done.answer else ()
    lists = [piece for repeated in distinct for piece in thread_lists(stored.id, repeated)]
    pages = _in_pages(lists)
    part = min(max(part, 1), len(pages))
    query = {field: value for field, value in asked if field not in NOT_ASKED}
    lines = tuple((piece.state, piece_line(piece)) for piece in pieces)
    return StringingPage(
        frame=frame,
        head=head(stored),
        form=done.form,
        kinds=tuple(workshop.kinds),
        hand=done.pattern.hand,
        sentence=done.answer.sentence if done.answer else "",
        source=in_terms(done.answer.materials.source, frame.terms) if done.answer else "",
        measured=bool(done.answer and done.answer.size.rope.measured),
        mirrored=_mirrored(stored.pattern, done),
        joins=done.answer.stringing.joins if done.answer else 0,
        signs=signs(stored.pattern.palette),
        lists=pages[part - 1],
        part=part,
        parts=len(pages),
        earlier=address("stringing", id=stored.id, **query, part=part - 1) if part > 1 else "",
        later=address("stringing", id=stored.id, **query, part=part + 1) if part < len(pages) else "",
        asked=tuple(query.items()),
        pieces=tuple(line for state, line in lines if state == OPEN),
        over=tuple(line for state, line in lines if state != OPEN),
        name=name,
        wrong_name=wrong_name,
    )


def piece_line(piece: Piece) -> PieceLine:
    """A piece in a list of pieces."""
    entries = counted(piece.strung, "entry", "entries")
    return PieceLine(
        name=piece.name,
        begun=piece.begun,
        place=f"thread {count(piece.thread)}, {entries} strung",
        state=STATE_WORDS[piece.state],
        link=f"{address('piece', id=piece.of, piece=piece.id)}#thread-{piece.thread}",
    )


def _in_pages(lists: Sequence[ThreadList]) -> list[tuple[ThreadList, ...]]:
    """As many lists on a page as a browser shows without trouble; at least one page, and one list on each."""
    pages: list[tuple[ThreadList, ...]] = [()]
    room = MOST_RUNS
    for thread in lists:
        if pages[-1] and thread.listed > room:
            pages.append(())
            room = MOST_RUNS
        pages[-1] += (thread,)
        room -= thread.listed
    return pages


def _mirrored(pattern: Pattern, done: WorkedSize) -> str:
    if done.pattern.hand == pattern.hand:
        return ""
    if done.form.keep_picture:
        return (
            f"Rearranged so that {HANDED[done.pattern.hand]} work shows the same picture; "
            "this list is not the usual one."
        )
    return f"The same list, worked {HANDED[done.pattern.hand]}, gives the mirror image: lettering comes out mirrored."


def thread_lists(pattern_id: int, repeated: Repeated) -> Iterator[ThreadList]:
    """The list of a thread; one that is very long and does not repeat in parts, each with a place of its own."""
    whole = _thread_list(pattern_id, repeated)
    if whole.listed <= MOST_RUNS:
        yield whole
        return
    runs, beads_before = repeated.thread.runs, 0
    for first in range(0, len(runs), MOST_RUNS):
        part = runs[first : first + MOST_RUNS]
        beads = sum(run.beads for run in part)
        yield replace(
            whole,
            key=f"{whole.key} {first}",
            title=f"{whole.title}, runs {count(first + 1)} to {count(first + len(part))}",
            runs=len(part),
            beads=beads,
            strung_mm=whole.strung_mm * beads / whole.beads,
            columns=tuple(_columns(part, first, beads_before)),
            group=None,
            after=(),
            earlier=first,
            of=len(runs),
        )
        beads_before += beads


def _thread_list(pattern_id: int, repeated: Repeated) -> ThreadList:
    thread, numbers = repeated
    times, grouped = len(numbers), group_runs(thread.runs)
    as_text = " ".join(f"{run.beads}{run.code}" for run in thread.runs)
    return ThreadList(
        key=f"{'groups' if grouped else 'place'} {pattern_id} {crc32(as_text.encode()):08x}",
        title=f"Thread{'s' if times > 1 else ''} {numbers_in_words(numbers)}",
        parts=", ".join(thread.parts),
        say=f"String this list {count(times)} times" if times > 1 else "",
        runs=len(thread.runs),
        beads=thread.beads,
        strung_mm=thread.strung_mm,
        columns=tuple(_columns(grouped.before if grouped else thread.runs)),
        group=_group_part(grouped) if grouped else None,
        after=tuple(_after(grouped)) if grouped else (),
    )


def _group_part(grouped: Grouped) -> GroupPart:
    begins = range(1, grouped.times + 1, TEN)
    tens = zip(begins, grouped.totals, strict=True)
    return GroupPart(
        runs=grouped.group,
        text=", ".join(f"{run.beads} {run.code}" for run in grouped.group),
        beads=grouped.group_beads,
        times=grouped.times,
        tens=tuple(TenTimes(tuple(range(first, last + 1)), total) for first, (last, total) in tens),
    )


def _after(grouped: Grouped) -> Iterator[Column]:
    runs_before = len(grouped.before) + grouped.times * len(grouped.group)
    return _columns(grouped.after, runs_before, grouped.totals[-1][1])


def _columns(runs: Sequence[Run], runs_before: int = 0, beads_before: int = 0) -> Iterator[Column]:
    """The runs in columns; so many runs and beads of the list stand before them."""
    totals = list(accumulate((run.beads for run in runs), initial=beads_before))[1:]
    lines = [
        RunLine(number=number, code=run.code, beads=run.beads, upto=upto)
        for number, (run, upto) in enumerate(zip(runs, totals, strict=True), runs_before + 1)
    ]
    for at in range(0, len(lines), COLUMN):
        column = lines[at : at + COLUMN]
        yield Column(
            first=column[0].number,
            last=column[-1].number,
            tens=tuple(_ten(column[ten : ten + TEN]) for ten in range(0, len(column), TEN)),
            beads=sum(line.beads for line in column),
            total=column[-1].upto,
        )


def _ten(lines: Sequence[RunLine]) -> Ten:
    return Ten(tuple(lines), lines[-1].upto)
