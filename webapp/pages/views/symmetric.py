"""A symmetric motif: the groups that the lattice allows, the cell to draw in, and what comes of it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from string import ascii_uppercase
from typing import Annotated

from markupsafe import Markup

from engine.drawing.shapes import Drawing, Group, Paint, Shape, Stamp, rounded_box
from engine.drawing.svg import to_svg
from engine.pattern.lattice import place
from engine.pattern.pattern import Pattern
from engine.pattern.starts.all import winds_in_words
from engine.pattern.starts.symmetry import FORBIDDEN, GROUPS, Symmetry, symmetries
from engine.units import counted
from webapp.pages.addresses import address
from webapp.pages.forms.symmetric import SymmetricForm
from webapp.pages.views.frame import Frame

GROUP_WORDS = {
    "p1": "Repeated only (p1)",
    "p2": "Half turns (p2)",
    "pm": "Mirrors (pm)",
    "pg": "Glides (pg)",
    "cm": "Mirrors, glides between (cm)",
    "pmm": "Mirrors both ways (pmm)",
    "pmg": "Mirrors and glides across (pmg)",
    "pgg": "Glides both ways (pgg)",
    "cmm": "Mirrors, half turns between (cmm)",
    "p3": "Thirds of a turn (p3)",
    "p6": "Sixths of a turn (p6)",
}
LEAST_DRAWN, MOST_DRAWN, BEAD_MM = 240, 700, 4.0
WIDE = 720  # pixels


@dataclass(frozen=True)
class Made:
    """What the cell comes to."""

    cell: Annotated[Markup, "The chart lying, every free bead a group of its own."]
    rope: Annotated[str, "Address of the rope's picture."]
    ring: Annotated[str, "Address of the ring's picture."]
    words: Annotated[str, "Beads, and how a repeat lies on the rope."]


@dataclass(frozen=True)
class SymmetricPage:
    """Symmetric motifs at `/patterns/begin/symmetric`."""

    frame: Frame
    form: SymmetricForm
    groups: Annotated[tuple[tuple[str, str], ...], "Groups to choose from: value and words."]
    missing: Annotated[str, "Groups that this number around does not have; empty where it has all."]
    forbidden: Annotated[str, "Groups that no rope has."]
    repeats: Annotated[tuple[tuple[str, str], ...], "Repeats to choose from: value and words."]
    colours: Annotated[tuple[tuple[str, str], ...], "Codes and colours."]
    kinds: Annotated[tuple[tuple[str, str], ...], "The bead kinds to choose from: value and words."]
    made: Made | None


def symmetric_page(frame: Frame, form: SymmetricForm, kinds: Iterable[str]) -> SymmetricPage:
    """The page with what was drawn."""
    has = {group: bool(form.around and symmetries(form.around, group)) for group in GROUPS}
    missing = [group for group in GROUPS if form.around and not has[group]]
    return SymmetricPage(
        frame=frame,
        form=form,
        groups=tuple((group, GROUP_WORDS[group]) for group in GROUPS if has[group] or group == form.typed.group),
        missing=", ".join(missing),
        forbidden=", ".join(FORBIDDEN),
        repeats=tuple(
            (str(one.repeat), f"{counted(one.repeat, 'bead')}, {len(one.free)} to draw") for one in form.choices
        ),
        colours=tuple(zip(ascii_uppercase, form.typed.colours, strict=False)),
        kinds=tuple((kind, kind) for kind in kinds),
        made=_made(form),
    )


def _made(form: SymmetricForm) -> Made | None:
    pattern, chosen = form.pattern, form.chosen
    if pattern is None or chosen is None:
        return None
    return Made(
        cell=Markup(to_svg(_cell(pattern, chosen))),
        rope=_picture(form, "rope"),
        ring=_picture(form, "ring"),
        words=f"{counted(len(pattern.chart), 'bead')}. {winds_in_words(pattern.around, pattern.chart)}",
    )


def _picture(form: SymmetricForm, view: str) -> str:
    typed = form.typed
    return address(
        "symmetric_picture",
        view=view,
        width=WIDE,
        around=typed.around,
        group=typed.group,
        repeat=typed.repeat,
        drawn=typed.drawn,
        colour=typed.colours,
    )


def _cell(pattern: Pattern, chosen: Symmetry) -> Drawing:
    """A stretch of the chart lying, as long as the repeat needs; beads of one orbit are a group named by its number."""
    around, repeat = pattern.around, chosen.repeat
    pair = 2 * around + 1
    total = min(MOST_DRAWN, max(LEAST_DRAWN, 3 * repeat)) // pair * pair or pair
    orbit_of = {place_: number for number, orbit in enumerate(chosen.free) for place_ in orbit}
    places: dict[int, list[tuple[float, float]]] = defaultdict(list)
    for k in range(total):
        row, x = place(around, k)
        places[orbit_of[k % repeat]].append(((row + 0.5) * BEAD_MM * 0.866, (x + 0.5) * BEAD_MM))
    bead = rounded_box(BEAD_MM * 0.81, BEAD_MM * 0.94, BEAD_MM * 0.24)
    shapes: tuple[Shape, ...] = tuple(
        Group(
            f"free free-{number}",
            (
                Stamp(
                    bead,
                    tuple(found),
                    Paint(pattern.palette[pattern.chart[chosen.free[number][0]]].colour, "#3a342a", 0.12),
                ),
            ),
        )
        for number, found in sorted(places.items())
    )
    rows = place(around, total - 1).row + 1
    return Drawing(rows * BEAD_MM * 0.866, (around + 1) * BEAD_MM, shapes, "The cell and what the group makes of it")
