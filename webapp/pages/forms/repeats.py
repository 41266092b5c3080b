"""The search for small repeats: beads around, length, colours, and what a repeat must have."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from string import ascii_uppercase

from engine.counting.options import read_question
from engine.counting.sizes import size
from engine.counting.workshop import Workshop
from engine.errors import EngineError
from engine.numbers import typed_milligrams, whole_number
from engine.pattern.palette import Palette
from engine.pattern.pattern import Pattern
from engine.pattern.starts.small_repeats import MOST_COLOURS, Wanted
from engine.units import count
from webapp.pages.forms.editor import NEW_COLOURS
from webapp.pages.forms.sent import Objections, Sent
from webapp.pages.forms.starts import palette_of

LEAST_AROUND, MOST_AROUND = 3, 12
ADD, REMOVE = "add", "remove"


@dataclass(frozen=True)
class TypedRepeats:
    """The form as typed; `counts` and `have` (grams) stand in the order of the colours."""

    around: str
    length: str
    kind: str
    colours: tuple[str, ...]
    counts: tuple[str, ...]
    have: tuple[str, ...]
    rope: str
    longest_run: str
    both_ways: bool
    shorter: bool


@dataclass(frozen=True)
class RepeatsForm:
    """What was typed, what is wrong by field, and what is searched when nothing is."""

    typed: TypedRepeats
    errors: Mapping[str, str]
    around: int = 0
    palette: Palette | None = None
    wanted: Wanted | None = None


def read_repeats(pairs: Iterable[tuple[str, object]], own: Workshop) -> RepeatsForm:
    """The form as it stands in an address; what is left out is as usual."""
    sent, wrong = Sent(pairs), Objections()
    colours = _colours(sent)
    typed = TypedRepeats(
        around=sent.one("around", "6"),
        length=sent.one("length", "7"),
        kind=sent.one("kind", "11/0 round"),
        colours=colours,
        counts=_each(sent.all("count"), colours),
        have=_each(sent.all("have"), colours),
        rope=sent.one("rope", "18 cm"),
        longest_run=sent.one("longest_run"),
        both_ways=sent.one("both_ways") == "yes",
        shorter=sent.one("shorter") == "yes",
    )
    around = wrong.read("around", lambda: _around(typed.around), 0)
    length = wrong.read("length", lambda: whole_number(typed.length, "how long the repeat is, such as 7"), 1)
    nothing: tuple[int | None, ...] = ()
    counts = wrong.read("counts", lambda: tuple(map(_number, typed.counts)), nothing)
    run = wrong.read("longest_run", lambda: _number(typed.longest_run) or 0, 0)
    most = wrong.read("have", lambda: _most(typed, length, around, own), nothing)
    try:
        palette = palette_of(colours, typed.kind)
        wanted = Wanted(
            length=length,
            colours=len(colours),
            counts=counts,
            longest_run=run,
            whole=not typed.shorter,
            both_ways=typed.both_ways,
            most=most,
        )
    except EngineError as error:
        wrong.add((error.field or "").rpartition(".")[2], error.message)
    if wrong.by_field:
        return RepeatsForm(typed, wrong.by_field)
    return RepeatsForm(typed=typed, errors={}, around=around, palette=palette, wanted=wanted)


def _colours(sent: Sent) -> tuple[str, ...]:
    colours = sent.all("colour")[:MOST_COLOURS]
    colours = colours if len(colours) >= 2 else NEW_COLOURS[:2]
    if sent.one("do") == ADD and len(colours) < MOST_COLOURS:
        return (*colours, NEW_COLOURS[len(colours)])
    return colours[:-1] if sent.one("do") == REMOVE and len(colours) > 2 else colours


def _each(texts: tuple[str, ...], colours: tuple[str, ...]) -> tuple[str, ...]:
    return (*texts, *("",) * len(colours))[: len(colours)]


def _around(text: str) -> int:
    around = whole_number(text, "how many beads go around, such as 6")
    if not LEAST_AROUND <= around <= MOST_AROUND:
        raise EngineError(
            f"Small repeats are searched for {LEAST_AROUND} to {MOST_AROUND} around, not {count(around)}."
        )
    return around


def _number(text: str) -> int | None:
    return whole_number(text, "how many beads, such as 3") if text else None


def _most(typed: TypedRepeats, length: int, around: int, own: Workshop) -> tuple[int | None, ...]:
    """The beads of each colour in a repeat for which its grams last over an open rope."""
    if not any(typed.have) or not around:
        return ()
    plain = Pattern("Repeat", around, palette_of(typed.colours[:1], typed.kind), bytes(1))
    rope = size(plain, read_question({"length": typed.rope}), own)
    return tuple(
        int(typed_milligrams(grams, f"of bead {code}") / 1000 * rope.main_kind.fewest * length / rope.beads)
        if grams
        else None
        for code, grams in zip(ascii_uppercase, typed.have, strict=False)
    )
