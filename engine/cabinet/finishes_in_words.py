"""Whether the finish of two beads helps to tell them apart."""

from __future__ import annotations

from engine.pattern.palette import Entry


def finishes_in_words(one: Entry, other: Entry) -> str:
    """What the two finishes do for the eye: nothing where they are the same.

    >>> finishes_in_words(Entry("A", "Sea", "#2f7f76", "matte"), Entry("B", "Bay", "#307e77", "metallic"))
    'matte beside metallic, which helps in the hand but not in print'
    """
    if one.finish == other.finish:
        return f"both {one.finish}, so only the colour tells them apart"
    return f"{one.finish} beside {other.finish}, which helps in the hand but not in print"
