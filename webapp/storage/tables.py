"""The tables of the library, as rows; they validate nothing and never leave this package."""

from __future__ import annotations

from datetime import datetime

from sqlalchemy import ForeignKeyConstraint, Index, MetaData
from sqlmodel import Field, SQLModel

# names by convention, so that a later migration can drop a constraint by its name
SQLModel.metadata = MetaData(
    naming_convention={
        "ix": "ix_%(table_name)s_%(column_0_name)s",
        "uq": "uq_%(table_name)s_%(column_0_name)s",
        "fk": "fk_%(table_name)s_%(column_0_name)s",
        "pk": "pk_%(table_name)s",
    }
)


class PatternRow(SQLModel, table=True):
    """A pattern of the library; what lists show of it stands here, as of its state as it stands.

    A migration made an index of its words and its series, which follows by itself; `difficulty` is 1 to 5, or nought.
    `parts` is 1 of a pattern that is written without parts, and `beads` are those of its chart, or of all its parts.
    """

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
    made: datetime
    changed: datetime = Field(index=True)
    revision: int
    sequence: int = 0
    example: bool = False
    binned: bool = Field(default=False, index=True)
    series: str = ""
    difficulty: int = 0
    parts: int = 1
    __table_args__ = (Index("ix_pattern_shown", "binned", "changed"),)


class TagRow(SQLModel, table=True):
    """A tag of a pattern as it stands."""

    __tablename__ = "tag"
    pattern: int = Field(foreign_key="pattern.id", primary_key=True, ondelete="CASCADE")
    name: str = Field(primary_key=True, index=True)


class ColourRow(SQLModel, table=True):
    """A colour of a pattern as it stands, in CIELAB (D65)."""

    __tablename__ = "colour"
    pattern: int = Field(foreign_key="pattern.id", primary_key=True, ondelete="CASCADE")
    place: int = Field(primary_key=True)
    light: float
    a: float
    b: float
    __table_args__ = (Index("ix_colour_light", "light", "a", "b"),)


class RevisionRow(SQLModel, table=True):
    """A saved state, never changed but for its `mark`, a name; `document` is the text of its pattern file."""

    __tablename__ = "revision"
    pattern: int = Field(foreign_key="pattern.id", primary_key=True, ondelete="CASCADE")
    number: int = Field(primary_key=True)
    made: datetime
    automatic: bool = False
    note: str = ""
    document: str
    mark: str = ""


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
    fewest_per_gram: float = Field(default=0.0, sa_column_kwargs={"server_default": "0"})


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
    unravelled_mm: float = 0.0


class SettingRow(SQLModel, table=True):
    """One of the maker's settings, as text."""

    __tablename__ = "setting"
    name: str = Field(primary_key=True)
    value: str


class FinishedRow(SQLModel, table=True):
    """A finished size of the maker's own: a length or a wrist in mm, the other nought.

    The closure "hand" is a ring that goes over a hand of the girth that stands as its length.
    """

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


class WordsRow(SQLModel, table=True):
    """The maker's own words for a place of a pattern's booklet, with light markup."""

    __tablename__ = "words"
    pattern: int = Field(foreign_key="pattern.id", primary_key=True, ondelete="CASCADE")
    place: str = Field(primary_key=True)
    text: str


class PhotographRow(SQLModel, table=True):
    """A photograph for a pattern's booklet: made smaller, nothing in it but the picture.

    `place` orders them from one; below nought, it was removed from that place and can be taken back to it.
    """

    __tablename__ = "photograph"
    id: int | None = Field(default=None, primary_key=True)
    pattern: int = Field(foreign_key="pattern.id", index=True, ondelete="CASCADE")
    place: int
    caption: str
    seen: str
    width: int
    height: int
    jpeg: bytes


class EditionRow(SQLModel, table=True):
    """A revision as published. Nothing of it changes afterwards but that it is withdrawn; its pattern cannot go."""

    __tablename__ = "edition"
    pattern: int = Field(foreign_key="pattern.id", primary_key=True)
    number: int = Field(primary_key=True)
    revision: int
    published: datetime
    note: str
    words: str
    withdrawn: datetime | None = None
    why: str = ""


class EditionBookletRow(SQLModel, table=True):
    """A booklet of an edition, byte for byte; `name` says which, `choices` how it was printed."""

    __tablename__ = "edition_booklet"
    pattern: int = Field(primary_key=True)
    edition: int = Field(primary_key=True)
    name: str = Field(primary_key=True)
    choices: str
    pages: int
    sha256: str
    pdf: bytes
    __table_args__ = (ForeignKeyConstraint(["pattern", "edition"], ["edition.pattern", "edition.number"]),)


class CopyRow(SQLModel, table=True):
    """Who was given which booklet of an edition, and which edition's errata they were sent last."""

    __tablename__ = "copy"
    id: int | None = Field(default=None, primary_key=True)
    pattern: int
    edition: int
    booklet: str
    name: str
    test: bool
    given: datetime
    told: int = 0
    __table_args__ = (ForeignKeyConstraint(["pattern", "edition"], ["edition.pattern", "edition.number"]),)


class BeadRow(SQLModel, table=True):
    """A bead of the cabinet; one that is archived stays for the patterns that use it.

    `picture` changes whenever the picture does, and is empty where there is none.
    """

    __tablename__ = "bead"
    key: str = Field(primary_key=True)
    name: str
    colour: str
    kind: str
    finish: str
    maker_code: str
    supplier: str
    pack_mg: int
    price: int
    currency: str
    stock_mg: int
    note: str
    archived: bool = False
    picture: str = ""


class BeadPictureRow(SQLModel, table=True):
    """The photograph of a bead."""

    __tablename__ = "bead_picture"
    bead: str = Field(foreign_key="bead.key", primary_key=True, ondelete="CASCADE")
    width: int
    height: int
    jpeg: bytes


class UsedBeadRow(SQLModel, table=True):
    """A bead of the cabinet that the palette of a pattern as it stands points at; it may not be in this library."""

    __tablename__ = "used_bead"
    pattern: int = Field(foreign_key="pattern.id", primary_key=True, ondelete="CASCADE")
    bead: str = Field(primary_key=True, index=True)


class ColourwayRow(SQLModel, table=True):
    """A colourway of a pattern; `palette` is the text of its entries as in a pattern file."""

    __tablename__ = "colourway"
    id: int | None = Field(default=None, primary_key=True)
    pattern: int = Field(foreign_key="pattern.id", index=True, ondelete="CASCADE")
    name: str
    palette: str
    removed: bool = False


class MadeRow(SQLModel, table=True):
    """Pieces that were made of a pattern, which may be gone, and what they took off the stock: mg by bead, as JSON."""

    __tablename__ = "made"
    id: int | None = Field(default=None, primary_key=True)
    pattern: int = Field(index=True)
    title: str
    made: datetime
    pieces: int
    size: str
    taken: str
    undone: bool = False


class EarningRow(SQLModel, table=True):
    """A note of what a pattern earned, which may be gone; amounts in the smallest coin of the currency."""

    __tablename__ = "earning"
    id: int | None = Field(default=None, primary_key=True)
    pattern: int = Field(index=True)
    title: str
    edition: int
    date: str
    copies: int
    price: int
    fee: int
    currency: str
    note: str


class PieceRow(SQLModel, table=True):
    """A piece in work: `document` is the pattern as it was begun, `counted` what its list was counted with.

    `asked` is the question as in an address. The place is a `thread`, counted from one, and how many entries of its
    list are `strung`; `sequence` grows with every change of it. `state` is open, finished or away. The name goes into
    no export.
    """

    __tablename__ = "piece"
    id: int | None = Field(default=None, primary_key=True)
    pattern: int = Field(foreign_key="pattern.id", index=True, ondelete="CASCADE")
    name: str
    begun: datetime
    revision: int
    document: str
    counted: str
    asked: str
    thread: int = 1
    strung: int = 0
    sequence: int = 0
    state: str = "open"


class KeptAnswerRow(SQLModel, table=True):
    """An answer that was given to somebody, of a pattern that may be gone: the question, and the text that was sent.

    `document` and `counted` are as of a piece, `beads` the figure that was told. The name goes into no export.
    """

    __tablename__ = "kept_answer"
    id: int | None = Field(default=None, primary_key=True)
    pattern: int = Field(index=True)
    title: str
    name: str
    asked: datetime
    revision: int
    document: str
    counted: str
    question: str
    sent: str
    beads: int
