"""Which picture is wanted for a listing: scene, proportion, ground and format."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from engine.scenes.all import SCENES
from engine.scenes.settings import GROUNDS, SHAPES
from webapp.pages.forms.sent import Sent

TURNING = "turning"
STILL_FORMS: Mapping[str, str] = {"png": "PNG", "jpeg": "JPEG", "webp": "WebP"}
MOVING_FORMS: Mapping[str, str] = {"webp": "WebP", "gif": "GIF", "mp4": "MP4 (film)"}
CLEAR = ("png", "webp")  # those that have a clear ground
NO_CLEAR = "{} has no clear background; choose another background, or {}."


@dataclass(frozen=True)
class PicturesForm:
    """The choices as made, and what is wrong by field. `scene` may be TURNING: the rope that turns."""

    scene: str
    shape: str
    ground: str
    form: str
    errors: Mapping[str, str]

    @property
    def turning(self) -> bool:
        return self.scene == TURNING


def read_pictures(pairs: Iterable[tuple[str, object]]) -> PicturesForm:
    """The choices of an address; what is not said, or not offered, is as usual."""
    sent = Sent(pairs)
    scene = _one_of(sent.one("scene"), (*SCENES, TURNING))
    forms = MOVING_FORMS if scene == TURNING else STILL_FORMS
    ground, form = _one_of(sent.one("ground"), GROUNDS), _one_of(sent.one("form"), forms)
    errors = {}
    if GROUNDS[ground].colour is None and form not in CLEAR:
        others = [words for key, words in forms.items() if key in CLEAR]
        errors["form"] = NO_CLEAR.format(forms[form], " or ".join(others))
    return PicturesForm(scene=scene, shape=_one_of(sent.one("shape"), SHAPES), ground=ground, form=form, errors=errors)


def _one_of(text: str, known: Iterable[str]) -> str:
    """The text where it is known, else the first that is."""
    offered = tuple(known)
    return text if text in offered else offered[0]
