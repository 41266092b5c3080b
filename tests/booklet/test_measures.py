"""Measures in print: as a ruler, a shop and a buyer say them, in the units of the booklet."""

from __future__ import annotations

import pytest

from engine.booklet.measures import Measures


@pytest.mark.parametrize(
    ("said", "cm", "inches", "both"),
    [
        (lambda at: at.length(450), "45.0 cm", "17.7 in", "45.0 cm (17.7 in)"),
        (lambda at: at.small(9.9), "9.9 mm", "0.39 in (9.9 mm)", "9.9 mm (0.39 in)"),
        (
            lambda at: at.between(9.9, 10.9),
            "9.9 to 10.9 mm",
            "0.39 to 0.43 in (9.9 to 10.9 mm)",
            "9.9 to 10.9 mm (0.39 to 0.43 in)",
        ),
        (lambda at: at.plain(50), "50 mm", "2 in", "50 mm (2 in)"),
        (lambda at: at.plain(1), "1 mm", "0.04 in", "1 mm (0.04 in)"),
        (lambda at: at.beside("a hole of 0.8 mm"), "a hole of 0.8 mm", *["a hole of 0.8 mm (0.03 in)"] * 2),
        (lambda at: at.strung(64), "6.4 cm", "2.5 in", "6.4 cm (2.5 in)"),
        (lambda at: at.strung(140), "14 cm", "5.5 in", "14 cm (5.5 in)"),
        (lambda at: at.strung(9830), "9.83 m", "32.3 ft", "9.83 m (32.3 ft)"),
        (lambda at: at.thread(25_400), "25.40 m", "27.8 yd", "25.40 m (27.8 yd)"),
        (lambda at: at.about(200), "20 cm", "8 in", "20 cm (8 in)"),
        (
            lambda at: at.to_a_unit(6.06),
            "6.1 to the centimetre",
            "15.4 to the inch",
            "6.1 to the centimetre, 15.4 to the inch",
        ),
        (
            lambda at: at.in_units("720 beads in 10.0 cm"),
            "720 beads in 10.0 cm",
            "720 beads in 3.9 in",
            "720 beads in 10.0 cm (3.9 in)",
        ),
    ],
)
def test_a_measure_is_said_in_the_units_of_the_booklet(said, cm: str, inches: str, both: str) -> None:
    assert [said(Measures(units)) for units in ("cm", "in", "both")] == [cm, inches, both]
