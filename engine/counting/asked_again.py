"""An answer that was given beside the one that the same question has today: what became of each figure, and why."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from engine.counting.answers import Answer
from engine.counting.change import change_in_words, change_since
from engine.pattern.pattern import Pattern
from engine.units import count, grams, length, metres, millimetres, percent

NO_LONGER = "not used"


class Figure(NamedTuple):
    """A figure as it was told and as it is today, both in words."""

    name: str
    then: str
    now: str

    @property
    def differs(self) -> bool:
        return self.then != self.now


@dataclass(frozen=True)
class AskedAgain:
    """The figures then and now, what changed in one sentence, and the reasons in sentences; both empty where all is as
    it was.
    """

    figures: tuple[Figure, ...]
    change: str
    reasons: tuple[str, ...]


def asked_again(then: Answer, now: Answer, units: str = "cm") -> AskedAgain:
    """The two answers to one question. Reasons are told only where a figure differs."""
    figures = tuple(_figures(then, now, units))
    differs = any(figure.differs for figure in figures)
    change = change_since(then, now)
    return AskedAgain(
        figures=figures,
        change=change_in_words(change, units) if change else "",
        reasons=tuple(_reasons(then, now)) if differs else (),
    )


def _figures(then: Answer, now: Answer, units: str) -> Iterator[Figure]:
    old, new = then.materials, now.materials
    yield Figure("Beads", count(old.beads), count(new.beads))
    yield Figure("Finished size", length(old.finished_mm, units), length(new.finished_mm, units))
    yield Figure("Strung length", metres(old.strung_mm), metres(new.strung_mm))
    yield Figure("Threads", count(old.threads), count(new.threads))
    yield Figure("Thread", metres(old.thread_mm), metres(new.thread_mm))
    yield Figure("Spare", percent(old.spare), percent(new.spare))
    before, after = _told_by_code(then), _told_by_code(now)
    for code in dict.fromkeys((*before, *after)):
        yield Figure(f"Bead {code}", before.get(code, NO_LONGER), after.get(code, NO_LONGER))


def _told_by_code(answer: Answer) -> dict[str, str]:
    """What each bead was told to take: "1,634, 14.9 g, buy 18 g"."""
    return {
        need.code: f"{count(need.beads)}, {grams(need.grams)}, buy {count(need.buy_grams)} g"
        for need in answer.materials.colours
    }


def _reasons(then: Answer, now: Answer) -> Iterator[str]:
    old, new = then.size, now.size
    if _worked(then.pattern) != _worked(now.pattern):
        yield "The pattern has changed."
    if then.materials.source != now.materials.source:
        yield f"The rope is measured otherwise. Then: {then.materials.source}. Now: {now.materials.source}."
    elif old.ropes != new.ropes and _worked(then.pattern) == _worked(now.pattern):
        yield "The measures by which the rope is worked have changed."
    for name in dict.fromkeys(kind.name for kind in (*old.kinds, *new.kinds)):
        kinds = tuple(next((kind for kind in size.kinds if kind.name == name), None) for size in (old, new))
        if None not in kinds and kinds[0] != kinds[1]:
            yield f"The measures of the bead kind “{name}” have changed."
    if old.closure_mm != new.closure_mm:
        yield f"The closure added {millimetres(old.closure_mm)} then, and {millimetres(new.closure_mm)} now."
    if (old.workshop.longest_mm, old.workshop.heaviest_g) != (new.workshop.longest_mm, new.workshop.heaviest_g):
        yield "What a thread may hold has changed in the settings."
    if then.materials.use.source != now.materials.use.source:
        yield f"Thread is reckoned otherwise. Then: {then.materials.use.source}. Now: {now.materials.use.source}."
    if then.materials.spare_asked != now.materials.spare_asked:
        yield f"{percent(then.materials.spare_asked)} was spared then, and {percent(now.materials.spare_asked)} now."


def _worked(pattern: Pattern) -> tuple[object, ...]:
    """What of a pattern enters the sums."""
    beads = tuple((entry.code, entry.kind) for entry in pattern.palette)
    return pattern.around, pattern.parts, beads, pattern.stitch_worked
