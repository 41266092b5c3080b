"""The customer desk: a question, its answer in a sentence, what stands behind it, and the reply."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from math import isfinite
from typing import Annotated
from urllib.parse import urlencode

from engine.cabinet.bead import Bead
from engine.cabinet.cost import packs_of
from engine.counting.answers import Answer, again
from engine.counting.change import change_in_words, change_since
from engine.counting.cuts import BALANCED, easy_limit_mm, limit_mm
from engine.counting.doubts import about_bead_size, doubts
from engine.counting.findings import Fitting, fittings, thickness_in_words
from engine.counting.finished import NAMED
from engine.counting.follow_ups import FollowUpAnswers, answer_follow_ups, read_follow_ups
from engine.counting.offers import LongerThreads, Offer, longer_threads, offers
from engine.counting.questions import NamedSize
from engine.counting.reply import ReplyRow, Words, reply, reply_rows
from engine.counting.ring_fit import fit_in_words, ring_measures
from engine.counting.ring_table import Ring, rings_near
from engine.counting.stock import Kit, Pack
from engine.counting.stringing import Repeated
from engine.counting.sure import how_sure
from engine.counting.workshop import Workshop
from engine.errors import EngineError
from engine.units import UNITS, exact_grams, length, metres, numbers_in_words
from webapp.money import shown_about
from webapp.pages.addresses import address
from webapp.pages.forms.answers import DeskForm, number_in, numbered
from webapp.pages.forms.size import work_size
from webapp.pages.views.frame import Frame, in_terms, stitched
from webapp.pages.views.materials import NeedLine, PartTable, part_table
from webapp.pages.views.measuring import Measuring, measuring
from webapp.pages.views.signs import signs
from webapp.records import MakerSettings, PatternSummary, StoredPattern

_PLAIN_LENGTH = re.compile(r"[0-9.,]+ *[a-z\"″]*")
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
    "neck": "Neck",
    "closure_length": "Closure length",
    "longest": "Longest string",
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
class AnswerPart:
    """An answer and everything that the desk shows of it."""

    answer: Annotated[Answer, "Size, list, bill and sentence."]
    source: Annotated[str, "Where the lengths come from, in the maker's crochet terms."]
    sure: Annotated[str, "How sure they are, and why."]
    measuring: Annotated[Measuring | None, "What to measure, where no swatch stands behind them."]
    closure: Annotated[str, "How the piece ends, in words; empty where the maker chose it."]
    thickness: Annotated[str, "How thick the rope is, or about what."]
    wanted: Annotated[str, "The length that is aimed at, in words, with what was typed where that says it otherwise."]
    ring: Annotated[str, "A ring in measures: girth, diameter, and the hand it fits; empty for any other piece."]
    fit: Annotated[tuple[str, ...], "What is to be said of a ring that is far from what was asked for."]
    change: Annotated[str, "How the answer differs from the one before; empty where there was none."]
    doubts: Annotated[tuple[str, ...], "Gentle questions about what may have been meant."]
    lines: Annotated[tuple[NeedLine, ...], "The beads by colour."]
    total: Annotated[ReplyRow, "All beads together, in words."]
    offers: Annotated[tuple[tuple[str, Offer], ...], "Lengths to offer, each with its words."]
    parts: Annotated[PartTable | None, "Its parts; none of a rope of one part."]
    rings: Annotated[tuple[Ring, ...], "Rings near the girth; for a ring alone."]
    fittings: Annotated[tuple[Fitting, ...], "What goes with the rope."]
    longer: Annotated[LongerThreads | None, "What longer threads would spare, where there are many."]
    longer_link: Annotated[str, "The same question with those threads."]
    reply: Annotated[str, "The reply in plain text."]
    reply_rows: Annotated[tuple[ReplyRow, ...], "Its beads as a table."]
    threads: Annotated[tuple[ThreadLine, ...], "The lists that differ, each with its threads."]
    kept_to: Annotated[str, "That threads are as chosen, and the limit of the settings that they are kept to."]
    follow_ups: Annotated[FollowUpAnswers, "What was asked after it."]
    kit_costs: Annotated[KitCosts | None, "What a kit costs; none where no price was typed."]
    kept_packs: Annotated[str, "Packs of the cabinet that were taken, none being typed: A 20 g."]
    links: Annotated[Links, "The same question elsewhere."]


@dataclass(frozen=True)
class KitCosts:
    """What a kit costs, in the maker's currency."""

    lines: Annotated[tuple[str, ...], "Of each of its beads; empty where no price was typed."]
    all: Annotated[str, "All of it."]
    each: Annotated[str, "A piece."]


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
    cost: Annotated[str, "What it costs, and as many pieces as were asked for."]
    mistake: Annotated[str, "Where a stringing of it went wrong."]
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
    last: Annotated[str, "This question, as the next one is sent with it; empty without a pattern."]
    shown: Annotated[str, "What stands in the pattern's field: as typed, else its title, with its number if need be."]
    answered: Annotated[AnswerPart | None, "The answer; none when something is wrong."]
    wrong: Annotated[tuple[tuple[str, str, str], ...], "What is wrong: field, its words, which may be empty, and why."]
    question: Annotated[str, "The question as in an address, to be kept with its answer."]


def answers_page(
    frame: Frame,
    form: DeskForm,
    stored: StoredPattern | None,
    workshop: Workshop,
    maker: MakerSettings,
    near: Iterable[PatternSummary] = (),
    own: Iterable[NamedSize] = (),
    cabinet: Mapping[str, Bead] | None = None,
) -> AnswersPage:
    """The desk for what the form asks; `near` are patterns that the typed name may mean, or the newest.

    `cabinet` are beads by key, whose packs are taken where none are typed.
    """
    near, own = tuple(near), tuple(own)
    frame, maker = in_units(frame, maker, form.typed.units)
    wrong, answered = dict(form.errors), None
    if stored is not None:
        work = work_size(stored.pattern, form.size, workshop, frame.units)
        wrong |= work.form.errors
        if "kind" in wrong and (question := about_bead_size(form.size.typed.kind)):
            wrong["kind"] = question
        if work.answer and not wrong:
            answered = _answer_part(frame, stored.id, work.answer, form, maker, own, cabinet or {})
            wrong = {name: error.message for name, error in answered.follow_ups.errors.items()}
    several = _several(form, near) if stored is None else ()
    if stored is None and form.typed.pattern:
        wrong["pattern"] = (
            "More than one pattern may be meant." if several else "No pattern of that name is in the library."
        )
    return AnswersPage(
        frame=frame,
        form=replace(form, errors=wrong, size=replace(form.size, errors=wrong)),
        patterns=tuple(dict.fromkeys(summary.title for summary in near)),
        several=several,
        sizes=tuple(size.name for size in (*NAMED, *own)),
        kinds=tuple(workshop.kinds),
        id=stored.id if stored else 0,
        title=stored.pattern.title if stored else "",
        last=f"pattern={stored.id}&{form.now}" if stored else "",
        shown=_pattern_field(form.typed.pattern, stored, near),
        answered=answered,
        wrong=tuple((field, FOLDED.get(field, ""), sentence) for field, sentence in wrong.items()),
        question=_question(form, stored) if answered else "",
    )


def _question(form: DeskForm, stored: StoredPattern | None) -> str:
    """The question without what was asked before it, its pattern by number."""
    sized = {name: value for name, value in vars(form.size.typed).items() if value}
    asked = {name: value for name, value in vars(form.typed).items() if value and name not in ("last", "before")}
    of = {"pattern": stored.id if stored else ""}
    return urlencode([*{**asked, **sized, **of}.items(), *(("say", section) for section in form.sections)])


def _several(form: DeskForm, near: Iterable[PatternSummary]) -> tuple[tuple[str, str], ...]:
    """The patterns that a typed name may mean, each with the address of the same question to it."""
    if not form.typed.pattern:
        return ()
    asked = {"length": form.typed.length, "closure": form.typed.closure}
    return tuple(
        (address("answers", pattern=summary.id, **asked), numbered(summary.title, summary.id)) for summary in near
    )


def _pattern_field(typed: str, stored: StoredPattern | None, near: Iterable[PatternSummary]) -> str:
    """What names the pattern again when the form is sent: as typed, in the place of a number its title."""
    if stored is None or (typed and number_in(typed) is None):
        return typed
    title = stored.pattern.title
    same = [summary.id for summary in near if summary.title.casefold() == title.casefold()]
    return title if same == [stored.id] and number_in(title) is None else numbered(title, stored.id)


def in_units(frame: Frame, maker: MakerSettings, units: str) -> tuple[Frame, MakerSettings]:
    """Frame and settings with the units asked for, if any are."""
    if units not in UNITS:
        return frame, maker
    return replace(frame, units=units), replace(maker, units=units)


def words(maker: MakerSettings, sections: tuple[str, ...]) -> Words:
    """The maker's words round a reply; without a closing of their own, the maker's name ends it."""
    return Words(
        greeting=maker.greeting,
        closing=maker.closing or maker.maker,
        units=maker.units,
        sections=sections,
        single=stitched("single", maker.terms),
    )


def _answer_part(
    frame: Frame,
    number: int,
    answer: Answer,
    form: DeskForm,
    maker: MakerSettings,
    own: Iterable[NamedSize],
    cabinet: Mapping[str, Bead],
) -> AnswerPart:
    size, longer, units = answer.size, longer_threads(answer), maker.units
    rows = reply_rows(answer)
    packs = packs_of(answer.materials, answer.pattern.palette, cabinet)
    asked = read_follow_ups(vars(form.typed), answer.size, form.typed.closure, units, own, packs)
    follow_ups = answer_follow_ups(answer, asked, units)
    drawn = zip(signs(answer.pattern.palette), answer.materials.colours, strict=True)
    return AnswerPart(
        answer=answer,
        source=in_terms(answer.materials.source, maker.terms),
        sure=in_terms(how_sure(size), maker.terms),
        measuring=measuring(size, frame),
        closure="" if form.typed.closure else size.closure.label.lower(),
        thickness=thickness_in_words(size).partition(":")[0],
        wanted=_wanted(form.size.typed.length, length(size.length_mm, units)),
        ring=ring_measures(size, units) if size.closure.worked_shut else "",
        fit=fit_in_words(size, units),
        change=_change(number, answer, form, units),
        doubts=doubts(size, units),
        lines=tuple(NeedLine(sign, need, "") for sign, need in drawn),
        total=rows[-1],
        offers=tuple((ROUNDED[offer.rounding], offer) for offer in offers(size)),
        parts=part_table(answer, units),
        rings=rings_near(size),
        fittings=tuple(_in_terms(fitting, maker.terms) for fitting in fittings(answer, units)),
        longer=longer,
        longer_link=_longer_link(number, form, longer),
        reply=reply(answer, words(maker, form.sections)),
        reply_rows=rows,
        threads=tuple(_thread_line(repeated) for repeated in answer.stringing.distinct),
        kept_to=_kept_to(answer),
        follow_ups=follow_ups,
        kit_costs=_kit_costs(follow_ups.kit, maker) if follow_ups.kit else None,
        kept_packs="" if form.typed.packs else _packs_in_words(packs),
        links=_links(number, form, follow_ups),
    )


def _wanted(typed: str, told: str) -> str:
    """The length that is aimed at: as it was asked for, as it was understood, or as it follows from a wrist."""
    if not typed:
        return f"{told} is needed"
    return f"{told} was asked for" if _PLAIN_LENGTH.fullmatch(typed.strip()) else f"“{typed}” is taken for {told}"


def _change(number: int, answer: Answer, form: DeskForm, units: str) -> str:
    """How the answer differs from the one before, where that can still be worked."""
    earlier = form.compared_with
    if earlier.question is None or earlier.pattern != number:
        return ""
    try:
        change = change_since(again(answer, earlier.question), answer)
    except EngineError:
        return ""
    return change_in_words(change, units) if change else ""


def _in_terms(fitting: Fitting, terms: str) -> Fitting:
    return Fitting(*(in_terms(text, terms) for text in fitting))


def _thread_line(repeated: Repeated) -> ThreadLine:
    thread, numbers = repeated
    return ThreadLine(
        f"Thread{'s' if len(numbers) > 1 else ''} {numbers_in_words(numbers)}", thread.beads, thread.strung_mm
    )


def _kept_to(answer: Answer) -> str:
    balanced = answer.plan == BALANCED
    most_mm = easy_limit_mm(answer.size) if balanced else limit_mm(answer.size)
    how = "as few as can be handled" if balanced else "as chosen"
    whose = " (settings)" if answer.workshop.longest_mm or answer.workshop.heaviest_g else ""
    return f"{how}, none over {metres(most_mm)}{whose}" if isfinite(most_mm) else how


def _kit_costs(kit: Kit, maker: MakerSettings) -> KitCosts | None:
    def money(amount: float) -> str:
        return shown_about(amount, maker.currency, maker.country) if amount else ""

    lines = tuple(money(line.cost) for line in kit.lines)
    return KitCosts(lines, money(kit.cost), money(kit.each)) if kit.cost else None


def _packs_in_words(packs: Mapping[str, Pack]) -> str:
    return ", ".join(f"{code} {exact_grams(round(pack.size * 1000))}" for code, pack in packs.items())


def _links(number: int, form: DeskForm, asked: FollowUpAnswers) -> Links:
    kept = {name: value for name, value in vars(form.size.typed).items() if value}
    uncut = {name: value for name, value in kept.items() if name not in ("threads", "metres", "joins")}

    def cut_at(joins: Iterable[int]) -> str:
        places = ", ".join(map(str, joins))
        return address("stringing", id=number, **uncut, threads="joins", joins=places) if places else ""

    stop = asked.remaining.worked if asked.remaining else 0
    return Links(
        materials=address("materials", id=number, **kept),
        stringing=address("stringing", id=number, **kept),
        booklet=address("booklet", id=number, **kept),
        cost=address("cost", id=number, **kept, pieces=form.typed.pieces or "1"),
        mistake=address("mistake", id=number, **kept),
        rest=cut_at([stop] if stop else ()),
        new_thread=cut_at(asked.out_of_thread.joins if asked.out_of_thread else ()),
        new_beads=cut_at(asked.out_of_colour.joins if asked.out_of_colour else ()),
    )


def _longer_link(number: int, form: DeskForm, longer: LongerThreads | None) -> str:
    if longer is None:
        return ""
    counted = ("kind", "stitch", "round", "spare", "pass_length", *(("ease",) if form.typed.wrist else ()))
    kept = {name: value for name, value in vars(form.size.typed).items() if name in counted}
    asked = {**kept, **vars(form.typed), "pattern": number, "threads": "metres", "metres": f"{longer.metres:g}"}
    return address("answers", **asked)
