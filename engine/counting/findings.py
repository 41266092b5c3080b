"""What goes with the rope: hook, thread, needle, caps, pins, core and rings that fit, each with its reason.

Nothing is claimed that does not follow from a table or a sum: where no table is known, the measure to take is named.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import ceil, pi
from typing import NamedTuple

from engine.counting.answers import Answer
from engine.counting.kinds import KINDS
from engine.counting.rope import STITCH_NAMES
from engine.counting.sizes import Size
from engine.counting.thread import TAILS_MM
from engine.pattern.pattern import WIDEST_SLIP
from engine.units import fixed, grams, length, metres, millimetres, plain

CAP_REASON = "as wide as the rope is thick, up to 1 mm more"
CAP_PLAY_MM = 1.0  # a cap is as wide inside as the rope is thick, or up to this much more (common practice)
EYE_PIN_MM = 0.64  # 22 gauge (ASTM B258): thin enough for most beads, thick enough for a loop
EYE_PIN_LONG_MM = 50.0  # what is caught in the end, a cap, the neck and a wrapped loop (common practice, no source)
WRAPPED_LOOP_MM = 25.0  # an inch or more (published)
JUMP_RING_MM, JUMP_WIRE_MM = 4.0, 0.8  # clasp to rope: 3 to 4 mm inside, wire 0.8 to 1.0 mm (published)
BUTTON_MM = 2.0  # how much wider a button is than its rope, so that it holds (common practice, no source)
SECOND_TURN = 2  # beads that a loop takes more, for a second turn of thread makes it tighter (published)
CORD_MM = 500.0  # a piece of cord for a sliding tie (common practice, no source)
COMMON = "common practice"


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
    tex: int  # grams of thread in 1000 m; of cotton size 10 the cord in its place


# Hook: 11/0 0.75 mm, 8/0 1.0 to 1.25 mm, 6/0 with size 10 thread steel 1 to 3 (published); the rest lies between them.
TOOLS = {
    "15/0 round": Tools(0.6, "", "nylon bead cord, tex 70", 70),
    "11/0 round": Tools(0.75, "14", "nylon bead cord, tex 135", 135),
    "11/0 cylinder": Tools(0.75, "14", "nylon bead cord, tex 135", 135),
    "10/0 round": Tools(0.85, "13", "nylon bead cord, tex 135", 135),
    "8/0 round": Tools(1.1, "11", "nylon bead cord, tex 210", 210),
    "6/0 round": Tools(2.1, "3", "crochet cotton size 10, or nylon bead cord, tex 400", 400),
}


@dataclass(frozen=True)
class Findings:
    """Words for hook, thread and needle, and measures in mm.

    `thickness_mm`, `cap_mm` and `channel_range_mm` are from, to: those of a measured rope, else the range of the
    estimate. `button_mm` is a button that holds the rope, `loop_beads` go round it. `core` is the hose for a measured
    rope (None: none fits, or measure first); `cores` may fit.
    """

    hook: str
    thread: str
    needle: str
    thickness_mm: tuple[float, float]
    cap_mm: tuple[float, float]
    button_mm: float
    loop_beads: int
    core: Hose | None
    cores: tuple[Hose, ...]
    channel_mm: float
    channel_range_mm: tuple[float, float]
    measured: bool


def findings(size: Size) -> Findings:
    """What fits a rope of that size; a bead kind that the table lacks takes the one nearest in working diameter."""
    tools, made = tools_for(size), size.rope
    thinnest, thickest = made.thickness_range_mm
    cores = tuple(dict.fromkeys(hose for hose in map(_largest_hose, made.channel_range_mm) if hose))
    hole = plain(size.main_kind.hole_mm, 1)
    button = ceil(size.thickness_mm + BUTTON_MM)
    return Findings(
        hook=_hook(tools),
        thread=tools.thread,
        needle=f"fine wire or big-eye needle that passes a hole of {hole} mm, blunt needle for the tails",
        thickness_mm=(thinnest, thickest),
        cap_mm=(thinnest, thickest + CAP_PLAY_MM),
        button_mm=button,
        loop_beads=ceil(pi * button / size.main_kind.length_mm) + SECOND_TURN,
        core=cores[0] if cores and made.measured else None,
        cores=cores,
        channel_mm=made.channel_mm,
        channel_range_mm=made.channel_range_mm,
        measured=made.measured,
    )


def _largest_hose(channel_mm: float) -> Hose | None:
    """The largest hose sold that goes into a channel of that width."""
    return next((hose for hose in reversed(HOSES) if hose.outside_mm <= channel_mm), None)


def thickness_in_words(size: Size) -> str:
    """ "9.9 mm" of a measured rope, else "about 8 mm, 7 to 9: measure before you buy caps"."""
    if size.rope.measured:
        return millimetres(size.thickness_mm)
    low, high = size.rope.thickness_range_mm
    about = f"about {plain(size.thickness_mm, 0)} mm, {plain(low, 0)} to {plain(high, 0)}"
    return about if size.closure.worked_shut else f"{about}: measure before you buy caps"


def inside_in_words(fit: Findings) -> str:
    """How wide inside a cap or an end is: "8.2 to 9.2 mm inside", said to be an estimate where it is one."""
    low, high = fit.cap_mm
    if fit.measured:
        return f"{plain(low, 1)} to {plain(high, 1)} mm inside"
    return f"about {plain(low, 0)} to {plain(high, 0)} mm inside: measure your rope before you buy"


class Fitting(NamedTuple):
    """One finding: how much or how large, why, and where that comes from."""

    name: str
    measure: str
    reason: str
    source: str


def fittings(answer: Answer, units: str = "cm") -> tuple[Fitting, ...]:
    """Everything that goes with the rope, in the order in which it is needed."""
    size, bill = answer.size, answer.materials
    fit, tools = findings(size), tools_for(size)
    return (
        Fitting(
            "Stitch",
            STITCH_NAMES[size.stitch],
            f"{size.around} around; slip stitch is usual to {WIDEST_SLIP} around",
            COMMON,
        ),
        Fitting("Hook", fit.hook, f"for {size.main_kind.name} beads and their thread", "published beside bead sizes"),
        Fitting(
            "Thread",
            f"buy {metres(bill.buy_thread_mm)}; {metres(bill.thread_mm)}, {grams(bill_thread_grams(answer))} are used",
            f"{tools.thread}; tails and needle ends counted, {length(TAILS_MM, units)} a thread",
            f"{bill.use.source}; tex is grams in 1000 m (ISO 1144)",
        ),
        Fitting("Needle", fit.needle, "beads are strung before they are worked", COMMON),
        *closing_fittings(size, units),
        _core(size, fit, units),
    )


def closing_fittings(size: Size, units: str = "cm") -> tuple[Fitting, ...]:
    """What the closure takes."""
    fit = findings(size)
    return tuple(CLOSING[name](size, fit, units) for name in size.closure.findings)


def bill_thread_grams(answer: Answer) -> float:
    """Weight of the thread of a bill, of the cord that goes with its main kind."""
    return thread_grams(answer.materials.thread_mm, tools_for(answer.size).tex)


def thread_grams(thread_mm: float, tex: float) -> float:
    """Weight of that much thread: tex is grams in 1000 m."""
    return thread_mm / 1_000_000 * tex


def jump_ring_outside_mm(inside_mm: float, wire_mm: float) -> float:
    """Outside diameter of a jump ring."""
    return inside_mm + 2 * wire_mm


def wire_mm(gauge: int) -> float:
    """Diameter of American wire gauge (ASTM B258)."""
    return float(0.127 * 92 ** ((36 - gauge) / 39))


def _caps(size: Size, fit: Findings, units: str) -> Fitting:
    return Fitting("Bead caps, 2", inside_in_words(fit), CAP_REASON, COMMON)


def _eye_pins(size: Size, fit: Findings, units: str) -> Fitting:
    return Fitting(
        "Eye pins, 2",
        f"22 gauge ({plain(EYE_PIN_MM, 2)} mm) or thicker",
        "through closed end and cap; a "
        f"wrapped loop takes {plain(WRAPPED_LOOP_MM, 0)} mm above it, thread slips out of a plain one",
        "published for caps on beaded ropes; gauge by ASTM B258",
    )


def _jump_rings(size: Size, fit: Findings, units: str) -> Fitting:
    outside = jump_ring_outside_mm(JUMP_RING_MM, JUMP_WIRE_MM)
    return Fitting(
        "Jump rings, 3",
        f"{plain(JUMP_RING_MM, 1)} mm inside, {plain(outside, 1)} mm outside",
        "one on the ring side of a toggle, two on its bar side; outside = inside + 2 × wire",
        "published",
    )


def _glue_in_ends(size: Size, fit: Findings, units: str) -> Fitting:
    return Fitting("Glue-in ends, 2", inside_in_words(fit), CAP_REASON, COMMON)


def _clasp(size: Size, fit: Findings, units: str) -> Fitting:
    adds = length(size.closure_mm, units)
    return Fitting("Clasp", adds, "what clasp and ends add; measure yours", size.closure.allowance_source)


def _cones(size: Size, fit: Findings, units: str) -> Fitting:
    return Fitting("Cones, 2", f"{inside_in_words(fit)} at the wide end", CAP_REASON, COMMON)


def _button(size: Size, fit: Findings, units: str) -> Fitting:
    return Fitting(
        "Button",
        f"about {plain(fit.button_mm, 0)} mm wide",
        f"with a shank; about {fit.loop_beads} beads more make the loop that goes round it",
        COMMON,
    )


def _cord(size: Size, fit: Findings, units: str) -> Fitting:
    return Fitting("Cord", f"2 pieces of {length(CORD_MM, units)}", "waxed, 1 mm thick, so that its knots hold", COMMON)


CLOSING: dict[str, Callable[[Size, Findings, str], Fitting]] = {
    "caps": _caps,
    "cones": _cones,
    "button": _button,
    "cord": _cord,
    "eye pins": _eye_pins,
    "jump rings": _jump_rings,
    "glue-in ends": _glue_in_ends,
    "clasp": _clasp,
}


def _core(size: Size, fit: Findings, units: str) -> Fitting:
    return Fitting("Core", core_in_words(size, fit, units), core_reason(fit), "one maker’s table")


def core_in_words(size: Size, fit: Findings, units: str = "cm") -> str:
    """The hose that goes into the rope, or those that may."""
    if not fit.cores:
        return "none, the channel is too narrow"
    if fit.measured:
        return f"hose {plain(fit.cores[0].outside_mm, 1)} mm outside, cut {length(size.rope_mm, units)}"
    sizes = " to ".join(dict.fromkeys(plain(hose.outside_mm, 1) for hose in fit.cores))
    return f"hose of about {sizes} mm outside: measure the channel before you buy"


def core_reason(fit: Findings) -> str:
    """Why that hose."""
    low, high = fit.channel_range_mm
    if fit.measured:
        wide = f"a channel of about {millimetres(fit.channel_mm)}"
        return f"the largest that goes into {wide}; as long as the rope" if fit.cores else f"the rope has {wide}"
    return f"only where the rope shall be firm; its channel is about {plain(low, 1)} to {plain(high, 1)} mm wide"


def tools_for(size: Size) -> Tools:
    """Hook and thread for the beads of that rope."""
    return TOOLS[nearest_kind(size.main_kind.name, size.rope.working_mm)]


def nearest_kind(kind: str, working_mm: float) -> str:
    """The kind itself, or the one in the table whose working diameter is nearest."""
    return kind if kind in TOOLS else min(TOOLS, key=lambda name: abs(KINDS[name].working_mm - working_mm))


def _hook(tools: Tools) -> str:
    sold = f" (sold as US steel {tools.hook_us}; makers disagree, go by the millimetres)" if tools.hook_us else ""
    return f"steel hook {fixed(tools.hook_mm, 2)} mm{sold}"
