"""A motif with the symmetry of a plane group: which group, on which repeat, and the free beads as they are drawn."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from string import ascii_uppercase

from engine.errors import EngineError
from engine.numbers import whole_number
from engine.pattern.pattern import Pattern, read_around
from engine.pattern.starts.symmetry import GROUPS, Symmetry, symmetries
from webapp.pages.forms.editor import NEW_COLOURS
from webapp.pages.forms.sent import Objections, Sent
from webapp.pages.forms.starts import palette_of

AROUND, GROUP, COLOURS = "8", "cmm", 3
MOST_COLOURS = 8
TITLE = "Symmetric, "


@dataclass(frozen=True)
class TypedSymmetric:
    """The form as typed; `drawn` is a letter for every free bead of the cell."""

    title: str
    around: str
    group: str
    repeat: str
    kind: str
    colours: tuple[str, ...]
    drawn: str


@dataclass(frozen=True)
class SymmetricForm:
    """What was typed, what is wrong by field, the group on its repeats, the one chosen, and the pattern."""

    typed: TypedSymmetric
    errors: Mapping[str, str]
    around: int = 0
    choices: tuple[Symmetry, ...] = ()
    chosen: Symmetry | None = None
    pattern: Pattern | None = None


def read_symmetric(pairs: Iterable[tuple[str, object]], designer: str = "") -> SymmetricForm:
    """The form as it stands in an address or was sent. A repeat that the group does not have becomes one that it has;
    letters too few are filled with the first bead, letters too many left out."""
    sent, wrong = Sent(pairs), Objections()
    group = sent.one("group") if sent.one("group") in GROUPS else GROUP
    around = wrong.read("around", lambda: read_around(sent.one("around", AROUND)), 0)
    choices = symmetries(around, group) if around else ()
    chosen = _chosen(choices, sent.one("repeat"), wrong) if choices else None
    colours = sent.all("colour")[:MOST_COLOURS] or NEW_COLOURS[:COLOURS]
    drawn = _letters(sent.one("drawn"), len(chosen.free) if chosen else 0, len(colours), wrong)
    typed = TypedSymmetric(
        title=f"{TITLE}{group}" if (sent.one("title") or TITLE).startswith(TITLE) else sent.one("title"),
        around=sent.one("around", AROUND),
        group=group,
        repeat=str(chosen.repeat) if chosen else sent.one("repeat"),
        kind=sent.one("kind", "11/0 round"),
        colours=colours,
        drawn=drawn,
    )
    if around and not choices:
        wrong.add("group", f"{around} around has no repeat with the group {group}; choose another group.")
    pattern = None
    if chosen and not wrong.by_field:
        try:
            beads = chosen.beads(bytes(map(ascii_uppercase.index, drawn)))
            pattern = Pattern(typed.title, around, palette_of(colours, typed.kind), beads, designer=designer)
        except EngineError as error:
            wrong.add((error.field or "").rpartition(".")[2], error.message)
    return SymmetricForm(
        typed=typed, errors=wrong.by_field, around=around, choices=choices, chosen=chosen, pattern=pattern
    )


def _chosen(choices: tuple[Symmetry, ...], text: str, wrong: Objections) -> Symmetry:
    """The repeat that was asked for, or the one nearest to it; first a large one, which has most to draw."""
    wanted = wrong.read("repeat", lambda: whole_number(text, "how long the repeat is, such as 40"), 0) if text else 80
    return min(choices, key=lambda one: abs(one.repeat - wanted))


def _letters(text: str, many: int, colours: int, wrong: Objections) -> str:
    letters = "".join(text.upper().split())
    known = ascii_uppercase[:colours]
    stray = next((letter for letter in letters if letter not in known), "")
    if stray:
        wrong.add("drawn", f"“{stray}” is not a bead of the palette; expected {', '.join(known)}.")
        return text
    return (letters if text else _begun(many)).ljust(many, "A")[:many]


def _begun(many: int) -> str:
    """Something to look at before anything is drawn: a few beads of the others on the first."""
    return "".join("B" if place % 5 == 1 else "C" if place % 7 == 3 else "A" for place in range(many))
