"""The customer desk: a question, its answer in a sentence, what stands behind it, and the reply."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import isfinite
from typing import Annotated

from engine.counting.answers import Answer
from engine.counting.closings import Closing, closings
from engine.counting.doubts import about_bead_size, doubts
from engine.counting.findings import Fitting, fittings
from engine.counting.finished import NAMED
from engine.counting.offers import LongerThreads, Offer, longer_threads, offers
from engine.counting.reply import ReplyRow, Words, reply, reply_rows
from engine.counting.sizes import NamedSize, Workshop, kinds_of, main_kind
from engine.counting.stringing import Repeated, limit_mm
from engine.counting.sure import how_sure
from engine.pattern.pattern import Pattern
from engine.units import metres, numbers_in_words
from webapp.pages.addresses import address
from webapp.pages.forms.answers import DeskForm, number_in, numbered
from webapp.pages.forms.settings import UNITS
from webapp.pages.views.beside import Beside, beside
from webapp.pages.views.frame import Frame, in_terms, stitched
from webapp.pages.views.materials import NeedLine
from webapp.pages.views.signs import signs
from webapp.pages.views.working import worked
from webapp.records import MakerSettings, PatternSummary, StoredPattern

ROUNDED = {
    "bead": "As asked",
    "pass": "Nearest whole pass",
    "down": "Whole passes, shorter",
    "up": "Whole passes, longer",
}
# fields that may stand in a fold, away from the sentence about them
FOLDED = {
    "kind": "Bead kind",
    "wrist": "Wrist",
    "ease": "Ease",
    "hand_girth": "Hand girth",
    "inner": "Inner diameter",
    "metres": "Metres a thread",
    "joins": "Joined after beads",
    "spare": "Spare",
    "pass_length": "Your own pass",
    "compare_sizes": "Sizes to compare",
    "have": "Beads in hand",
    "pieces": "Pieces",
    "packs": "Packs",
    "worked": "Stopped after",
    "out_thread": "Thread ended after",
    "thread_left": "Thread left",
    "out_colour": "Out of a colour",
    "beads_left": "Beads left",
}


@dataclass(frozen=True)
class Found:
    """An answer and everything that the desk shows of it."""

    answer: Annotated[Answer, "Size, list, bill and sentence."]
    source: Annotated[str, "Where the lengths come from, in the maker's crochet terms."]
    sure: Annotated[str, "How sure they are, and why."]
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
    threads: Annotated[tuple[ThreadLine, ...], "The lists that differ, each with its threads."]
    kept_to: Annotated[str, "That threads are as chosen, and the limit of the settings that they are kept to."]
    beside: Annotated[Beside, "What was asked beside it."]
    links: Annotated[Links, "The same question elsewhere."]


@dataclass(frozen=True)
class ThreadLine:
    """A list of beads, and the threads that it is strung for."""

    name: Annotated[str, "Which threads: “Thread 3”, “Threads 1 to 8”."]
    beads: Annotated[int, "How many beads."]
    strung_mm: Annotated[float, "How long they are when strung."]


@dataclass(frozen=True)
class Links:
    """The same question on other pages."""

    materials: Annotated[str, "Its bill."]
    stringing: Annotated[str, "Its list."]
    booklet: Annotated[str, "Its booklet."]
    rest: Annotated[str, "The list with a join where the work stopped; empty where that was not asked."]
    new_thread: Annotated[str, "The list with a join where the thread ended; empty where that was not asked."]
    new_beads: Annotated[str, "The list with a join where a colour ended; empty where that was not asked."]


@dataclass(frozen=True)
class AnswersPage:
    """The desk at `/answers`."""

    frame: Frame
    form: Annotated[DeskForm, "The question as typed, and what is wrong."]
    patterns: Annotated[tuple[str, ...], "Titles to choose from while typing."]
    several: Annotated[tuple[tuple[str, str], ...], "Patterns that the typed name may mean: address and title."]
    sizes: Annotated[tuple[str, ...], "Names of finished sizes to choose from while typing."]
    kinds: Annotated[tuple[str, ...], "The bead kinds to choose from."]
    id: Annotated[int, "The pattern's number; nought where none is meant yet."]
    title: Annotated[str, "The pattern's title."]
    shown: Annotated[str, "What stands in the pattern's field: as typed, else its title, with its number if need be."]
    found: Annotated[Found | None, "The answer; none when something is wrong."]
    wrong: Annotated[tuple[tuple[str, str], ...], "What is wrong: the field in words, which may be empty, and why."]


def answers_page(
    frame: Frame,
    form: DeskForm,
    stored: StoredPattern | None,
    workshop: Workshop,
    maker: MakerSettings,
    near: Iterable[PatternSummary] = (),
    own: Iterable[NamedSize] = (),
) -> AnswersPage:
    """The desk for what the form asks; `near` are patterns that the typed name may mean, or the newest."""
    near, own = tuple(near), tuple(own)
    frame, maker = in_units(frame, maker, form.typed.units)
    wrong, found = dict(form.errors), None
    if stored is not None:
        done = worked(stored.pattern, form.size, workshop, frame.units)
        wrong |= done.form.errors
        if "kind" in wrong and (question := about_bead_size(form.size.typed.kind)):
            wrong["kind"] = question
        if done.answer and not wrong:
            found = _found(stored.id, done.pattern, done.answer, form, workshop, maker, wrong, own)
    several = (
        ()
        if stored or not form.typed.pattern
        else tuple(
            (
                address("answers", pattern=one.id, length=form.typed.length, closure=form.typed.closure),
                numbered(one.title, one.id),
            )
            for one in near
        )
    )
    if stored is None and form.typed.pattern:
        wrong["pattern"] = (
            "More than one pattern may be meant." if several else "No pattern of that name is in the library."
        )
    return AnswersPage(
        frame,
        replace(form, errors=wrong),
        tuple(dict.fromkeys(one.title for one in near)),
        several,
        tuple(size.name for size in (*NAMED, *own)),
        tuple(workshop.kinds),
        stored.id if stored else 0,
        stored.pattern.title if stored else "",
        _shown(form.typed.pattern, stored, near),
        found,
        tuple((FOLDED.get(field, ""), sentence) for field, sentence in wrong.items()),
    )


def _shown(typed: str, stored: StoredPattern | None, near: Iterable[PatternSummary]) -> str:
    """What names the pattern again when the form is sent: as typed, in the place of a number its title."""
    if stored is None or (typed and number_in(typed) is None):
        return typed
    title = stored.pattern.title
    same = [one.id for one in near if one.title.casefold() == title.casefold()]
    return title if same == [stored.id] and number_in(title) is None else numbered(title, stored.id)


def in_units(frame: Frame, maker: MakerSettings, units: str) -> tuple[Frame, MakerSettings]:
    """Frame and settings with the units asked for, if any are."""
    if units not in UNITS:
        return frame, maker
    return replace(frame, units=units), replace(maker, units=units)


def words(maker: MakerSettings, sections: tuple[str, ...]) -> Words:
    """The maker's words round a reply; without a closing of their own, the maker's name ends it."""
    return Words(maker.greeting, maker.closing or maker.maker, maker.units, sections, stitched("single", maker.terms))


def _found(
    number: int,
    pattern: Pattern,
    answer: Answer,
    form: DeskForm,
    workshop: Workshop,
    maker: MakerSettings,
    wrong: dict[str, str],
    own: Iterable[NamedSize],
) -> Found:
    question, size = form.size.question, answer.size
    longer = longer_threads(pattern, size, answer.stringing, workshop)
    drawn = zip(signs(pattern.palette), answer.materials.colours, strict=True)
    asked = beside(pattern, answer, form.typed, workshop, form.size.plan, maker.units, own)
    wrong |= asked.errors
    rows = reply_rows(answer)
    return Found(
        answer,
        in_terms(answer.materials.source, maker.terms),
        in_terms(how_sure(pattern, size, workshop), maker.terms),
        doubts(question, size, maker.units),
        tuple(NeedLine(sign, need) for sign, need in drawn),
        rows[-1],
        tuple((ROUNDED[offer.rounding], offer) for offer in offers(pattern, question, workshop)),
        closings(pattern, question, workshop) if question.closure == "ring" else (),
        tuple(
            _told(one, maker.terms)
            for one in fittings(size, main_kind(pattern, question, workshop), answer.materials, workshop, maker.units)
        ),
        longer,
        _longer_link(number, form, longer),
        reply(pattern, answer, words(maker, form.sections), workshop),
        rows,
        tuple(_thread_line(one) for one in answer.stringing.distinct),
        _kept_to(pattern, answer, workshop),
        asked,
        _links(number, form, asked),
    )


def _told(fitting: Fitting, terms: str) -> Fitting:
    return Fitting(*(in_terms(text, terms) for text in fitting))


def _thread_line(repeated: Repeated) -> ThreadLine:
    thread, numbers = repeated
    return ThreadLine(
        f"Thread{'s' if len(numbers) > 1 else ''} {numbers_in_words(numbers)}", thread.beads, thread.strung_mm
    )


def _kept_to(pattern: Pattern, answer: Answer, workshop: Workshop) -> str:
    most_mm = limit_mm(kinds_of(pattern, answer.size.question, workshop), workshop)
    return f"as chosen, none over {metres(most_mm)} (settings)" if isfinite(most_mm) else "as chosen"


def _links(number: int, form: DeskForm, asked: Beside) -> Links:
    kept = {name: value for name, value in vars(form.size.typed).items() if value}
    cut = {name: value for name, value in kept.items() if name not in ("threads", "metres", "joins")}

    def joined(joins: Iterable[int]) -> str:
        places = ", ".join(map(str, joins))
        return address("stringing", id=number, **cut, threads="joins", joins=places) if places else ""

    stop = asked.remaining.worked if asked.remaining else 0
    return Links(
        address("materials", id=number, **kept),
        address("stringing", id=number, **kept),
        address("booklet", id=number, **kept),
        joined([stop] if stop else ()),
        joined(asked.out_thread.joins if asked.out_thread else ()),
        joined(asked.out_colour.joins if asked.out_colour else ()),
    )


def _longer_link(number: int, form: DeskForm, longer: LongerThreads | None) -> str:
    if longer is None:
        return ""
    counted = ("kind", "stitch", "round", "spare", "pass_length", *(("ease",) if form.typed.wrist else ()))
    kept = {name: value for name, value in vars(form.size.typed).items() if name in counted}
    asked = {**kept, **vars(form.typed), "pattern": number, "threads": "metres", "metres": f"{longer.metres:g}"}
    return address("answers", **asked)
