"""The form of a photograph that becomes a chart: how it lies on the rope, and in which colours."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from string import ascii_uppercase

from engine.cabinet.bead import Bead
from engine.errors import ChoiceError, EngineError, shortened
from engine.numbers import decimal_number, whole_number
from engine.pattern.palette import Palette, check_colour
from engine.pattern.pattern import Pattern, read_around
from engine.pattern.photographs.few_colours import MOST_FOUND
from engine.pattern.photographs.laid import Laid, Summed, lay
from engine.pattern.photographs.photograph import CARRIED, EVENLY, UNMIXED, Charted, Wish, charted
from webapp.pages.forms.editor import NEW_COLOURS
from webapp.pages.forms.sent import Objections, Sent
from webapp.pages.forms.starts import palette_of

FOUND, CHOSEN, CABINET = "found", "chosen", "cabinet"
SOURCES = {FOUND: "Found in the picture", CHOSEN: "Chosen here", CABINET: "From your beads"}
MIXED = {UNMIXED: "None: the nearest bead", EVENLY: "Spread evenly", CARRIED: "Carried on along the spiral"}
QUARTERS = {"0": "As it is", "90": "A quarter to the right", "180": "Upside down", "270": "A quarter to the left"}
EDGES = ("left", "top", "right", "bottom")
ADD, REMOVE = "add", "remove"
MOST_TILT, LEAST_CONTRAST, MOST_CONTRAST = 45, 50, 200
MOST_ROWS = 20_000

Box = tuple[float, float, float, float]
Sampled = Callable[[float, Box], Summed]  # the turned picture's part, ready to be sampled


@dataclass(frozen=True)
class TypedPhotograph:
    """The form as typed. Edges are per cent of the turned picture; `colours` stand in the order of their codes."""

    title: str = "From a picture"
    around: str = "24"
    kind: str = "11/0 round"
    turn: str = "0"
    tilt: str = "0"
    left: str = "0"
    top: str = "0"
    right: str = "100"
    bottom: str = "100"
    high: str = ""
    rows: str = ""
    gap: str = "0"
    source: str = FOUND
    many: str = "6"
    colours: tuple[str, ...] = NEW_COLOURS[:4]
    contrast: str = "100"
    mixing: str = UNMIXED
    calm: bool = False
    ground: str = "#f3ecdd"


@dataclass(frozen=True)
class PhotographForm:
    """What was typed, what is wrong by field, and when nothing is: turn, cut, place on the rope, and the pattern."""

    typed: TypedPhotograph
    errors: Mapping[str, str]
    turn: float = 0.0
    box: Box = (0.0, 0.0, 1.0, 1.0)
    laid: Laid | None = None
    pattern: Pattern | None = None


def read_photograph(
    pairs: Iterable[tuple[str, object]], sampled: Sampled, cabinet: Sequence[Bead] = (), designer: str = ""
) -> PhotographForm:
    """The form as it stands in an address or was sent; what is left out is as usual."""
    sent, wrong = Sent(pairs), Objections()
    typed = _typed(sent)
    around = wrong.read("around", lambda: read_around(typed.around), 3)
    turn = wrong.read("turn", lambda: _turn(typed), 0.0)
    box = _box(typed, wrong)
    size = {
        name: wrong.read(name, lambda name=name: _whole(getattr(typed, name), name), 0)  # type: ignore[misc]
        for name in ("high", "rows", "gap")
    }
    wish = _wish(typed, _beads_of(cabinet, typed.kind), wrong)
    if wish is None or wrong.by_field:
        return PhotographForm(typed, wrong.by_field, turn, box)
    try:
        picture = sampled(turn, box)
        laid = lay(around, picture.shape, **size)
        made = _made(picture, laid, wish)
        palette = _palette(made, typed.kind, _beads_of(cabinet, typed.kind))
        pattern = Pattern(typed.title, around, palette, made.beads, designer=designer)
    except EngineError as error:
        return PhotographForm(typed, {(error.field or "title").rpartition(".")[2]: error.message}, turn, box)
    return PhotographForm(typed=typed, errors={}, turn=turn, box=box, laid=laid, pattern=pattern)


def read_cut(pairs: Iterable[tuple[str, object]]) -> tuple[float, Box]:
    """Turn in degrees and the part of the picture that is taken; as usual where they cannot be read."""
    typed, wrong = _typed(Sent(pairs)), Objections()
    box = _box(typed, wrong)
    return wrong.read("turn", lambda: _turn(typed), 0.0), (0.0, 0.0, 1.0, 1.0) if wrong.by_field else box


@lru_cache(2)
def _made(picture: Summed, laid: Laid, wish: Wish) -> Charted:
    """A page and its pictures ask for the same chart, one after the other."""
    return charted(picture, laid, wish)


def _typed(sent: Sent) -> TypedPhotograph:
    usual = TypedPhotograph()
    texts = {
        name: sent.one(name) or getattr(usual, name)
        for name in TypedPhotograph.__dataclass_fields__
        if name not in ("colours", "calm")
    }
    return TypedPhotograph(**texts, colours=_colours(sent, usual), calm=sent.one("calm") == "yes")


def _colours(sent: Sent, usual: TypedPhotograph) -> tuple[str, ...]:
    colours = sent.all("colour")[:MOST_FOUND] or usual.colours
    if sent.one("do") == ADD and len(colours) < MOST_FOUND:
        return (*colours, NEW_COLOURS[len(colours) % len(NEW_COLOURS)])
    return colours[:-1] if sent.one("do") == REMOVE and len(colours) > 1 else colours


def _turn(typed: TypedPhotograph) -> float:
    if typed.turn not in QUARTERS:
        raise ChoiceError("Turn", typed.turn, QUARTERS)
    left = typed.tilt.startswith(("-", "−"))
    tilt = decimal_number(typed.tilt.lstrip("-−"), "by how many degrees it is straightened, such as 1.5")
    if tilt > MOST_TILT:
        raise EngineError(f"Straighten: {shortened(typed.tilt)} is too much; at most {MOST_TILT} degrees either way.")
    return float(typed.turn) + (-tilt if left else tilt)


def _box(typed: TypedPhotograph, wrong: Objections) -> Box:
    left, top, right, bottom = (wrong.read(name, lambda name=name: _edge(typed, name), 0.0) for name in EDGES)  # type: ignore[misc]
    for low, high, name in ((left, right, "right"), (top, bottom, "bottom")):
        if high - low < 0.01 and not wrong.by_field:
            wrong.add(name, "That cuts everything away; left must be less than right, and top less than bottom.")
    return left, top, right, bottom


def _edge(typed: TypedPhotograph, name: str) -> float:
    per_cent = decimal_number(getattr(typed, name), "a place in per cent, such as 12.5")
    if per_cent > 100:
        raise EngineError(f"The {name} edge: {shortened(getattr(typed, name))} is outside of the picture; 0 to 100.")
    return per_cent / 100


def _whole(text: str, name: str) -> int:
    told = {"high": "how many beads of the round", "rows": "how many rows", "gap": "how many rows of background"}
    if not text:
        return 0
    number = whole_number(text, f"{told[name]}, such as 12")
    if number > MOST_ROWS:
        raise EngineError(f"{number:,} is too many; say {told[name]}, at most {MOST_ROWS:,}.")
    return number


def _wish(typed: TypedPhotograph, beads: Sequence[Bead], wrong: Objections) -> Wish | None:
    if typed.source not in SOURCES:
        wrong.add("source", ChoiceError("Colours", typed.source, SOURCES).message)
    if typed.source == CABINET and not beads:
        wrong.add("source", "There are no beads in your cabinet yet; take found or chosen colours.")
    if typed.mixing not in MIXED:
        wrong.add("mixing", ChoiceError("Mixing", typed.mixing, MIXED).message)
    for field, colours in (("ground", (typed.ground,)), ("colour", typed.colours)):
        for colour in colours:
            wrong.read(field, lambda colour=colour: check_colour(colour.lower(), ""), None)  # type: ignore[misc]
    many = wrong.read("many", lambda: _between(typed.many, 1, MOST_FOUND, "how many colours"), 1)
    contrast = wrong.read("contrast", lambda: _between(typed.contrast, LEAST_CONTRAST, MOST_CONTRAST, "contrast"), 100)
    if wrong.by_field:
        return None
    return Wish(
        given=tuple(colour.lower() for colour in typed.colours) if typed.source == CHOSEN else (),
        many=many,
        at_hand=tuple(bead.colour for bead in beads) if typed.source == CABINET else (),
        contrast=contrast / 100,
        mixing=typed.mixing,
        calm=typed.calm,
        ground=typed.ground.lower(),
    )


def _between(text: str, least: int, most: int, what: str) -> int:
    number = whole_number(text, f"{what}, {least} to {most}")
    if not least <= number <= most:
        raise EngineError(f"{what.capitalize()}: {number:,} cannot be; expected {least} to {most}.")
    return number


def _beads_of(cabinet: Sequence[Bead], kind: str) -> tuple[Bead, ...]:
    """The beads of that kind; of all kinds where there is none."""
    return tuple(bead for bead in cabinet if bead.kind == kind) or tuple(cabinet)


def _palette(made: Charted, kind: str, beads: Sequence[Bead]) -> Palette:
    if not made.at_hand:
        return palette_of(made.colours, kind)
    places = zip(ascii_uppercase, made.at_hand, strict=False)
    return Palette(tuple(beads[place].entry(code) for code, place in places))
