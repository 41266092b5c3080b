"""The stringing card as one value: what a buyer's phone shows while beads are strung, and while they are crocheted.

It says the same threads, lists and groups as the booklet of the same choices. Reversed and joined, its lists are the
worked rope, from which the phone draws the chart, so that the rope is not said twice.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from hashlib import sha256
from itertools import accumulate, islice

from engine.booklet.choices import Choices, Imprint
from engine.booklet.columns import TEN
from engine.booklet.lists import threads_in_words
from engine.booklet.measures import Measures
from engine.booklet.terms import TERMS, Terms
from engine.counting.answers import Answer, answer
from engine.counting.groups import Grouped, group_runs
from engine.counting.stringing import Repeated, Run, StringingList
from engine.counting.workshop import Workshop
from engine.dates import day_of
from engine.drawing.svg import path_data
from engine.drawing.symbols import assigned
from engine.pattern.palette import Palette, ink_on
from engine.pattern.pattern import Pattern
from engine.units import count, counted

TURNING = "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"  # marks that turn the numbers behind them
KEY = 16  # hexadecimal digits; that two cards of one phone share them will not happen

Facts = tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class CardBead:
    """A bead of the rope: `symbol` is the path of its symbol on a square from −1 to 1, `beads` how many there are."""

    code: str
    name: str
    colour: str
    ink: str
    symbol: str
    beads: int


@dataclass(frozen=True)
class CardTen:
    """Up to ten runs, and the beads strung after them; of a group, the beads of the group alone."""

    runs: tuple[Run, ...]
    so_far: int

    @property
    def text(self) -> str:
        """A line a run, and one for the sum: "3 A", "2 B", "= 5"."""
        return "\n".join((*(f"{run.beads} {run.code}" for run in self.runs), f"= {count(self.so_far)}"))


@dataclass(frozen=True)
class CardStretch:
    """Runs that are strung `times` times in a row; `totals` are the beads strung after every ten times of a group."""

    head: str
    times: int
    tens: tuple[CardTen, ...]
    totals: tuple[tuple[int, int], ...] = ()

    @property
    def totals_text(self) -> str:
        """A line for every ten times, as in the booklet: "10 times: so far 70"."""
        return "\n".join(f"{counted(times, 'time')}: so far {count(so_far)}" for times, so_far in self.totals)


@dataclass(frozen=True)
class CardList:
    """A list, and the numbers of the threads that it is strung for, counted from one."""

    number: int
    threads: tuple[int, ...]
    facts: Facts
    stretches: tuple[CardStretch, ...]


@dataclass(frozen=True)
class CardPart:
    """A part of a rope of several: where it lies, how many beads its chart has, where its first whole pass begins."""

    name: str
    first: int
    beads: int
    chart: int
    begin: int


@dataclass(frozen=True)
class Card:
    """Everything that a stringing card says. `key` tells it from every other card that a phone may keep a place of.

    `parts` are those of a rope of several, none of a rope of one. `stitch` is in the card's crochet terms.
    """

    key: str
    title: str
    edition: str
    imprint: Imprint
    around: int
    hand: str
    beads: int
    stitch: str
    terms: Terms
    facts: Facts
    palette: tuple[CardBead, ...]
    parts: tuple[CardPart, ...]
    lists: tuple[CardList, ...]

    def spelled(self, text: str) -> str:
        """The card's own words in the spelling of its crochet terms."""
        return self.terms.spelled(text)

    @cached_property
    def grouped(self) -> bool:
        """Whether a list is told as groups."""
        return any(stretch.times > 1 for listed in self.lists for stretch in listed.stretches)


def card(pattern: Pattern, choices: Choices, workshop: Workshop | None = None) -> Card:
    """The card of a pattern that is already in the hand wanted, for the size and threads of those choices.

    Raises SizeError, PlanError or ChoiceError where the size cannot be worked.
    """
    answered = answer(pattern, choices.question, workshop, choices.plan, choices.spare, choices.units)
    size, stringing, terms = answered.size, answered.stringing, TERMS[choices.terms]
    return Card(
        key=_key(pattern, choices, stringing),
        title=_unturned(pattern.title),
        edition=_edition(pattern, choices, terms),
        imprint=choices.imprint,
        around=pattern.around,
        hand=pattern.hand,
        beads=size.beads,
        stitch=terms.stitch(size.stitch),
        terms=terms,
        facts=_facts(answered, choices, terms),
        palette=_beads(pattern.palette, size.worked),
        parts=_parts(answered),
        lists=tuple(
            _list(number, repeated, len(stringing.threads), Measures(choices.units))
            for number, repeated in enumerate(stringing.distinct, 1)
        ),
    )


def _unturned(text: str) -> str:
    """The text without marks that would turn what stands behind it, such as a number of beads."""
    return text.translate(dict.fromkeys(map(ord, TURNING)))


def _key(pattern: Pattern, choices: Choices, stringing: StringingList) -> str:
    """The same for the same edition, and another where one entry of a list differs."""
    threads = [thread.runs for thread in stringing.threads]
    said = repr((pattern.title, pattern.hand, choices.published, choices.revision, choices.coloured, threads))
    return sha256(said.encode()).hexdigest()[:KEY]


def _edition(pattern: Pattern, choices: Choices, terms: Terms) -> str:
    """Which state it is, of which day, for whom: "Edition 2, 23 November 2026. Left-handed, mirrored, UK terms."."""
    numbered = f"Edition {choices.published}" if choices.published else ""
    state = numbered or (f"Revision {choices.revision}" if choices.revision else "")
    dated = ", ".join(filter(None, (state, day_of(choices.date) if choices.date else "")))
    which = ", ".join(filter(None, (choices.handed(pattern.hand), choices.coloured, f"{terms.name} terms")))
    return f"{dated}. {which[0].upper()}{which[1:]}." if dated else f"{which[0].upper()}{which[1:]}."


def _facts(answered: Answer, choices: Choices, terms: Terms) -> Facts:
    size, stringing = answered.size, answered.stringing
    piece = size.closure.piece.format(Measures(choices.units).length(size.finished_mm))
    worked = f"{answered.pattern.around} around in {terms.stitch(size.stitch)}"
    mirrored = ", with the left hand" if answered.pattern.hand == "left" else ""
    return (
        ("Piece", piece[:1].upper() + piece[1:]),
        ("Worked", f"{worked}{mirrored}"),
        ("Beads", count(size.beads)),
        ("Threads", count(len(stringing.threads))),
    )


def _beads(palette: Palette, worked: bytes) -> tuple[CardBead, ...]:
    used = Counter(worked)
    return tuple(
        CardBead(
            code=entry.code,
            name=_unturned(entry.name),
            colour=entry.colour,
            ink=ink_on(entry.colour),
            symbol=path_data(symbol.outline),
            beads=used[index],
        )
        for index, (entry, symbol) in enumerate(zip(palette, assigned(palette), strict=True))
        if used[index]
    )


def _parts(answered: Answer) -> tuple[CardPart, ...]:
    laid = answered.size.laid
    several = laid if len(laid) > 1 else ()
    return tuple(
        CardPart(_unturned(part.part.name), part.first, part.beads, chart=len(part.part.beads), begin=part.begin)
        for part in several
        if part.beads
    )


def _list(number: int, repeated: Repeated, threads: int, measures: Measures) -> CardList:
    thread, numbers = repeated
    of = f" ({', '.join(map(_unturned, thread.parts))})" if thread.parts else ""
    grouped = group_runs(thread.runs) or Grouped(thread.runs, (), 0, ())
    return CardList(
        number=number,
        threads=numbers,
        facts=(
            ("For", f"{threads_in_words(numbers, threads)}{of}"),
            ("Beads", count(thread.beads)),
            ("Entries", count(len(thread.runs))),
            ("Strung length", measures.strung(thread.strung_mm)),
        ),
        stretches=tuple(_stretches(grouped)),
    )


def _stretches(grouped: Grouped) -> Iterator[CardStretch]:
    """What stands before the groups, the group, and what is left over; of a list that does not repeat all in one."""
    if grouped.before:
        yield CardStretch("First" if grouped.times else "String", 1, _tens(grouped.before))
    if grouped.times:
        head = f"This group {counted(grouped.times, 'time')}, {counted(grouped.group_beads, 'bead')} each time"
        yield CardStretch(head, grouped.times, _tens(grouped.group), grouped.totals)
    if grouped.after:
        yield CardStretch("Finish with", 1, _tens(grouped.after, grouped.totals[-1][1]))


def _tens(runs: Sequence[Run], strung: int = 0) -> tuple[CardTen, ...]:
    """The runs ten by ten, of which so many beads were strung before."""
    totals = list(islice(accumulate((run.beads for run in runs), initial=strung), 1, None))
    return tuple(
        CardTen(tuple(runs[at : at + TEN]), totals[min(at + TEN, len(runs)) - 1]) for at in range(0, len(runs), TEN)
    )
