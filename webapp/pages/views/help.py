"""Words of the trade and how each number is made: the prose is the template's, the figures are those of the sums."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from markupsafe import Markup

from engine.counting.closures import CLOSURES
from engine.counting.cuts import USUAL_HEAVIEST_G, USUAL_LONGEST_MM
from engine.counting.findings import CAP_PLAY_MM
from engine.counting.purchase import ESTIMATED_THREAD, MEASURED_THREAD, SPARE
from engine.counting.rope import ESTIMATE_ERROR, MIXED_ERROR, UNRAVELLED, WIDE_ERROR
from engine.counting.thread import TAILS_MM, THREAD_PER_BEAD
from engine.pattern.colour import TOO_NEAR
from engine.pattern.palette import LEAST_CONTRAST
from engine.pattern.pattern import WIDEST_SLIP
from engine.units import grams, length, metres, percent, plain
from webapp.pages.views.frame import Frame, stitched
from webapp.pages.views.measuring import how_to_measure

PARTS = (
    ("swatch", "A swatch makes numbers exact"),
    ("rope", "Length and thickness"),
    ("list", "The stringing list"),
    ("weight", "Weight, and what to buy"),
    ("thread", "Thread"),
    ("ring", "Rings that close"),
    ("findings", "Hook, caps and cores"),
    ("colours", "Colours that look alike"),
    ("money", "Money"),
    ("words", "Words of the trade"),
)


@dataclass(frozen=True)
class HelpPage:
    """Words and sums at `/help`."""

    frame: Frame
    parts: Annotated[tuple[tuple[str, str], ...], "The parts of the page: place and title."]
    drawing: Annotated[Markup, "How a sample is measured, as SVG of our own drawing."]
    single: Annotated[str, "The stitch of wide ropes in the maker's crochet terms."]
    widest_slip: Annotated[int, "Widest rope that is worked in slip stitch."]
    unravelled: Annotated[int, "Beads whose thread is measured at once."]
    errors: Annotated[tuple[str, str, str], "How wide estimates are: 11/0 in wide work, anything else, mixed kinds."]
    allowances: Annotated[tuple[tuple[str, str], ...], "What closures add to the rope: closure and length."]
    longest: Annotated[str, "Longest string, unless the settings say otherwise."]
    heaviest: Annotated[str, "Heaviest string."]
    spare: Annotated[str, "Spare, unless said otherwise."]
    thread: Annotated[tuple[str, str], "Working diameters of thread a bead, in slip stitch and in the other."]
    tails: Annotated[str, "Tails of a thread."]
    more_thread: Annotated[tuple[str, str], "How much more thread is bought: of an estimate, of a measured one."]
    cap_play: Annotated[str, "How much wider than the rope a cap may be."]
    too_near: Annotated[str, "CIEDE2000 below which two beads are questioned."]
    contrast: Annotated[str, "Least contrast of a letter on its bead."]


def help_page(frame: Frame) -> HelpPage:
    """The page in the maker's units and crochet terms."""
    adds = ((closure.label, closure.allowance_mm) for closure in CLOSURES.values())
    return HelpPage(
        frame=frame,
        parts=PARTS,
        drawing=how_to_measure(),
        single=stitched("single", frame.terms),
        widest_slip=WIDEST_SLIP,
        unravelled=UNRAVELLED,
        errors=(percent(100 * WIDE_ERROR), percent(100 * ESTIMATE_ERROR), percent(100 * MIXED_ERROR)),
        allowances=tuple((label, length(mm, frame.units)) for label, mm in adds if mm is not None),
        longest=metres(USUAL_LONGEST_MM),
        heaviest=grams(USUAL_HEAVIEST_G),
        spare=percent(SPARE),
        thread=(plain(THREAD_PER_BEAD["slip"], 1), plain(THREAD_PER_BEAD["single"], 1)),
        tails=length(TAILS_MM, frame.units),
        more_thread=(percent(100 * (ESTIMATED_THREAD - 1)), percent(100 * (MEASURED_THREAD - 1))),
        cap_play=f"{plain(CAP_PLAY_MM, 1)} mm",
        too_near=plain(TOO_NEAR, 1),
        contrast=plain(LEAST_CONTRAST, 1),
    )
