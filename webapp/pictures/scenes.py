"""Scenes as image files: the rope in its light, on its ground, with what is drawn under and over it."""

from __future__ import annotations

import hashlib
from dataclasses import astuple

import numpy as np
from PIL import Image, ImageChops, ImageFilter

from engine.drawing.beadform import Array
from engine.drawing.fittings import put_on, shadow_points
from engine.drawing.photograph import photograph
from engine.drawing.shapes import Drawing
from engine.scenes.scene import Scene, Staged, Subject
from engine.scenes.settings import Ground, Setting
from webapp.pictures.cache import LOOK
from webapp.pictures.drawn import drawn
from webapp.pictures.images import encoded

SCENES_LOOK = 1  # raised whenever scenes are drawn differently, so that older files are no longer found
REDUCED = 4  # a shade is worked out so much smaller
SOFT, LOWER, DARK = 0.005, 0.005, 0.42  # of a shade: blur and how far down, shares of the picture's width; strength


def scene_bytes(subject: Subject, scene: Scene, setting: Setting, form: str = "png") -> bytes:
    """The scene as a file. Raises EngineError where it cannot be staged, ValueError for a clear ground as JPEG."""
    return encoded(taken(scene.stage(subject, setting), setting.ground), form)


def scene_name(subject: Subject, key: str, setting: Setting, form: str) -> str:
    """The name of the file among kept pictures: a hash of all that may show in it."""
    asked = (LOOK, SCENES_LOOK, key, astuple(setting), subject.pattern, subject.colourways, subject.units)
    numbers = (dict(subject.workshop.kinds), subject.workshop.swatches, dict(subject.workshop.allowances))
    return f"{hashlib.sha256(repr((asked, numbers)).encode()).hexdigest()[:40]}.{form}"


def taken(staged: Staged, ground: Ground) -> Array:
    """uint8 (height, width, 3), or with a clear ground (height, width, 4)."""
    camera = staged.camera
    casting = shadow_points(staged.fittings) if staged.fittings else None
    shadowed = ground.shadowed and staged.shadowed
    background = None if staged.under else ground.colour
    seen = photograph(staged.rope, staged.entries, camera, background, shadowed, casting)
    put_on(seen, staged.fittings, camera)
    if staged.under is None and staged.over is None:
        return seen
    picture = Image.fromarray(seen)
    if staged.under:
        picture = _laid_under(picture, staged.under, ground, staged.resting)
    if staged.over:
        words = drawn(staged.over)
        picture = _over(picture, words)
    return np.asarray(picture)


def _laid_under(picture: Image.Image, under: Drawing, ground: Ground, resting: bool) -> Image.Image:
    """The drawing on the ground, and the picture, which is clear, over it."""
    below = drawn(under)
    if resting:
        below = Image.alpha_composite(below, _shade(picture, below))
    if ground.colour is None:
        return Image.alpha_composite(below, picture)
    return _over(_over(Image.new("RGB", picture.size, ground.colour), below), picture)


def _shade(picture: Image.Image, below: Image.Image) -> Image.Image:
    """A soft shade of what is seen, a little lower, where there is something that it can fall on."""
    small = picture.getchannel("A").reduce(REDUCED)
    soft = small.filter(ImageFilter.GaussianBlur(picture.width * SOFT / REDUCED)).resize(picture.size)
    lower = ImageChops.offset(soft, 0, round(picture.width * LOWER))
    shade = Image.new("RGBA", picture.size, (30, 24, 18, 0))
    shade.putalpha(ImageChops.multiply(lower.point(lambda covered: round(covered * DARK)), below.getchannel("A")))
    return shade


def _over(picture: Image.Image, upper: Image.Image) -> Image.Image:
    if picture.mode == "RGBA":
        return Image.alpha_composite(picture, upper)
    picture.paste(upper, mask=upper.getchannel("A"))
    return picture
