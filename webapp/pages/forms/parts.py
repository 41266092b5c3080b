"""The parts of a pattern as rows of the editor: added, moved, taken away, and read."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from engine.errors import PatternError, shortened
from engine.pattern.notation import write
from engine.pattern.part import CHART, END, FILL, MOST_PARTS, MOST_TIMES, START, Part
from engine.pattern.pattern import Pattern
from webapp.pages.forms.sent import Objections, Sent

PRESSED = ("add_part", "remove_part", "move_part")


@dataclass(frozen=True)
class TypedPart:
    """One part as typed; `times` is a number or “fill”."""

    name: str = ""
    times: str = "1"
    beads: str = ""


def typed_parts(pattern: Pattern) -> tuple[TypedPart, ...]:
    """The rows of a pattern in parts; none of one that is written without."""
    codes = pattern.palette.codes
    return tuple(
        TypedPart(part.name, FILL if part.times is None else str(part.times), write(part.beads, codes))
        for part in pattern.in_parts
    )


def sent_parts(sent: Sent) -> tuple[TypedPart, ...]:
    """The rows as sent."""
    columns = [sent.all(f"part_{field}") for field in ("name", "times", "beads")]
    rows = min(max(map(len, columns)), 2 * MOST_PARTS)
    filled = [(*column, *[""] * rows)[:rows] for column in columns]
    return tuple(TypedPart(*row) for row in zip(*filled, strict=True))


def pressed_parts(sent: Sent, rows: Sequence[TypedPart], short: Sequence[str]) -> tuple[TypedPart, ...]:
    """The rows after a button was pressed; `short` are chart, start and end, of which the first ones are made."""
    kept = list(rows) or _first_parts(*short)
    if sent.has("add_part") and rows:
        kept.append(TypedPart())
    for place in sent.places("move_part", len(kept))[:1]:
        kept.insert(max(0, place - 1), kept.pop(place))
    for place in sent.places("remove_part", len(kept))[:1]:
        del kept[place]
    return tuple(kept)


def _first_parts(chart: str, start: str, end: str) -> list[TypedPart]:
    parts = (TypedPart(START, "1", start), TypedPart(CHART, FILL, chart), TypedPart(END, "1", end))
    return [part for part in parts if part.beads or part.name == CHART]


def read_parts(rows: Sequence[TypedPart], read_beads: Callable[[str], bytes], wrong: Objections) -> tuple[Part, ...]:
    """The parts of those rows; what is wrong with a row is kept under its field."""
    parts: list[Part] = []
    once: int | None = 1
    for place, row in enumerate(rows):
        beads = wrong.read(f"parts.{place}.beads", lambda row=row: read_beads(row.beads), b"") if row.beads else b""  # type: ignore[misc]
        times = wrong.read(f"parts.{place}.times", lambda row=row: read_times(row.times), once)  # type: ignore[misc]
        parts.append(Part(row.name, beads, times))
    return tuple(parts)


def read_times(text: str) -> int | None:
    """How often a part is worked, None where it fills. Raises PatternError."""
    if text.casefold() == FILL:
        return None
    if not (text.isascii() and text.isdigit() and len(text) < 10):
        raise PatternError(f"“{shortened(text)}” is not a number of times; write 1 to {MOST_TIMES:,}, or “{FILL}”.")
    return int(text)
