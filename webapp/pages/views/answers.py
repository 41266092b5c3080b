"""The customer desk: a question, its answer in a sentence, what stands behind it, and the reply."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Annotated, TypeVar

from engine.counting.answers import Answer
from engine.counting.closings import Closing, closings
from engine.counting.doubts import about_bead_size, doubts
from engine.counting.findings import Fitting, fittings
from engine.counting.finished import NAMED
from engine.counting.offers import LongerThreads, Offer, longer_threads, offers
from engine.counting.reply import ReplyRow, Words, reply, reply_rows
from engine.counting.size_table import SizeRow, in_kinds, size_table
from engine.counting.sizes import NamedSize, Workshop, main_kind
from engine.counting.stock import Kit, Longest, beads_in_hand, kit, longest
from engine.counting.stopped import Remaining, remaining
from engine.errors import EngineError
from engine.pattern.pattern import Pattern
from webapp.pages.addresses import address
from webapp.pages.forms.answers import DeskForm, read_grams, read_packs, read_worked
from webapp.pages.views.frame import Frame
from webapp.pages.views.materials import NeedLine
from webapp.pages.views.signs import signs
from webapp.pages.views.working import worked
from webapp.records import MakerSettings, PatternSummary, StoredPattern

ROUNDED = {"bead": "As asked", "pass": "Nearest whole pass", "down": "Whole passes, shorter",
           "up": "Whole passes, longer"}
SHOWN_RUNS = 40

T = TypeVar("T")


@dataclass(frozen=True)
class Found:
    """An answer and everything that the desk shows of it."""

    answer: Annotated[Answer, "Size, list, bill and sentence."]
    doubts: Annotated[tuple[str, ...], "Gentle questions about what may have been meant."]
    lines: Annotated[tuple[NeedLine, ...], "The beads by colour."]
    total: Annotated[ReplyRow, "All beads together, in words."]
    offers: Annotated[tuple[tuple[str, Offer], ...], "Lengths to offer, each with its words."]
    rings: Annotated[tuple[Closing, ...], "Rings near the girth; for a ring alone."]
    fittings: Annotated[tuple[Fitting, ...], "What goes with the rope."]
    longer: Annotated[LongerThreads | None, "What longer threads would spare, where there are many."]
    longer_link: Annotated[str, "The same question with those threads."]
    reply: Annotated[str, "The reply in plain text."]
    reply_rows: Annotated[tuple[ReplyRow, ...], "Its beads as a table."]
    compared: Annotated[tuple[SizeRow, ...], "The pattern in several sizes or kinds, where that was asked."]
    longest: Annotated[Longest | None, "The longest rope of the beads in hand, where they were named."]
    kit: Annotated[Kit | None, "The shopping list for several pieces, where that was asked."]
    remaining: Annotated[Remaining | None, "What is still to string, where a bead was named."]
    remaining_runs: Annotated[str, "Its runs in one line, in stringing order."]


@dataclass(frozen=True)
class AnswersPage:
    """The desk at `/answers`."""

    frame: Annotated[Frame, "What stands round the page."]
    form: Annotated[DeskForm, "The question as typed, and what is wrong."]
    patterns: Annotated[tuple[str, ...], "Titles to choose from while typing."]
    several: Annotated[tuple[tuple[str, str], ...], "Patterns that the typed name may mean: address and title."]
    sizes: Annotated[tuple[str, ...], "Names of finished sizes to choose from while typing."]
    kinds: Annotated[tuple[str, ...], "The bead kinds to choose from."]
    id: Annotated[int, "The pattern's number; nought where none is meant yet."]
    title: Annotated[str, "The pattern's title."]
    shown: Annotated[str, "What stands in the pattern's field: as typed, else its title or number."]
    found: Annotated[Found | None, "The answer; none when something is wrong."]


def answers_page(frame: Frame, form: DeskForm, stored: StoredPattern | None, workshop: Workshop, maker: MakerSettings,
                 near: Iterable[PatternSummary] = (), own: Iterable[NamedSize] = ()) -> AnswersPage:
    """The desk for what the form asks; `near` are patterns that the typed name may mean, or the newest."""
    near = tuple(near)
    wrong, found = dict(form.errors), None
    if stored is not None:
        done = worked(stored.pattern, form.size, workshop, frame.units)
        wrong |= done.form.errors
        if "kind" in wrong and (question := about_bead_size(form.size.typed.kind)):
            wrong["kind"] = question
        if done.answer and not wrong:
            found = _found(stored.id, done.pattern, done.answer, form, workshop, maker, wrong)
    several = () if stored or not form.typed.pattern else tuple(
        (address("answers", pattern=one.id, length=form.typed.length, closure=form.typed.closure),
         f"{one.title}, number {one.id}")
        for one in near)
    if stored is None and form.typed.pattern:
        wrong["pattern"] = ("More than one pattern may be meant." if several
                            else "No pattern of that name is in the library.")
    return AnswersPage(
        frame, replace(form, errors=wrong), tuple(dict.fromkeys(one.title for one in near)), several,
        tuple(size.name for size in (*NAMED, *own)), tuple(workshop.kinds), stored.id if stored else 0,
        stored.pattern.title if stored else "", form.typed.pattern or _name(stored, near), found)


def _name(stored: StoredPattern | None, near: Iterable[PatternSummary]) -> str:
    """What names the pattern again when the form is sent."""
    if stored is None:
        return ""
    same = [one for one in near if one.title.casefold() == stored.pattern.title.casefold()]
    return stored.pattern.title if len(same) < 2 else str(stored.id)


def words(maker: MakerSettings, sections: tuple[str, ...]) -> Words:
    """The maker's words round a reply; without a closing of their own, the maker's name ends it."""
    return Words(maker.greeting, maker.closing or maker.maker, maker.units, sections)


def _found(number: int, pattern: Pattern, answer: Answer, form: DeskForm, workshop: Workshop, maker: MakerSettings,
           wrong: dict[str, str]) -> Found:
    question, size, typed = form.size.question, answer.size, form.typed
    longer = longer_threads(pattern, size, answer.stringing, workshop)
    drawn = zip(signs(pattern.palette), answer.materials.colours, strict=True)
    left = _asked("worked", typed.worked, wrong, lambda: remaining(
        pattern, size, read_worked(typed.worked, pattern.around), workshop, form.size.spare))
    rows = reply_rows(answer)
    return Found(
        answer, doubts(question, size, maker.units),
        tuple(NeedLine(sign, need) for sign, need in drawn),
        rows[-1], tuple((ROUNDED[offer.rounding], offer) for offer in offers(pattern, question, workshop)),
        closings(pattern, question, workshop) if question.closure == "ring" else (),
        fittings(size, main_kind(pattern, question, workshop), answer.materials.thread_mm, workshop, maker.units),
        longer, _longer_link(number, form, longer),
        reply(pattern, answer, words(maker, form.sections), workshop), rows,
        _compared(pattern, form, workshop, maker.units),
        _asked("have", typed.have, wrong, lambda: _longest(pattern, form, workshop)),
        _asked("pieces", typed.pieces, wrong, lambda: _kit(pattern, answer, typed.pieces, typed.packs, workshop)),
        left, " ".join(f"{run.beads}{run.code}" for run in left.runs[:SHOWN_RUNS]) if left else "")


def _asked(field: str, text: str, wrong: dict[str, str], work: Callable[[], T]) -> T | None:
    """What was asked beside the answer; an objection stands beside its field and leaves the answer as it is."""
    if not text:
        return None
    try:
        return work()
    except EngineError as error:
        wrong[error.field if error.field in ("have", "packs", "pieces", "worked") else field] = error.message
        return None


def _longest(pattern: Pattern, form: DeskForm, workshop: Workshop) -> Longest:
    question, given = form.size.question, read_grams(form.typed.have, pattern.palette.codes)
    return longest(pattern, beads_in_hand(pattern, given, question, workshop), question, workshop,
                   question.rounding != "bead")


def _kit(pattern: Pattern, answer: Answer, pieces: str, packs: str, workshop: Workshop) -> Kit:
    number = int(pieces) if pieces.isdecimal() and len(pieces) < 7 else 0
    return kit(answer.materials, number, read_packs(packs, pattern.palette.codes), workshop)


def _compared(pattern: Pattern, form: DeskForm, workshop: Workshop, units: str) -> tuple[SizeRow, ...]:
    size, compared = form.size, form.typed.compare
    if compared == "sizes":
        return size_table(pattern, workshop, size.question, size.plan, size.spare, units)
    if compared == "kinds":
        return in_kinds(pattern, workshop, size.question, workshop.kinds, size.plan, size.spare, units)
    return ()


def _longer_link(number: int, form: DeskForm, longer: LongerThreads | None) -> str:
    if longer is None:
        return ""
    kept: Mapping[str, str] = {name: value for name, value in vars(form.size.typed).items()
                               if name in ("kind", "stitch", "round", "spare", "pass_length") and value}
    return address("answers", pattern=number, length=form.typed.length, closure=form.typed.closure, threads="metres",
                   metres=f"{longer.metres:g}", **kept)
