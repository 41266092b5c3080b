"""Shaded pictures of the studio, and scenes for a listing."""

from __future__ import annotations

from engine.drawing.studio import VIEWS, picture
from engine.scenes.all import SCENES
from engine.scenes.scene import Subject
from engine.scenes.settings import GROUNDS, setting
from engine.scenes.turning import FRAMES, turned_frame
from tests.bench.charts import pattern
from tests.bench.figures import Figures, best_ms, ms
from webapp.pictures.scenes import taken


def figures() -> Figures:
    """Every view and every scene at 1600 × 1200, and what a frame of a turning rope takes."""
    drawn = pattern(1_500, 14, 5)
    for view in VIEWS:
        yield f"studio picture 1600 × 1200, {view}", ms(best_ms(lambda view=view: picture(drawn, view), 3)), "1 s"
    subject, chosen = Subject(drawn), setting()
    for scene in SCENES.values():
        if not scene.lacks(subject):
            taking = best_ms(lambda scene=scene: taken(scene.stage(subject, chosen), chosen.ground), 3)
            yield f"scene 1600 × 1200, {scene.key}", ms(taking), "1 s"
    ground = GROUNDS["paper"]
    frame = best_ms(lambda: turned_frame(subject, ground, 7), 3)
    yield f"turning rope, {FRAMES} frames", ms(frame * FRAMES), "20 s"
