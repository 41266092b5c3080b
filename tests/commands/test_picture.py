"""Shaded pictures as PNG files of the size asked for."""

from io import BytesIO

import numpy as np
import pytest
from PIL import Image

from webapp.commands import picture


def seen(path) -> np.ndarray:
    image = Image.open(BytesIO(path.read_bytes()))
    assert image.format == "PNG"
    return np.asarray(image.convert("RGB")).astype(int)


@pytest.mark.parametrize(("view", "shape"), [("rope", (80, 120)), ("ring", (90, 120)), ("necklace", (90, 120))])
def test_every_view_is_written_in_the_width_asked_for(run, harbour_file, tmp_path, view, shape):
    target = tmp_path / "picture.png"
    assert run("picture", harbour_file, "-o", target, "--view", view, "--width", "120") == (0, "", "")
    assert seen(target).shape == (*shape, 3)
    assert [path.name for path in tmp_path.iterdir()] == ["picture.png"]


def test_the_same_pattern_gives_the_same_file_and_the_other_hand_another(run, harbour_file, tmp_path):
    for name, more in (("one", ()), ("two", ()), ("left", ("--hand", "left"))):
        run("picture", harbour_file, "-o", tmp_path / f"{name}.png", "--width", "160", *more)
    one, two, left = ((tmp_path / f"{name}.png").read_bytes() for name in ("one", "two", "left"))
    assert one == two != left


def test_a_picture_that_was_there_is_replaced_whole(run, harbour_file, tmp_path):
    target = tmp_path / "picture.png"
    target.write_text("an older picture")
    run("picture", harbour_file, "-o", target, "--width", "64")
    assert seen(target).shape[1] == 64


@pytest.mark.parametrize(("name", "form"), [("p.png", "PNG"), ("p.jpg", "JPEG"), ("p.webp", "WEBP")])
def test_a_scene_is_written_in_the_format_that_the_name_says(run, harbour_file, tmp_path, name, form):
    asked = ("--scene", "cap", "--shape", "square", "--ground", "slate", "--width", "90")
    assert run("picture", harbour_file, "-o", tmp_path / name, *asked) == (0, "", "")
    image = Image.open(BytesIO((tmp_path / name).read_bytes()))
    assert (image.format, image.size) == (form, (90, 90))


def test_a_turning_rope_is_written_as_a_file_that_moves(run, harbour_file, tmp_path, monkeypatch):
    drawn = picture.turned_frame
    monkeypatch.setattr(picture, "FRAMES", 2)
    monkeypatch.setattr(picture, "turned_frame", lambda subject, ground, number: drawn(subject, ground, number, 80))
    assert run("picture", harbour_file, "-o", tmp_path / "turning.gif", "--turning") == (0, "", "")
    assert Image.open(BytesIO((tmp_path / "turning.gif").read_bytes())).n_frames == 2


@pytest.mark.parametrize(
    ("asked", "sentence"),
    [
        (("--scene", "moon"), "Scene: “moon” is not known here; expected one of close-up"),
        (("--scene", "cap", "--ground", "sand"), "Ground: “sand” is not known here"),
        (("--scene", "cap", "--turning"), "Choose a scene or the turning rope, not both."),
        (("--shape", "wide"), "choose one with --scene, or --turning."),
        (("--turning",), "p.png says no format; expected a name that ends in .webp, .gif, .mp4."),
        (("--scene", "colourways"), "This picture needs a colourway; the pattern has none yet."),
    ],
)
def test_what_there_is_not_is_refused_in_one_line(run, harbour_file, tmp_path, asked, sentence):
    code, out, said = run("picture", harbour_file, "-o", tmp_path / "p.png", *asked)
    assert (code, out, said.count("\n")) == (2, "", 1) and sentence in said
    assert list(tmp_path.iterdir()) == []
