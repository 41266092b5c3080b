"""What every booklet says alike: care, safety, how to report a mistake."""

from __future__ import annotations

from engine.units import count, plain

CARE = (
    "Put it on last and take it off first. Keep it from perfume, chlorine and the sea.",
    "Wipe it with a soft damp cloth and dry it flat. Do not hang it on a hook: the thread stretches.",
    "Keep it in a box, away from sunlight.",
)

SAFETY = (
    ("Small parts.", "Not for children under three: beads and findings can be swallowed."),
    (
        "Nickel and lead.",
        "Limits for metal parts differ by country. If you sell finished pieces, follow the law of the "
        "place where you sell.",
    ),
)

REPORT = (
    "Look once more at the ringed bead before the place: most mistakes are a bead too many or too few on the thread.",
    "If the booklet is wrong, write to the maker: give the edition as it stands below, the page, the list, the column "
    "and the entry; say what is printed and what you expect.",
)


def times(number: float) -> str:
    """How often the chart is worked: "once", "12.5 times"."""
    text = plain(number, 2)
    return "once" if text == "1" else f"{text} times"


def span(noun: str, first: int, last: int) -> str:
    """From one to another: "bead 1", "rows 37 to 72"."""
    return f"{noun} {count(first)}" if first == last else f"{noun}s {count(first)} to {count(last)}"
