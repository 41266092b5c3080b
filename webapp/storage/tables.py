"""The tables of the library, as rows; they validate nothing and never leave this package."""

from __future__ import annotations

from datetime import datetime

from sqlalchemy import MetaData
from sqlmodel import Field, SQLModel

# names by convention, so that a later migration can drop a constraint by its name
SQLModel.metadata = MetaData(naming_convention={
    "ix": "ix_%(table_name)s_%(column_0_name)s", "uq": "uq_%(table_name)s_%(column_0_name)s",
    "fk": "fk_%(table_name)s_%(column_0_name)s", "pk": "pk_%(table_name)s"})


class PatternRow(SQLModel, table=True):
    """A pattern of the library; what lists show of it stands here, as of its state as it stands."""

    __tablename__ = "pattern"
    id: int | None = Field(default=None, primary_key=True)
    title: str
    around: int
    beads: int
    repeat: int
    kinds: str
    colours: str
    words: str
    picture: str
    changed: datetime = Field(index=True)
    revision: int
    sequence: int = 0
    example: bool = False
    binned: bool = Field(default=False, index=True)


class TagRow(SQLModel, table=True):
    """A tag of a pattern as it stands."""

    __tablename__ = "tag"
    pattern: int = Field(foreign_key="pattern.id", primary_key=True, ondelete="CASCADE")
    name: str = Field(primary_key=True, index=True)


class RevisionRow(SQLModel, table=True):
    """A saved state, never changed; `document` is the text of its pattern file."""

    __tablename__ = "revision"
    pattern: int = Field(foreign_key="pattern.id", primary_key=True, ondelete="CASCADE")
    number: int = Field(primary_key=True)
    made: datetime
    automatic: bool = False
    note: str = ""
    document: str


class WorkingRow(SQLModel, table=True):
    """The working copy of a pattern, overwritten with every change."""

    __tablename__ = "working"
    pattern: int = Field(foreign_key="pattern.id", primary_key=True, ondelete="CASCADE")
    made_from: int
    changed: datetime
    document: str


class KindRow(SQLModel, table=True):
    """A bead kind of the maker's own."""

    __tablename__ = "kind"
    name: str = Field(primary_key=True)
    diameter_mm: float
    length_mm: float
    hole_mm: float
    per_gram: float
    working_mm: float


class SwatchRow(SQLModel, table=True):
    """A measured sample."""

    __tablename__ = "swatch"
    id: int | None = Field(default=None, primary_key=True)
    kind: str
    around: int
    stitch: str
    beads: int
    length_mm: float
    date: str
    note: str


class SettingRow(SQLModel, table=True):
    """One of the maker's settings, as text."""

    __tablename__ = "setting"
    name: str = Field(primary_key=True)
    value: str


class FinishedRow(SQLModel, table=True):
    """A finished size of the maker's own: a length or a wrist in mm, the other nought."""

    __tablename__ = "finished"
    name: str = Field(primary_key=True)
    closure: str
    length_mm: float
    wrist_mm: float
    ease_mm: float


class PickedRow(SQLModel, table=True):
    """A finished size, by its key, that tables of a pattern show, and its place among them."""

    __tablename__ = "picked"
    pattern: int = Field(foreign_key="pattern.id", primary_key=True, ondelete="CASCADE")
    key: str = Field(primary_key=True)
    place: int
