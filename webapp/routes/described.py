"""What the description of the API says of answers: the fields of lists, bills and answers, and of every error."""

from __future__ import annotations

from typing import Any

from pydantic import BaseModel, Field

from webapp.exchange.pattern_file import PatternFields


class Objection(BaseModel):
    """What went wrong: a slug, one sentence, and the field at fault, if one is."""

    code: str
    message: str
    field: str | None


class ErrorAnswer(BaseModel):
    """Every error of the API."""

    error: Objection


class Kept(BaseModel):
    """A pattern and its newest revision."""

    id: int
    revision: int


class PatternAnswer(PatternFields):
    """A pattern file as it stands, with what it is kept under."""

    id: int
    revision: int = Field(description="The newest revision, to be sent as made_from with the next one.")
    sequence: int = Field(description="Of the working copy, to be sent with its next write.")


class Sequence(BaseModel):
    """The sequence number of the working copy, to be sent with the next write."""

    sequence: int


class Summary(BaseModel):
    """A pattern in a list."""

    id: int
    title: str
    around: int
    beads: int
    repeat: int
    kinds: list[str]
    colours: list[str]
    tags: list[str]
    revision: int
    changed: str
    example: bool


class Summaries(BaseModel):
    """A page of a list; pages count from one."""

    patterns: list[Summary]
    page: int
    pages: int
    total: int


class ThreadAnswer(BaseModel):
    """A thread: runs in stringing order."""

    beads: int
    strung_mm: float
    runs: list[tuple[str, int]]


class StringingAnswer(BaseModel):
    """`beads`, `repeat` and `runs` of one pass of the chart, `threads` of the size asked for, first worked first."""

    beads: int
    repeat: int
    runs: list[tuple[str, int]]
    threads: list[ThreadAnswer]


class ColourAnswer(BaseModel):
    """Beads of one colour."""

    code: str
    name: str
    beads: int
    grams: float
    buy_grams: int


class MaterialsAnswer(BaseModel):
    """The bill, unrounded; lengths in mm."""

    length_mm: float
    rope_mm: float
    rounds_per_cm: float
    beads: int
    passes: float
    strung_mm: float
    strung_rule_mm: float
    thread_mm: float
    thickness_mm: float
    source: str = Field(description="Where the rope's measures come from, and how sure they are.")
    colours: list[ColourAnswer]


class Turn(BaseModel):
    """How far a ring turns at its seam."""

    beads: float
    degrees: float


class FindingAnswer(BaseModel):
    """Something that goes with the rope: how much or how large, why, and where that comes from."""

    name: str
    measure: str
    reason: str
    source: str


class OfferAnswer(BaseModel):
    """A length to offer; `round` asks for it."""

    round: str
    beads: int
    passes: float
    finished_mm: float


class RingAnswer(BaseModel):
    """A ring near the girth that closes in colour: room inside in mm, and how far its seam turns."""

    beads: int
    passes: float
    girth_mm: float
    diameter_mm: float
    degrees: float


class ToBuyAnswer(BaseModel):
    """Beads of a colour that are wanting, and whole grams to buy with spare."""

    code: str
    name: str
    beads: int
    grams: int


class ComparedAnswer(BaseModel):
    """The same pattern in another size or kind."""

    name: str
    sentence: str
    finished_mm: float
    measured: bool
    table: MaterialsAnswer


class LeftAnswer(BaseModel):
    """Beads of a colour that are left over."""

    code: str
    beads: int


class LongestAnswer(BaseModel):
    """The longest rope of the beads in hand; `limit` is the colour that ends it, empty where none does."""

    beads: int
    passes: float
    rope_mm: float
    finished_mm: float
    limit: str
    left: list[LeftAnswer]


class KitLineAnswer(BaseModel):
    """One colour for all pieces; packs and cost are nought where no pack was named."""

    code: str
    name: str
    beads: int
    grams: int
    packs: int
    cost: float


class KitAnswer(BaseModel):
    """A shopping list; `each` is the cost of one piece."""

    pieces: int
    lines: list[KitLineAnswer]
    thread_mm: float
    cost: float
    each: float


class RemainingAnswer(BaseModel):
    """What is still to string after a stop; round and place count from one."""

    worked: int
    next_round: int
    next_place: int
    beads: int
    strung_mm: float
    runs: list[tuple[str, int]]
    to_buy: list[ToBuyAnswer]


class OutOfThreadAnswer(BaseModel):
    """A thread that ended: `rest` of it is strung anew; `thread_mm` is what all that is still to work takes."""

    worked: int
    next_round: int
    next_place: int
    thread: int
    rest: ThreadAnswer
    joins: list[int]
    beads: int
    rest_thread_mm: float
    thread_mm: float
    left_mm: float
    works: int
    buy_mm: float


class ShortAnswer(ToBuyAnswer):
    """A colour of which too few are left."""

    wanted: int
    left: int


class OutOfColourAnswer(BaseModel):
    """A colour that ends before the rope does; `next_bead` is the first one wanting, counted from one."""

    code: str
    name: str
    worked: int
    had: int
    next_bead: int
    next_round: int
    next_place: int
    joins: list[int]
    short: list[ShortAnswer]


class AnswerAnswer(BaseModel):
    """A customer's question answered; the last six stand there only where they were asked for."""

    pattern: int
    title: str
    revision: int
    sentence: str
    table: MaterialsAnswer
    finished_mm: float
    threads: int
    joins: int
    closes: bool
    closing: Turn
    measured: bool
    how_sure: str = Field(description="How sure the lengths are, and why.")
    doubts: list[str] = Field(description="Questions about what may have been meant.")
    findings: list[FindingAnswer]
    offers: list[OfferAnswer]
    rings: list[RingAnswer]
    thread_per_bead_mm: float
    thread_source: str = Field(description="Where the thread a bead comes from: measured or estimated.")
    thread_grams: float
    reply: str = Field(description="The reply in plain text, in the maker's words.")
    compared: list[ComparedAnswer] | None = None
    longest: LongestAnswer | None = None
    kit: KitAnswer | None = None
    remaining: RemainingAnswer | None = None
    out_of_thread: OutOfThreadAnswer | None = None
    out_of_colour: OutOfColourAnswer | None = None


ERRORS: dict[int | str, dict[str, Any]] = {
    status: {"model": ErrorAnswer, "description": words}
    for status, words in (
        (400, "Not JSON, or not UTF-8."),
        (403, "A foreign Host or Origin."),
        (404, "Not in the library."),
        (409, "Made from an older state; nothing was changed."),
        (413, "Too large."),
        (422, "Wrong content."),
    )
}


def answers(model: type[BaseModel], status: int = 200) -> dict[int | str, dict[str, Any]]:
    """The description of a call that answers with that model, or with an error."""
    return {status: {"model": model}, **ERRORS}


def bytes_of(media_type: str) -> dict[int | str, dict[str, Any]]:
    """The description of a call that answers with bytes, or with an error."""
    return {200: {"content": {media_type: {"schema": {"type": "string", "format": "binary"}}}}, **ERRORS}
