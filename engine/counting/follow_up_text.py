"""Follow-up questions as people type them: beads in hand, packs, places in the work, colours that ran out."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from engine.counting.stock import InHand, Pack
from engine.counting.stopped import upto
from engine.errors import SizeError, shortened
from engine.numbers import NOUGHT, decimal_number, whole_number
from engine.units import parse_length, whole

_CODE = r"(?P<code>[A-Za-z]{1,2})"
_NUMBER = r"[\d.,]*\d"
_HELD = re.compile(rf"{_CODE}\s*(?:(?P<packs>\d+)\s*[x×]\s*)?(?P<size>{_NUMBER})\s*(?P<unit>g|beads?|packs?)?", re.I)
_PACK = re.compile(rf"(?:{_CODE}\s*)?(?P<size>{_NUMBER})\s*(?P<unit>g|beads?)?(?:\s+at\s+(?P<price>{_NUMBER}))?", re.I)
_LEFT = re.compile(rf"{_CODE}\s*(?P<beads>\d+)(?:\s*beads?)?", re.I)
_OUT = re.compile(rf"{_CODE}\s*(?:(?P<had>\d+)(?:\s*beads?)?|\s+at\s+(?:bead\s+)?(?P<place>[\d/\s.,%]+))", re.I)
_KEPT = re.compile(rf"keep\s+(?P<percent>{_NUMBER})\s*%", re.I)
_DONE = re.compile(rf"(?P<percent>{_NUMBER})\s*%(?:\s*(?:done|worked))?", re.I)
_METRES = re.compile(rf"({_NUMBER})\s*m?", re.I)
_ON_THREAD = re.compile(r"thread\s+(?P<thread>\d+)\s*[:,]?\s+(?:bead\s+)?(?P<beads>\d+)", re.I)


class OnThread(NamedTuple):
    """A place on a thread: its number, counted from one, and beads of it worked."""

    number: int
    beads: int


class RanOut(NamedTuple):
    """A colour that ran out: its code, and either how many beads of it there were or how many beads were worked."""

    code: str
    had: int | None
    worked: int | None


class Held(NamedTuple):
    """Beads in hand by code, and the share of them in percent that is to be kept back as spare."""

    by_code: Mapping[str, InHand]
    kept_back: float


def read_held(text: str, codes: Iterable[str], packs: Mapping[str, Pack] | None = None) -> Held:
    """Beads in hand: "A 20, B 5.5 g, C 2 x 10 g, D 300 beads, E 3 packs, keep 10 %". Raises SizeError."""
    known = _by_name(codes)
    held: dict[str, InHand] = {}
    kept_back = 0.0
    for part in _parts(text):
        if kept := _KEPT.fullmatch(part):
            kept_back = decimal_number(kept["percent"], "how many percent to keep back")
            continue
        amount = _HELD.fullmatch(part)
        code = known.get(amount["code"].casefold()) if amount else None
        if amount is None or code is None:
            first = next(iter(known.values()))
            raise SizeError(
                f"“{shortened(part)}” is not a bead and how much of it is there; write such as {first} 20 "
                f"for grams, {first} 2 x 10 g or {first} 300 beads, a comma and a space between beads; “keep 10 %” "
                "keeps so much of all back.",
                "have",
            )
        held[code] = _held(amount, code, packs or {})
    return Held(held, kept_back)


def _held(amount: re.Match[str], code: str, packs: Mapping[str, Pack]) -> InHand:
    unit = (amount["unit"] or "g").lower()
    if not unit.startswith("pack"):
        number = decimal_number(amount["size"], "how much, such as 20")
        return InHand(number, int(amount["packs"] or 1), unit.startswith("bead"))
    if code not in packs:
        raise SizeError(f"Say under Packs how much a pack of {code} holds, or write such as {code} 2 x 10 g.", "have")
    number_of_packs = whole_number(amount["size"], "how many packs")
    return InHand(packs[code].size, number_of_packs * int(amount["packs"] or 1), packs[code].counted)


def read_packs(text: str, codes: Iterable[str]) -> dict[str, Pack]:
    """Packs by code: "20 at 3.50" for every bead, "A 20 at 3.50, B 500 beads" for some. Raises SizeError."""
    codes = tuple(codes)
    known = _by_name(codes)
    by_code: dict[str, Pack] = {}
    for part in _parts(text):
        amount = _PACK.fullmatch(part)
        if amount is None or (amount["code"] and amount["code"].casefold() not in known):
            raise SizeError(
                f"“{shortened(part)}” is not a pack; write grams or beads and a price, such as 20 at 3.50 "
                "or 500 beads at 3.50.",
                "packs",
            )
        pack = Pack(
            decimal_number(amount["size"], "how much a pack holds"),
            decimal_number(amount["price"] or "0", "a price"),
            (amount["unit"] or "g").lower() != "g",
        )
        by_code |= dict.fromkeys([known[amount["code"].casefold()]] if amount["code"] else codes, pack)
    return by_code


def read_left(text: str, codes: Iterable[str]) -> dict[str, int]:
    """Beads left by code: "A 200, B 50". Raises SizeError."""
    known = _by_name(codes)
    left = {}
    for part in _parts(text):
        amount = _LEFT.fullmatch(part)
        if amount is None or amount["code"].casefold() not in known:
            raise SizeError(
                f"“{shortened(part)}” is not a bead and how many of it are left; write such as "
                f"{next(iter(known.values()))} 200.",
                "beads_left",
            )
        left[known[amount["code"].casefold()]] = whole_number(amount["beads"], "how many beads are left")
    return left


def read_worked(text: str, around: int, beads: int = 0) -> int:
    """Beads worked: a number, round and place such as 12/3, or of a rope of so many `beads` a share, "60 %".

    Raises an EngineError.
    """
    if beads and (done := _DONE.fullmatch(text.strip())):
        return min(beads, whole(beads * decimal_number(done["percent"], "how many percent are worked") / 100))
    round_number, slash, place = text.partition("/")
    if slash:
        return upto(whole_number(round_number, "the round"), whole_number(place, "the place"), around)
    return whole_number(text, "how many beads are worked, such as 480, round and place such as 12/3, or 60 %")


def read_place(text: str, around: int, beads: int = 0) -> int | OnThread:
    """As `read_worked`, or a place on a thread such as "thread 2: 40". Raises an EngineError."""
    if on_thread := _ON_THREAD.fullmatch(text):
        return OnThread(
            whole_number(on_thread["thread"], "which thread"),
            whole_number(on_thread["beads"], "how many of its beads are worked"),
        )
    if text.lower().startswith("thread"):
        raise SizeError(
            f"“{shortened(text)}” does not say how many beads of which thread are worked; write such as thread 2: 40.",
            "out_thread",
        )
    return read_worked(text, around, beads)


def read_thread_left(text: str) -> float:
    """Millimetres of thread that are left; a bare number is in metres, nothing is none. Raises an EngineError."""
    if not text or NOUGHT.fullmatch(text):
        return 0.0
    if metres := _METRES.fullmatch(text):
        return decimal_number(metres[1], "how many metres of thread are left") * 1000
    return parse_length(text, "thread_left")


def read_out(text: str, codes: Iterable[str], around: int, beads: int = 0) -> RanOut:
    """A colour that ran out: "B 120" when there were so many, "B at 340" or "B at 12/3". Raises an EngineError."""
    known = _by_name(codes)
    ran_out = _OUT.fullmatch(text)
    if ran_out is None or ran_out["code"].casefold() not in known:
        first = next(iter(known.values()))
        raise SizeError(
            f"“{shortened(text)}” does not say which colour ran out and when; write such as {first} 120 "
            f"for so many beads of it, or {first} at 340 for the beads worked by then.",
            "out_colour",
        )
    code = known[ran_out["code"].casefold()]
    if ran_out["had"]:
        return RanOut(code, whole_number(ran_out["had"], "how many beads of it there were"), None)
    return RanOut(code, None, read_worked(ran_out["place"].strip(), around, beads))


def _by_name(codes: Iterable[str]) -> dict[str, str]:
    return {code.casefold(): code for code in codes}


def _parts(text: str) -> list[str]:
    return [part for part in (part.strip() for part in re.split(r",\s+|,(?=[A-Za-z])|;|\n", text)) if part]
