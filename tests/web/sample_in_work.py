"""Pieces in work and kept answers of a sample pattern, in every state that looks different."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from engine.counting.answers import Answer, answer
from engine.counting.questions import Question
from engine.counting.rope import Swatch
from engine.counting.workshop import Workshop
from tests.web.sample_kept import WHEN, before
from webapp.pages.views import all as views
from webapp.records import Counted, GivenAnswer, Piece, StoredPattern
from webapp.records.in_work import STATES


def pieces_of(stored: StoredPattern) -> tuple[Piece, ...]:
    """A piece in every state, called by the title of the pattern."""
    return tuple(
        Piece(
            id=number,
            of=stored.id,
            name=stored.pattern.title,
            begun=WHEN,
            counted=Counted(stored.pattern, 3, "{}"),
            asked="length=19+cm",
            thread=1,
            strung=4,
            sequence=number,
            state=state,
        )
        for number, state in enumerate(STATES, 1)
    )


def in_work_pages(frame: views.Frame, stored: StoredPattern) -> Mapping[str, tuple[str, object]]:
    """A piece as it was begun, one of a pattern that has changed, and answers found and asked again."""
    piece, finished, _ = pieces_of(stored)
    begun, long = answered(stored), answered(stored, Question(4000.0), 1.0)
    changed = replace(finished, counted=Counted(before(stored), 2, "{}"), thread=99, strung=9999)
    given = GivenAnswer(
        id=1,
        of=stored.id,
        title=stored.pattern.title,
        name=stored.pattern.title,
        asked=WHEN,
        counted=Counted(stored.pattern, 3, "{}"),
        question="pattern=7",
        sent=stored.pattern.title,
        beads=begun.materials.beads,
    )
    measured = Workshop(swatches=(Swatch("11/0 round", 6, "slip", 240, 62.0, "2026-03-01"),))
    again = answer(stored.pattern, Question(190.0, "clasp"), measured)
    return {
        "piece": ("stringing/piece.html", views.piece_page(frame, stored, piece, begun, begun)),
        "piece, of a pattern that has changed": (
            "stringing/piece.html",
            views.piece_page(frame, stored, changed, long, None, stored.pattern.title),
        ),
        "kept_answers": ("answers/kept.html", views.kept_answers_page(frame, stored.pattern.title, (given,))),
        "kept_answers, none": ("answers/kept.html", views.kept_answers_page(frame, "", ())),
        "kept_answers, not found": ("answers/kept.html", views.kept_answers_page(frame, "zither", ())),
        "kept_answer": ("answers/kept_one.html", views.kept_answer_page(frame, given, begun, again, stored)),
        "kept_answer, of a pattern that is gone": (
            "answers/kept_one.html",
            views.kept_answer_page(frame, replace(given, beads=1), begun, None, None),
        ),
    }


def answered(stored: StoredPattern, question: Question | None = None, plan: str | float = "balanced") -> Answer:
    """The answer to a question about the pattern."""
    return answer(stored.pattern, question or Question(190.0, "clasp"), plan=plan)
