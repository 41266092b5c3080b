"""The form of a picture and what lies under the rope: proportions, and grounds with or without a shadow."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from engine.errors import ChoiceError


@dataclass(frozen=True)
class Shape:
    """The proportion of a picture: its key, words for it, usual width in px, height over width."""

    key: str
    words: str
    width: int
    ratio: float

    def height(self, width: int) -> int:
        """The height in px of a picture so wide."""
        return max(1, int(width * self.ratio + 0.5))


@dataclass(frozen=True)
class Ground:
    """What a picture lies on: its colour (None: clear), whether a shadow falls on it, and colours to draw with on it.

    `ink` is that of lines and words, `body` that of a drawn figure or ruler.
    """

    key: str
    words: str
    colour: str | None
    shadowed: bool = True
    ink: str = "#4a443b"
    body: str = "#e4dccf"


SHAPES: Mapping[str, Shape] = MappingProxyType(
    {
        shape.key: shape
        for shape in (
            Shape("4:3", "4:3", 1600, 3 / 4),
            Shape("square", "Square", 1400, 1.0),
            Shape("wide", "Wide, 16:9", 1600, 9 / 16),
            Shape("tall", "Tall, 3:4", 1200, 4 / 3),
        )
    }
)
GROUNDS: Mapping[str, Ground] = MappingProxyType(
    {
        ground.key: ground
        for ground in (
            Ground("paper", "Warm paper", "#f3f0eb"),
            Ground("white", "White", "#ffffff", body="#ece8e1"),
            Ground("linen", "Linen", "#d9cfbf", body="#ece4d6"),
            Ground("slate", "Slate", "#41474d", ink="#eeeae2", body="#5b6268"),
            Ground("shadow", "Clear, with its shadow", None),
            Ground("clear", "Cut out, nothing else", None, shadowed=False),
        )
    }
)


@dataclass(frozen=True)
class Setting:
    """A picture that is to be taken: its size in px and its ground."""

    width: int
    height: int
    ground: Ground


def setting(shape: str = "4:3", ground: str = "paper", width: int | None = None) -> Setting:
    """The setting of those keys, as wide as is usual or as is said. Raises ChoiceError."""
    chosen, lies_on = shape_named(shape), ground_named(ground)
    wide = width or chosen.width
    return Setting(wide, chosen.height(wide), lies_on)


def shape_named(key: str) -> Shape:
    """Raises ChoiceError for a shape that there is not."""
    if key not in SHAPES:
        raise ChoiceError("Shape", key, SHAPES, "shape")
    return SHAPES[key]


def ground_named(key: str) -> Ground:
    """Raises ChoiceError for a ground that there is not."""
    if key not in GROUNDS:
        raise ChoiceError("Ground", key, GROUNDS, "ground")
    return GROUNDS[key]
