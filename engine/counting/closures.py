"""How a piece ends: everything that differs by closure is a field of its `Closure`, named here once.

A new closure is one more value in `CLOSURES`. Its findings are names of `engine/counting/findings.py`, the parts of its
finishing guide are names of `engine/booklet/guides/finishing.py`, and a test holds both to what is known there.
"""

from __future__ import annotations

from dataclasses import dataclass

from engine.errors import ChoiceError


@dataclass(frozen=True)
class Closure:
    """One way in which a piece ends.

    `allowance_mm` is what it adds to the rope unless the maker's settings say otherwise; None where there is nothing to
    set. `worked_shut`: the ends are sewn to a ring, which is measured by its inner girth.

    Words: `label` names it in a list to choose from, `piece` is the sentence's noun with a place for the size,
    `ending` follows a length ("45 cm with a clasp"), `short` stands in a table. `own_length` says how a buyer finds the
    rope for another length; `{allowance}` stands for what the closure adds.

    `findings` and `guide` are keys, `needs` are the findings in a sentence with `{inside}` for the width of a cap,
    `{pin}` and `{long}` for the wire of an eye pin, `{button}` and `{loop}` for a button and the beads round it,
    `{cord}` for a piece of cord, `tools` stand beside the usual ones, `guide_title` heads the finishing guide,
    `takes_core` tells whether a core can be put in.
    """

    key: str
    label: str
    piece: str
    ending: str
    short: str
    own_length: str
    guide_title: str
    guide: tuple[str, ...]
    findings: tuple[str, ...] = ()
    needs: str = ""
    tools: str = ""
    allowance_mm: float | None = None
    allowance_label: str = ""
    allowance_source: str = ""
    worked_shut: bool = False
    takes_core: bool = True


_CLASP_LENGTH = "Take {allowance} for the clasp off the length you want."

OPEN = Closure(
    key="open",
    label="Open rope",
    piece="rope of {}",
    ending="open",
    short="ends closed",
    own_length="Both ends are rope: the length you want is the rope you work.",
    guide_title="For a rope with closed ends",
    guide=("close the ends", "wear it"),
)
CLASP = Closure(
    key="clasp",
    label="Clasp with caps",
    piece="piece of {} with a clasp",
    ending="with a clasp",
    short="clasp",
    own_length=_CLASP_LENGTH,
    guide_title="For a clasp with caps",
    guide=("choose the caps", "close the ends", "set the caps", "hang the clasp"),
    findings=("caps", "eye pins", "jump rings", "clasp"),
    needs="A toggle clasp; 2 bead caps, {inside}; 2 eye pins at least {long} long, wire {pin} mm "
    "(22 gauge) or thicker; 3 jump rings.",
    tools="Round-nose pliers, two flat pliers and side cutters for the wire.",
    allowance_mm=25.0,
    allowance_label="What it adds to the rope.",
    allowance_source="almost an inch (published)",
)
GLUED = Closure(
    key="glued",
    label="Glued ends",
    piece="piece of {} with glued ends",
    ending="with glued ends",
    short="glued clasp",
    own_length=_CLASP_LENGTH,
    guide_title="For a clasp with glued ends",
    guide=("close the ends", "try the ends dry", "glue"),
    findings=("glue-in ends", "clasp"),
    needs="A clasp with ends to glue in, {inside}; a glue for metal and glass.",
    tools="A fine file to roughen the ends.",
    allowance_mm=15.0,
    allowance_label="What they add to the rope.",
    allowance_source="estimate",
)
RING = Closure(
    key="ring",
    label="Ring, worked shut",
    piece="ring of {} inner girth",
    ending="inside, worked shut",
    short="ring",
    own_length="Measure round the inside of the ring you want and add 3.14 times the thickness of your rope: the rope "
    "runs along the middle of its own thickness, so it is longer than the inside.",
    guide_title="For a ring worked shut",
    guide=("match the ends", "sew the seam"),
    worked_shut=True,
)

MAGNET = Closure(
    key="magnet",
    label="Magnet clasp",
    piece="piece of {} with a magnet clasp",
    ending="with a magnet clasp",
    short="magnet clasp",
    own_length=_CLASP_LENGTH,
    guide_title="For a magnet clasp with glued ends",
    guide=("close the ends", "try the ends dry", "glue", "try the magnet"),
    findings=("glue-in ends", "clasp"),
    needs="A magnet clasp with ends to glue in, {inside}; a glue for metal and glass.",
    tools="A fine file to roughen the ends.",
    allowance_mm=12.0,
    allowance_label="What it adds to the rope, closed.",
    allowance_source="estimate",
)
CONE = Closure(
    key="cone",
    label="Clasp with cones",
    piece="piece of {} with cones and a clasp",
    ending="with cones and a clasp",
    short="cones",
    own_length="Take {allowance} for cones and clasp off the length you want.",
    guide_title="For a clasp with cones",
    guide=("choose the cones", "close the ends", "set the cones", "hang the clasp"),
    findings=("cones", "eye pins", "jump rings", "clasp"),
    needs="A toggle clasp; 2 cones, {inside} at the wide end; 2 eye pins at least {long} long, wire {pin} mm "
    "(22 gauge) or thicker; 3 jump rings.",
    tools="Round-nose pliers, two flat pliers and side cutters for the wire.",
    allowance_mm=45.0,
    allowance_label="What cones and clasp add to the rope.",
    allowance_source="a clasp as published, and 10 mm a cone, estimate",
)
BUTTON = Closure(
    key="button",
    label="Button and loop",
    piece="piece of {} with a button and a loop",
    ending="with a button and a loop",
    short="button",
    own_length="Take {allowance} for button and loop off the length you want.",
    guide_title="For a button and a loop of beads",
    guide=("close the ends", "sew the button", "work the loop"),
    findings=("button",),
    needs="A button with a shank, about {button} wide, a little more than the rope is thick; about {loop} beads more, "
    "which no list has, for the loop round it.",
    allowance_mm=12.0,
    allowance_label="What button and loop add to the rope, closed.",
    allowance_source="estimate",
)
TIE = Closure(
    key="tie",
    label="Sliding tie",
    piece="piece of {} with a sliding tie",
    ending="with a sliding tie",
    short="tie",
    own_length="Take {allowance} for the tie, drawn shut, off the length you want.",
    guide_title="For a sliding tie",
    guide=("close the ends", "fasten the cords", "knot the tie"),
    findings=("cord",),
    needs="2 pieces of waxed cord, 1 mm thick, each {cord} long.",
    allowance_mm=40.0,
    allowance_label="What the tie adds to the rope, drawn shut.",
    allowance_source="estimate",
)

CLOSURES: dict[str, Closure] = {
    closure.key: closure for closure in (OPEN, CLASP, GLUED, RING, MAGNET, CONE, BUTTON, TIE)
}


def usual_allowances() -> dict[str, float]:
    """What closures add to the rope in mm unless the maker says otherwise, of those for which it can be set."""
    return {key: closure.allowance_mm for key, closure in CLOSURES.items() if closure.allowance_mm is not None}


def closure_named(key: str) -> Closure:
    """The closure of that key. Raises ChoiceError."""
    if key not in CLOSURES:
        raise ChoiceError("Closure", key, CLOSURES, "closure")
    return CLOSURES[key]
