"""Finished sizes by their usual names: necklaces, bracelets and bangles, and the questions that ask for them.

Necklaces: ranges of Glossaria, Vener-Art and Viya Crafts (they agree). Bracelets: Fenyes Jewelry, half inch steps; ease
over the wrist: Jewels in Fiber (2016). A slip-on bangle is as wide inside as the hand, thumb tucked in, at its widest
(Bead&Button, "Hooked on bead crochet"). Indian bangle size a-b is an inner diameter of a + b/16 inches (Jewelsify). No
standard names the lengths of necklaces or bracelets.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from math import pi

from engine.counting.closures import closure_named
from engine.counting.questions import EASE_MM, INSIDE, NECK, NamedSize, Question
from engine.errors import SizeError, shortened
from engine.units import INCH_MM, length, plain, whole

_BANGLE = re.compile(r"\s*(\d{1,2})\s*(?:[-/. ]\s*(\d{1,2}))?\s*")

_BANGLE_ALONE = re.compile(r"\d\s*[-/]\s*\d{1,2}")


def _necklace(name: str, low_in: float, high_in: float) -> NamedSize:
    middle = whole((low_in + high_in) / 2 * INCH_MM / 10) * 10.0
    about = f"{plain(low_in, 1)} to {plain(high_in, 1)} in"
    close = name in LIES_CLOSE
    question = Question(girth_mm=middle, closure="clasp") if close else Question(middle, "clasp")
    return NamedSize("Necklace", name, question, about)


def _bracelet(name: str, wrist_in: float) -> NamedSize:
    question = Question(wrist_mm=wrist_in * INCH_MM, ease_mm=EASE_MM, closure="clasp")
    return NamedSize("Bracelet", name, question, f"wrist {plain(wrist_in, 1)} in")


def _bangle(parts: tuple[int, int]) -> NamedSize:
    name = f"Bangle {parts[0]}-{parts[1]}" if parts[1] else f"Bangle {parts[0]}"
    inner_mm = (parts[0] + parts[1] / 16) * INCH_MM
    return NamedSize("Bangle", name, Question(pi * inner_mm, "ring"), f"{length(inner_mm)} across inside")


LIES_CLOSE = ("Collar", "Choker")  # they go round the neck: their lengths are girths
WRISTS_IN = {"XS": 5.5, "S": 6, "M": 6.5, "L": 7, "XL": 7.5}
NECKLACES_IN = {
    "Collar": (12, 13),
    "Choker": (14, 16),
    "Princess": (17, 19),
    "Matinée": (20, 24),
    "Opera": (28, 34),
    "Rope": (40, 45),
}
NAMED: tuple[NamedSize, ...] = (
    *(_bracelet(f"Bracelet {size}", wrist) for size, wrist in WRISTS_IN.items()),
    *(_bangle((2, sixteenths)) for sixteenths in range(2, 16, 2)),
    _bangle((3, 0)),
    *(_necklace(name, *inches) for name, inches in NECKLACES_IN.items()),
)
USUAL = ("bracelet-m", "bangle-2-8", "choker", "princess", "matinee", "opera")


def named(
    keys: tuple[str, ...] = USUAL, kind: str | None = None, stitch: str | None = None, own: tuple[NamedSize, ...] = ()
) -> tuple[NamedSize, ...]:
    """The sizes of those keys in their order, of one's own or built in, in another kind or stitch if one is given.

    Keys that are not known are passed over.
    """
    known = {size.key: size for size in (*NAMED, *own)}
    return tuple(
        replace(known[key], question=replace(known[key].question, kind=kind, stitch=stitch))
        for key in keys
        if key in known
    )


def named_question(text: str, closure: str, own: Iterable[NamedSize] = ()) -> Question | None:
    """The question of a named size, of the maker's `own` too, or of a bangle size; None where the text names none.

    A ring over a hand stays one; any other size takes the `closure` where one is given. Raises SizeError.
    """
    sizes = (*NAMED, *own)
    known = {size.name.casefold(): size.question for size in sizes} | {size.key: size.question for size in sizes}
    if question := known.get(text.casefold()):
        return question if question.over_hand else replace(question, closure=closure or question.closure)
    if not _BANGLE_ALONE.fullmatch(text):
        return None
    return _inside(pi * bangle_mm(text), closure or "ring")


def _inside(girth_mm: float, closure: str) -> Question:
    """A piece of that girth inside: a ring, or a bangle that is closed otherwise."""
    if closure_named(closure).worked_shut:
        return Question(girth_mm, closure)
    return Question(girth_mm=girth_mm, girth_of=INSIDE, closure=closure)


def ring_question(question: Question, hand_girth_mm: float | None, inner_mm: float | None) -> Question:
    """The ring over a hand of that girth, or the piece of that inner diameter; the question where neither is given.

    The hand must go through: where no rounding is chosen, a ring is never smaller than its girth. Raises SizeError
    where another size or closure is asked for too.
    """
    if hand_girth_mm is None and inner_mm is None:
        return question
    option = "inner" if hand_girth_mm is None else "hand_girth"
    if None not in (hand_girth_mm, inner_mm) or question.asks_for_length:
        raise SizeError("Give one size: a length, a wrist, a hand girth or an inner diameter.", option)
    closure = "ring" if question.closure == "open" else question.closure
    if hand_girth_mm is None:
        inside = _inside(pi * (inner_mm or 0.0), closure)
        return replace(question, length_mm=inside.length_mm, girth_mm=inside.girth_mm, girth_of=INSIDE, closure=closure)
    if not closure_named(closure).worked_shut:
        raise SizeError("A hand girth asks for a ring that is worked shut.", "closure")
    return replace(question, length_mm=hand_girth_mm, closure=closure, over_hand=True)


def asked_in_words(question: Question, units: str = "cm") -> str:
    """The size that a question asks for: "45.0 cm", "wrist 16.5 cm", "hand 21.0 cm"; empty for one pass."""
    if question.wrist_mm is not None:
        return f"wrist {length(question.wrist_mm, units)}"
    if question.girth_mm is not None:
        words = {NECK: "neck", INSIDE: "inside"}
        return f"{words[question.girth_of]} {length(question.girth_mm, units)}"
    if question.length_mm is None:
        return ""
    return f"{'hand ' if question.over_hand else ''}{length(question.length_mm, units)}"


def bangle_mm(text: str) -> float:
    """Inner diameter in mm of an Indian bangle size such as 2-8. Raises SizeError."""
    size = _BANGLE.fullmatch(text)
    whole, sixteenths = (int(size[1]), int(size[2] or 0)) if size else (0, 0)
    if not (1 <= whole <= 4 and sixteenths < 16):
        raise SizeError(
            f"“{shortened(text)}” is not a bangle size; write it such as 2-8 (two inches and eight sixteenths across).",
            "bangle",
        )
    return (whole + sixteenths / 16) * INCH_MM
