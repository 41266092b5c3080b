"""The size fields, alike on every page: how long, how closed, which kind and stitch, threads and hand."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields, replace

from engine.counting.answers import Answer, answer
from engine.counting.closures import CLOSURES
from engine.counting.cuts import BALANCED, PLANS, Plan
from engine.counting.options import (
    SIZE_OPTIONS,
    Errors,
    in_hand,
    is_relative,
    question_of,
    read_joins,
    read_longest,
    read_plan,
    read_spare,
)
from engine.counting.questions import NamedSize, Question
from engine.counting.workshop import Workshop
from engine.errors import EngineError
from engine.pattern.pattern import HANDS, Pattern
from webapp.pages.forms.sent import Objections, Sent
from webapp.records import MakerSettings

THREADS = (*PLANS, "metres", "joins")


@dataclass(frozen=True)
class TypedSize:
    """The size fields as typed; `round` is "bead", "pass", "up" or "down", `threads` one of THREADS."""

    length: str = ""
    closure: str = "open"
    kind: str = ""
    stitch: str = ""
    wrist: str = ""
    ease: str = ""
    round: str = "bead"
    threads: str = BALANCED
    metres: str = ""
    joins: str = ""
    hand: str = ""
    keep_picture: str = ""
    spare: str = ""
    pass_length: str = ""
    hand_girth: str = ""
    inner: str = ""
    neck: str = ""
    closure_length: str = ""
    middle: str = "keep"
    longest: str = ""


@dataclass(frozen=True)
class SizeForm:
    """What was typed, what is wrong by field, and what it means: question, plan of threads, hand, spare in percent.

    `hand` is empty when the pattern's own is meant; `keep_picture` asks for another list, not a mirrored picture.
    `longest_mm` is the longest string asked for this once.
    """

    typed: TypedSize
    errors: Mapping[str, str]
    question: Question
    plan: Plan
    hand: str
    keep_picture: bool
    spare: float
    longest_mm: float | None = None

    @property
    def closures(self) -> tuple[tuple[str, str], ...]:
        """Closures to choose from, each with its words."""
        return closure_choices()

    def refused(self, error: EngineError) -> SizeForm:
        """The form with an objection of the engine beside its field, or over the form where it names none of them."""
        field = error.field or ""
        if field == "threads" and self.typed.threads in ("metres", "joins"):
            field = self.typed.threads
        known = field in {typed.name for typed in fields(TypedSize)}
        return replace(self, errors={**self.errors, field if known else "": error.message})


@dataclass(frozen=True)
class WorkedSize:
    """The form, with what is wrong in it, the pattern in the hand asked for, and the answer when nothing is wrong."""

    form: SizeForm
    pattern: Pattern
    answer: Answer | None


def closure_choices() -> tuple[tuple[str, str], ...]:
    """Every closure that can be chosen: key and label."""
    return tuple((key, closure.label) for key, closure in CLOSURES.items())


def read_size(
    pairs: Iterable[tuple[str, object]],
    settings: MakerSettings,
    sizes: Iterable[NamedSize] = (),
    last: Question | None = None,
) -> SizeForm:
    """The size form of a query or a form; `sizes` are finished sizes of the maker's own, which a length may name.

    A length may also be told by that of the `last` question.
    """
    sent, wrong = Sent(pairs), Objections()
    typed = _typed(sent, settings)
    question = _question(typed, settings.units, wrong, sizes, last)
    plan, hand = _plan(typed, wrong), _hand(typed, wrong)
    if not wrong.by_field:
        told = f"{question.length_mm:.9g} mm" if is_relative(typed.length) else typed.length
        typed = replace(typed, closure=question.closure, length=told)
    spare = wrong.read("spare", lambda: read_spare(typed.spare, settings.spare), settings.spare)
    return SizeForm(
        typed=typed,
        errors=wrong.by_field,
        question=question,
        plan=plan,
        hand=hand,
        keep_picture=bool(typed.keep_picture),
        spare=spare,
        longest_mm=wrong.read("longest", lambda: read_longest(typed.longest), None),
    )


def work_size(pattern: Pattern, form: SizeForm, workshop: Workshop, units: str) -> WorkedSize:
    """What the form comes to, with every error of the engine put beside its field."""
    turned = in_hand(pattern, form.hand, form.keep_picture)
    if form.errors:
        return WorkedSize(form, turned, None)
    try:
        own = workshop.with_longest(form.longest_mm)
        return WorkedSize(form, turned, answer(turned, form.question, own, form.plan, form.spare, units))
    except EngineError as error:
        return WorkedSize(form.refused(error), turned, None)


def _typed(sent: Sent, settings: MakerSettings) -> TypedSize:
    usual = TypedSize(spare=f"{settings.spare:g}")
    typed = TypedSize(**{field.name: sent.one(field.name) or getattr(usual, field.name) for field in fields(TypedSize)})
    if typed.threads in THREADS:
        return typed
    if typed.threads.startswith("joins"):
        return replace(typed, threads="joins", joins=typed.threads.removeprefix("joins").strip())
    return replace(typed, threads="metres", metres=typed.threads)


def _question(
    typed: TypedSize, units: str, wrong: Objections, sizes: Iterable[NamedSize], last: Question | None
) -> Question:
    errors = Errors()
    question = question_of({name: getattr(typed, name) for name in SIZE_OPTIONS}, errors, units, sizes, last)
    for name, error in errors.by_name.items():
        wrong.add(name, error.message)
    return question


def _plan(typed: TypedSize, wrong: Objections) -> Plan:
    usual: Plan = BALANCED
    if typed.threads == "joins":
        if not typed.joins:
            wrong.add("joins", "Say after which beads a thread is joined, such as 480, 960.")
        return wrong.read("joins", lambda: read_joins(typed.joins), usual)
    if typed.threads != "metres":
        return typed.threads
    if not typed.metres:
        wrong.add("metres", "Say how many metres of beads a thread may hold, such as 4.")
    return wrong.read("metres", lambda: read_plan(typed.metres), usual)


def _hand(typed: TypedSize, wrong: Objections) -> str:
    if typed.hand and typed.hand not in HANDS:
        wrong.add("hand", "Hand is right or left.")
        return ""
    return typed.hand
