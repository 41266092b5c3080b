"""A part of a rope: a chart by its name, worked a number of times, or as often as the rope leaves room."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from engine.errors import PatternError
from engine.pattern.repeats import repeat
from engine.pattern.words import check_line

MOST_PARTS, MOST_TIMES, LONGEST_NAME = 12, 1000, 40
FILL = "fill"  # said of a part that fills the rope
START, CHART, END = "Start", "Chart", "End"  # the parts of a pattern that is written without parts


@dataclass(frozen=True)
class Part:
    """`beads` are palette indices in working order, worked so many `times`; None for a part that fills."""

    name: str
    beads: bytes
    times: int | None = 1

    @property
    def fills(self) -> bool:
        """Whether the length of the rope decides how often it is worked."""
        return self.times is None

    @property
    def fixed_beads(self) -> int:
        """Beads that every rope has of it; nought of a part that fills."""
        return len(self.beads) * (self.times or 0)

    @property
    def repeat(self) -> int:
        """Length of the shortest stretch that gives its chart when said again and again."""
        return repeat(self.beads)


def only_fill(parts: Sequence[Part]) -> Part | None:
    """The chart of a rope that has only one: the part that fills, before and behind it at most one worked once."""
    place = next((place for place, part in enumerate(parts) if part.fills), -1)
    others = (*parts[: max(place, 0)], *parts[place + 1 :])
    alone = place >= 0 and place < 2 and len(parts) - place < 3 and all(part.times == 1 for part in others)
    return parts[place] if alone else None


def short_form(start: bytes, chart: bytes, end: bytes) -> tuple[Part, ...]:
    """The parts of a pattern that is written without parts: start and end once, the chart fills."""
    parts = (Part(START, start), Part(CHART, chart, None), Part(END, end))
    return tuple(part for part in parts if part.beads)


def quoted(parts: Sequence[Part]) -> str:
    """Names in a row: "“Head” and “Tail”"."""
    names = [f"“{part.name}”" for part in parts]
    return " and ".join(filter(None, (", ".join(names[:-1]), *names[-1:])))


def check_parts(parts: Sequence[Part]) -> None:
    """Raises PatternError, naming the part and its field, for parts that make no rope."""
    check_number(len(parts))
    for place, part in enumerate(parts):
        check_part(place, part)
    for place, (before, part) in enumerate(pairwise(parts), 1):
        if before.fills and part.fills:
            raise PatternError(
                f"Part {place} “{before.name}” and part {place + 1} “{part.name}” both fill the rope with nothing "
                "between them; say of one how often it is worked, or put such a part between them.",
                f"parts.{place}.times",
            )


def check_number(parts: int) -> None:
    """Raises PatternError for more parts than a pattern has, or none."""
    if not 1 <= parts <= MOST_PARTS:
        raise PatternError(f"A pattern has 1 to {MOST_PARTS} parts; this one has {parts or 'none'}.", "parts")


def check_part(place: int, part: Part) -> None:
    """Raises PatternError for a part that cannot be worked; `place` counts from nought."""
    field, name = f"parts.{place}", f"Part {place + 1} “{part.name}”"
    check_line(part.name, f"name of part {place + 1}", LONGEST_NAME, f"{field}.name")
    if not part.beads:
        raise PatternError(f"{name} has no beads; a part has at least one.", f"{field}.beads")
    if part.times is not None and not 1 <= part.times <= MOST_TIMES:
        raise PatternError(
            f"{name} is worked {part.times:,} times; expected 1 to {MOST_TIMES:,}, or “{FILL}”.", f"{field}.times"
        )
