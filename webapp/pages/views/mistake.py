"""Where did my stringing go wrong: what was typed, held against the pattern."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Annotated

from engine.counting.answers import Answer
from engine.counting.mistakes import (
    STRUNG,
    WORKED,
    Fit,
    find_mistakes,
    mistake_in_words,
    read_stretch,
    remedy_in_words,
)
from engine.counting.stopped import place_after
from engine.counting.weighed import weigh, weighed_in_words
from engine.counting.workshop import Workshop
from engine.errors import EngineError
from engine.numbers import typed_milligrams
from engine.units import count, counted
from webapp.pages.forms.sent import Sent
from webapp.pages.forms.size import SizeForm, work_size
from webapp.pages.views.frame import Frame, Head, head
from webapp.pages.views.signs import Sign, signs
from webapp.records import StoredPattern


@dataclass(frozen=True)
class MistakeLine:
    """One mistake, and what to do."""

    words: Annotated[str, "What is wrong, and where."]
    remedy: Annotated[str, "What to do about it."]


@dataclass(frozen=True)
class MistakePage:
    """The search for a mistake at `/patterns/{id}/mistake`."""

    frame: Frame
    head: Head
    form: SizeForm
    typed: Annotated[str, "What was typed."]
    read: Annotated[str, "The order in which it was read: strung or worked."]
    signs: Annotated[tuple[Sign, ...], "The beads of the pattern."]
    wrong: Annotated[str, "What is wrong with what was typed; empty where nothing is."]
    answer: Annotated[str, "Where it fits, or that it does not; empty before anything is typed."]
    right: Annotated[bool, "Whether it fits without a mistake."]
    mistakes: tuple[MistakeLine, ...]
    threads: Annotated[tuple[tuple[int, str, str], ...], "Threads: number, grams as typed, what the scales say."]
    hundred: Annotated[str, "What a hundred beads weigh, as typed."]
    weighed_wrong: Annotated[str, "What is wrong with what was weighed; empty where nothing is."]


def mistake_page(
    frame: Frame, stored: StoredPattern, form: SizeForm, workshop: Workshop, asked: Iterable[tuple[str, object]]
) -> MistakePage:
    """The page, empty or with what was found."""
    sent, worked = Sent(asked), work_size(stored.pattern, form, workshop, frame.units)
    read = WORKED if sent.one("read") == WORKED else STRUNG
    fit, wrong, around = None, "", worked.pattern.around
    if sent.one("beads") and worked.answer:
        try:
            stretch = read_stretch(sent.one("beads"), worked.pattern.palette)
            fit = find_mistakes(worked.answer.size, worked.answer.stringing, stretch, read == STRUNG)
        except EngineError as error:
            wrong = error.message
    threads, weighed_wrong = _on_scales(worked.answer, sent)
    looked = bool(sent.one("beads") and worked.answer and not wrong)
    return MistakePage(
        frame=frame,
        head=head(stored),
        form=worked.form,
        typed=sent.one("beads"),
        read=read,
        signs=signs(worked.pattern.palette),
        wrong=wrong,
        answer=_answer(fit, around, read) if looked else "",
        right=fit is not None and not fit.mistakes,
        mistakes=tuple(
            MistakeLine(mistake_in_words(mistake, read == STRUNG), remedy_in_words(mistake))
            for mistake in (fit.mistakes if fit else ())
        ),
        threads=threads,
        hundred=sent.one("hundred"),
        weighed_wrong=weighed_wrong,
    )


def _on_scales(answer: Answer | None, sent: Sent) -> tuple[tuple[tuple[int, str, str], ...], str]:
    """What every thread should weigh, and what is wrong with what was weighed."""
    if answer is None:
        return (), ""
    typed = (*sent.all("weighs"), *("",) * len(answer.stringing.threads))[: len(answer.stringing.threads)]
    try:
        bead = _grams(sent.one("hundred"))
        told = weigh(answer.size, answer.stringing, tuple(map(_grams, typed)), bead / 100 if bead is not None else None)
    except EngineError as error:
        return tuple((number, text, "") for number, text in enumerate(typed, 1)), error.message
    return tuple((one.number, text, weighed_in_words(one)) for one, text in zip(told, typed, strict=True)), ""


def _grams(text: str) -> float | None:
    return typed_milligrams(text, "what was weighed") / 1000 if text else None


def _answer(fit: Fit | None, around: int, read: str) -> str:
    if fit is None:
        return (
            "It fits nowhere in this pattern: more than a quarter of it differs. Check the beads' codes, or type more."
        )
    (first, at), (last, until) = (place_after(bead - 1, around) for bead in (fit.first, fit.last))
    other_way = "worked" if read == STRUNG else "strung"
    said = (
        f"{counted(len(fit.mistakes), 'mistake')}." if fit.mistakes else "No mistake.",
        f"It fits beads {count(fit.first)} to {count(fit.last)} of the rope, round {count(first)}, place {at} to "
        f"round {count(last)}, place {until}.",
        f"It was read the other way round: as it is {other_way}." if fit.turned else "",
        f"{counted(fit.places, 'place')} of the repeat fit as well as one another; type more beads to know which it is."
        if fit.places > 1
        else "",
    )
    return " ".join(filter(None, said))
