"""Shaded pictures as PNG files of the size asked for."""

from io import BytesIO

import numpy as np
import pytest
from PIL import Image


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
