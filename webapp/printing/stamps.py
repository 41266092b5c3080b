"""Line drawings that draw themselves into a page: their operators are made once and then only copied."""

from __future__ import annotations

from collections.abc import Iterable

from engine.booklet.guides.guide import Part
from engine.drawing.handwork.album import ALBUM, painted
from webapp.printing.figures import Figure


class DrawingFigure(Figure):
    """A line drawing of the album for that hand."""

    def __init__(self, name: str, hand: str) -> None:
        super().__init__(ALBUM[name].width, ALBUM[name].height)
        self.name, self.hand = name, hand

    def lines(self, scale: float) -> Iterable[str]:
        yield f"{scale:.4f} 0 0 {scale:.4f} 0 0 cm"
        yield painted(self.name, self.hand)


def stamps(parts: Iterable[Part], hand: str) -> dict[str, DrawingFigure]:
    """The drawings that the steps of a guide name, by their keys in its pages."""
    names = {name for part in parts for name in (part.strip, *(step.drawing for step in part.steps)) if name}
    return {f"hand-{name}": DrawingFigure(name, hand) for name in sorted(names)}


def paint_album() -> None:
    """Makes the operators of every drawing for the right hand, which are then only copied."""
    for name in ALBUM:
        painted(name)
