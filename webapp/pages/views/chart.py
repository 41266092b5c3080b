"""The chart editor: what its page is told beside the pattern itself, which the script asks for."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Annotated

from engine.counting.closures import CLOSURES
from engine.counting.questions import Question
from engine.counting.rope import Rope
from engine.counting.sizes import size
from engine.counting.workshop import Workshop
from engine.drawing.svg import path_data
from engine.drawing.symbols import SYMBOLS
from engine.errors import UnknownKind
from engine.pattern.palette import FINISHES
from engine.pattern.pattern import Pattern
from webapp.pages.forms.chart import BlankForm
from webapp.pages.views.frame import Frame, Head, head
from webapp.records import StoredPattern

STAND_IN = "11/0 round"


@dataclass(frozen=True)
class ChartPage:
    """The chart editor at `/patterns/{id}/chart`."""

    frame: Frame
    head: Head
    revision: Annotated[int, "The newest revision's number."]
    finishes: Annotated[tuple[str, ...], "The finishes to choose from."]
    kinds: Annotated[tuple[str, ...], "The bead kinds to choose from."]
    symbols: Annotated[tuple[tuple[str, str], ...], "Every symbol: name, and path on a square from −1 to 1."]
    parts: Annotated[int, "How many parts its rope has."]
    working_mm: Annotated[float, "Working diameter of the beads, for the rule in centimetres."]
    source: Annotated[str, "Where that number comes from."]
    closures: Annotated[tuple[tuple[str, str], ...], "The closures of a whole piece: value and words."]


@dataclass(frozen=True)
class BlankPage:
    """The form for a new, blank chart at `/patterns/new/chart`."""

    frame: Frame
    form: Annotated[BlankForm, "What was typed and what is wrong."]
    finishes: Annotated[tuple[tuple[str, str], ...], "The finishes to choose from: value and words."]
    kinds: Annotated[tuple[tuple[str, str], ...], "The bead kinds to choose from: value and words."]


def chart_page(frame: Frame, stored: StoredPattern, workshop: Workshop) -> ChartPage:
    """The editor of a pattern."""
    rope = _rope(stored.pattern, workshop)
    symbols = tuple((symbol.name, path_data(symbol.outline)) for symbol in SYMBOLS)
    return ChartPage(
        frame=frame,
        head=head(stored),
        revision=stored.revision,
        finishes=FINISHES,
        kinds=tuple(workshop.kinds),
        symbols=symbols,
        parts=len(stored.pattern.parts),
        working_mm=rope.working_mm,
        source=rope.source,
        closures=tuple((closure.key, closure.label) for closure in CLOSURES.values()),
    )


def _rope(pattern: Pattern, workshop: Workshop) -> Rope:
    """The pattern's rope; where a bead kind is not known, one of the usual kind, which is said."""
    try:
        return size(pattern, Question(), workshop).rope
    except UnknownKind:
        rope = size(pattern, Question(kind=STAND_IN), workshop).rope
        return replace(rope, source=f"as if of {STAND_IN}, because a bead kind is not in this library", measured=False)


def blank_page(frame: Frame, form: BlankForm, kinds: Iterable[str]) -> BlankPage:
    """The form for a blank chart, empty or with what was typed."""
    return BlankPage(frame, form, tuple((finish, finish) for finish in FINISHES), tuple((kind, kind) for kind in kinds))
