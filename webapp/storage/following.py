"""Unpublished patterns follow a bead of the cabinet that was changed; what was published stays as it is."""

from __future__ import annotations

from dataclasses import replace

from sqlmodel import Session, col, select

from engine.cabinet.bead import SHOWN, Bead, followed
from engine.cabinet.colourways import Colourway
from engine.pattern.palette import Palette
from webapp.storage.colourway_rows import colourway_of, palette_text
from webapp.storage.database import Database
from webapp.storage.revisions import put_state, standing_in
from webapp.storage.tables import ColourwayRow, EditionRow, PatternRow, UsedBeadRow

NOTE = "A bead of the cabinet was changed"


def follow(session: Session, database: Database, was: Bead, now: Bead) -> int:
    """Lets every unpublished pattern that points at the bead follow it; how many patterns changed.

    Part of a larger change.
    """
    if all(getattr(was, name) == getattr(now, name) for name in SHOWN):
        return 0
    published = select(EditionRow.pattern)
    _follow_in_colourways(session, was, now)
    pointing = select(UsedBeadRow.pattern).where(UsedBeadRow.bead == now.key)
    rows = session.exec(
        select(PatternRow).where(col(PatternRow.id).in_(pointing), col(PatternRow.id).not_in(published))
    ).all()
    return sum(_follow_in_pattern(session, database, row, was, now) for row in rows)


def _follow_in_pattern(session: Session, database: Database, row: PatternRow, was: Bead, now: Bead) -> bool:
    pattern = standing_in(session, row)
    palette = _followed(pattern.palette, was, now)
    if palette != pattern.palette:
        put_state(session, row, replace(pattern, palette=palette), database, NOTE)
    return palette != pattern.palette


def _follow_in_colourways(session: Session, was: Bead, now: Bead) -> None:
    published = select(EditionRow.pattern)
    rows = session.exec(
        select(ColourwayRow).where(
            col(ColourwayRow.palette).contains(f'"{now.key}"', autoescape=True),
            col(ColourwayRow.pattern).not_in(published),
        )
    )
    for row in rows.all():
        colourway: Colourway = colourway_of(row)
        row.palette = palette_text(_followed(colourway.palette, was, now))
        session.add(row)


def _followed(palette: Palette, was: Bead, now: Bead) -> Palette:
    return Palette(tuple(followed(entry, was, now) if entry.bead == now.key else entry for entry in palette))
