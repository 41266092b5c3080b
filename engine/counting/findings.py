"""What goes with the rope: hook, thread, needle, caps, pins, core and rings that fit, each with its reason.

Nothing is claimed that does not follow from a table or a sum: where no table is known, the measure to take is named.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from engine.counting.kinds import KINDS
from engine.counting.sizes import Size
from engine.units import fixed, plain

CAP_PLAY_MM = 1.0  # a cap is as wide inside as the rope is thick, or up to this much more (common practice)
EYE_PIN_MM = 0.64  # 22 gauge (ASTM B258): thin enough for most beads, thick enough for a loop
SIMPLE_LOOP_MM = (10.0, 12.7)  # wire above the cap: common practice, and half an inch (published)
WRAPPED_LOOP_MM = 25.0  # an inch or more (published)


class Hose(NamedTuple):
    """A flexible hose as one maker sells it: bore and outside diameter, mm."""

    bore_mm: float
    outside_mm: float


# Flexible PVC sleeve, one maker's published table
HOSES = (Hose(2, 2.8), Hose(3, 3.9), Hose(4, 4.9), Hose(5, 6), Hose(6, 7), Hose(8, 9), Hose(10, 11.2), Hose(12, 13.2))


class Tools(NamedTuple):
    """Hook and thread for a bead kind: steel hook in mm with its US number, cord by its tex count."""

    hook_mm: float
    hook_us: str
    thread: str


# Hook: 11/0 0.75 mm, 8/0 1.0 to 1.25 mm, 6/0 with size 10 thread steel 1 to 3 (published); the rest lies between them.
TOOLS = {
    "15/0 round": Tools(0.6, "", "nylon bead cord, tex 70"),
    "11/0 round": Tools(0.75, "14", "nylon bead cord, tex 135"),
    "11/0 cylinder": Tools(0.75, "14", "nylon bead cord, tex 135"),
    "10/0 round": Tools(0.85, "13", "nylon bead cord, tex 135"),
    "8/0 round": Tools(1.1, "11", "nylon bead cord, tex 210"),
    "6/0 round": Tools(2.1, "3", "crochet cotton size 10, or nylon bead cord, tex 400"),
}


@dataclass(frozen=True)
class Findings:
    """Words for each thing that is needed, and the measures behind them in mm (None: measure first)."""

    hook: str
    thread: str
    needle: str
    cap_mm: tuple[float, float] | None
    core: Hose | None
    channel_mm: float
    measured: bool


def findings(size: Size, kind: str, hole_mm: float) -> Findings:
    """What fits a rope of that size; a bead kind that the table lacks takes the one nearest in working diameter."""
    tools = TOOLS[nearest_kind(kind, size.rope.working_mm)]
    thickness, channel = size.thickness_mm, size.rope.channel_mm
    fitting = [hose for hose in HOSES if hose.outside_mm <= channel]
    needle = f"fine wire or big-eye needle that passes a hole of {plain(hole_mm, 1)} mm, blunt needle for the tails"
    return Findings(
        _hook(tools), tools.thread, needle, (thickness, thickness + CAP_PLAY_MM) if size.rope.measured else None,
        fitting[-1] if fitting and size.rope.measured else None, channel, size.rope.measured)


def nearest_kind(kind: str, working_mm: float) -> str:
    """The kind itself, or the one in the table whose working diameter is nearest."""
    return kind if kind in TOOLS else min(TOOLS, key=lambda name: abs(KINDS[name].working_mm - working_mm))


def _hook(tools: Tools) -> str:
    sold = f" (sold as US steel {tools.hook_us}; makers disagree, go by the millimetres)" if tools.hook_us else ""
    return f"steel hook {fixed(tools.hook_mm, 2)} mm{sold}"
