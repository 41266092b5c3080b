"""Writes a shaded picture of a pattern file: a plain view as PNG, a scene for a listing, or a rope that turns."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from pathlib import Path

from engine.counting.kinds import bead_sizes
from engine.pattern.pattern import Pattern
from engine.scenes.all import SCENES, scene_named
from engine.scenes.scene import Subject
from engine.scenes.settings import GROUNDS, SHAPES, ground_named, setting, shape_named
from engine.scenes.turning import FRAMES, turned_frame
from webapp.commands import Refused, files
from webapp.pictures.images import MEDIA_TYPES, VIEWS, check_form, pattern_png
from webapp.pictures.scenes import scene_bytes
from webapp.pictures.turning import MOVING, check_moving, moving

NARROWEST, WIDEST = 16, 4000
FORMS = {".jpg": "jpeg", ".jpeg": "jpeg", ".png": "png", ".webp": "webp", ".gif": "gif", ".mp4": "mp4"}


def add_options(parser: ArgumentParser) -> None:
    files.add_file(parser)
    parser.add_argument("-o", "--output", metavar="OUT.png", required=True, help="the picture to write")
    parser.add_argument("--view", metavar="WORD", default="rope", help=f"{', '.join(VIEWS)} (default rope)")
    parser.add_argument(
        "--width", metavar="PIXELS", help=f"{NARROWEST} to {WIDEST} (default 1600, or what the shape needs)"
    )
    group = parser.add_argument_group(
        "for a listing", "OUT may then end in .png, .jpg or .webp; turning: .webp, .gif or .mp4."
    )
    group.add_argument("--scene", metavar="WORD", help=f"in place of a view: {', '.join(SCENES)}")
    group.add_argument("--shape", metavar="WORD", help=f"of a scene: {', '.join(SHAPES)} (default 4:3)")
    group.add_argument("--ground", metavar="WORD", help=f"{', '.join(GROUNDS)} (default paper)")
    group.add_argument("--turning", action="store_true", help="the rope turning once in four seconds, in a loop")
    files.add_hand(parser)


def run(chosen: Namespace) -> int:
    target = files.check_folder(chosen.output)
    pattern, width = files.pattern(chosen), _width(chosen.width)
    if chosen.scene and chosen.turning:
        raise Refused("Choose a scene or the turning rope, not both.")
    if chosen.turning:
        data = _turning(chosen, pattern, target)
    elif chosen.scene:
        data = _scene(chosen, pattern, target, width)
    elif chosen.shape or chosen.ground:
        raise Refused("A shape and a ground are those of a scene; choose one with --scene, or --turning.")
    else:
        data = pattern_png(pattern, chosen.view, width or 1600, bead_sizes(pattern, files.own(chosen).kinds))
    files.write_whole(target, data)
    return 0


def _scene(chosen: Namespace, pattern: Pattern, target: Path, width: int | None) -> bytes:
    scene, subject = scene_named(chosen.scene), _subject(chosen, pattern)
    taken_in, form = setting(chosen.shape or "4:3", chosen.ground or "paper", width), _form(target, MEDIA_TYPES)
    check_form(form, taken_in.ground.colour is None)
    if lacking := scene.lacks(subject):
        raise Refused(lacking)
    return scene_bytes(subject, scene, taken_in, form)


def _turning(chosen: Namespace, pattern: Pattern, target: Path) -> bytes:
    if chosen.shape:
        shape_named(chosen.shape)
        raise Refused("A turning rope has a shape of its own; leave --shape out.")
    ground, form, subject = ground_named(chosen.ground or "paper"), _form(target, MOVING), _subject(chosen, pattern)
    check_moving(form, ground)
    return moving((turned_frame(subject, ground, number) for number in range(FRAMES)), form)


def _subject(chosen: Namespace, pattern: Pattern) -> Subject:
    return Subject(pattern, files.own(chosen), units=files.settings(chosen).units)


def _form(target: Path, known: dict[str, str]) -> str:
    form = FORMS.get(target.suffix.lower(), "")
    if form not in known:
        endings = [suffix for suffix, name in FORMS.items() if name in known]
        raise Refused(f"{target.name} says no format; expected a name that ends in {', '.join(endings)}.")
    return form


def _width(text: str | None) -> int | None:
    if text is None:
        return None
    if not (text.isascii() and text.isdigit() and len(text) < 6 and NARROWEST <= int(text) <= WIDEST):
        raise Refused(f"“{text[:40]}” is not a width; expected {NARROWEST} to {WIDEST} pixels.")
    return int(text)
