"""How well a ring fits what was asked for: the rings beside it, and the chart that would close better."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from engine.counting.ring_table import Ring, rings_near
from engine.counting.rings import ring_step, round_up, stepped
from engine.counting.sizes import Size
from engine.pattern.repeats import least_ring
from engine.units import count, length, millimetres, whole

LARGEST_HAND_MM = 300.0  # the girth of the largest hand that a bangle is sold for, and more
SMALLEST_HEAD_MM = 520.0  # girth of a small grown head (common practice, no source)
FAR_MM = 5.0  # a ring that is further off is not what was asked for


@dataclass(frozen=True)
class BetterChart:
    """A chart of a round more or less (`rounds` is +1 or −1) whose nearest ring is nearer: its beads and its girth."""

    rounds: int
    chart_beads: int
    ring_beads: int
    girth_mm: float
    off_mm: float


@dataclass(frozen=True)
class RingFit:
    """A ring against the girth asked for: how far off it is, the rings beside it, and charts that close nearer."""

    off_mm: float
    smaller: Ring | None
    larger: Ring | None
    better: tuple[BetterChart, ...]

    @property
    def far(self) -> bool:
        return abs(self.off_mm) > FAR_MM


def ring_fit(size: Size) -> RingFit | None:
    """How well that ring fits; None for a rope that is not worked shut, or for which no size was asked."""
    if not size.closure.worked_shut or not size.question.asks_for_length:
        return None
    rings = rings_near(size)
    smaller = max((ring for ring in rings if ring.beads < size.beads), key=_beads, default=None)
    larger = min((ring for ring in rings if ring.beads > size.beads), key=_beads, default=None)
    better = tuple(_better(size)) if abs(size.off_mm) > FAR_MM else ()
    return RingFit(off_mm=size.off_mm, smaller=smaller, larger=larger, better=better)


def ring_measures(size: Size, units: str = "cm") -> str:
    """A ring in measures: "21.0 cm around the inside, 6.7 cm across, for a hand of up to 21.0 cm"."""
    girth, diameter = length(size.finished_mm, units), length(size.finished_mm / pi, units)
    fits = ""
    if size.finished_mm <= LARGEST_HAND_MM:
        fits = f", for a hand of up to {girth}"
    elif size.finished_mm >= SMALLEST_HEAD_MM:
        fits = f", for a head of up to {girth}"
    return f"{girth} around the inside, {diameter} across{fits}"


def fit_in_words(size: Size, units: str = "cm") -> tuple[str, ...]:
    """What has to be said of a ring that is far from what was asked for, a sentence each; nothing of one that fits."""
    fit = ring_fit(size)
    if fit is None or not fit.far:
        return ()
    asked = "hand" if size.question.over_hand else "girth"
    kind = "next ring that goes over the hand" if size.question.over_hand else "nearest ring that closes"
    sentences = [
        f"The {kind} is {length(size.finished_mm, units)} inside, {_off(fit.off_mm, units)} than the {asked} asked for."
    ]
    if beside := [_beside(ring, size, units) for ring in (fit.smaller, fit.larger) if ring is not None]:
        sentences.append(f"Nearest other rings: {'; '.join(beside)}.")
    sentences += [_better_in_words(better, units) for better in fit.better]
    return tuple(sentences)


def _better(size: Size) -> list[BetterChart]:
    """Charts of a round more or less, where they bring the ring nearer; none where several parts fill."""
    pattern, step = size.pattern, ring_step(size.pattern)
    if len(pattern.fills) != 1:
        return []
    least = least_ring(pattern.around)
    exact = size.beads - size.off_mm / size.rope.bead_mm
    rounded = round_up if size.question.over_hand else whole
    charts = []
    for rounds in (1, -1):
        other = step + rounds * pattern.around
        if other < 1:
            continue
        beads = stepped(exact, pattern.fixed_beads, other, rounded, least)
        girth_mm = size.finished_of(size.rope_of((beads - pattern.fixed_beads,)))
        off_mm = girth_mm - size.length_mm
        if girth_mm > 0 and 2 * abs(off_mm) < abs(size.off_mm):
            charts.append(
                BetterChart(rounds=rounds, chart_beads=other, ring_beads=beads, girth_mm=girth_mm, off_mm=off_mm)
            )
    return charts


def _beads(ring: Ring) -> int:
    return ring.beads


def _beside(ring: Ring, size: Size, units: str) -> str:
    off = ring.girth_mm - size.length_mm
    return f"{count(ring.beads)} beads, {length(ring.girth_mm, units)} inside, {_off(off, units)}"


def _better_in_words(better: BetterChart, units: str) -> str:
    change = "added to" if better.rounds > 0 else "taken from"
    return (
        f"With one round {change} the repeat ({count(better.chart_beads)} beads) a ring of "
        f"{count(better.ring_beads)} beads closes at {length(better.girth_mm, units)} inside, "
        f"{_off(better.off_mm, units)}."
    )


def _off(off_mm: float, units: str) -> str:
    """ "2.0 mm smaller", "12.1 cm larger"."""
    amount = millimetres(abs(off_mm)) if abs(off_mm) < 10 and units != "in" else length(abs(off_mm), units)
    return f"{amount} {'larger' if off_mm > 0 else 'smaller'}"
