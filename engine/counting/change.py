"""How an answer differs from the one given before it."""

from __future__ import annotations

from dataclasses import dataclass

from engine.counting.answers import Answer
from engine.units import count, counted, length, metres


@dataclass(frozen=True)
class Change:
    """What became of an answer: more beads, length, strung length in mm and beads by code, below nought fewer."""

    before: Answer
    beads: int
    finished_mm: float
    strung_mm: float
    by_code: tuple[tuple[str, int], ...]


def change_since(before: Answer, now: Answer) -> Change | None:
    """How the answer differs from the one before, of the same pattern; None where nothing does."""
    old = {need.code: need.beads for need in before.materials.colours}
    change = Change(
        before=before,
        beads=now.size.beads - before.size.beads,
        finished_mm=now.size.finished_mm - before.size.finished_mm,
        strung_mm=now.stringing.strung_mm - before.stringing.strung_mm,
        by_code=tuple((need.code, need.beads - old.get(need.code, 0)) for need in now.materials.colours),
    )
    same = change.beads == 0 and before.size.question == now.size.question
    return None if same else change


def change_in_words(change: Change, units: str = "cm") -> str:
    """The difference in a sentence: "55 beads fewer than for 45.0 cm before: A −31, B −16, C −8, …"."""
    asked = length(change.before.size.finished_mm, units)
    if change.beads == 0:
        return f"As many beads as for {asked} before."
    way = "more" if change.beads > 0 else "fewer"
    colours = ", ".join(f"{code} {_signed(beads)}" for code, beads in change.by_code if beads)
    strung = metres(abs(change.strung_mm))
    return (
        f"{counted(abs(change.beads), 'bead')} {way} than for {asked} before: {colours}; "
        f"{strung} of strung beads {'more' if change.strung_mm > 0 else 'less'}."
    )


def _signed(beads: int) -> str:
    return f"{'+' if beads > 0 else '−'}{count(abs(beads))}"
