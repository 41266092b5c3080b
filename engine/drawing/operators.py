"""Outlines as PDF path operators, for painters that write into a page themselves."""

from __future__ import annotations

from engine.drawing.shapes import Outline

_OPERATOR = {"M": "m", "L": "l", "C": "c", "Z": "h"}


def operators(outline: Outline, scale: float = 1.0) -> str:
    """The path in PDF operators, its numbers times `scale`; painting it (`f*`, `S`, `B*`) is the caller's.

    The same outline and scale always give the same text. Fill by the even-odd rule.
    """
    return " ".join(
        " ".join((*(_number(float(value) * scale) for value in step[1:]), _OPERATOR[str(step[0])])) for step in outline
    )


def _number(value: float) -> str:
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
