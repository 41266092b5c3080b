"""The maker's settings and the measured samples, as typed and as meant."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, fields, replace
from datetime import date
from typing import Any

from engine.booklet.papers import PAPERS
from engine.booklet.terms import TERMS
from engine.counting.options import read_spare
from engine.counting.rope import Swatch, beads_of_rows
from engine.errors import EngineError
from engine.numbers import decimal_number, length_to_type, typed_length, typed_nought_or_length, whole_number
from engine.pattern.pattern import STITCHES, read_around
from engine.units import UNITS, plain
from webapp.money import countries, currencies, read_amount
from webapp.pages.forms.sent import Objections, Sent
from webapp.records import MakerSettings

LOOKS = ("system", "light", "dark")
LONGEST_LINE = 500
AS_TYPED = (
    "maker",
    "contact",
    "licence",
    "units",
    "terms",
    "paper",
    "look",
    "greeting",
    "closing",
    "country",
    "currency",
    "rate",
)


@dataclass(frozen=True)
class TypedSettings:
    """The settings as typed; `allowances` are what closures add to the rope, by their keys."""

    maker: str = ""
    contact: str = ""
    licence: str = ""
    units: str = "cm"
    terms: str = "us"
    paper: str = "A4"
    spare: str = ""
    look: str = "system"
    greeting: str = ""
    closing: str = ""
    longest: str = ""
    heaviest: str = ""
    country: str = ""
    currency: str = "EUR"
    rate: str = ""
    allowances: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class SettingsForm:
    """What was typed, what is wrong by field, and the settings when nothing is."""

    typed: TypedSettings
    errors: Mapping[str, str]
    settings: MakerSettings | None


@dataclass(frozen=True)
class TypedSwatch:
    """A sample as typed; `counted` says what `number` counts: beads worked or rows along the rope.

    `unravelled` is the thread of 20 beads pulled out again, left empty where nobody measured it.
    """

    kind: str = "11/0 round"
    around: str = ""
    stitch: str = "single"
    number: str = ""
    counted: str = "beads"
    length: str = ""
    date: str = ""
    note: str = ""
    unravelled: str = ""


@dataclass(frozen=True)
class SwatchForm:
    """What was typed, what is wrong by field, and the swatch when nothing is."""

    typed: TypedSwatch
    errors: Mapping[str, str]
    swatch: Swatch | None


def settings_of(settings: MakerSettings) -> SettingsForm:
    """The form filled with the settings as they are kept."""
    typed = TypedSettings(
        **{name: getattr(settings, name) for name in AS_TYPED},
        spare=f"{settings.spare:g}",
        longest=plain(settings.longest_m, 2) if settings.longest_m else "",
        heaviest=plain(settings.heaviest_g, 1) if settings.heaviest_g else "",
        allowances={key: length_to_type(mm, settings.units) for key, mm in settings.allowances.items()},
    )
    return SettingsForm(typed, {}, settings)


def read_settings(pairs: Iterable[tuple[str, object]], kept: MakerSettings) -> SettingsForm:
    """The settings that were sent; a choice that is none of those offered stays as it was kept."""
    sent, wrong = Sent(pairs), Objections()
    before = settings_of(kept).typed
    allowances = {key: sent.one(key, text) for key, text in before.allowances.items()}
    texts = {name: sent.one(name, getattr(before, name)) for name in (*AS_TYPED, "spare", "longest", "heaviest")}
    typed = TypedSettings(**texts, allowances=allowances)
    typed = replace(typed, **_known_choices(typed, before))
    made = MakerSettings(
        **{name: getattr(typed, name) for name in AS_TYPED},
        spare=wrong.read("spare", lambda: read_spare(typed.spare, kept.spare), 0.0),
        longest_m=wrong.read("longest", lambda: _most(typed.longest, "how many metres, such as 4"), 0.0),
        heaviest_g=wrong.read("heaviest", lambda: _most(typed.heaviest, "how many grams, such as 60"), 0.0),
        allowances={
            key: wrong.read(key, lambda text=text: typed_nought_or_length(text, typed.units), 0.0)  # type: ignore[misc]
            for key, text in allowances.items()
        },
        title_most=kept.title_most,
        description_most=kept.description_most,
    )
    if typed.rate:
        wrong.read("rate", lambda: read_amount(typed.rate, typed.currency, "a rate an hour"), 0)
    for name in ("maker", "contact", "licence", "greeting", "closing"):
        if len(getattr(typed, name)) > LONGEST_LINE:
            wrong.add(name, f"At most {LONGEST_LINE} characters fit here.")
    return SettingsForm(typed, wrong.by_field, None if wrong.by_field else made)


def _most(text: str, what: str) -> float:
    """A limit, or nought where none is said."""
    return decimal_number(text, what) if text else 0.0


def _known_choices(typed: TypedSettings, before: TypedSettings) -> dict[str, Any]:
    choices = {
        "units": UNITS,
        "terms": TERMS,
        "paper": PAPERS,
        "look": LOOKS,
        "country": {"", *dict(countries())},
        "currency": dict(currencies()),
    }
    return {name: getattr(typed if getattr(typed, name) in known else before, name) for name, known in choices.items()}


def blank_swatch(today: date | None = None) -> SwatchForm:
    """The form for a new swatch."""
    return SwatchForm(TypedSwatch(date=today.isoformat() if today else ""), {}, None)


def read_swatch(pairs: Iterable[tuple[str, object]], kinds: Iterable[str], units: str = "cm") -> SwatchForm:
    """The swatch that was sent."""
    sent, wrong = Sent(pairs), Objections()
    typed = TypedSwatch(**{f.name: sent.one(f.name) for f in fields(TypedSwatch)})
    around = wrong.read("around", lambda: read_around(typed.around), 0)
    beads = wrong.read("number", lambda: _beads(typed, around), 0)
    measured = wrong.read("length", lambda: typed_length(typed.length, units), 0.0)
    unravelled = wrong.read("unravelled", lambda: typed_nought_or_length(typed.unravelled or "0", units), 0.0)
    if typed.kind not in tuple(kinds):
        wrong.add("kind", "Choose a bead kind from the list.")
    if typed.stitch not in STITCHES:
        wrong.add("stitch", "Choose a stitch from the list.")
    wrong.read("date", lambda: _date(typed.date), "")
    swatch = None if wrong.by_field else _swatch(typed, around, beads, measured, unravelled, wrong)
    return SwatchForm(typed, wrong.by_field, swatch)


def _beads(typed: TypedSwatch, around: int) -> int:
    """Beads worked; rows counted along the finished rope hold half a bead more than the rope is around."""
    if typed.counted == "rows":
        return beads_of_rows(decimal_number(typed.number, "how many rows, such as 40"), around)
    return whole_number(typed.number, "how many beads, such as 480")


def _date(text: str) -> str:
    try:
        return date.fromisoformat(text).isoformat() if text else ""
    except ValueError:
        raise EngineError(f"“{text[:40]}” is not a date; write year, month and day such as 2026-03-01.") from None


def _swatch(
    typed: TypedSwatch, around: int, beads: int, length_mm: float, unravelled_mm: float, wrong: Objections
) -> Swatch | None:
    try:
        return Swatch(
            kind=typed.kind,
            around=around,
            stitch=typed.stitch,
            beads=beads,
            length_mm=length_mm,
            date=typed.date,
            note=typed.note,
            unravelled_mm=unravelled_mm,
        )
    except EngineError as error:
        wrong.add({"beads": "number"}.get(error.field or "", error.field or ""), error.message)
        return None
