"""The colourways of a pattern side by side, one of them bead by bead, and codes and symbols given out anew."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from hashlib import sha256
from typing import Annotated

from engine.cabinet.bead import Bead
from engine.cabinet.candidates import Candidate, candidates
from engine.cabinet.colourways import Colourway, in_colourway
from engine.cabinet.finding import WantedBeads, find_beads
from engine.cabinet.linking import differing
from engine.drawing.symbols import assigned
from engine.drawing.telling_apart import told_apart
from engine.pattern.colour import PLAIN, look_alikes
from engine.pattern.palette import FINISHES, Palette
from engine.pattern.pattern import Pattern
from engine.units import counted, fixed, weighed
from webapp.pages.addresses import address
from webapp.pages.forms.beads import BeadFinder
from webapp.pages.forms.colourways import STOCK, ColourwayForm, EntryForm, TypedEntry
from webapp.pages.views.frame import Frame, Head, head
from webapp.pages.views.look_alikes import EYES, Alike, alike
from webapp.pages.views.signs import Sign, signs
from webapp.records import KeptColourway, StoredPattern

OWN = 0  # the number under which the pattern's own palette stands among its colourways
OWN_NAME = "As drawn"
PICTURE_WIDTH = 640
LISTED = 40


@dataclass(frozen=True)
class WayCard:
    """A colourway as a card."""

    id: Annotated[int, "Its number; nought for the pattern's own palette."]
    name: Annotated[str, "Its name."]
    picture: Annotated[str, "Address of its rope."]
    beads: Annotated[tuple[Sign, ...], "Its beads as drawn."]
    alike: Annotated[str, "How many of its beads look alike, in words; empty where none do."]


@dataclass(frozen=True)
class ColourwaysPage:
    """The colourways at `/patterns/{id}/colourways`."""

    frame: Frame
    head: Head
    cards: Annotated[tuple[WayCard, ...], "The pattern's own palette, and its colourways."]
    form: Annotated[ColourwayForm, "A new colourway as typed, and what is wrong."]
    begins: Annotated[tuple[tuple[str, str], ...], "What it can begin with."]
    alike: Annotated[Alike, "The look-alikes of the pattern's own palette."]
    sequence: Annotated[int, "Of the pattern as it stands, to be sent with a change."]
    removed: Annotated[int, "The colourway that was just removed; nought where none was."]


@dataclass(frozen=True)
class WayLine:
    """A bead of a colourway."""

    sign: Annotated[Sign, "The bead as drawn."]
    words: Annotated[str, "Kind, finish and maker's code."]
    bead: Annotated[str, "Key of the bead of the cabinet that it points at; empty where it stands alone."]
    known: Annotated[bool, "Whether that bead is in this cabinet."]
    stock: Annotated[str, "What is in stock of it; may be empty."]
    differs: Annotated[str, "In what it differs from that bead; may be empty."]


@dataclass(frozen=True)
class WayPage:
    """A colourway bead by bead at `/patterns/{id}/colourways/{way}`."""

    frame: Frame
    head: Head
    way: Annotated[int, "Its number; nought for the pattern's own palette."]
    name: Annotated[str, "Its name."]
    picture: Annotated[str, "Address of its rope."]
    lines: Annotated[tuple[WayLine, ...], "Its beads."]
    alike: Annotated[Alike, "Its look-alikes."]
    alone: Annotated[int, "How many of its beads stand alone."]
    differing: Annotated[int, "How many differ from the beads that they point at."]
    sequence: Annotated[int, "Of the pattern as it stands, to be sent with a change."]
    wrong: Annotated[str, "What is wrong with a new name; may be empty."]
    published: Annotated[bool, "Whether the pattern is published, so that it does not follow the cabinet."]
    undo: Annotated[str, "The code whose bead was just exchanged; empty where none was."]
    was: Annotated[TypedEntry, "What that bead was before."]


@dataclass(frozen=True)
class Choice:
    """A bead that could stand here."""

    key: Annotated[str, "Its key."]
    name: Annotated[str, "Its name."]
    colour: Annotated[str, "Its colour, #rrggbb."]
    words: Annotated[str, "Kind, finish and maker's code."]
    stock: Annotated[str, "What is in stock of it; may be empty."]
    difference: Annotated[str, "How far its colour is from the present one."]
    mistaken: Annotated[str, "What it would be mistaken for; may be empty."]


@dataclass(frozen=True)
class PickPage:
    """A bead of a colourway to be exchanged at `/patterns/{id}/colourways/{way}/beads/{code}`."""

    frame: Frame
    head: Head
    way: Annotated[int, "The colourway's number; nought for the pattern's own palette."]
    name: Annotated[str, "The colourway's name."]
    sign: Annotated[Sign, "The present bead as drawn."]
    words: Annotated[str, "Its kind, finish and maker's code."]
    choices: Annotated[tuple[Choice, ...], "Beads of the cabinet, the nearest first."]
    found: Annotated[int, "How many were found."]
    empty: Annotated[bool, "Whether the cabinet holds no bead at all."]
    finder: Annotated[BeadFinder, "The search as typed."]
    kinds: Annotated[tuple[tuple[str, str], ...], "The bead kinds to narrow by."]
    form: Annotated[EntryForm, "A bead that stands alone as typed, and what is wrong."]
    all_kinds: Annotated[tuple[tuple[str, str], ...], "The bead kinds to choose from."]
    finishes: Annotated[tuple[tuple[str, str], ...], "The finishes to choose from."]
    sequence: Annotated[int, "Of the pattern as it stands, to be sent with a change."]


@dataclass(frozen=True)
class CodesPage:
    """Codes and symbols that differ more between neighbours, at `/patterns/{id}/codes`."""

    frame: Frame
    head: Head
    pairs: Annotated[tuple[tuple[Sign, Sign, str, str], ...], "Every bead as it is and would be, and its symbols."]
    changed: Annotated[bool, "Whether anything would change."]
    sequence: Annotated[int, "Of the pattern as it stands, to be sent with the change."]


def colourways_page(
    frame: Frame,
    stored: StoredPattern,
    kept: Sequence[KeptColourway],
    beads: Sequence[Bead],
    form: ColourwayForm,
    removed: int = 0,
) -> ColourwaysPage:
    """The colourways of a pattern; `beads` are those of the cabinet."""
    pattern = stored.pattern
    ways = [(OWN, OWN_NAME, pattern), *((of.id, of.colourway.name, in_way(pattern, of.colourway)) for of in kept)]
    begins = (("drawn", "The beads as drawn"), (STOCK, "The nearest beads in stock"))
    return ColourwaysPage(
        frame=frame,
        head=head(stored),
        cards=tuple(_card(stored.id, number, name, worked) for number, name, worked in ways),
        form=form,
        begins=begins if any(bead.stock_mg for bead in beads) else begins[:1],
        alike=alike(pattern.palette, beads),
        sequence=stored.sequence,
        removed=removed,
    )


def in_way(pattern: Pattern, colourway: Colourway | None) -> Pattern:
    """The pattern in that colourway, or in its own palette."""
    return in_colourway(pattern, colourway) if colourway else pattern


def way_page(
    frame: Frame,
    stored: StoredPattern,
    kept: KeptColourway | None,
    cabinet: Mapping[str, Bead],
    beads: Sequence[Bead],
    published: bool,
    wrong: str = "",
    undo: str = "",
    was: TypedEntry | None = None,
) -> WayPage:
    """A colourway of a pattern, or its own palette where `kept` is None; `cabinet` has all beads by key.

    `undo` is the code whose bead was just exchanged, `was` that bead.
    """
    number, name = (kept.id, kept.colourway.name) if kept else (OWN, OWN_NAME)
    worked = in_way(stored.pattern, kept.colourway if kept else None)
    lines = _lines(worked.palette, cabinet)
    return WayPage(
        frame=frame,
        head=head(stored),
        way=number,
        name=name,
        picture=_picture(stored.id, number, worked),
        lines=lines,
        alike=alike(worked.palette, beads),
        alone=sum(not line.known for line in lines),
        differing=sum(bool(line.differs) for line in lines),
        sequence=stored.sequence,
        wrong=wrong,
        published=published,
        undo=undo if undo in worked.palette.codes and was and was.name else "",
        was=was or TypedEntry(),
    )


def pick_page(
    frame: Frame,
    stored: StoredPattern,
    kept: KeptColourway | None,
    code: str,
    beads: Sequence[Bead],
    finder: BeadFinder,
    form: EntryForm,
    kinds: Sequence[str],
) -> PickPage:
    """Where a bead of a colourway is exchanged; `beads` are those of the cabinet."""
    palette = in_way(stored.pattern, kept.colourway if kept else None).palette
    place = palette.index(code)
    entry = palette[place]
    listed = find_beads(beads, finder.wanted, "name")
    found = candidates(palette, place, listed, LISTED)
    all_kinds = dict.fromkeys((*kinds, entry.kind))
    return PickPage(
        frame=frame,
        head=head(stored),
        way=kept.id if kept else OWN,
        name=kept.colourway.name if kept else OWN_NAME,
        sign=signs(palette)[place],
        words=_words(entry.kind, entry.finish, entry.maker_code),
        choices=tuple(_choice(one) for one in found if one.bead.key != entry.bead),
        found=len(listed),
        empty=not beads,
        finder=finder,
        kinds=(("", "Any"), *((kind, kind) for kind in sorted({bead.kind for bead in beads} | {entry.kind}))),
        form=form,
        all_kinds=tuple((kind, kind) for kind in all_kinds),
        finishes=tuple((finish, finish.capitalize()) for finish in FINISHES),
        sequence=stored.sequence,
    )


def codes_page(frame: Frame, stored: StoredPattern) -> CodesPage:
    """The codes and symbols as they are, and as neighbours in the chart would differ most."""
    was, now = stored.pattern.palette, told_apart(stored.pattern)
    names = [[symbol.name for symbol in assigned(palette)] for palette in (was, now)]
    return CodesPage(
        frame=frame,
        head=head(stored),
        pairs=tuple(zip(signs(was), signs(now), *names, strict=True)),
        changed=names[0] != names[1] or was.codes != now.codes,
        sequence=stored.sequence,
    )


def _card(id: int, number: int, name: str, worked: Pattern) -> WayCard:
    pairs = len(look_alikes(worked.palette))
    return WayCard(
        id=number,
        name=name,
        picture=_picture(id, number, worked),
        beads=signs(worked.palette),
        alike=f"{counted(pairs, 'pair looks', 'pairs look')} alike" if pairs else "",
    )


def _picture(id: int, number: int, worked: Pattern) -> str:
    seen = repr((worked.around, worked.hand, worked.parts, [(of.colour, of.finish) for of in worked.palette]))
    version = sha256(seen.encode()).hexdigest()[:16]
    return address("colourway_picture", id=id, way=number, width=PICTURE_WIDTH, version=version)


def _lines(palette: Palette, cabinet: Mapping[str, Bead]) -> tuple[WayLine, ...]:
    lines = []
    for sign, entry in zip(signs(palette), palette, strict=True):
        bead = cabinet.get(entry.bead)
        other = [name.replace("maker_code", "maker’s code") for name in differing(entry, bead)] if bead else []
        lines.append(
            WayLine(
                sign=sign,
                words=_words(entry.kind, entry.finish, entry.maker_code),
                bead=entry.bead if bead else "",
                known=bead is not None,
                stock=weighed(bead.stock_mg) if bead and bead.stock_mg else "",
                differs=", ".join(other),
            )
        )
    return tuple(lines)


def _choice(found: Candidate) -> Choice:
    bead = found.bead
    mistaken = [
        f"{of.code}{'' if of.sight == PLAIN else f' {EYES[of.sight]}'} ({fixed(of.difference, 1)})"
        for of in found.mistaken
    ]
    return Choice(
        key=bead.key,
        name=bead.name,
        colour=bead.colour,
        words=_words(bead.kind, bead.finish, bead.maker_code),
        stock=weighed(bead.stock_mg) if bead.stock_mg else "",
        difference=fixed(found.difference, 1),
        mistaken=f"mistaken for {', '.join(mistaken)}" if mistaken else "",
    )


def _words(*words: str) -> str:
    return " · ".join(filter(None, words))


def pick_finder(finder: BeadFinder, kind: str, asked: bool) -> BeadFinder:
    """Beads of the entry's own kind, where nothing else was asked for."""
    return finder if asked else replace(finder, wanted=WantedBeads(kind=kind))
