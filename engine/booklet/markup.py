"""Light markup: paragraphs between empty lines, "- " and "1. " before the entries of lists, *stars* round what matters.

Anything else is text and stays as it is written; nothing in it is ever taken for code.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

TEXT, LIST, STEPS = "text", "list", "steps"

_ENTRY = re.compile(r"\s*(?:(?P<dash>[-–•])|(?P<number>\d{1,3}[.)]))\s+(?P<rest>\S.*)")
_STRONG = re.compile(r"(?<![\w*])\*(?=\S)([^*\n]+?)(?<=\S)\*(?![\w*])")


class Span(NamedTuple):
    """Some text, and whether it is set in bold."""

    text: str
    strong: bool


Line = tuple[Span, ...]


class Block(NamedTuple):
    """A paragraph (`sort` "text", one line), or the entries of a list ("list") or of steps ("steps")."""

    sort: str
    lines: tuple[Line, ...]


def blocks(text: str) -> tuple[Block, ...]:
    """The text as blocks; lines of a paragraph that follow one another are one line.

    >>> [block.sort for block in blocks("Work it *tight*.\\n\\n- small\\n- large")]
    ['text', 'list']
    """
    parts: list[tuple[str, list[str]]] = []
    for line in text.splitlines():
        _take(line.strip(), parts)
    return tuple(Block(sort, tuple(spans(line) for line in lines)) for sort, lines in parts if lines)


def lines_taken(text: Sequence[Block], letters: int) -> float:
    """How many lines the blocks take at most where a line holds so many letters; gaps between entries are half a line.

    >>> lines_taken(blocks("Work it tight.\\n\\n- small\\n- large"), 40)
    4.5
    """
    entries = [entry for block in text for entry in block.lines]
    return sum(-(-sum(len(span.text) for span in entry) // letters) + 0.5 for entry in entries)


def _take(line: str, parts: list[tuple[str, list[str]]]) -> None:
    """Puts a line where it belongs: into the block that is open, or into a new one."""
    open_sort = parts[-1][0] if parts else ""
    if not line:
        parts.append(("", []))
    elif entry := _ENTRY.fullmatch(line):
        sort = LIST if entry["dash"] else STEPS
        if open_sort != sort:
            parts.append((sort, []))
        parts[-1][1].append(entry["rest"])
    elif open_sort in (TEXT, LIST, STEPS):
        parts[-1][1][-1] += f" {line}"
    else:
        parts.append((TEXT, [line]))


def spans(line: str) -> Line:
    """A line in pieces, those between stars in bold.

    >>> spans("Pull it *tight* now")
    (Span(text='Pull it ', strong=False), Span(text='tight', strong=True), Span(text=' now', strong=False))
    """
    pieces = _STRONG.split(line)
    return tuple(Span(piece, place % 2 == 1) for place, piece in enumerate(pieces) if piece)
