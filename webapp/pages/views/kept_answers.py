"""Answers that were kept: the list of them, and one asked again."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import Annotated

from engine.counting.answers import Answer
from engine.counting.asked_again import AskedAgain, Figure, asked_again
from engine.units import count, counted
from webapp.pages.addresses import address
from webapp.pages.views.frame import Frame
from webapp.records import GivenAnswer, StoredPattern

AS_IT_WAS = "Today the answer is the same in every figure."
GONE = "The pattern is no longer in the library, so the question cannot be asked again."
OTHER_SUMS = (
    "The pattern and the settings are as they were, but the way of counting has changed: "
    "{} was the answer then, and it is {} today."
)
OTHER_PROGRAM = (
    "The way of counting has changed, too: {} was the answer then; "
    "from the same pattern and settings it would be {} today."
)


@dataclass(frozen=True)
class KeptLine:
    """A kept answer in a list."""

    name: Annotated[str, "Who asked."]
    title: Annotated[str, "The pattern's title then."]
    asked: Annotated[datetime, "When it was asked."]
    beads: Annotated[str, "How many beads were told."]
    link: Annotated[str, "Its address."]


@dataclass(frozen=True)
class KeptAnswersPage:
    """The answers that were kept, at `/answers/kept`."""

    frame: Frame
    search: Annotated[str, "What is searched for in names and titles."]
    lines: Annotated[tuple[KeptLine, ...], "The newest that were found."]


@dataclass(frozen=True)
class KeptAnswerPage:
    """A kept answer, and the same question today, at `/answers/kept/{answer}`."""

    frame: Frame
    id: Annotated[int, "The number of the kept answer."]
    name: Annotated[str, "Who asked."]
    title: Annotated[str, "The pattern's title then."]
    asked: Annotated[datetime, "When it was asked."]
    sent: Annotated[str, "The reply as it was kept."]
    outcome: Annotated[str, "What asking again came to, in one sentence."]
    figures: Annotated[tuple[Figure, ...], "The figures then and now; none where it cannot be asked again."]
    reasons: Annotated[tuple[str, ...], "Why figures differ, in sentences."]
    desk: Annotated[str, "The same question at the desk; empty where the pattern is gone."]


def kept_answers_page(frame: Frame, search: str, found: Iterable[GivenAnswer]) -> KeptAnswersPage:
    """The list of what was found."""
    return KeptAnswersPage(
        frame,
        search,
        tuple(
            KeptLine(
                name=given.name,
                title=given.title,
                asked=given.asked,
                beads=counted(given.beads, "bead"),
                link=address("kept_answer", answer=given.id),
            )
            for given in found
        ),
    )


def kept_answer_page(
    frame: Frame,
    given: GivenAnswer,
    then: Answer,
    now: Answer | None,
    stored: StoredPattern | None,
    refused: str = "",
) -> KeptAnswerPage:
    """A kept answer beside that of today, or the sentence that says why there is none."""
    compared = asked_again(then, now, frame.units) if now else None
    return KeptAnswerPage(
        frame=frame,
        id=given.id,
        name=given.name,
        title=given.title,
        asked=given.asked,
        sent=given.sent,
        outcome=_outcome(given, then, compared) if compared else refused or GONE,
        figures=compared.figures if compared else (),
        reasons=_reasons(given, then, stored, compared),
        desk=f"{address('answers')}?{given.question}" if stored else "",
    )


def _outcome(given: GivenAnswer, then: Answer, compared: AskedAgain) -> str:
    """What asking again came to; `then` is counted anew, so what was told may be another number."""
    if compared.change:
        return compared.change
    changed = [figure.name[:1].lower() + figure.name[1:] for figure in compared.figures if figure.differs]
    if given.beads == then.materials.beads:
        return f"As many beads as before; other figures differ: {', '.join(changed)}." if changed else AS_IT_WAS
    outcome = _told(OTHER_SUMS if not changed else OTHER_PROGRAM, given, then)
    return f"{outcome} Of the figures below, these differ: {', '.join(changed)}." if changed else outcome


def _told(sentence: str, given: GivenAnswer, then: Answer) -> str:
    return sentence.format(counted(given.beads, "bead"), count(then.materials.beads))


def _reasons(
    given: GivenAnswer, then: Answer, stored: StoredPattern | None, compared: AskedAgain | None
) -> tuple[str, ...]:
    """The reasons of the engine, with the revisions of a pattern that has changed; and a figure told by other sums."""
    reasons = compared.reasons if compared else ()
    if given.beads != then.materials.beads and (compared is None or compared.change):
        reasons = (_told(OTHER_PROGRAM, given, then), *reasons)
    if stored is None:
        return reasons
    state = f"revision {stored.revision}{' with a working copy' if stored.working else ''}"
    said = f"The pattern has changed: revision {given.counted.revision} then, {state} now."
    return tuple(said if reason == "The pattern has changed." else reason for reason in reasons)
