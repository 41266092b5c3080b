"""The desk's question: which pattern, how large, how closed; and what is asked beside it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields
from math import pi

from engine.counting.finished import NAMED, bangle_mm
from engine.counting.reply import SECTIONS, USUAL
from engine.counting.sizes import NamedSize, Question
from engine.counting.stock import Pack
from engine.counting.stopped import upto
from engine.errors import SizeError, shortened
from webapp.pages.forms.numbers import decimal_number, whole_number
from webapp.pages.forms.sent import Objections, Sent
from webapp.pages.forms.size import SizeForm, read_size
from webapp.records import MakerSettings

USUAL_CLOSURE = "clasp"

_BANGLE = re.compile(r"\d\s*[-/]\s*\d{1,2}")
_AMOUNT = re.compile(r"(?:(?P<code>[A-Za-z]\w*)\s+)?(?P<grams>[\d.,]*\d)\s*g?(?:\s+at\s+(?P<price>[\d.,]*\d))?")


@dataclass(frozen=True)
class TypedDesk:
    """What only the desk asks, as it was typed; `length` also takes the name of a size or a bangle size."""

    pattern: str = ""
    length: str = ""
    wrist: str = ""
    closure: str = ""
    compare: str = ""
    have: str = ""
    pieces: str = ""
    packs: str = ""
    worked: str = ""


@dataclass(frozen=True)
class DeskForm:
    """What was typed, what is wrong by field, the size that is meant, and the sections of the reply."""

    typed: TypedDesk
    errors: Mapping[str, str]
    size: SizeForm
    sections: tuple[str, ...]


def read_desk(pairs: Iterable[tuple[str, object]], settings: MakerSettings, own: Iterable[NamedSize] = ()) -> DeskForm:
    """The question of an address."""
    sent, wrong = Sent(pairs), Objections()
    typed = TypedDesk(**{field.name: sent.one(field.name) for field in fields(TypedDesk)})
    none: dict[str, str] = {}
    meant = wrong.read("length", lambda: _meant(typed, own), none)
    others = [(name, value) for name, value in sent.pairs if name not in ("length", "closure", *meant)]
    size = read_size([*meant.items(), *others], settings)
    sections = tuple(section for section in SECTIONS if section in sent.all("say")) if sent.has("say") else USUAL
    return DeskForm(typed, {**size.errors, **wrong.found}, size, sections)


def _meant(typed: TypedDesk, own: Iterable[NamedSize]) -> dict[str, str]:
    """The size fields that the finished size stands for: a name, a bangle size, or a length. Raises SizeError."""
    known = {size.name.casefold(): size.question for size in (*NAMED, *own)} | {
        size.key: size.question for size in (*NAMED, *own)}
    if found := known.get(typed.length.casefold()):
        return _fields_of(found, typed.closure or found.closure)
    if _BANGLE.fullmatch(typed.length):
        return _fields_of(Question(pi * bangle_mm(typed.length)), typed.closure or "ring")
    asked = typed.length or typed.wrist
    return {"length": typed.length, "closure": typed.closure or (USUAL_CLOSURE if asked else "open")}


def _fields_of(question: Question, closure: str) -> dict[str, str]:
    lengths = {"length": question.length_mm, "wrist": question.wrist_mm, "ease": question.ease_mm}
    return {"closure": closure, **{name: f"{mm:.9f} mm" for name, mm in lengths.items() if mm is not None}}


def read_grams(text: str, codes: Iterable[str]) -> dict[str, float]:
    """Grams in hand by code: "A 20, B 5.5 g". Raises SizeError."""
    known = {code.casefold(): code for code in codes}
    found: dict[str, float] = {}
    for part in _parts(text):
        amount = _AMOUNT.fullmatch(part)
        code = known.get((amount["code"] or "").casefold()) if amount else None
        if amount is None or code is None:
            raise SizeError(f"“{shortened(part)}” is not a bead and its grams; write such as "
                            f"{next(iter(known.values()))} 20, with a comma and a space between beads.", "have")
        found[code] = decimal_number(amount["grams"], "how many grams, such as 20")
    return found


def read_packs(text: str, codes: Iterable[str]) -> dict[str, Pack]:
    """Packs by code: "20 at 3.50" for every bead, "A 20 at 3.50, B 10" for some. Raises SizeError."""
    codes = tuple(codes)
    known = {code.casefold(): code for code in codes}
    found: dict[str, Pack] = {}
    for part in _parts(text):
        amount = _AMOUNT.fullmatch(part)
        if amount is None or (amount["code"] and amount["code"].casefold() not in known):
            raise SizeError(f"“{shortened(part)}” is not a pack; write grams and a price, such as 20 at 3.50.", "packs")
        pack = Pack(decimal_number(amount["grams"], "grams"), decimal_number(amount["price"] or "0", "a price"))
        found |= dict.fromkeys([known[amount["code"].casefold()]] if amount["code"] else codes, pack)
    return found


def read_worked(text: str, around: int) -> int:
    """Beads worked: a number, or round and place such as 12/3. Raises an EngineError."""
    round_number, slash, place = text.partition("/")
    if slash:
        return upto(whole_number(round_number, "the round"), whole_number(place, "the place"), around)
    return whole_number(text, "how many beads are worked, or round and place such as 12/3")


def _parts(text: str) -> list[str]:
    return [part for part in (part.strip() for part in re.split(r",\s+|;|\n", text)) if part]
