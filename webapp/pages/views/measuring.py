"""A sample measured where its number is missed: the fields that are still open, and the way back."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Annotated

from markupsafe import Markup

from engine.counting.sizes import Size
from engine.drawing.measuring import measuring as measuring_drawing
from engine.drawing.svg import to_svg
from webapp.pages.views.frame import Frame, in_terms, stitched


@dataclass(frozen=True)
class Measuring:
    """What is known of a sample that would make lengths exact, and how it is measured."""

    source: Annotated[str, "Where the lengths come from as long as nothing is measured."]
    kinds: Annotated[tuple[tuple[str, str], ...], "Bead kinds that a sample may be of: value and words."]
    around: Annotated[int, "Beads around."]
    stitch: Annotated[str, "slip or single."]
    words: Annotated[str, "Kind, around and stitch in one line."]
    back: Annotated[str, "Address of the page that asks."]
    drawing: Annotated[Markup, "How it is measured, as SVG of our own drawing."]


def measuring(size: Size, frame: Frame) -> Measuring | None:
    """None where a measured sample stands behind the lengths."""
    if size.rope.measured:
        return None
    drawn = size.pattern.drawn
    kinds = tuple(dict.fromkeys(kind.name for index, kind in enumerate(size.kinds) if index in drawn))
    known = (*(kinds if len(kinds) == 1 else ()), f"{size.around} around", stitched(size.stitch, frame.terms))
    return Measuring(
        source=in_terms(size.rope.source, frame.terms),
        kinds=tuple((kind, kind) for kind in kinds),
        around=size.around,
        stitch=size.stitch,
        words=", ".join(known),
        back=frame.own,
        drawing=how_to_measure(),
    )


@cache
def how_to_measure() -> Markup:
    """How a sample is measured, as SVG: the same on every page, and as long to write as all else of an answer."""
    return Markup(to_svg(measuring_drawing()))
