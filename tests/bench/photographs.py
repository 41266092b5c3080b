"""A picture of 1600 × 1000 pixels as a chart of 8,000 beads, as the page asks for it; an old chart of 4,880 beads, read."""

from __future__ import annotations

import tempfile
from io import BytesIO
from pathlib import Path

import numpy as np
from PIL import Image

from engine.pattern.old_charts.drawn import Drawn
from engine.pattern.old_charts.fitting import fitted
from engine.pattern.old_charts.paper import Paper
from engine.pattern.old_charts.reading import read_chart
from engine.pattern.photographs.laid import lay
from engine.pattern.photographs.photograph import MIXINGS, Wish, charted
from tests.bench.figures import Figures, best_ms, ms
from tests.photographed import photographed, random_rope
from webapp.pages.forms.photograph import read_photograph
from webapp.pictures import handed_in
from webapp.pictures.unrolled import unrolled

AROUND, ROWS = 60, 132
BUDGET = "300 ms"


def figures() -> Figures:
    """With few and with many colours, in every mixing, then a whole step of the page."""
    with tempfile.TemporaryDirectory() as folder:
        path = handed_in.path_of(Path(folder), handed_in.keep(Path(folder), handed_in.taken("hills", hills()), 0.0))
        picture = handed_in.summed(path)
        laid = lay(AROUND, picture.shape, rows=ROWS)
        for many in (6, 24):
            for mixing in MIXINGS:
                wish = Wish(many=many, mixing=mixing, calm=True, contrast=1.2)
                taken = best_ms(lambda wish=wish: charted(picture, laid, wish), 5)  # type: ignore[misc]
                yield f"{laid.beads:,} beads, {many} colours, {mixing}", ms(taken), BUDGET
        contrasts = iter(range(60, 200))

        def step() -> None:
            asked = (("around", str(AROUND)), ("rows", str(ROWS)), ("contrast", str(next(contrasts))))
            form = read_photograph(asked, lambda turn, box: handed_in.summed(path, turn, box))
            assert form.pattern is not None
            unrolled(form.pattern)

        yield "a step of the contrast, chart and its picture", ms(best_ms(step, 5)), BUDGET

    yield from old_chart()


def old_chart() -> Figures:
    """A chart on paper: fitted to where its corners were marked, and read."""
    pattern, drawn = random_rope(30, 160, 6, seed=1), Drawn(30, 160)
    taken = photographed(pattern, long_px=2400)
    pixels, marked = taken.pixels, Paper(taken.corners)
    paper = fitted(pixels, marked, drawn)
    yield "an old chart fitted", ms(best_ms(lambda: fitted(pixels, marked, drawn), 3)), ""
    for many in (0, 6):
        told = "its colours told" if many else "its colours found"
        yield f"an old chart read, {told}", ms(best_ms(lambda many=many: read_chart(pixels, paper, drawn, many), 3)), ""  # type: ignore[misc]


def hills() -> bytes:
    """Soft hills under a sky, with the grain of a camera."""
    y, x = np.mgrid[0:1000, 0:1600]
    sky = np.stack([40 + y * 0.15, 90 + y * 0.11, 160 + y * 0.04], axis=-1)
    ridge = 600 + 150 * np.sin(x / 210) + 60 * np.sin(x / 47)
    land = np.stack([46 + x * 0.03, 95 - x * 0.02, 70 + 0 * x], axis=-1)
    drawn = np.where((y > ridge)[..., None], land, sky)
    drawn[np.hypot(x - 1200, y - 250) < 140] = (250, 210, 90)
    grain = np.random.default_rng(1).normal(0, 6, drawn.shape)
    out = BytesIO()
    Image.fromarray((drawn + grain).clip(0, 255).astype(np.uint8)).save(out, "JPEG", quality=88)
    return out.getvalue()
