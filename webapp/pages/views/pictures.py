"""Pictures for a listing: the scene that was chosen, on its ground, and what it shows in words."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from engine.errors import EngineError
from engine.scenes.all import SCENES
from engine.scenes.scene import Subject
from engine.scenes.settings import GROUNDS, SHAPES
from engine.scenes.turning import FRAMES, HEIGHT, WIDTH, turning_seen
from webapp.pages.addresses import address
from webapp.pages.forms.pictures import MOVING_FORMS, STILL_FORMS, TURNING, PicturesForm
from webapp.pages.views.frame import Frame, Head, head
from webapp.records import StoredPattern

Options = tuple[tuple[str, str], ...]
SHOWN_PX = 960  # width of a picture on its page, which is drawn sooner than the file
TURNING_NAME = "Turning rope"
TURNING_WORDS = "The rope turns once about its axis in four seconds, and goes on. Drawing it takes about 15 seconds."


@dataclass(frozen=True)
class TurningPart:
    """A rope that turns, on its way."""

    state: Annotated[str, "none, running or done."]
    done: Annotated[int, "Frames that are drawn."]
    total: Annotated[int, "Frames there are."]


@dataclass(frozen=True)
class PicturesPage:
    """Pictures for a listing, at `/patterns/{id}/pictures`."""

    frame: Frame
    head: Head
    form: Annotated[PicturesForm, "The choices as made, and what is wrong."]
    scenes: Annotated[Options, "Scenes to choose from: key and name."]
    shapes: Annotated[Options, "Proportions."]
    grounds: Annotated[Options, "Grounds."]
    forms: Annotated[Options, "Formats of that scene."]
    name: Annotated[str, "Name of the scene."]
    words: Annotated[str, "What it shows."]
    wrong: Annotated[str, "Why there is no such picture, in a sentence; may be empty."]
    picture: Annotated[str, "Address of the picture as the page shows it; empty where there is none yet."]
    file: Annotated[str, "Address of the picture itself."]
    download: Annotated[str, "Address under which it is saved as a file."]
    width: Annotated[int, "Its width in px."]
    height: Annotated[int, "Its height in px."]
    seen: Annotated[str, "Its alternative text."]
    turning: Annotated[TurningPart | None, "How far a turning rope is; None of a scene that stands still."]


def pictures_page(
    frame: Frame, stored: StoredPattern, subject: Subject, form: PicturesForm, turning: TurningPart | None = None
) -> PicturesPage:
    """The page of that scene; `turning` is how far a rope that turns is."""
    wrong, seen = _seen(subject, form)
    asked = {"scene": form.scene, "shape": form.shape, "ground": form.ground, "form": form.form}
    smaller = {} if form.turning else {"form": "webp", "width": str(SHOWN_PX)}
    version = head(stored).version
    there = not wrong and not form.errors and (turning is None or turning.state == "done")
    place = "turning" if form.turning else "scene_picture"
    shape = SHAPES[form.shape]
    return PicturesPage(
        frame=frame,
        head=head(stored),
        form=form,
        scenes=(*((scene.key, scene.name) for scene in SCENES.values()), (TURNING, TURNING_NAME)),
        shapes=tuple((shape.key, shape.words) for shape in SHAPES.values()),
        grounds=tuple((ground.key, ground.words) for ground in GROUNDS.values()),
        forms=tuple((MOVING_FORMS if form.turning else STILL_FORMS).items()),
        name=TURNING_NAME if form.turning else SCENES[form.scene].name,
        words=TURNING_WORDS if form.turning else SCENES[form.scene].words,
        wrong=wrong,
        picture=address(place, id=stored.id, version=version, **(asked | smaller)) if there else "",
        file=address(place, id=stored.id, version=version, **asked) if there else "",
        download=address(place, id=stored.id, download="yes", **asked) if there else "",
        width=WIDTH if form.turning else shape.width,
        height=HEIGHT if form.turning else shape.height(shape.width),
        seen=seen,
        turning=turning,
    )


def turning_part(state: str, done: int = 0) -> TurningPart:
    """How far a turning rope is."""
    return TurningPart(state, done, FRAMES)


def _seen(subject: Subject, form: PicturesForm) -> tuple[str, str]:
    """Why there is no such picture, or its alternative text."""
    if form.turning:
        return "", turning_seen(subject)
    scene = SCENES[form.scene]
    if lacking := scene.lacks(subject):
        return lacking, ""
    try:
        return "", scene.seen(subject)
    except EngineError as error:
        return error.message, ""
