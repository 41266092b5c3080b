"""Every page on which a pattern is begun, in every state that looks different."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from engine.counting.workshop import Workshop
from engine.pattern.old_charts.drawn import Drawn
from engine.pattern.old_charts.marks import SYMBOLS
from engine.pattern.old_charts.paper import Paper
from engine.pattern.old_charts.reading import Reading
from engine.pattern.photographs.laid import Summed
from engine.pattern.starts.all import STARTS
from webapp.pages.forms.brought import read_brought
from webapp.pages.forms.old_chart import read_old_chart
from webapp.pages.forms.photograph import read_photograph
from webapp.pages.forms.repeats import read_repeats
from webapp.pages.forms.starts import read_start
from webapp.pages.forms.symmetric import read_symmetric
from webapp.pages.views import all as views
from webapp.pages.views.brought import bring_page
from webapp.pages.views.old_chart import old_chart_in, old_chart_page
from webapp.pages.views.photograph import hand_in_page, photograph_page
from webapp.pages.views.repeats import repeats_page
from webapp.pages.views.starts import begin_page, start_page
from webapp.pages.views.symmetric import symmetric_page
from webapp.records import StoredPattern

WORKSHOP = Workshop()
TOKEN = "0" * 32
PICTURE = Summed(np.linspace(0, 1, 20 * 30 * 4, dtype=np.float32).reshape(20, 30, 4))


def _old_chart_read(paper: Paper, drawn: Drawn, many: int, fit: bool, marks: str) -> tuple[Paper, Reading]:
    beads = bytes(k % 3 for k in range(len(drawn.middles())))
    doubts = tuple(range(min(70, len(beads))))
    if marks == SYMBOLS:
        return paper, Reading(beads, ("", "", ""), doubts, (0, 1, 2))
    return paper, Reading(beads, ("#2f7f76", "#f3ecdd", "#a83a2c"), doubts)


def beginnings(frame: views.Frame, stored: StoredPattern, kinds: tuple[str, ...]) -> Mapping[str, tuple[str, object]]:
    """The ways to begin; titles are that of the pattern, which may be a hostile one."""
    title = ("title", stored.pattern.title)

    def photograph(*asked: tuple[str, str]) -> tuple[str, object]:
        form = read_photograph([title, *asked], lambda turn, box: PICTURE)
        return "begin/photograph.html", photograph_page(frame, TOKEN, form, kinds, (30, 20))

    def old_chart(*asked: tuple[str, str]) -> tuple[str, object]:
        form = read_old_chart([title, *asked], (300, 400), _old_chart_read)
        return "begin/old_chart.html", old_chart_page(frame, TOKEN, form, kinds)

    return {
        "begin": ("begin/page.html", begin_page(frame)),
        "start": ("begin/start.html", start_page(frame, read_start(STARTS["zigzag"], ()), kinds)),
        "start, wrong": (
            "begin/start.html",
            start_page(frame, read_start(STARTS["motif"], (("step", "2"), ("around", "99"))), kinds),
        ),
        "brought": ("begin/bring.html", bring_page(frame, read_brought((("text", "3 A 2 white"),)), kinds)),
        "brought, wrong": ("begin/bring.html", bring_page(frame, read_brought((("text", "3"),)), kinds)),
        "brought, empty": ("begin/bring.html", bring_page(frame, read_brought(()), kinds)),
        "symmetric": ("begin/symmetric.html", symmetric_page(frame, read_symmetric(()), kinds)),
        "symmetric, wrong": (
            "begin/symmetric.html",
            symmetric_page(frame, read_symmetric((("around", "99"), ("drawn", "Z"))), kinds),
        ),
        "small repeats": ("begin/repeats.html", repeats_page(frame, read_repeats((), WORKSHOP), kinds, 1)),
        "small repeats, wrong": (
            "begin/repeats.html",
            repeats_page(frame, read_repeats((("around", "40"), ("count", "x"), ("have", "y")), WORKSHOP), kinds, 1),
        ),
        "picture, to be handed in": ("begin/hand_in.html", hand_in_page(frame)),
        "picture, refused": ("begin/hand_in.html", hand_in_page(frame, stored.pattern.title)),
        "picture": photograph(),
        "picture, in chosen colours": photograph(("source", "chosen"), ("gap", "4"), ("rows", "90")),
        "old chart, to be handed in": ("begin/old_chart_in.html", old_chart_in(frame)),
        "old chart, refused": ("begin/old_chart_in.html", old_chart_in(frame, stored.pattern.title, "page", "two")),
        "old chart": old_chart(),
        "old chart, read": old_chart(("around", "5"), ("rows", "4"), ("fix-1", "1"), ("pull1x", "48"), ("pull1y", "9")),
        "old chart, in symbols": old_chart(
            ("around", "5"), ("rows", "4"), ("marks", "symbols"), ("code-1", "A"), ("rowx", "80"), ("rowy", "12")
        ),
        "old chart, wrong": old_chart(("around", "99"), ("x1", "95"), ("many", "70"), ("rowing", "?")),
        "picture, wrong": photograph(("left", "x"), ("source", "cabinet"), ("around", "99"), ("tilt", "80")),
    }
