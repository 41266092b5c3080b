"""A photograph is made upright, smaller and plain; nothing but the picture is left in it."""

from io import BytesIO
from random import Random

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from webapp.pictures.photographs import LARGEST_PX, PhotographError, area_of, bead_photograph, cleaned, shrunk


def file_of(picture: Image.Image, form: str = "JPEG", **options: object) -> bytes:
    out = BytesIO()
    picture.save(out, form, **options)
    return out.getvalue()


def test_a_large_photograph_is_made_smaller_and_keeps_its_shape():
    made = shrunk("rope.jpg", file_of(Image.new("RGB", (4000, 3000), "#2f7f76")))
    assert (made.width, made.height) == (LARGEST_PX, 1200)
    assert Image.open(BytesIO(made.jpeg)).size == (LARGEST_PX, 1200)


def test_a_small_photograph_keeps_its_size():
    assert shrunk("rope.png", file_of(Image.new("RGB", (640, 480)), "PNG"))[1:] == (640, 480)


def test_place_and_time_of_the_camera_are_taken_out_and_the_picture_stands_upright():
    exif = Image.Exif()
    exif[0x0112] = 6  # turned by a quarter
    exif[0x010F] = "A camera"
    exif.get_ifd(0x8825)[2] = (54.0, 5.0, 0.0)
    sent = file_of(Image.new("RGB", (800, 400), "#dfa63a"), exif=exif, comment=b"where I live")
    assert b"A camera" in sent
    made = shrunk("rope.jpg", sent)
    assert (made.width, made.height) == (400, 800)
    opened = Image.open(BytesIO(made.jpeg))
    assert not opened.getexif() and not {"exif", "comment", "icc_profile", "xmp"} & set(opened.info)
    assert b"camera" not in made.jpeg and b"where I live" not in made.jpeg


def test_clear_parts_become_white():
    made = shrunk("rope.png", file_of(Image.new("RGBA", (300, 300), (10, 20, 30, 0)), "PNG"))
    assert min(Image.open(BytesIO(made.jpeg)).getpixel((150, 150))) > 250


def test_a_photograph_without_a_smooth_place_is_written_too():
    noise = Image.frombytes("RGB", (300, 300), Random(1).randbytes(270_000))
    assert shrunk("sand.png", file_of(noise, "PNG"))[1:] == (300, 300)


def test_a_photograph_that_was_made_here_stays_byte_for_byte():
    made = shrunk("rope.png", file_of(Image.effect_noise((900, 600), 40).convert("RGB"), "PNG"))
    assert cleaned("rope.jpg", made.jpeg) == made


@pytest.mark.parametrize(
    "told",
    [
        lambda made: made[:2] + b"\xff\xe1\x00\x0awhere I" + b"\0" + made[2:],
        lambda made: made[:2] + b"\xff\xfe\x00\x09where I" + made[2:],
        lambda made: made[:20] + b"\xff\xe0\x00\x09where I" + made[20:],
        lambda made: made + b"where I live",
        lambda made: made + b"where I\xff\xd9",
        lambda made: made[:2] + b"\xff\xe1\x00\x01where I" + made[2:],
    ],
)
def test_whatever_stands_beside_the_picture_in_a_file_is_taken_out(told):
    made = shrunk("rope.png", file_of(Image.new("RGB", (640, 480), "#2f7f76"), "PNG")).jpeg
    found = cleaned("rope.jpg", told(made))
    assert b"where I" not in found.jpeg and found[1:] == (640, 480)


@pytest.mark.parametrize(
    "data", [b"", b"\xff", b"\xff\xd8", b"\xff\xd8\xff", b"\xff\xd8\xff\xda\x00\x02", b"\xff\xd8\xff\xd9"]
)
def test_what_only_begins_as_a_photograph_is_refused(data):
    with pytest.raises(PhotographError, match="cannot be read as a picture"):
        cleaned("rope.jpg", data)


def test_a_large_plain_photograph_is_made_smaller_on_its_way_in():
    assert cleaned("rope.jpg", file_of(Image.new("RGB", (2000, 1000))))[1:] == (1600, 800)


@pytest.mark.parametrize(
    ("data", "sentence"),
    [
        (b"no picture", "“rope.jpg” cannot be read as a picture; a JPEG, PNG or WebP file is wanted."),
        (
            b"<svg xmlns='http://www.w3.org/2000/svg'/>",
            "“rope.jpg” cannot be read as a picture; a JPEG, PNG or WebP file is wanted.",
        ),
        (
            file_of(Image.new("RGB", (300, 300)), "GIF"),
            "“rope.jpg” cannot be read as a picture; a JPEG, PNG or WebP file is wanted.",
        ),
        (
            file_of(Image.new("RGB", (900, 600)))[:500],
            "“rope.jpg” cannot be read as a picture; a JPEG, PNG or WebP file is wanted.",
        ),
        (file_of(Image.new("L", (8000, 5100)), "PNG"), "“rope.jpg” has 41 megapixels; at most 40 are read."),
        (
            file_of(Image.new("RGB", (199, 800))),
            "“rope.jpg” is 199 × 800 pixels; in print that is too small. At least 200 each way are wanted.",
        ),
        (b"x" * 20_000_001, "“rope.jpg” has more than 20 MB, the most that is read."),
    ],
)
def test_what_cannot_be_printed_is_refused_in_a_sentence(data: bytes, sentence: str):
    with pytest.raises(PhotographError) as refused:
        shrunk("rope.jpg", data)
    assert refused.value.message == sentence


@pytest.mark.parametrize(
    "wrong", [b"Exif\0\0", b"Exif\0\0II*\0\xff\xff\xff\xff", b"Exif\0\0MM\0*\0\0\0\x08\xff\xff" + b"\x01\x12\0\x05" * 9]
)
def test_what_a_camera_wrote_may_be_damaged_and_the_picture_is_taken(wrong):
    plain = file_of(Image.new("RGB", (640, 480), "#2f7f76"))
    segment = b"\xff\xe1" + (len(wrong) + 2).to_bytes(2) + wrong
    assert shrunk("rope.jpg", plain[:2] + segment + plain[2:])[1:] == (640, 480)


@given(st.binary(min_size=1, max_size=60), st.integers(2, 700))
def test_a_damaged_photograph_is_taken_or_refused_in_a_sentence(noise, at):
    data = file_of(Image.effect_noise((240, 220), 90).convert("RGB"))
    try:
        shrunk("rope.jpg", data[:at] + noise + data[at + len(noise) :])
    except PhotographError as error:
        assert "“rope.jpg”" in error.message


def test_a_photograph_of_beads_is_kept_small_and_may_be_so():
    assert bead_photograph("bead.png", file_of(Image.new("RGB", (3000, 1500)), "PNG"))[1:] == (960, 480)
    assert bead_photograph("bead.png", file_of(Image.new("RGB", (20, 16)), "PNG"))[1:] == (20, 16)


@given(st.floats(0, 1), st.floats(0, 1), st.floats(0, 1))
def test_an_area_lies_in_the_photograph_round_its_place(across, down, share):
    red = np.arange(40, dtype=np.uint8)[None, :].repeat(30, 0)
    green = np.arange(30, dtype=np.uint8)[:, None].repeat(40, 1)
    plain = Image.fromarray(np.stack([red, green, red * 0], axis=2))
    out = BytesIO()
    plain.save(out, "JPEG", quality=100, subsampling=0)
    area = area_of(out.getvalue(), across, down, share)
    assert 1 <= area.shape[0] <= 31 and 1 <= area.shape[1] <= 31
    place = np.abs(area[..., :2].astype(int) - (min(int(across * 40), 39), min(int(down * 30), 29))).sum(axis=2)
    assert place.min() <= 6  # of two numbers, each written by a JPEG
