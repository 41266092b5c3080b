"""Patterns of a zip, imported: first compared with the library, then taken as was chosen, all of them or none."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import Field, asdict, fields
from hashlib import sha256
from itertools import pairwise
from math import isfinite
from typing import Any

from sqlmodel import Session, col, select

from engine.booklet.papers import PAPERS
from engine.booklet.terms import TERMS
from engine.counting.kinds import KINDS
from engine.pattern.pattern import Pattern
from engine.units import UNITS
from webapp.exchange.portable import PortableEdition, PortablePattern, PortableWorkshop
from webapp.money import countries, currencies
from webapp.records import BeadPicture, MakerSettings, PatternInZip
from webapp.storage import beads
from webapp.storage.database import Database
from webapp.storage.library_export import documents
from webapp.storage.patterns import number_of, pattern_of, put, row_of
from webapp.storage.revisions import put_revision
from webapp.storage.tables import (
    BeadRow,
    ColourwayRow,
    EditionBookletRow,
    EditionRow,
    KindRow,
    PatternRow,
    PhotographRow,
    SettingRow,
    SwatchRow,
    UsedBeadRow,
    WordsRow,
)
from webapp.storage.workshop import own_sizes, size_row, swatches

NEW, SAME, DIFFERENT = "new", "same", "different"
LEAVE, TAKE, REVISE = "leave", "take", "revise"
LONGEST_SETTING = 2000
LOOK = "look"  # of this computer alone
CHOICES = {
    "units": UNITS,
    "terms": TERMS,
    "paper": PAPERS,
    "country": {"", *dict(countries())},
    "currency": dict(currencies()),
}

ReadPattern = tuple[Pattern, PortablePattern]


def compare(database: Database, read: Iterable[ReadPattern]) -> tuple[PatternInZip, ...]:
    """Each pattern beside the library: new, the same as one there, or different from the one of that title."""
    here = {_mark(document) for document in documents(database)}
    with database.reading() as session:
        titled = {
            title.casefold(): number
            for number, title in session.exec(
                select(PatternRow.id, PatternRow.title)
                .where(~col(PatternRow.binned))
                .order_by(col(PatternRow.id).desc())
            )
        }
    lines = []
    for pattern, portable in read:
        number = titled.get(pattern.title.casefold())
        state = SAME if _mark(portable.document) in here else DIFFERENT if number else NEW
        lines.append(PatternInZip(pattern.title, state, number or 0))
    return tuple(lines)


def import_patterns(
    database: Database,
    read: Iterable[ReadPattern],
    chosen: Sequence[tuple[str, int]],
    workshop: PortableWorkshop | None = None,
) -> tuple[int, ...]:
    """Takes each pattern as was chosen: ("take", 0) as its own, ("revise", n) as a revision of n, ("leave", 0) not.

    Bead kinds of the workshop come with them. Gives the numbers of the patterns taken in or revised. Raises NotFound,
    and then nothing is taken.
    """
    taken = []
    with database.writing() as session:
        for (pattern, portable), (choice, number) in zip(read, chosen, strict=True):
            if choice == TAKE:
                taken.append(_take(session, database, pattern, portable))
            elif choice == REVISE:
                put_revision(session, row_of(session, number), pattern, database, "Imported from a file")
                taken.append(number)
        if workshop:
            _take_kinds(session, workshop)
            _take_beads(session, workshop, _pointed_at(session, taken))
    return tuple(taken)


def import_workshop(database: Database, workshop: PortableWorkshop) -> None:
    """Takes swatches, sizes and beads that are not here yet, and settings that were never made here."""
    here, sizes = {kept.swatch for kept in swatches(database)}, {size.name for size in own_sizes(database)}
    with database.writing() as session:
        _take_kinds(session, workshop)
        _take_beads(session, workshop)
        session.add_all(
            SwatchRow(**asdict(swatch)) for swatch in dict.fromkeys(workshop.swatches) if swatch not in here
        )
        session.add_all(
            size_row(size) for size in {size.name: size for size in workshop.sizes}.values() if size.name not in sizes
        )
        for name, value in _sound_settings(workshop.settings).items():
            if session.get(SettingRow, name) is None:
                session.add(SettingRow(name=name, value=value))


def _take(session: Session, database: Database, pattern: Pattern, portable: PortablePattern) -> int:
    """As a pattern of its own: what was published becomes the revisions before what stands."""
    now = database.now()
    editions = sorted(portable.editions, key=lambda edition: edition.number)
    states = [*(pattern_of(edition.document) for edition in editions), pattern]
    row = put(session, states[0], portable.made or now)
    revisions = [1]
    for before, state in pairwise(states):
        if state != before:
            put_revision(session, row, state, database)
        revisions.append(row.revision)
    row.series, row.difficulty, row.changed = portable.series, portable.difficulty, portable.changed or now
    session.add(row)
    number = number_of(row)
    session.add_all(WordsRow(pattern=number, place=place, text=text) for place, text in portable.words)
    session.add_all(
        PhotographRow(pattern=number, place=place, **photograph._asdict())
        for place, photograph in enumerate(portable.photographs, 1)
    )
    session.add_all(ColourwayRow(pattern=number, **colourway._asdict()) for colourway in portable.colourways)
    for edition, revision in zip(editions, revisions, strict=False):
        _take_edition(session, number, revision, edition)
    return number


def _take_edition(session: Session, number: int, revision: int, edition: PortableEdition) -> None:
    session.add(
        EditionRow(
            pattern=number,
            number=edition.number,
            revision=revision,
            published=edition.published,
            note=edition.note,
            words=edition.words,
            withdrawn=edition.withdrawn,
            why=edition.why,
        )
    )
    session.flush()
    for booklet in edition.booklets:
        pdf = booklet.pdf.read()
        session.add(
            EditionBookletRow(
                pattern=number,
                edition=edition.number,
                name=booklet.name,
                choices=booklet.choices,
                pages=booklet.pages,
                pdf=pdf,
                sha256=sha256(pdf).hexdigest(),
            )
        )
        session.flush()  # so that no more than one is held at a time


def _take_kinds(session: Session, workshop: PortableWorkshop) -> None:
    for kind in workshop.kinds:
        if kind.name not in KINDS and session.get(KindRow, kind.name) is None:
            session.add(KindRow(**asdict(kind)))


def _take_beads(session: Session, workshop: PortableWorkshop, wanted: Collection[str] | None = None) -> None:
    """Takes beads whose keys are not here yet: all, or those that are wanted."""
    for bead, archived, photograph in workshop.beads:
        if (wanted is not None and bead.key not in wanted) or session.get(BeadRow, bead.key) is not None:
            continue
        beads.put(session, bead)
        if archived:
            session.get_one(BeadRow, bead.key).archived = True
        if photograph:
            beads.put_picture(session, bead.key, BeadPicture(*photograph.read()))


def _pointed_at(session: Session, patterns: Collection[int]) -> Collection[str]:
    return set(session.exec(select(UsedBeadRow.bead).where(col(UsedBeadRow.pattern).in_(patterns))))


def _sound_settings(settings: Mapping[str, str]) -> dict[str, str]:
    """The words and the measures among the settings that can be used as they are."""
    travelling = [field for field in fields(MakerSettings) if field.name in settings and field.name != LOOK]
    return {field.name: settings[field.name] for field in travelling if _is_sound(field, settings[field.name])}


def _is_sound(field: Field[Any], value: str) -> bool:
    if len(value) > LONGEST_SETTING:
        return False
    if field.name in CHOICES:
        return value in CHOICES[field.name]
    return isinstance(field.default, str) or _measure(value)


def _measure(text: str) -> bool:
    try:
        return isfinite(float(text)) and 0 <= float(text) < 100_000
    except ValueError:
        return False


def _mark(document: str) -> bytes:
    return sha256(document.encode()).digest()
