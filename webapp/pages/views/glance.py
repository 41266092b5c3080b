"""One pattern at a glance: picture, facts, palette, chart, and what can be done with it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import Annotated

from engine.booklet.choices import DIFFICULTIES
from engine.counting.findings import thickness_in_words
from engine.counting.parts import times_in_words, worked_parts
from engine.counting.questions import Question
from engine.counting.rings import meets_itself, smallest_ring
from engine.counting.sizes import Size, size
from engine.counting.workshop import Workshop
from engine.errors import UnknownKind
from engine.pattern.colour import PLAIN, TOO_NEAR, LookAlike, look_alikes
from engine.pattern.colour_changes import nearest_change
from engine.pattern.palette import Palette
from engine.pattern.pattern import Pattern
from engine.pattern.repeats import Drift
from engine.pattern.seams import seam_in_words
from engine.units import count, counted, degrees, plain
from webapp.pages.addresses import chart_picture, picture
from webapp.pages.views.frame import HANDED, Frame, Head, head, stitched
from webapp.pages.views.look_alikes import EYES
from webapp.pages.views.measuring import Measuring, measuring
from webapp.pages.views.signs import Sign, signs
from webapp.records import KeptColourway, StoredPattern

HERO_WIDTH = 1200

MOST_CHANGES = 3  # pairs for which another colour is looked for
MOST_ALIKE = 6  # pairs that the page of a pattern tells; a palette of many beads has hundreds


@dataclass(frozen=True)
class Fact:
    """A name, its value, and a small line that says more."""

    name: Annotated[str, "What it is."]
    value: Annotated[str, "Its value in words."]
    more: Annotated[str, "More about it; may be empty."]


@dataclass(frozen=True)
class PaletteLine:
    """A bead of the palette with its count."""

    sign: Annotated[Sign, "The bead as drawn."]
    words: Annotated[str, "Kind, finish and maker's code."]
    beads: Annotated[int, "How many stand in its parts, each drawn once."]
    share: Annotated[float, "Their share of all, in percent."]


@dataclass(frozen=True)
class PartLine:
    """A part of a rope."""

    number: Annotated[int, "Its place in working order, from one."]
    name: Annotated[str, "What it is called."]
    beads: Annotated[int, "How many beads are drawn."]
    rounds: Annotated[str, "How many rounds that is."]
    often: Annotated[str, "How often it is worked, or that it fills the rope."]
    seam: Annotated[str, "What the seam before it does where every fill is worked once; empty before the first."]
    chart: Annotated[str, "Address of its chart, lying."]


@dataclass(frozen=True)
class Shelf:
    """What the library says of a pattern, beside what stands in its file."""

    series: Annotated[str, "The series it belongs to; may be empty."]
    difficulty: Annotated[int, "How hard it is, 1 to 5; nought where that was not said."]
    difficulties: Annotated[tuple[tuple[str, str], ...], "The difficulties to choose from: value and words."]


@dataclass(frozen=True)
class PatternPage:
    """One pattern at `/patterns/{id}`."""

    frame: Frame
    head: Head
    picture: Annotated[str, "Address of the large ring picture."]
    chart: Annotated[str, "Address of the chart, lying."]
    facts: Annotated[tuple[Fact, ...], "Around, repeat, drift, thickness and so on."]
    parts: Annotated[tuple[PartLine, ...], "Its parts in working order; none where it is written without."]
    palette: Annotated[tuple[PaletteLine, ...], "Its beads with counts."]
    beads: Annotated[int, "Beads of all parts together, each drawn once."]
    designer: Annotated[str, "Who designed it; may be empty."]
    notes: Annotated[str, "The maker's notes; may be empty."]
    measuring: Annotated[Measuring | None, "What to measure, where no swatch stands behind the lengths."]
    revision: Annotated[int, "The newest revision's number."]
    changed: Annotated[datetime, "When that was made."]
    alike: Annotated[tuple[str, ...], "Beads that look alike, the nearest pairs, a sentence each."]
    more_alike: Annotated[int, "How many such pairs there are besides."]
    unknown: Annotated[str, "That a bead kind is not in this library; empty where all are."]
    shelf: Annotated[Shelf, "Its series and skill level."]
    colourways: Annotated[tuple[tuple[int, str], ...], "Number and name of its colourways."]


def pattern_page(
    frame: Frame, stored: StoredPattern, workshop: Workshop, colourways: Iterable[KeptColourway] = ()
) -> PatternPage:
    """The page of a pattern as it stands; what hangs on a bead kind that the workshop does not know is left out."""
    pattern, top = stored.pattern, head(stored)
    one_pass, unknown = _one_pass(pattern, workshop)
    alike = alike_in_words(pattern.palette)
    return PatternPage(
        frame=frame,
        head=top,
        picture=picture(stored.id, "ring", HERO_WIDTH, top.version),
        chart=chart_picture(stored.id, top.version),
        facts=facts(pattern, one_pass, frame.terms),
        parts=part_lines(stored, one_pass, top.version) if pattern.in_parts else (),
        palette=_palette(pattern),
        beads=pattern.beads,
        designer=pattern.designer,
        notes=pattern.notes,
        measuring=measuring(one_pass, frame) if one_pass else None,
        revision=stored.revision,
        changed=stored.revision_date,
        alike=alike[:MOST_ALIKE],
        more_alike=max(0, len(alike) - MOST_ALIKE),
        unknown=unknown,
        shelf=_shelf(stored),
        colourways=tuple((kept.id, kept.colourway.name) for kept in colourways),
    )


def _shelf(stored: StoredPattern) -> Shelf:
    return Shelf(stored.series, stored.difficulty, difficulties())


def difficulties() -> tuple[tuple[str, str], ...]:
    """What can be chosen: number and word."""
    return (("0", "Not set"), *((str(number), word.capitalize()) for number, word in DIFFICULTIES.items()))


def _one_pass(pattern: Pattern, workshop: Workshop) -> tuple[Size | None, str]:
    try:
        return size(pattern, Question(), workshop), ""
    except UnknownKind as error:
        return None, error.message


def alike_in_words(palette: Palette) -> tuple[str, ...]:
    """The pairs of a palette that look alike, and to whom; for the nearest ones, what would tell them apart."""

    def named(index: int) -> str:
        return f"{palette[index].code} {palette[index].name}"

    def whom(sight: str) -> str:
        return "" if sight == PLAIN else f" {EYES[sight]}"

    def change(place: int, pair: LookAlike) -> str:
        nearest = nearest_change(palette, pair) if place < MOST_CHANGES else None
        if nearest is None:
            return ""
        return f" {named(nearest.entry)} can be told apart when it is {nearest.words}, such as {nearest.colour}."

    return tuple(
        f"{named(pair.first)} and {named(pair.second)} look alike{whom(pair.sight)}: "
        f"difference {plain(pair.difference, 1)}, where {plain(TOO_NEAR, 1)} can be told apart.{change(place, pair)}"
        for place, pair in enumerate(look_alikes(palette))
    )


def facts(pattern: Pattern, one_pass: Size | None, terms: str) -> tuple[Fact, ...]:
    """What a pattern is, in the order in which one asks."""
    beads = len(pattern.main.beads)
    return (
        Fact("Around", f"{pattern.around} beads", ""),
        Fact(_chart_of(pattern), f"{count(beads)} beads", f"{plain(beads / pattern.around, 2)} rounds"),
        *_others(pattern),
        Fact("Repeat", counted(pattern.repeat, "bead"), _repeats(pattern)),
        Fact("Drift", *drift_in_words(pattern.drift)),
        *(_rope(one_pass) if one_pass else ()),
        Fact("Closes to a ring", *closing_in_words(pattern)),
        Fact("Worked", HANDED[pattern.hand], stitched(pattern.stitch_worked, terms)),
    )


def _chart_of(pattern: Pattern) -> str:
    """What the chart that stands for the pattern is called."""
    return f"Chart of “{pattern.main.name}”" if pattern.in_parts else "Chart"


def part_lines(stored: StoredPattern, one_pass: Size | None, version: str) -> tuple[PartLine, ...]:
    """The parts of a rope of several in working order."""
    pattern = stored.pattern
    worked = worked_parts(one_pass) if one_pass else ()
    seams = [seam_in_words(part.seam) if part.seam else "" for part in worked] or [""] * len(pattern.parts)
    return tuple(
        PartLine(
            number=number,
            name=part.name,
            beads=len(part.beads),
            rounds=plain(len(part.beads) / pattern.around, 2),
            often="fills the rope" if part.times is None else times_in_words(part.times),
            seam=seam,
            chart=chart_picture(stored.id, version, number),
        )
        for number, (part, seam) in enumerate(zip(pattern.parts, seams, strict=True), 1)
    )


def _rope(one_pass: Size) -> tuple[Fact, ...]:
    rope = one_pass.rope
    thickness, _, advice = thickness_in_words(one_pass).partition(":")
    return (
        Fact("Rope thickness", thickness, advice.strip()),
        Fact("Rounds per cm", plain(rope.rounds_per_cm, 2), rope.source),
    )


def drift_in_words(drift: Drift) -> tuple[str, str]:
    """The drift of a pass, and what it means."""
    if not drift.beads:
        return "none", "a pass ends where it began"
    beads = f"{'+' if drift.beads > 0 else '−'}{plain(abs(drift.beads), 1)}"
    return f"{beads} beads", f"{degrees(drift.degrees).replace('-', '−')} round the rope in one pass"


def closing_in_words(pattern: Pattern) -> tuple[str, str]:
    """Whether a ring closes in colour, and at which counts."""
    if not pattern.fills:
        return "in its one size", "the seam joins the last part to the first" if len(pattern.parts) > 1 else ""
    every = f"at every {count(pattern.repeat)} beads" if pattern.repeat > 1 else "at every bead"
    if meets_itself(pattern):
        return every, "the first and the last part meet and close together"
    if len(pattern.parts) > 1:
        joined = "the last part to the first" if pattern.in_parts else "the end to the start"
        return "after whole passes", f"the seam joins {joined}"
    least = smallest_ring(pattern)
    return every, "" if least == pattern.repeat else f"from {count(least)} beads on"


def _others(pattern: Pattern) -> tuple[Fact, ...]:
    """Start and end, or how many parts there are."""
    if pattern.in_parts:
        several = len(pattern.parts) > 1
        drawn = f"{count(pattern.beads)} beads drawn in all"
        return (Fact("Parts", str(len(pattern.parts)), drawn),) if several else ()
    if not pattern.fixed_beads:
        return ()
    beads = f"{count(len(pattern.start))} and {count(len(pattern.end))} beads"
    return (Fact("Start and end", beads, "worked once each"),)


def _repeats(pattern: Pattern) -> str:
    times = len(pattern.main.beads) // pattern.repeat
    return "the whole chart" if times == 1 else f"{count(times)} times in the chart"


def _palette(pattern: Pattern) -> tuple[PaletteLine, ...]:
    drawn = pattern.drawn
    lines = []
    for index, (entry, sign) in enumerate(zip(pattern.palette, signs(pattern.palette), strict=True)):
        words = " · ".join(filter(None, (entry.kind, entry.finish, entry.maker_code)))
        beads = drawn.count(index)
        lines.append(PaletteLine(sign, words, beads, 100 * beads / len(drawn)))
    return tuple(lines)
