"""Where did my stringing go wrong: a stretch that was strung or read off the rope, held against the pattern."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate, groupby

from engine.counting.alignment import EXTRA, MISSING, SAME, Step, least_changes, steps
from engine.counting.sizes import Size
from engine.counting.stopped import place_after
from engine.counting.stringing import StringingList
from engine.errors import EngineError
from engine.pattern.chart import stretches
from engine.pattern.palette import Palette
from engine.pattern.starts.written_lists import read_list
from engine.units import count, counted

LEAST, MOST = 6, 2_000  # beads of a stretch that are looked for
MOST_SHARE = 0.25  # of beads that may differ: beyond it nothing fits (our judgement)
MOST_WORK = 40_000_000  # beads of the stretch times beads of the rope
STRUNG, WORKED = "strung", "worked"  # orders in which a stretch is read
ORDERS = (STRUNG, WORKED)
UNKNOWN = 255  # a bead that the pattern does not have
MISSES, TOO_MANY, WRONG, SWAPPED = "missing", "too many", "wrong", "swapped"


@dataclass(frozen=True)
class Mistake:
    """One mistake: what kind, at which bead of the worked rope (counted from one), in which run of which thread.

    `expected` and `found` are runs in the order of the stretch as it was typed, such as 3 A; `round` and `place` are
    those of the bead, `thread` and `run` its place in the stringing list, all counted from one.
    """

    kind: str
    bead: int
    round: int
    place: int
    thread: int
    run: int
    expected: tuple[tuple[int, str], ...]
    found: tuple[tuple[int, str], ...]


@dataclass(frozen=True)
class Fit:
    """Where the stretch fits: beads `first` to `last` of the worked rope, both counted from one.

    `turned` says that it reads the other way than was said. `places` are the beads at which it fits as well, of them
    those of every repeat counted once. `mistakes` stand in the order of the stretch.
    """

    first: int
    last: int
    turned: bool
    places: int
    mistakes: tuple[Mistake, ...]


def read_stretch(text: str, palette: Palette) -> bytes:
    """Palette indices of what was typed, in any usual way of writing; a bead that the palette lacks is UNKNOWN.

    Raises NotationError.
    """
    written = read_list(text)
    by_word = {word.casefold(): place for place, entry in enumerate(palette) for word in (entry.name, entry.code)}
    known = [by_word.get((bead.name or bead.code).casefold(), UNKNOWN) for bead in written.palette]
    return bytes(known[bead] for bead in written.beads)


def find_mistakes(size: Size, stringing: StringingList, stretch: bytes, strung: bool = True) -> Fit | None:
    """The fit with the fewest changes, in the order that was said unless the other needs fewer; None where none fits.

    `strung` says that the stretch was read in stringing order. Raises EngineError for a stretch that is too short or
    too long to look for.
    """
    _check(size, stretch)
    rope = size.worked
    fits = [_Looked(rope, stretch[::-1] if backwards else stretch, backwards) for backwards in (strung, not strung)]
    best = min(fits, key=lambda looked: looked.changes)
    if best.changes > MOST_SHARE * len(stretch):
        return None
    taken = steps(rope, best.stretch, best.end, best.changes)
    first, last = _span(taken, best.end)
    return Fit(
        first=first + 1,
        last=last,
        turned=best.backwards != strung,
        places=best.places(size.pattern.repeat),
        mistakes=tuple(_mistakes(size, stringing, best, taken)),
    )


def mistake_in_words(mistake: Mistake, strung: bool = True) -> str:
    """What is wrong and where: "Run 12 of thread 1 has 2 A where 3 A belong: 1 bead is missing."."""
    where = (
        f"Run {count(mistake.run)} of thread {count(mistake.thread)}"
        if strung
        else f"Round {count(mistake.round)}, place {count(mistake.place)}"
    )
    typed, expected = _runs(mistake.found) or "nothing", _runs(mistake.expected) or "nothing"
    has = f"{where}: {typed}, where {expected} {'belongs' if _beads(mistake.expected) <= 1 else 'belong'}"
    off = abs(_beads(mistake.expected) - _beads(mistake.found))
    return {
        MISSES: f"{has}; {counted(off, 'bead')} {'is' if off == 1 else 'are'} missing.",
        TOO_MANY: f"{has}; {counted(off, 'bead')} too many.",
        WRONG: f"{has}; a wrong colour.",
        SWAPPED: f"{has}; two runs are exchanged.",
    }[mistake.kind]


def remedy_in_words(mistake: Mistake) -> str:
    """What to do about it, first where the beads are not worked yet, then where they are."""
    back, unpick = "Not worked yet: take the string back to here", f"unpick to round {count(mistake.round)}"
    return {
        MISSES: f"{back} and put in what is missing. Worked: sew it on with a needle afterwards, or {unpick}.",
        TOO_MANY: "Break it out: a needle through its hole saves the thread; pliers, eyes covered, splinters caught.",
        WRONG: f"{back}. Worked: leave it, or {unpick} and string anew.",
        SWAPPED: f"{back}. Worked: {unpick} and string these runs anew.",
    }[mistake.kind]


def _check(size: Size, stretch: bytes) -> None:
    if not LEAST <= len(stretch) <= MOST:
        raise EngineError(
            f"{counted(len(stretch), 'bead')} cannot be looked for; type {LEAST} to {count(MOST)} of what was strung.",
            "stretch",
        )
    if len(stretch) * size.beads > MOST_WORK:
        most = MOST_WORK // size.beads
        raise EngineError(
            f"In a rope of {count(size.beads)} beads at most {count(most)} are looked for; type fewer.", "stretch"
        )


class _Looked:
    """A stretch in one direction, held against the rope: the fewest changes, and where they end."""

    def __init__(self, rope: bytes, stretch: bytes, backwards: bool) -> None:
        self.stretch, self.backwards = stretch, backwards
        sums = least_changes(rope, stretch)
        self.changes = int(sums.min())
        self.ends = [int(end) for end in (sums == self.changes).nonzero()[0]]
        self.end = self.ends[-1 if backwards else 0]  # the one that is strung, or worked, first

    def places(self, repeat: int) -> int:
        """How many different places it fits as well; ends within the changes of one another are one place."""
        kept: list[int] = []
        for end in sorted({end % repeat for end in self.ends}):
            if not kept or end - kept[-1] > max(1, self.changes):
                kept.append(end)
        return len(kept)


def _span(taken: Sequence[Step], end: int) -> tuple[int, int]:
    laid = [step.long for step in taken if step.kind != EXTRA]
    return (laid[0], laid[-1] + 1) if laid else (end, end)


def _mistakes(size: Size, stringing: StringingList, looked: _Looked, taken: Sequence[Step]) -> Iterator[Mistake]:
    """Steps that are not the same, gathered run by run of the rope; neighbours that only changed places are one."""
    codes, rope = size.pattern.palette.codes, size.worked
    direction = -1 if looked.backwards else 1
    groups = list(_clusters(rope, taken))
    for cluster in groups if not looked.backwards else reversed(groups):
        expected = bytes(rope[step.long] for step in cluster if step.kind != EXTRA)
        typed = bytes(looked.stretch[step.short] for step in cluster if step.kind != MISSING)
        at = next(step.long for step in cluster if step.kind != SAME)
        round_number, place = place_after(at, size.around)
        thread, run = _in_list(stringing, min(at, size.beads - 1))
        yield Mistake(
            kind=_kind(expected, typed),
            bead=at + 1,
            round=round_number,
            place=place,
            thread=thread,
            run=run,
            expected=_coded_runs(expected[::direction], codes),
            found=_coded_runs(typed[::direction], codes),
        )


def _kind(expected: bytes, typed: bytes) -> str:
    if len(expected) != len(typed):
        return MISSES if len(typed) < len(expected) else TOO_MANY
    return SWAPPED if sorted(expected) == sorted(typed) else WRONG


def _clusters(rope: bytes, taken: Sequence[Step]) -> Iterator[list[Step]]:
    """Stretches of steps with a mistake in them, each with the whole runs of the rope that it touches."""
    run_of = list(_runs_of(rope))
    marked = {run_of[min(step.long, len(rope) - 1)] for step in taken if step.kind != SAME}
    for wrong, group in groupby(taken, key=lambda step: run_of[min(step.long, len(rope) - 1)] in marked):
        if wrong:
            yield list(group)


def _runs_of(rope: bytes) -> Iterator[int]:
    """For every bead the number of its run along the rope."""
    for number, stretch in enumerate(stretches(rope)):
        yield from (number,) * len(stretch)


def _coded_runs(beads: bytes, codes: Sequence[str]) -> tuple[tuple[int, str], ...]:
    return tuple((len(list(group)), codes[bead] if bead < len(codes) else "?") for bead, group in groupby(beads))


def _in_list(stringing: StringingList, bead: int) -> tuple[int, int]:
    """Thread and run, counted from one, in which a worked bead is strung."""
    number, thread = next(
        (number, thread) for number, thread in enumerate(stringing.threads, 1) if thread.first <= bead < thread.last
    )
    strung = thread.last - 1 - bead
    totals = accumulate(run.beads for run in thread.runs)
    return number, next(run for run, total in enumerate(totals, 1) if strung < total)


def _runs(runs: Iterable[tuple[int, str]]) -> str:
    return " ".join(f"{beads} {code}" for beads, code in runs)


def _beads(runs: Iterable[tuple[int, str]]) -> int:
    return sum(beads for beads, _ in runs)
