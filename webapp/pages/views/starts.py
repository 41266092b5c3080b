"""The ways to begin a pattern, and a starting point with its live picture."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Annotated

from markupsafe import Markup

from engine.drawing.charts import chart
from engine.drawing.svg import to_svg
from engine.pattern.notation import write
from engine.pattern.starts.all import STARTS, stands_straight, winds_in_words
from engine.pattern.starts.start import MOST_COLOURS, Asked
from engine.units import counted
from webapp.pages.addresses import address
from webapp.pages.forms.starts import StartForm, read_start
from webapp.pages.views.frame import Frame

MOST_DRAWN, BEAD_MM = 1200, 4.0
MOST_TEXT = 400
NARROW, WIDE = 400, 720  # pixels


@dataclass(frozen=True)
class StartCard:
    """A start among the others."""

    key: str
    label: str
    words: str
    picture: Annotated[str, "Address of its rope as it usually begins."]
    straight: Annotated[bool, "Whether it stands straight with the usual number around."]


@dataclass(frozen=True)
class BeginPage:
    """The ways to begin at `/patterns/begin`."""

    frame: Frame
    starts: tuple[StartCard, ...]


@dataclass(frozen=True)
class StartPart:
    """What the form comes to."""

    rope: Annotated[str, "Address of the rope's picture."]
    ring: Annotated[str, "Address of the ring's picture."]
    words: Annotated[str, "Beads, how a repeat lies on the rope, where a ring closes."]
    note: Annotated[str, "What is worth knowing beside; empty for most."]
    chart: Annotated[Markup, "The chart lying, as SVG of our own drawing."]
    text: Annotated[str, "The beads in working order, where that is short."]


@dataclass(frozen=True)
class StartPage:
    """A starting point at `/patterns/begin/{start}`."""

    frame: Frame
    form: StartForm
    asks: Annotated[tuple[tuple[Asked, str], ...], "What is asked, and what stands in its field."]
    colours: Annotated[tuple[tuple[str, str], ...], "Codes and colours."]
    full: Annotated[bool, "Whether no colour more can come."]
    kinds: Annotated[tuple[tuple[str, str], ...], "The bead kinds to choose from: value and words."]
    part: Annotated[StartPart | None, "What it comes to, where nothing is wrong."]


def begin_page(frame: Frame) -> BeginPage:
    """The ways to begin."""
    return BeginPage(frame, tuple(_card(key) for key in STARTS))


def start_page(frame: Frame, form: StartForm, kinds: Iterable[str]) -> StartPage:
    """A start with what was typed."""
    codes = (chr(ord("A") + place) for place in range(MOST_COLOURS))
    return StartPage(
        frame=frame,
        form=form,
        asks=tuple((ask, form.typed.answers[ask.key]) for ask in form.start.asks),
        colours=tuple(zip(codes, form.typed.colours, strict=False)),
        full=len(form.typed.colours) >= MOST_COLOURS,
        kinds=tuple((kind, kind) for kind in kinds),
        part=start_part(form),
    )


def start_part(form: StartForm) -> StartPart | None:
    """What the form comes to; None where something is wrong."""
    pattern = form.pattern
    if pattern is None:
        return None
    text = write(pattern.chart, pattern.palette.codes)
    return StartPart(
        rope=_picture(form, "rope", WIDE),
        ring=_picture(form, "ring", WIDE),
        words=f"{counted(len(pattern.chart), 'bead')}. {winds_in_words(pattern.around, pattern.chart)}",
        note=form.start.note(pattern.around, form.typed.answers),
        chart=Markup(to_svg(chart(pattern, 0, min(len(pattern.chart), MOST_DRAWN), BEAD_MM, upright=False))),
        text=text if len(text) <= MOST_TEXT else "",
    )


def _card(key: str) -> StartCard:
    form = read_start(STARTS[key], ())
    assert form.pattern is not None
    return StartCard(
        key=key,
        label=form.start.label,
        words=form.start.words,
        picture=_picture(form, "rope", NARROW),
        straight=stands_straight(form.pattern.around, form.pattern.chart),
    )


def _picture(form: StartForm, view: str, width: int) -> str:
    typed = form.typed
    return address(
        "start_picture",
        start=form.start.key,
        view=view,
        width=width,
        around=typed.around,
        colour=typed.colours,
        **typed.answers,
    )
