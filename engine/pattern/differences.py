"""What differs between two states of a pattern: its words and measures, its palette, and its beads one by one."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from difflib import SequenceMatcher
from itertools import zip_longest
from typing import NamedTuple

from engine.pattern.palette import Entry, Palette
from engine.pattern.part import FILL, Part
from engine.pattern.pattern import Pattern

FIELDS = ("title", "around", "hand", "stitch", "designer", "tags", "notes")
PARTS = ("start", "chart", "end")
ENTRY_FIELDS = ("code", "name", "colour", "finish", "kind", "symbol", "maker_code")

_SAME = (ENTRY_FIELDS, ("name", "colour", "finish", "kind"), ("code",))


class FieldChange(NamedTuple):
    """A word or a measure of the pattern: its name, what it was and what it is."""

    name: str
    was: object
    now: object


class EntryChange(NamedTuple):
    """A bead of the palette as it was and as it is; one of the two is None where it was added or taken away."""

    was: Entry | None
    now: Entry | None

    @property
    def fields(self) -> tuple[str, ...]:
        """What differs, where the bead was there before and after."""
        if self.was is None or self.now is None:
            return ()
        return tuple(name for name in ENTRY_FIELDS if getattr(self.was, name) != getattr(self.now, name))


class PartPair(NamedTuple):
    """A part as it was and as it is: what it is called in words, and its beads; none where it was not there."""

    name: str
    was: bytes
    now: bytes


class BeadsChange(NamedTuple):
    """Consecutive beads of a part that differ: where they stood, where they stand, and their codes then and now.

    `part` is start, chart or end, or a part by its number and name; places count from nought within it. `was` and `now`
    are as many where beads were exchanged, then all of one code each; `was` is empty where beads were put in, `now`
    where they were taken out.
    """

    part: str
    was_first: int
    first: int
    was: tuple[str, ...]
    now: tuple[str, ...]


@dataclass(frozen=True)
class Differences:
    """Everything that differs; false where the two patterns are equal. `reordered`: the palette's order differs."""

    fields: tuple[FieldChange, ...]
    entries: tuple[EntryChange, ...]
    reordered: bool
    beads: tuple[BeadsChange, ...]

    def __bool__(self) -> bool:
        return bool(self.fields or self.entries or self.reordered or self.beads)

    def of_part(self, part: str) -> tuple[BeadsChange, ...]:
        """The beads that differ in that part."""
        return tuple(change for change in self.beads if change.part == part)


def differences(old: Pattern, new: Pattern) -> Differences:
    """What is different in `new`.

    A bead of the palette is the same bead when it looks the same, whatever its code or place; what is left is paired by
    code. Parts are paired by their names, in their order. Their beads are compared by what is strung, place by place;
    where a part has grown or shrunk, the beads put in or taken out are found between what is the same before and behind
    them.
    """
    fields = tuple(
        FieldChange(name, getattr(old, name), getattr(new, name))
        for name in FIELDS
        if getattr(old, name) != getattr(new, name)
    )
    pairs = _pairs(old.palette, new.palette)
    places = [pairs[index] for index in range(len(old.palette)) if index in pairs]
    beads = tuple(
        change for part in paired_parts(old, new) for change in _beads_of(part, old, new, _as_new(part.was, pairs))
    )
    entries = _entries(old.palette, new.palette, pairs)
    return Differences((*fields, *_part_fields(old, new)), entries, places != sorted(places), beads)


def paired_parts(old: Pattern, new: Pattern) -> tuple[PartPair, ...]:
    """The parts as they were and as they are; start, chart and end where both are written without parts."""
    if not (old.in_parts or new.in_parts):
        return tuple(PartPair(name, getattr(old, name), getattr(new, name)) for name in PARTS)
    return tuple(
        PartPair(_called(was, now), was[1].beads if was else b"", now[1].beads if now else b"")
        for was, now in _pairs_of_parts(old, new)
    )


NumberedPart = tuple[int, Part]


def _pairs_of_parts(old: Pattern, new: Pattern) -> Iterator[tuple[NumberedPart | None, NumberedPart | None]]:
    """Parts with their numbers, paired by name; where names differ, by place among those that differ."""
    was, now = (list(enumerate(pattern.parts, 1)) for pattern in (old, new))
    before, behind = ([part.name for _, part in parts] for parts in (was, now))
    for _, i, to_i, j, to_j in SequenceMatcher(None, before, behind, autojunk=False).get_opcodes():
        yield from zip_longest(was[i:to_i], now[j:to_j])


def _called(was: NumberedPart | None, now: NumberedPart | None) -> str:
    """A part by its number and name as it is, or as it was where it is no more."""
    number, part = now or was or (0, Part("", b""))
    return f"part {number} “{part.name}”{'' if now else ' as it was'}"


def _part_fields(old: Pattern, new: Pattern) -> Iterable[FieldChange]:
    """Names and times of parts that differ; start, chart and end always have the same."""
    if not (old.in_parts or new.in_parts):
        return
    for was, now in _pairs_of_parts(old, new):
        name = _called(was, now)
        for field, before, behind in zip(("name", "times"), _name_and_times(was), _name_and_times(now), strict=True):
            if before != behind and (field == "times" or (was and now)):
                yield FieldChange(f"{name}, {field}", before, behind)


def _name_and_times(part: NumberedPart | None) -> tuple[str, str | int]:
    """Name and times of a part, empty where there is none."""
    return (part[1].name, FILL if part[1].times is None else part[1].times) if part else ("", "")


def _pairs(old: Palette, new: Palette) -> dict[int, int]:
    """Place in the old palette to place in the new one: the very same beads first, then the same look, then code."""
    pairs: dict[int, int] = {}
    for names in _SAME:
        free = {_look(new[index], names): index for index in reversed(range(len(new))) if index not in pairs.values()}
        for index, entry in enumerate(old):
            if index not in pairs and (same := free.pop(_look(entry, names), None)) is not None:
                pairs[index] = same
    return pairs


def _look(entry: Entry, names: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(getattr(entry, name) for name in names)


def _entries(old: Palette, new: Palette, pairs: dict[int, int]) -> tuple[EntryChange, ...]:
    """Beads that differ and beads taken away in the old order, then those added in the new."""
    kept = (EntryChange(entry, new[pairs[index]] if index in pairs else None) for index, entry in enumerate(old))
    added = (EntryChange(None, entry) for index, entry in enumerate(new) if index not in pairs.values())
    return (*(change for change in kept if change.now is None or change.fields), *added)


def _as_new(beads: bytes, pairs: dict[int, int]) -> bytes:
    """The old beads as places in the new palette; those it does not have stand behind its last possible place."""
    return bytes(pairs.get(bead, 64 + bead) for bead in beads)


def _beads_of(part: PartPair, old: Pattern, new: Pattern, were: bytes) -> list[BeadsChange]:
    """`were` are the old beads as places in the new palette.

    Beads put in or taken out stand where what was there before or behind the change of length keeps its place best.
    """
    beads = _PartBeads(
        part=part.name,
        was=part.was,
        now=part.now,
        was_codes=old.palette.codes,
        now_codes=new.palette.codes,
    )
    before, behind = _shared(were, beads.now)
    shift = len(beads.now) - len(were)
    was_middle, now_middle = were[before : len(were) - behind], beads.now[before : len(beads.now) - behind]
    short = min(len(was_middle), len(now_middle))
    kept_before = _equal(was_middle[:short], now_middle[:short])
    kept_behind = _equal(was_middle[len(was_middle) - short :], now_middle[len(now_middle) - short :])
    moved_from = before if kept_behind > kept_before else before + short
    return [
        *beads.exchanged(were, before, moved_from, 0),
        *beads.moved(moved_from, shift),
        *beads.exchanged(were, moved_from + max(0, -shift), len(were) - behind, shift),
    ]


def _equal(one: bytes, other: bytes) -> int:
    """At how many places the two are the same."""
    return sum(map(int.__eq__, one, other))


def _shared(one: bytes, other: bytes) -> tuple[int, int]:
    """How many beads are the same before, and how many behind, the first and the last that differ."""
    short = min(len(one), len(other))
    before = next((k for k in range(short) if one[k] != other[k]), short)
    behind = next((k for k in range(short - before) if one[-1 - k] != other[-1 - k]), short - before)
    return before, behind


class _PartBeads(NamedTuple):
    """Beads of one part then and now, with the codes of both palettes."""

    part: str
    was: bytes
    now: bytes
    was_codes: tuple[str, ...]
    now_codes: tuple[str, ...]

    def exchanged(self, were: bytes, begin: int, end: int, shift: int) -> list[BeadsChange]:
        """Beads `begin` to before `end` of the old part that differ from those `shift` places on in the new."""
        changes = []
        k = begin
        while k < end:
            first, pair = k, (were[k], self.now[k + shift])
            while k < end and (were[k], self.now[k + shift]) == pair:
                k += 1
            if pair[0] != pair[1]:
                changes.append(self._change(first, first + shift, k - first, k - first))
        return changes

    def moved(self, first: int, shift: int) -> list[BeadsChange]:
        """The beads put in or taken out from that place on."""
        return [self._change(first, first, max(0, -shift), max(0, shift))] if shift else []

    def _change(self, was_first: int, first: int, were: int, are: int) -> BeadsChange:
        return BeadsChange(
            part=self.part,
            was_first=was_first,
            first=first,
            was=tuple(self.was_codes[bead] for bead in self.was[was_first : was_first + were]),
            now=tuple(self.now_codes[bead] for bead in self.now[first : first + are]),
        )
