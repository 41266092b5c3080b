"""The page for a list or a table that is brought along, with what was understood."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Annotated

from markupsafe import Markup

from engine.drawing.charts import chart
from engine.drawing.svg import to_svg
from engine.pattern.starts.all import winds_in_words
from engine.units import counted
from webapp.pages.forms.brought import WRITINGS, BroughtForm
from webapp.pages.views.frame import Frame
from webapp.pages.views.signs import Sign, signs

MOST_DRAWN, BEAD_MM = 800, 4.0


@dataclass(frozen=True)
class Understood:
    """What was understood of a text."""

    words: Annotated[str, "Beads, how many go around, and how a repeat lies on the rope."]
    chart: Annotated[Markup, "The chart lying, as SVG of our own drawing."]
    signs: Annotated[tuple[tuple[Sign, int], ...], "The beads with counts."]


@dataclass(frozen=True)
class BringPage:
    """A list or a table brought along, at `/patterns/begin/bring`."""

    frame: Frame
    form: BroughtForm
    writings: Annotated[tuple[tuple[str, str], ...], "How it may be written: value and words."]
    kinds: Annotated[tuple[tuple[str, str], ...], "The bead kinds to choose from: value and words."]
    understood: Understood | None


def bring_page(frame: Frame, form: BroughtForm, kinds: Iterable[str]) -> BringPage:
    """The page, empty or with what was understood."""
    return BringPage(
        frame=frame,
        form=form,
        writings=tuple(WRITINGS.items()),
        kinds=tuple((kind, kind) for kind in kinds),
        understood=_understood(form),
    )


def _understood(form: BroughtForm) -> Understood | None:
    pattern = form.pattern
    if pattern is None:
        return None
    beads = pattern.chart
    return Understood(
        words=f"{counted(len(beads), 'bead')}, {pattern.around} around. {winds_in_words(pattern.around, beads)}",
        chart=Markup(to_svg(chart(pattern, 0, min(len(beads), MOST_DRAWN), BEAD_MM, upright=False))),
        signs=tuple(zip(signs(pattern.palette), map(beads.count, range(len(pattern.palette))), strict=True)),
    )
