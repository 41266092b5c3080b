"""Lengths are read with their unit, and numbers for people are rounded half up in one place."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine import units
from engine.errors import EngineError, LengthError
from engine.numbers import typed_milligrams


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("50 cm", 500),
        ("500mm", 500),
        ("1,5 m", 1500),
        ("19.5 in", 495.3),
        (" 2 inches ", 50.8),
        ("7in", 177.8),
        ('7"', 177.8),
    ],
)
def test_a_length_is_read_with_its_unit(text, mm):
    assert units.parse_length(text) == pytest.approx(mm)


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("50", "“50” has no unit; write mm, cm, m or in behind it, such as 50 cm."),
        ("50 ells", "“ells” is not a unit of length here; use mm, cm, m, in, ft or yd."),
        ("", "“” is not a length; write a number and a unit, such as 50 cm or 19.5 in."),
        ("cm", "“cm” is not a length; write a number and a unit, such as 50 cm or 19.5 in."),
        ("-5 cm", "“-5 cm” is not a length; write a number and a unit, such as 50 cm or 19.5 in."),
        ("0 cm", "“0 cm” is out of range; a length is more than 0 and at most 100 m."),
        ("1,500 mm", "“1,500 mm” may be 1500 mm or 1.5 mm; write it without the comma, or with a point."),
        ("12,345 m", "“12,345 m” may be 12345 m or 12.345 m; write it without the comma, or with a point."),
        ("61/2 in", "“61/2 in” is not a length; write a number and a unit, such as 50 cm or 19.5 in."),
        ("6.5 1/2 in", "“6.5 1/2 in” is not a length; write a number and a unit, such as 50 cm or 19.5 in."),
        ("3/0 in", "“3/0 in” is not a length; write a number and a unit, such as 50 cm or 19.5 in."),
        ("101 m", "“101 m” is out of range; a length is more than 0 and at most 100 m."),
    ],
)
def test_a_length_that_cannot_be_meant_is_refused_in_one_sentence(text, sentence):
    with pytest.raises(LengthError) as refused:
        units.parse_length(text)
    assert refused.value.message == sentence
    assert refused.value.field == "length"


@given(st.text(max_size=80))
def test_any_text_is_a_length_or_refused_in_one_line(text):
    try:
        assert 0 < units.parse_length(text) <= units.LONGEST_MM
    except LengthError as refused:
        assert refused.message.endswith(".")
        assert "\n" not in refused.message


@pytest.mark.parametrize(
    ("value", "places", "text"),
    [
        (2.5, 0, "3"),
        (-2.5, 0, "-2"),
        (0.125, 2, "0.13"),
        (1234567.5, 0, "1,234,568"),
        (-0.2, 0, "0"),
        (1.005, 2, "1.01"),
    ],
)
def test_numbers_round_half_up_as_they_are_written(value, places, text):
    assert units.fixed(value, places) == text


def test_numbers_read_as_people_write_them():
    said = (
        units.count(1500),
        units.grams(6.35),
        units.millimetres(9.94),
        units.metres(9830),
        units.length(450),
        units.length(450, "in"),
        units.length(450, "both"),
        units.percent(10),
        units.percent(12.5),
        units.plain(2.5, 2),
    )
    assert said == (
        "1,500",
        "6.4 g",
        "9.9 mm",
        "9.83 m",
        "45.0 cm",
        "17.7 in",
        "45.0 cm (17.7 in)",
        "10 %",
        "12.5 %",
        "2.5",
    )


@given(st.floats(-1e9, 1e9), st.integers(0, 4))
def test_rounding_is_never_off_by_more_than_half_a_step(value, places):
    assert abs(float(units.fixed(value, places).replace(",", "")) - value) <= 0.5000001 * 10**-places


@pytest.mark.parametrize(
    ("numbers", "words"),
    [
        ((1,), "1"),
        ((1, 2), "1 and 2"),
        ((1, 2, 3), "1 to 3"),
        ((1, 2, 3, 5, 7, 8), "1 to 3, 5, 7 and 8"),
        ((2, 4, 6, 7, 8, 9), "2, 4 and 6 to 9"),
    ],
)
def test_numbers_are_told_as_stretches(numbers: tuple[int, ...], words: str) -> None:
    assert units.numbers_in_words(numbers) == words


@pytest.mark.parametrize(
    ("mg", "exact", "shown", "up"),
    [
        (0, "0 g", "0.0 g", "0.0 g"),
        (12_500, "12.5 g", "12.5 g", "12.5 g"),
        (12_601, "12.601 g", "12.6 g", "12.7 g"),
        (1, "0.001 g", "under 0.1 g", "0.1 g"),
        (1_234_567, "1,234.567 g", "1,234.6 g", "1,234.6 g"),
    ],
)
def test_milligrams_are_told_as_scales_say_them_and_what_is_missing_is_rounded_up(mg, exact, shown, up):
    assert (units.exact_grams(mg), units.weighed(mg), units.weighed_up(mg)) == (exact, shown, up)


@given(st.integers(0, 10**8))
def test_grams_that_are_typed_again_are_the_same_milligrams(mg):
    assert typed_milligrams(units.exact_grams(mg).replace(",", ""), "a stock") == mg


@pytest.mark.parametrize("text", ["", "-3", "1.2345", "a lot", "1,234.5", "12 kg", "٣"])
def test_what_is_no_number_of_grams_is_refused(text):
    with pytest.raises(EngineError, match="is not a stock in grams; write a number"):
        typed_milligrams(text, "a stock")
