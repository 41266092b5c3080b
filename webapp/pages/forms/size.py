"""The size fields, alike on every page: how long, how closed, which kind and stitch, threads and hand."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields, replace

from engine.counting.finished import ring_question
from engine.counting.options import read_joins, read_plan
from engine.counting.sizes import Question
from engine.counting.stringing import PLANS, Plan
from engine.errors import EngineError
from engine.pattern.pattern import HANDS
from webapp.pages.forms.numbers import typed_length, typed_nought_or_length, typed_spare
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
    threads: str = "chart"
    metres: str = ""
    joins: str = ""
    hand: str = ""
    keep_picture: str = ""
    spare: str = ""
    pass_length: str = ""
    hand_girth: str = ""
    inner: str = ""


@dataclass(frozen=True)
class SizeForm:
    """What was typed, what is wrong by field, and what it means: question, plan of threads, hand, spare in percent.

    `hand` is empty when the pattern's own is meant; `keep_picture` asks for another list, not a mirrored picture.
    """

    typed: TypedSize
    errors: Mapping[str, str]
    question: Question
    plan: Plan
    hand: str
    keep_picture: bool
    spare: float

    def refused(self, error: EngineError) -> SizeForm:
        """The form with an objection of the engine beside its field, or over the form where it names none of them."""
        field = error.field or ""
        if field == "threads" and self.typed.threads in ("metres", "joins"):
            field = self.typed.threads
        known = field in {typed.name for typed in fields(TypedSize)}
        return replace(self, errors={**self.errors, field if known else "": error.message})


def read_size(pairs: Iterable[tuple[str, object]], settings: MakerSettings) -> SizeForm:
    """The size form of a query or a form."""
    sent, wrong = Sent(pairs), Objections()
    typed = _typed(sent, settings)
    question, plan, hand = _question(typed, settings.units, wrong), _plan(typed, wrong), _hand(typed, wrong)
    if not wrong.found:
        typed = replace(typed, closure=question.closure)
    spare = wrong.read("spare", lambda: typed_spare(typed.spare, settings.spare), settings.spare)
    return SizeForm(typed, wrong.found, question, plan, hand, bool(typed.keep_picture), spare)


def _typed(sent: Sent, settings: MakerSettings) -> TypedSize:
    usual = TypedSize(spare=f"{settings.spare:g}")
    typed = TypedSize(**{field.name: sent.one(field.name) or getattr(usual, field.name) for field in fields(TypedSize)})
    if typed.threads in THREADS:
        return typed
    if typed.threads.startswith("joins"):
        return replace(typed, threads="joins", joins=typed.threads.removeprefix("joins").strip())
    return replace(typed, threads="metres", metres=typed.threads)


def _question(typed: TypedSize, units: str, wrong: Objections) -> Question:
    def asked(name: str) -> float | None:
        text = getattr(typed, name)
        reading = typed_nought_or_length if name == "ease" else typed_length
        return wrong.read(name, lambda: reading(text, units), None) if text else None

    length, wrist, ease, measured = asked("length"), asked("wrist"), asked("ease"), asked("pass_length")
    hand_girth, inner = asked("hand_girth"), asked("inner")
    if wrong.found:
        return Question()
    try:
        question = Question(
            length, typed.closure, typed.kind or None, typed.stitch or None, wrist, ease, typed.round, measured
        )
        return ring_question(question, hand_girth, inner)
    except EngineError as error:
        wrong.add(error.field or "", error.message)
        return Question()


def _plan(typed: TypedSize, wrong: Objections) -> Plan:
    usual: Plan = "chart"
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
