"""The pages for a picture that becomes a chart: handing it in, and how it lies on the rope."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import asdict, dataclass
from string import ascii_uppercase
from typing import Annotated

from engine.pattern.photographs.few_colours import MOST_FOUND
from engine.pattern.starts.all import winds_in_words
from engine.units import count, counted
from webapp.pages.addresses import address
from webapp.pages.forms.photograph import MIXED, QUARTERS, SOURCES, PhotographForm
from webapp.pages.views.frame import Frame
from webapp.pages.views.signs import Sign, signs

WIDE = 720  # pixels
MARKED_PX = 720, 352  # width and height in which the picture that is marked is shown
LIES_LONG = 1.6  # times as wide as high; longer pictures stand one over the other


@dataclass(frozen=True)
class HandInPage:
    """A picture to be handed in, at `/patterns/begin/photograph`."""

    frame: Frame
    errors: Annotated[dict[str, str], "What is wrong with the file, by field."]


@dataclass(frozen=True)
class PhotographPart:
    """What the form comes to."""

    picture: Annotated[str, "Address of the part of the picture that is taken."]
    chart: Annotated[str, "Address of the chart's picture, lying."]
    rope: Annotated[str, "Address of the rope's picture."]
    long: Annotated[bool, "Whether both are so long that they stand one over the other."]
    words: Annotated[str, "Beads, rows, how it lies on the rope."]
    signs: Annotated[tuple[tuple[Sign, int], ...], "The beads with counts."]


@dataclass(frozen=True)
class PhotographPage:
    """A picture and its chart at `/patterns/begin/photograph/{token}`."""

    frame: Frame
    form: PhotographForm
    own: Annotated[str, "Address of this page."]
    whole: Annotated[str, "Address of the turned picture."]
    whole_px: Annotated[tuple[int, int], "Width and height in which it is shown, so that nothing moves as it comes."]
    quarters: Annotated[tuple[tuple[str, str], ...], "Turns: value and words."]
    sources: Annotated[tuple[tuple[str, str], ...], "Where colours come from: value and words."]
    mixings: Annotated[tuple[tuple[str, str], ...], "How colours are mixed: value and words."]
    kinds: Annotated[tuple[tuple[str, str], ...], "The bead kinds to choose from: value and words."]
    colours: Annotated[tuple[tuple[str, str], ...], "Codes and colours, where they are chosen."]
    full: Annotated[bool, "Whether no colour more can come."]
    part: Annotated[PhotographPart | None, "What it comes to, where nothing is wrong."]


def hand_in_page(frame: Frame, sentence: str = "") -> HandInPage:
    """The page that asks for the picture."""
    return HandInPage(frame, {"picture": sentence} if sentence else {})


def photograph_page(
    frame: Frame, token: str, form: PhotographForm, kinds: Iterable[str], size_px: tuple[int, int]
) -> PhotographPage:
    """The picture, so many pixels wide and high once turned, with what was typed."""
    typed = form.typed
    return PhotographPage(
        frame=frame,
        form=form,
        own=address("photograph_start", token=token),
        whole=address("photograph_shown", token=token, turn=typed.turn, tilt=typed.tilt),
        whole_px=_fitted(size_px),
        quarters=tuple(QUARTERS.items()),
        sources=tuple(SOURCES.items()),
        mixings=tuple(MIXED.items()),
        kinds=tuple((kind, kind) for kind in kinds),
        colours=tuple(zip(ascii_uppercase, typed.colours, strict=False)),
        full=len(typed.colours) >= MOST_FOUND,
        part=_part(token, form),
    )


def _fitted(size_px: tuple[int, int]) -> tuple[int, int]:
    scale = min(bound / side for bound, side in zip(MARKED_PX, size_px, strict=True))
    return max(1, round(scale * size_px[0])), max(1, round(scale * size_px[1]))


def _part(token: str, form: PhotographForm) -> PhotographPart | None:
    pattern, laid = form.pattern, form.laid
    if pattern is None or laid is None:
        return None
    typed = {name: value for name, value in asdict(form.typed).items() if name not in ("colours", "calm", "title")}
    asked = typed | {"colour": form.typed.colours, "calm": "yes" if form.typed.calm else ""}
    cut = {name: typed[name] for name in ("turn", "tilt", "left", "top", "right", "bottom")}
    beads = pattern.chart
    return PhotographPart(
        picture=address("photograph_shown", token=token, **cut),
        chart=address("photograph_chart", token=token, **asked),
        rope=address("photograph_rope", token=token, width=WIDE, **asked),
        long=laid.length > LIES_LONG * laid.girth,
        words=f"{counted(len(beads), 'bead')} in {count(laid.rows)} rows, {pattern.around} around. "
        f"{winds_in_words(pattern.around, beads)}",
        signs=tuple(zip(signs(pattern.palette), map(beads.count, range(len(pattern.palette))), strict=True)),
    )
