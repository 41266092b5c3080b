"""Every start there is, by its key, and what is worth knowing of what it made."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from engine.errors import ChoiceError
from engine.pattern.repeats import drift, least_ring, repeat
from engine.pattern.starts.figures import FIGURES
from engine.pattern.starts.lettering import LETTERING
from engine.pattern.starts.motifs import MOTIFS
from engine.pattern.starts.scattered import SCATTERED
from engine.pattern.starts.start import Start
from engine.pattern.starts.winding import WINDING
from engine.units import count, counted, degrees, plain

STARTS: Mapping[str, Start] = MappingProxyType(
    {start.key: start for start in (*WINDING, *FIGURES, *SCATTERED, *MOTIFS, *LETTERING)}
)


def start_of(key: str) -> Start:
    """The start of that key. Raises ChoiceError."""
    if key not in STARTS:
        raise ChoiceError("Start", key, STARTS, "start")
    return STARTS[key]


def stands_straight(around: int, beads: bytes) -> bool:
    """Whether a repeat stands straight above the one before it."""
    return not drift(around, repeat(beads)).beads


def winds_in_words(around: int, beads: bytes) -> str:
    """How the repeat lies on the rope: "stands straight", or by how much each one is turned, and where rings close."""
    every = repeat(beads)
    turn = drift(around, every)
    rings = -(-least_ring(around) // every) * every
    if not turn.beads:
        lies = "It stands straight along the rope"
    else:
        sign = "+" if turn.beads > 0 else "−"
        lies = (
            f"Each repeat of {counted(every, 'bead')} is turned by {sign}{plain(abs(turn.beads), 1)} "
            f"{'bead' if abs(turn.beads) == 1 else 'beads'} ({degrees(turn.degrees).replace('-', '−')})"
        )
    return f"{lies}. A ring closes at every multiple of {counted(every, 'bead')}, from {count(rings)} on."
