"""Differences between two states of a pattern in words: a line a bead where there are few, else counted by stretch."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

from engine.pattern.differences import BeadsChange, Differences, EntryChange, FieldChange
from engine.pattern.pattern import Pattern
from engine.units import count, counted

MOST_LINES = 24  # more changes of a part than this are counted by stretch
GAP_ROUNDS = 2  # stretches with fewer whole rounds between them are one

_NAMES = {"maker_code": "maker's code"}
_LONG = ("notes",)


def in_short(changes: Differences) -> str:
    """A few words: "12 beads, palette, title"; empty where nothing differs."""
    parts = [change.name for change in changes.fields]
    if changes.entries or changes.reordered:
        parts.insert(0, "palette")
    if beads := sum(max(len(change.was), len(change.now)) for change in changes.beads):
        parts.insert(0, counted(beads, "bead"))
    return ", ".join(parts)


def field_lines(changes: Differences) -> tuple[str, ...]:
    """Title, around, hand and the other words: what each is and was."""
    return tuple(_field_line(change) for change in changes.fields)


def palette_lines(changes: Differences) -> tuple[str, ...]:
    """Beads of the palette that were added, taken away or are described in other words."""
    moved = ("The palette stands in another order.",) if changes.reordered else ()
    return (*(_entry_line(change) for change in changes.entries), *moved)


def bead_lines(old: Pattern, new: Pattern, changes: Differences) -> tuple[str, ...]:
    """Where beads of the parts differ; rounds and beads count from one within their part.

    Beads that were taken out are named by where they stood, all others by where they stand.
    """
    names, parts = _Names(old, new), dict.fromkeys(change.part for change in changes.beads)
    return tuple(line for part in parts for line in _part_lines(names, part, changes.of_part(part)))


class _Names:
    """Names of the beads of both palettes by code, the code behind each: it is what stands in lists and charts."""

    def __init__(self, old: Pattern, new: Pattern) -> None:
        self.old, self.new = old, new
        self.was, self.now = (
            {entry.code: f"{entry.name} ({entry.code})" for entry in palette} for palette in (old.palette, new.palette)
        )

    def exchange(self, change: BeadsChange) -> str:
        return f"{self.now[change.now[0]]} instead of {self.was[change.was[0]]}"

    def several(self, codes: Iterable[str], names: dict[str, str]) -> str:
        return ", ".join(f"{count(beads)} {names[code]}" for code, beads in Counter(codes).most_common())


def _part_lines(names: _Names, part: str, changes: Sequence[BeadsChange]) -> list[str]:
    before = "" if part == "chart" else f"{part}, "
    if len(changes) <= MOST_LINES:
        return [before + _line(names, change) for change in changes]
    return [before + _stretch_line(names, stretch) for stretch in _stretches(changes, names.new.around)]


def _line(names: _Names, change: BeadsChange) -> str:
    if not change.was:
        where = _where(change.first, len(change.now), names.new.around)
        return f"{where}: put in, {names.several(change.now, names.now)}"
    if not change.now:
        where = _where(change.was_first, len(change.was), names.old.around)
        return f"{where} as it was: taken out, {names.several(change.was, names.was)}"
    return f"{_where(change.first, len(change.now), names.new.around)}: {names.exchange(change)}"


def _where(first: int, beads: int, around: int) -> str:
    """Place of those beads: "round 12, bead 5", "round 12, beads 5 to 9", "round 12, bead 5 to round 14, bead 2"."""
    (begin, bead), (end, last) = divmod(first, around), divmod(first + beads - 1, around)
    start = f"round {count(begin + 1)}, bead"
    if beads == 1:
        return f"{start} {bead + 1}"
    if begin == end:
        return f"{start}s {bead + 1} to {last + 1}"
    return f"{start} {bead + 1} to round {count(end + 1)}, bead {last + 1}"


def _stretches(changes: Iterable[BeadsChange], around: int) -> list[list[BeadsChange]]:
    """Changes near one another together; beads put in or taken out stand alone."""
    stretches: list[list[BeadsChange]] = []
    for change in changes:
        last = stretches[-1][-1] if stretches else None
        if (
            last
            and last.was
            and last.now
            and change.was
            and change.now
            and (change.first // around - (last.first + len(last.now) - 1) // around <= GAP_ROUNDS)
        ):
            stretches[-1].append(change)
        else:
            stretches.append([change])
    return stretches


def _stretch_line(names: _Names, stretch: Sequence[BeadsChange]) -> str:
    if len(stretch) == 1:
        return _line(names, stretch[0])
    around = names.new.around
    begin, end = stretch[0].first // around + 1, (stretch[-1].first + len(stretch[-1].now) - 1) // around + 1
    rounds = f"round {count(begin)}" if begin == end else f"rounds {count(begin)} to {count(end)}"
    exchanges: Counter[str] = Counter()
    for change in stretch:
        exchanges[names.exchange(change)] += len(change.now)
    most = ", ".join(f"{count(beads)} {words}" for words, beads in exchanges.most_common(4))
    rest = ", and others" if len(exchanges) > 4 else ""
    return f"{rounds}: {count(sum(exchanges.values()))} beads differ ({most}{rest})"


def _field_line(change: FieldChange) -> str:
    if change.name in _LONG:
        return f"{change.name}: other words"
    return f"{change.name}: {_quoted(change.now)}, was {_quoted(change.was)}"


def _quoted(value: object) -> str:
    if isinstance(value, tuple):
        return ", ".join(f"“{part}”" for part in value) or "none"
    return f"“{value}”" if isinstance(value, str) and value else str(value) if value else "none"


def _entry_line(change: EntryChange) -> str:
    if change.was is None and change.now is not None:
        return f"bead {change.now.code}: {change.now.name} added"
    if change.now is None and change.was is not None:
        return f"bead {change.was.code}: {change.was.name} taken away"
    assert change.now is not None
    fields = (
        f"{_NAMES.get(name, name)} {_quoted(getattr(change.now, name))}, was {_quoted(getattr(change.was, name))}"
        for name in change.fields
    )
    return f"bead {change.now.code}: {'; '.join(fields)}"
