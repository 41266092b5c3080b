"""A colour for the name that a bead was called by: a first guess, which the maker puts right."""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType

NAMED: Mapping[str, str] = MappingProxyType(
    {
        "white": "#f4f2ec", "ivory": "#f1e6cc", "cream": "#efe3c2", "beige": "#d8c3a0", "black": "#1f1d1b",
        "grey": "#8c8c8a", "gray": "#8c8c8a", "silver": "#b9bcc0", "gold": "#c79a3b", "bronze": "#8a6238",
        "copper": "#b06a42", "brown": "#6b4427", "red": "#b3282d", "crimson": "#97182f", "pink": "#e08fa8",
        "rose": "#c9667d", "coral": "#e2725b", "orange": "#dd7f2c", "amber": "#d9932b", "yellow": "#e6c23a",
        "lime": "#a9c23f", "olive": "#77803a", "green": "#3b7d45", "teal": "#2f7f76", "turquoise": "#3fb3ac",
        "aqua": "#6cc4c8", "blue": "#2f5fa5", "navy": "#1f2f5c", "purple": "#6a3f83", "violet": "#7a56a8",
        "lilac": "#b39ac9", "plum": "#713a5b", "clear": "#e4ebec", "crystal": "#e4ebec",
    }
)  # fmt: skip
SHADES: Mapping[str, float] = MappingProxyType({"dark": -0.4, "deep": -0.3, "light": 0.45, "pale": 0.55})


def guessed(name: str) -> str:
    """The colour "#rrggbb" of a name such as "dark blue"; empty where no word of it is known.

    >>> guessed("blue"), guessed("Stormy")
    ('#2f5fa5', '')
    """
    words = re.findall(r"[a-z]+", name.casefold())
    known = [NAMED[word] for word in words if word in NAMED]
    if not known:
        return ""
    shade = sum(SHADES[word] for word in words if word in SHADES)
    return "#" + "".join(f"{_shaded(int(known[-1][at : at + 2], 16), shade):02x}" for at in (1, 3, 5))


def _shaded(part: int, shade: float) -> int:
    return round(part + (255 - part) * shade) if shade > 0 else round(part * (1 + shade))
