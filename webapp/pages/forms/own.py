"""Bead kinds and finished sizes of the maker's own, as typed and as meant."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields, replace

from engine.counting.closures import CLOSURES
from engine.counting.finished import NAMED, ring_question
from engine.counting.kinds import KINDS, Kind
from engine.counting.questions import NamedSize, Question
from engine.numbers import decimal_number, typed_length, typed_nought_or_length
from webapp.pages.forms.sent import Objections, Sent
from webapp.pages.forms.size import closure_choices

LONGEST_NAME = 40
LARGEST_BEAD_MM, MOST_PER_GRAM = 25.0, 5000.0


@dataclass(frozen=True)
class TypedKind:
    """A bead kind as typed; measures in mm. `sure` says that an unlikely weight was meant."""

    name: str = ""
    diameter: str = ""
    length: str = ""
    hole: str = ""
    per_gram: str = ""
    working: str = ""
    fewest: str = ""
    sure: str = ""


@dataclass(frozen=True)
class KindForm:
    """What was typed, what is wrong by field, and the kind when nothing is."""

    typed: TypedKind
    errors: Mapping[str, str]
    kind: Kind | None


@dataclass(frozen=True)
class TypedOwnSize:
    """A finished size as typed: a length, a wrist or the girth of a hand."""

    name: str = ""
    closure: str = "clasp"
    length: str = ""
    wrist: str = ""
    ease: str = ""
    hand_girth: str = ""


@dataclass(frozen=True)
class OwnSizeForm:
    """What was typed, what is wrong by field, and the size when nothing is."""

    typed: TypedOwnSize
    errors: Mapping[str, str]
    size: NamedSize | None

    @property
    def closures(self) -> tuple[tuple[str, str], ...]:
        """Closures to choose from, each with its words."""
        return closure_choices()


def read_kind(pairs: Iterable[tuple[str, object]]) -> KindForm:
    """The kind that was sent; one whose glass would be unlikely is questioned once."""
    sent, wrong = Sent(pairs), Objections()
    typed = TypedKind(**{field.name: sent.one(field.name) for field in fields(TypedKind)})
    _check_name(typed.name, KINDS, wrong)
    across, along, hole = (_measure(typed, name, LARGEST_BEAD_MM, wrong) for name in ("diameter", "length", "hole"))
    per_gram = _measure(typed, "per_gram", MOST_PER_GRAM, wrong)
    working = _measure(typed, "working", LARGEST_BEAD_MM, wrong) if typed.working else across
    fewest = _measure(typed, "fewest", MOST_PER_GRAM, wrong) if typed.fewest else 0.0
    if not wrong.by_field and fewest > per_gram:
        wrong.add("fewest", "The fewest beads in a gram are no more than the usual count.")
    if not wrong.by_field and hole >= across:
        wrong.add("hole", "A hole is smaller than its bead.")
    if wrong.by_field:
        return KindForm(typed, wrong.by_field, None)
    kind = Kind(
        name=typed.name,
        diameter_mm=across,
        length_mm=along,
        hole_mm=hole,
        per_gram=per_gram,
        working_mm=working,
        fewest_per_gram=fewest,
    )
    if not kind.likely and not typed.sure:
        wrong.add(
            "per_gram",
            f"These measures make glass of {kind.density:.1f} g/cm³, and glass has 2.5 to 4. "
            "Is one of them mistyped? If not, tick “It is so”.",
        )
    return KindForm(typed, wrong.by_field, None if wrong.by_field else kind)


def read_own_size(pairs: Iterable[tuple[str, object]], units: str = "cm") -> OwnSizeForm:
    """The finished size that was sent."""
    sent, wrong = Sent(pairs), Objections()
    typed = TypedOwnSize(**{field.name: sent.one(field.name) for field in fields(TypedOwnSize)})
    _check_name(typed.name, [size.name for size in NAMED], wrong)
    if typed.closure not in CLOSURES:
        wrong.add("closure", "Choose a closure from the list.")
    if sum(map(bool, (typed.length, typed.wrist, typed.hand_girth))) != 1:
        wrong.add("length", "Say a length, a wrist or a hand girth, and only one of them.")
    length, wrist, hand_girth = (_length(typed, name, units, wrong) for name in ("length", "wrist", "hand_girth"))
    ease = wrong.read("ease", lambda: typed_nought_or_length(typed.ease, units), None) if typed.ease and wrist else None
    if wrong.by_field:
        return OwnSizeForm(typed, wrong.by_field, None)
    if hand_girth is not None:
        return OwnSizeForm(
            replace(typed, closure="ring"),
            {},
            NamedSize("Own", typed.name, ring_question(Question(), hand_girth, None)),
        )
    question = Question(length, typed.closure, wrist_mm=wrist, ease_mm=ease)
    return OwnSizeForm(typed, {}, NamedSize("Own", typed.name, question))


def _length(typed: TypedOwnSize, name: str, units: str, wrong: Objections) -> float | None:
    text = getattr(typed, name)
    return wrong.read(name, lambda: typed_length(text, units), None) if text else None


def _check_name(name: str, taken: Iterable[str], wrong: Objections) -> None:
    if not name or len(name) > LONGEST_NAME or not any(letter.isascii() and letter.isalnum() for letter in name):
        wrong.add("name", f"Give it a name of at most {LONGEST_NAME} characters.")
    elif name.casefold() in {other.casefold() for other in taken}:
        wrong.add("name", "This name is built in; take another.")


def _measure(typed: TypedKind, name: str, most: float, wrong: Objections) -> float:
    value = wrong.read(name, lambda: decimal_number(getattr(typed, name), "a number such as 1.5"), 0.0)
    if not 0 < value <= most:
        wrong.add(name, f"This is more than 0 and at most {most:g}.")
    return value
