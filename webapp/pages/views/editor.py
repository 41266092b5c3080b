"""The editor of words, palette and beads as text, and the check that answers while one types."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import Annotated

from markupsafe import Markup

from engine.drawing.charts import chart
from engine.drawing.svg import to_svg
from engine.pattern.palette import FINISHES
from engine.pattern.pattern import Pattern
from engine.units import count, counted, plain
from webapp.pages.forms.editor import NEW_COLOURS, EditorForm, TypedBead, blank_row, editor_of
from webapp.pages.views.frame import Frame, Head, head
from webapp.pages.views.glance import MOST_CHANGES, alike_in_words, closing_in_words, drift_in_words
from webapp.pages.views.signs import Sign, signs
from webapp.records import StoredPattern

MOST_DRAWN = 1150  # beads: the page stays under 300 kB
BEAD_MM = 4.0


@dataclass(frozen=True)
class CheckPart:
    """What the beads that are typed come to: drawn and counted, or what is wrong with them."""

    errors: Annotated[tuple[str, ...], "What is wrong, one sentence each."]
    waiting: Annotated[bool, "Whether nothing is typed yet."]
    sentence: Annotated[str, "Beads, rounds, repeat, drift and closing in one line."]
    chart: Annotated[Markup, "The chart lying, as SVG of our own drawing; empty when there is none."]
    drawn: Annotated[int, "How many beads are drawn."]
    beads: Annotated[int, "How many beads the chart has."]
    signs: Annotated[tuple[tuple[Sign, int], ...], "The palette with counts."]
    alike: Annotated[tuple[str, ...], "Beads that look alike, a sentence a pair, with what would tell them apart."]


@dataclass(frozen=True)
class Theirs:
    """What another page has saved while this one was open."""

    revision: Annotated[int, "Its revision."]
    changed: Annotated[datetime, "When it was saved."]
    beads: Annotated[str, "Its beads as text, in working order."]


@dataclass(frozen=True)
class EditorPage:
    """The editor, for a new pattern and for one that is kept."""

    frame: Frame
    head: Annotated[Head | None, "The pattern's heading; none for a new one."]
    form: Annotated[EditorForm, "What was typed and what is wrong."]
    kinds: Annotated[tuple[str, ...], "The bead kinds to choose from."]
    finishes: Annotated[tuple[str, ...], "The finishes to choose from."]
    blank: Annotated[TypedBead, "An empty row of the palette, for the script that adds one."]
    colours: Annotated[tuple[str, ...], "The colours that new rows take by turns."]
    check: Annotated[CheckPart, "What the beads as typed come to."]
    theirs: Annotated[Theirs | None, "What was saved meanwhile, when this save came too late."]


def new_page(frame: Frame, form: EditorForm, kinds: Iterable[str]) -> EditorPage:
    """The editor of a new pattern, empty or with what was typed."""
    return EditorPage(
        frame=frame,
        head=None,
        form=form,
        kinds=tuple(kinds),
        finishes=FINISHES,
        blank=blank_row(),
        colours=NEW_COLOURS,
        check=check_part(form),
        theirs=None,
    )


def edit_page(
    frame: Frame, stored: StoredPattern, form: EditorForm, kinds: Iterable[str], stale: bool = False
) -> EditorPage:
    """The editor of a kept pattern. `stale` when the save came too late: then `stored` is what was saved meanwhile."""
    known = tuple(dict.fromkeys((*kinds, *(entry.kind for entry in stored.pattern.palette))))
    return EditorPage(
        frame=frame,
        head=head(stored),
        form=form,
        kinds=known,
        finishes=FINISHES,
        blank=blank_row(),
        colours=NEW_COLOURS,
        check=check_part(form),
        theirs=_theirs(stored) if stale else None,
    )


def check_part(form: EditorForm) -> CheckPart:
    """The answer to what is typed."""
    if form.pattern is None:
        wrong = tuple(sentence for field, sentence in form.errors.items() if field != "title")
        return CheckPart(
            errors=wrong if form.typed.written_beads else (),
            waiting=not form.typed.written_beads,
            sentence="",
            chart=Markup(""),
            drawn=0,
            beads=0,
            signs=(),
            alike=(),
        )
    pattern = form.pattern
    drawn = min(len(pattern.main.beads), MOST_DRAWN)
    picture = to_svg(chart(pattern, 0, drawn, BEAD_MM, upright=False))
    shown = pattern.drawn if pattern.in_parts else pattern.main.beads
    counts = tuple((sign, shown.count(index)) for index, sign in enumerate(signs(pattern.palette)))
    return CheckPart(
        errors=(),
        waiting=False,
        sentence=_sentence(pattern),
        chart=Markup(picture),
        drawn=drawn,
        beads=len(pattern.main.beads),
        signs=counts,
        alike=alike_in_words(pattern.palette)[:MOST_CHANGES],
    )


def _theirs(stored: StoredPattern) -> Theirs:
    return Theirs(stored.revision, stored.revision_date, editor_of(stored).typed.written_beads)


def _sentence(pattern: Pattern) -> str:
    drift, closing = drift_in_words(pattern.drift)[0], ", ".join(filter(None, closing_in_words(pattern)))
    beads = len(pattern.main.beads)
    rounds = plain(beads / pattern.around, 2)
    if len(pattern.parts) > 1 and pattern.in_parts:
        return (
            f"{counted(len(pattern.parts), 'part')}, {counted(pattern.beads, 'bead')} drawn. “{pattern.main.name}”: "
            f"{count(beads)} beads, {rounds} rounds, repeat {counted(pattern.repeat, 'bead')}, drift {drift}. "
            f"A ring closes {closing}."
        )
    return (
        f"{count(beads)} beads, {rounds} rounds. Repeat {counted(pattern.repeat, 'bead')}, drift {drift}. "
        f"A ring closes {closing}."
    )
