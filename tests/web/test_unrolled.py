"""The chart as a small plain picture."""

from io import BytesIO

from PIL import Image

from engine.pattern.pattern import Pattern
from tests.pictures import palette
from webapp.pictures.unrolled import LARGEST_BEAD_PX, unrolled

LETTERS = {(0x1D, 0x33, 0x50): "A", (0xF2, 0xE8, 0xD5): "B", (0xB2, 0x3A, 0x30): "C"}


def test_each_row_is_a_column_read_from_top_to_bottom_and_odd_ones_lie_half_a_bead_lower():
    beads = bytes([0, 1, 2, 0, 1, 1, 2, 2, 2, 0, 0])
    image = Image.open(BytesIO(unrolled(Pattern("Trial", 3, palette("ABC"), beads)))).convert("RGBA")
    step, row = LARGEST_BEAD_PX, 0.866 * LARGEST_BEAD_PX

    def column(number: int) -> str:
        x = round((number + 0.5) * row)
        places = (round((k + 0.5 + number % 2 / 2) * step) for k in range(4))
        return "".join(
            LETTERS.get(image.getpixel((x, y))[:3], "?") if y < image.height and image.getpixel((x, y))[3] else " "
            for y in places
        )

    assert [column(number) for number in range(3)] == ["ABCA", "BBC ", "CCAA"]


def test_a_long_chart_stays_a_small_picture():
    image = Image.open(BytesIO(unrolled(Pattern("Long", 60, palette("AB"), bytes([0, 1] * 20_000)))))
    assert image.width < 2000
