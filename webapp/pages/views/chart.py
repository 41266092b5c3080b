"""The chart editor: what its page is told beside the pattern itself, which the script asks for."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Annotated

from engine.counting.sizes import Question, Workshop, size
from engine.drawing.svg import path_data
from engine.drawing.symbols import SYMBOLS
from engine.pattern.palette import FINISHES
from webapp.pages.forms.chart import BlankForm
from webapp.pages.views.frame import Frame, Head, head
from webapp.records import StoredPattern


@dataclass(frozen=True)
class ChartPage:
    """The chart editor at `/patterns/{id}/chart`."""

    frame: Annotated[Frame, "What stands round the page."]
    head: Annotated[Head, "The pattern's heading."]
    revision: Annotated[int, "The newest revision's number."]
    finishes: Annotated[tuple[str, ...], "The finishes to choose from."]
    kinds: Annotated[tuple[str, ...], "The bead kinds to choose from."]
    symbols: Annotated[tuple[tuple[str, str], ...], "Every symbol: name, and path on a square from −1 to 1."]
    working_mm: Annotated[float, "Working diameter of the beads, for the rule in centimetres."]
    source: Annotated[str, "Where that number comes from."]


@dataclass(frozen=True)
class BlankPage:
    """The form for a new, blank chart at `/patterns/new/chart`."""

    frame: Annotated[Frame, "What stands round the page."]
    form: Annotated[BlankForm, "What was typed and what is wrong."]
    finishes: Annotated[tuple[tuple[str, str], ...], "The finishes to choose from: value and words."]
    kinds: Annotated[tuple[tuple[str, str], ...], "The bead kinds to choose from: value and words."]


def chart_page(frame: Frame, stored: StoredPattern, workshop: Workshop) -> ChartPage:
    """The editor of a pattern. Raises ChoiceError for a bead kind the workshop does not know."""
    rope = size(stored.pattern, Question(), workshop).rope
    symbols = tuple((symbol.name, path_data(symbol.outline)) for symbol in SYMBOLS)
    return ChartPage(frame, head(stored), stored.revision, FINISHES, tuple(workshop.kinds), symbols, rope.working_mm,
                     rope.source)


def blank_page(frame: Frame, form: BlankForm, kinds: Iterable[str]) -> BlankPage:
    """The form for a blank chart, empty or with what was typed."""
    return BlankPage(frame, form, tuple((finish, finish) for finish in FINISHES), tuple((kind, kind) for kind in kinds))
