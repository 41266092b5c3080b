"""A booklet's figures as inline SVG: the same outlines, those painted alike one after the other in one element."""

from __future__ import annotations

import re
from itertools import groupby

from webapp.printing.figures import Figure

PAINTS = {"f": (True, False), "f*": (True, False), "S": (False, True), "B": (True, True)}
LETTERS = {"m": "M", "l": "L", "c": "C", "h": "Z"}
START = {"rg": "#000", "RG": "#000", "w": "1", "J": "0", "d": "", "at": (1.0, 1.0, 0.0, 0.0)}
_CALL = re.compile(r"((?:-?[\d.]+ |\[[^\]]*\] )*)([A-Za-z*]+)")


def inline(figure: Figure) -> str:
    """The figure as an SVG element, as large as it stands in the booklet."""
    body = "".join(
        _element(style, "".join(data for _, data in alike))
        for style, alike in groupby(_painted(figure), key=lambda one: one[0])
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{figure.width}mm" height="{figure.height}mm" '
        f'viewBox="0 0 {figure.width} {figure.height}">{body}</svg>'
    )


def _painted(figure: Figure):
    """Every outline in mm with how it is painted; clips are left out."""
    state, kept, data = dict(START), [], []
    for text, name in _CALL.findall(" ".join(figure.lines(1.0))):
        if name == "d":
            state["d"] = text[text.index("[") + 1 : text.index("]")]
            continue
        numbers = [float(part) for part in text.split()]
        if name == "q":
            kept.append(dict(state))
        elif name == "Q":
            state = kept.pop()
        elif name == "cm":
            sx, sy, x, y = state["at"]
            a, _, _, d, e, f = numbers
            state["at"] = (sx * a, sy * d, x + sx * e, y + sy * f)
        elif name in ("rg", "RG"):
            state[name] = "#" + "".join(f"{round(255 * part):02x}" for part in numbers)
        elif name in ("w", "J"):
            state[name] = text.strip()
        elif name == "re":
            x, y, w, h = numbers
            data += [_step("M", (x, y), state), _step("L", (x + w, y, x + w, y + h, x, y + h), state), "Z"]
        elif name in LETTERS:
            data.append(_step(LETTERS[name], numbers, state))
        elif name in PAINTS:
            yield (name, *(state[key] for key in ("rg", "RG", "w", "J", "d")), state["at"][0]), "".join(data)
            data = []
        elif name == "n":
            data = []


def _step(letter: str, numbers, state) -> str:
    sx, sy, x, y = state["at"]
    return letter + " ".join(f"{sy * value + y if i % 2 else sx * value + x:.2f}" for i, value in enumerate(numbers))


def _element(style, data: str) -> str:
    name, fill, line, width, cap, dash, scale = style
    filled, lined = PAINTS[name]
    rule = ' fill-rule="evenodd"' if name == "f*" else ""
    stroke = (
        f' stroke="{line}" stroke-width="{float(width) * abs(scale):.3f}"{" stroke-linecap=" + chr(34) + "round" + chr(34) if cap == "1" else ""}'
        f"{f' stroke-dasharray={chr(34)}{dash}{chr(34)}' if dash else ''}"
        if lined
        else ""
    )
    return f'<path d="{data}" fill="{fill if filled else "none"}"{rule}{stroke}/>'
