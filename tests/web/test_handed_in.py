"""Pictures that a pattern begins with: decoded whatever they are, or refused in one sentence; kept for a day."""

import os
from io import BytesIO

import numpy as np
import pytest
from PIL import Image

from engine.pattern.photographs.laid import lay
from webapp.pictures import handed_in
from webapp.pictures.photographs import PhotographError

TEAL = (47, 127, 118)


def file_of(picture: Image.Image, form: str = "PNG", **options: object) -> bytes:
    out = BytesIO()
    picture.save(out, form, **options)
    return out.getvalue()


def seen(data: bytes) -> Image.Image:
    return Image.open(BytesIO(handed_in.taken("picture", data)))


def sixteen_bits() -> Image.Image:
    return Image.fromarray(np.full((40, 40), 0x8080, np.uint16))


def sideways() -> bytes:
    exif = Image.Exif()
    exif[0x0112] = 6
    return file_of(Image.new("RGB", (60, 30), TEAL), "JPEG", exif=exif)


def animated() -> bytes:
    return file_of(
        Image.new("RGB", (40, 40), TEAL),
        "WEBP",
        save_all=True,
        append_images=[Image.new("RGB", (40, 40), "red")],
        lossless=True,
    )


def test_printers_colours_are_seen_as_on_a_screen():
    red, green, blue = seen(file_of(Image.new("CMYK", (40, 40), (0, 255, 255, 0)), "JPEG")).getpixel((5, 5))
    assert red > 240 and green < 15 and blue < 15


def test_sixteen_bits_become_eight_and_are_not_cut_off():
    assert seen(file_of(sixteen_bits())).getpixel((5, 5)) == (128, 128, 128)


def test_a_picture_that_lies_on_its_side_is_set_upright():
    assert seen(sideways()).size == (30, 60)


def test_of_a_picture_that_moves_the_first_is_taken():
    assert seen(animated()).getpixel((5, 5)) == TEAL


@pytest.mark.parametrize(
    "clear",
    [
        file_of(Image.new("RGBA", (40, 40), (*TEAL, 0))),
        file_of(Image.new("RGBA", (40, 40), (*TEAL, 0)).quantize()),
        file_of(Image.new("LA", (40, 40), (90, 0))),
        file_of(Image.new("RGB", (40, 40), TEAL), transparency=TEAL),
    ],
)
def test_clear_parts_stay_clear(clear):
    assert seen(clear).getpixel((5, 5))[3] == 0


def test_a_huge_picture_is_made_smaller():
    assert seen(file_of(Image.new("L", (6000, 3000)))).size == (2400, 1200)


@pytest.mark.parametrize(
    ("data", "sentence"),
    [
        (b"", "“picture” cannot be read as a picture; a JPEG, PNG or WebP file is wanted."),
        (file_of(Image.new("RGB", (99, 99)), "GIF"), "“picture” cannot be read as a picture;"),
        (file_of(Image.effect_noise((300, 300), 30))[:9000], "“picture” cannot be read as a picture;"),
        (file_of(Image.new("L", (8000, 5100))), "“picture” has 41 megapixels; at most 40 are read."),
        (file_of(Image.new("L", (15, 80))), "“picture” is 15 × 80 pixels; that is too small. At least 16 each way"),
        (b"x" * 20_000_001, "“picture” has more than 20 MB, the most that is read."),
    ],
)
def test_what_cannot_be_read_is_refused_in_a_sentence(data, sentence):
    with pytest.raises(PhotographError) as refused:
        handed_in.taken("picture", data)
    assert refused.value.message.startswith(sentence) and "\n" not in refused.value.message


def test_a_part_of_the_turned_picture_is_sampled_in_linear_light(tmp_path):
    halves = Image.new("RGB", (40, 20), TEAL)
    halves.paste("#ffffff", (20, 0, 40, 20))
    path = handed_in.path_of(tmp_path, handed_in.keep(tmp_path, file_of(halves), 0.0))
    upper = handed_in.summed(path, 90.0, (0.0, 0.0, 1.0, 0.5))
    assert (upper.width, upper.height) == (20, 20)
    assert np.allclose(upper.means(lay(6, 1.0), np.zeros(3)), (0.0284, 0.2122, 0.1812), atol=1e-3)


def test_pictures_go_after_a_day_and_a_strange_name_leads_nowhere(tmp_path):
    old, new = (handed_in.keep(tmp_path, b"picture", 0.0) for _ in range(2))
    os.utime(handed_in.path_of(tmp_path, old), (0, 0))
    handed_in.sweep(tmp_path, handed_in.path_of(tmp_path, new).stat().st_mtime)
    for token in (old, "../secret", "f" * 32):
        with pytest.raises(PhotographError, match="That picture is not kept any more; hand it in once more"):
            handed_in.path_of(tmp_path, token)
    assert handed_in.path_of(tmp_path, new).read_bytes() == b"picture"
