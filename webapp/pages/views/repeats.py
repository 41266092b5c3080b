"""The page of small repeats: those that were found, as small ropes, a page at a time."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from string import ascii_uppercase
from typing import Annotated

from markupsafe import Markup

from engine.drawing.small_rings import small_ring
from engine.drawing.small_ropes import small_rope
from engine.drawing.svg import to_svg
from engine.pattern.lean import lean_in_words
from engine.pattern.notation import write
from engine.pattern.repeats import repeat
from engine.pattern.starts.small_repeats import LONGEST, Found, search
from engine.units import counted
from webapp.pages.addresses import address
from webapp.pages.forms.repeats import RepeatsForm
from webapp.pages.views.frame import Frame

ON_A_PAGE, ROUNDS_SHOWN = 24, 16


@dataclass(frozen=True)
class SmallRepeat:
    """A repeat among those found."""

    text: Annotated[str, "Its beads, such as 3A 2B."]
    rope: Annotated[Markup, "A small drawing of its rope."]
    ring: Annotated[Markup, "A small drawing of its ring."]
    link: Annotated[str, "The starting point with this repeat."]


@dataclass(frozen=True)
class RepeatsPage:
    """Small repeats at `/patterns/begin/repeats`."""

    frame: Frame
    form: RepeatsForm
    colours: Annotated[tuple[tuple[str, str, str, str], ...], "Code, colour, beads wanted and grams in hand."]
    more_colours: Annotated[bool, "Whether a colour more can come."]
    kinds: Annotated[tuple[tuple[str, str], ...], "The bead kinds to choose from: value and words."]
    lengths: Annotated[tuple[tuple[str, str], ...], "Lengths to choose from, and how the lines of each lean."]
    words: Annotated[str, "How many there are."]
    repeats: tuple[SmallRepeat, ...]
    number: Annotated[int, "Which page this is, counted from one."]
    pages: int
    before: Annotated[str, "Address of the page before; empty for the first."]
    after: Annotated[str, "Address of the next; empty for the last."]


def repeats_page(frame: Frame, form: RepeatsForm, kinds: Iterable[str], number: int) -> RepeatsPage:
    """The search with what it found."""
    found = search(form.wanted) if form.wanted else Found((), True)
    pages = max(1, -(-len(found.repeats) // ON_A_PAGE))
    shown = min(number, pages)
    typed = form.typed
    return RepeatsPage(
        frame=frame,
        form=form,
        colours=tuple(zip(ascii_uppercase, typed.colours, typed.counts, typed.have, strict=False)),
        more_colours=len(typed.colours) < 4,
        kinds=tuple((kind, kind) for kind in kinds),
        lengths=_lengths(form.around or 6),
        words=_words(form, found),
        repeats=tuple(_small(form, beads) for beads in found.repeats[(shown - 1) * ON_A_PAGE : shown * ON_A_PAGE]),
        number=shown,
        pages=pages,
        before=_at(form, shown - 1) if shown > 1 else "",
        after=_at(form, shown + 1) if shown < pages else "",
    )


def _lengths(around: int) -> tuple[tuple[str, str], ...]:
    return tuple(
        (str(length), f"{counted(length, 'bead')}: {lean_in_words(around, length)}") for length in range(2, LONGEST + 1)
    )


def _words(form: RepeatsForm, found: Found) -> str:
    if form.wanted is None:
        return ""
    many = counted(len(found.repeats), "repeat") if found.repeats else "No repeat"
    more = "" if found.all else "; there are more, so ask for less"
    return f"{many} of {counted(form.wanted.length, 'bead')}: {lean_in_words(form.around, form.wanted.length)}{more}."


def _small(form: RepeatsForm, beads: bytes) -> SmallRepeat:
    assert form.palette is not None
    text = write(beads, form.palette.codes)
    shown = form.around * ROUNDS_SHOWN
    drawing = small_rope(form.around, "right", form.palette, (beads * (shown // repeat(beads) + 1))[:shown])
    typed = form.typed
    link = address(
        "start", start="spiral", around=typed.around, kind=typed.kind, colour=typed.colours, repeat=text, title=text
    )
    ring = small_ring(form.around, "right", form.palette, beads)
    return SmallRepeat(text, Markup(to_svg(drawing)), Markup(to_svg(ring)), link)


def _at(form: RepeatsForm, number: int) -> str:
    typed = form.typed
    return address(
        "repeats",
        around=typed.around,
        length=typed.length,
        kind=typed.kind,
        colour=typed.colours,
        count=typed.counts,
        have=typed.have,
        rope=typed.rope,
        longest_run=typed.longest_run,
        both_ways="yes" if typed.both_ways else "",
        shorter="yes" if typed.shorter else "",
        number=number if number > 1 else "",
    )
