"""A strung thread on the scales: what it should weigh, and how many beads a difference means."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from engine.counting.sizes import Size
from engine.counting.stringing import StringingList
from engine.errors import SizeError
from engine.units import count, counted, grams

SCALE_GRAMS = 0.1  # what a kitchen scale tells apart (our judgement)
SAMPLE_ERROR = 0.01  # of a bead's weight where a hundred of the same bag were weighed (our judgement)


@dataclass(frozen=True)
class Weighed:
    """A thread, counted from one, with its beads, its expected grams, and how far those may be off.

    `weighed` are the grams on the scales, `off` the beads that the difference means, above nought too many, and
    `unsure` the beads by which that may be wrong; all three None where nothing was weighed.
    """

    number: int
    beads: int
    grams: float
    error_grams: float
    weighed: float | None = None
    off: float | None = None
    unsure: float | None = None


def weigh(
    size: Size, stringing: StringingList, weighed: Sequence[float | None] = (), bead_grams: float | None = None
) -> tuple[Weighed, ...]:
    """Every thread on the scales, thread not counted; `weighed` are grams by thread, None for one that was not weighed.

    A bead weighs what the table of kinds says, which is uncertain by the fewest beads in a gram; or `bead_grams` where
    beads of the same bag were weighed. Raises SizeError for a weight of nothing.
    """
    if bead_grams is not None and bead_grams <= 0:
        raise SizeError("A bead weighs more than nothing; weigh a hundred of them.", "sample")
    return tuple(
        _on_scales(size, number, Counter(size.worked[thread.first : thread.last]), asked, bead_grams)
        for number, (thread, asked) in enumerate(
            zip(stringing.threads, (*weighed, *(None,) * len(stringing.threads)), strict=False), 1
        )
    )


def _on_scales(
    size: Size, number: int, beads: Counter[int], weighed: float | None, bead_grams: float | None
) -> Weighed:
    many = beads.total()
    each = [(beads[index], kind) for index, kind in enumerate(size.kinds) if beads[index]]
    own = many * bead_grams if bead_grams else sum(some / kind.per_gram for some, kind in each)
    heaviest = own * (1 + SAMPLE_ERROR) if bead_grams else sum(some / kind.fewest for some, kind in each)
    error = heaviest - own
    if weighed is None:
        return Weighed(number, many, own, error)
    bead = own / many
    return Weighed(
        number=number,
        beads=many,
        grams=own,
        error_grams=error,
        weighed=weighed,
        off=(weighed - own) / bead,
        unsure=(error + SCALE_GRAMS / 2) / bead,
    )


def weighed_in_words(weighed: Weighed) -> str:
    """What the scales say of a thread: what it should weigh, and about how many beads are missing or too many."""
    should = (
        f"Thread {count(weighed.number)}, {counted(weighed.beads, 'bead')}, should weigh {grams(weighed.grams)} "
        f"± {grams(weighed.error_grams)}"
    )
    if weighed.weighed is None or weighed.off is None or weighed.unsure is None:
        return f"{should}."
    beads = round(abs(weighed.off))
    if abs(weighed.off) <= weighed.unsure:
        return (
            f"{should} and weighs {grams(weighed.weighed)}. That tells nothing below "
            f"{counted(round(weighed.unsure), 'bead')}: count, or weigh a hundred beads of the same bag."
        )
    more = "too many" if weighed.off > 0 else "missing"
    return (
        f"{should} and weighs {grams(weighed.weighed)}: about {counted(beads, 'bead')} {more}, "
        f"give or take {count(round(weighed.unsure))}."
    )
