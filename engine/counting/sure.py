"""How sure the lengths of a rope are, and why: which swatch they rest on, and why others do not count."""

from __future__ import annotations

from engine.counting.rope import STITCH_NAMES, Swatch, fitting_swatch
from engine.counting.sizes import Size
from engine.units import count, numbers_in_words, plain

LEAST_ERROR = 0.1  # percent; no reading is surer
READING_MM = 0.5  # a ruler is read to the nearest millimetre


def how_sure(size: Size) -> str:
    """Why the lengths of that size are as sure as they are, in a sentence or two."""
    if size.question.pass_mm is not None:
        read = max(LEAST_ERROR, 100 * READING_MM / (size.question.pass_mm * size.question.passes_measured))
        if size.question.passes_measured > 1:
            passes = count(size.question.passes_measured)
            return f"{passes} passes read to the nearest millimetre are good to ±{plain(read, 1)} %."
        return (
            f"A pass read to the nearest millimetre is good to ±{plain(read, 1)} %; several passes measured at "
            "once are surer."
        )
    drawn = size.pattern.drawn
    kinds = tuple(dict.fromkeys(kind.name for index, kind in enumerate(size.kinds) if index in drawn))
    if len(kinds) > 1:
        return (
            f"{' and '.join(kinds)} are worked together; a swatch tells of one kind alone, so work and measure a piece."
        )
    swatch = fitting_swatch(size.workshop.swatches, kinds[0], size.around, size.stitch)
    return _measured(swatch, size) if swatch else _estimated(kinds[0], size)


def _measured(swatch: Swatch, size: Size) -> str:
    read = f"Read to the nearest millimetre it is good to ±{plain(100 * READING_MM / swatch.length_mm, 1)} %"
    if swatch.around == size.around:
        return f"{read}, as long as the tension stays the same."
    return (
        f"{read}. It was worked at {swatch.around} around and is carried to {size.around} by the sum of the rope; "
        f"one at {size.around} around would be surer."
    )


def _estimated(kind: str, size: Size) -> str:
    others = [swatch for swatch in size.workshop.swatches if swatch.kind == kind]
    if not others:
        return f"No swatch of {kind} beads is kept."
    arounds = numbers_in_words(sorted({swatch.around for swatch in others}))
    return (
        f"The swatches of {kind} beads, at {arounds} around, are in {STITCH_NAMES[others[0].stitch]}; a swatch is "
        f"never carried to {STITCH_NAMES[size.stitch]}."
    )
