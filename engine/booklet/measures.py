"""Measures as a booklet says them, in its units: metric, in inches, feet and yards, or both."""

from __future__ import annotations

import re
from typing import NamedTuple

from engine.units import INCH_MM, count, fixed, length, metres, millimetres, plain, whole

_MILLIMETRES = re.compile(r"(\d+(?:\.\d+)?) mm\b")
_CENTIMETRES = re.compile(r"(\d+(?:\.\d+)?) cm\b")
SMALL_MM = 5.0  # below it a tenth of an inch is too coarse
FOOT_MM, YARD_MM = 12 * INCH_MM, 36 * INCH_MM


class Measures(NamedTuple):
    """`units` is cm, in or both."""

    units: str

    def length(self, mm: float) -> str:
        """Of a finished piece: "45.0 cm", "17.7 in"."""
        return length(mm, self.units)

    def small(self, mm: float) -> str:
        """Of a thing that is sold or measured in millimetres: "9.9 mm", "0.39 in (9.9 mm)"."""
        metric, inches = millimetres(mm), f"{fixed(mm / INCH_MM, 2)} in"
        return {"cm": metric, "in": f"{inches} ({metric})", "both": f"{metric} ({inches})"}[self.units]

    def plain(self, mm: float) -> str:
        """Of a round number of millimetres: "25 mm", "1 in", "1 mm", "0.04 in"."""
        metric, inches = f"{plain(mm, 1)} mm", f"{plain(mm / INCH_MM, 2 if mm < SMALL_MM else 1)} in"
        return {"cm": metric, "in": inches, "both": f"{metric} ({inches})"}[self.units]

    def between(self, least: float, most: float) -> str:
        """From one small measure to another: "9.9 to 10.9 mm"."""
        metric = f"{fixed(least, 1)} to {millimetres(most)}"
        inches = f"{fixed(least / INCH_MM, 2)} to {fixed(most / INCH_MM, 2)} in"
        return {"cm": metric, "in": f"{inches} ({metric})", "both": f"{metric} ({inches})"}[self.units]

    def roughly(self, least: float, most: float) -> str:
        """From one small measure to another that are no surer than a millimetre: "7 to 9 mm"."""
        metric = f"{whole(least)} to {whole(most)} mm"
        inches = f"{fixed(least / INCH_MM, 2)} to {fixed(most / INCH_MM, 2)} in"
        return {"cm": metric, "in": f"{inches} ({metric})", "both": f"{metric} ({inches})"}[self.units]

    def strung(self, mm: float) -> str:
        """Of beads on a thread, as they are laid along a ruler: "14 cm", "9.83 m", "5.5 in", "32.3 ft"."""
        metric = metres(mm) if mm >= 1000 else f"{plain(mm / 10, 1) if mm < 100 else count(mm / 10)} cm"
        inches = f"{fixed(mm / FOOT_MM, 1)} ft" if mm >= FOOT_MM else f"{fixed(mm / INCH_MM, 1)} in"
        return {"cm": metric, "in": inches, "both": f"{metric} ({inches})"}[self.units]

    def thread(self, mm: float) -> str:
        """Of thread as it is bought: "25.40 m", "27.8 yd"."""
        yards = f"{fixed(mm / YARD_MM, 1)} yd"
        return {"cm": metres(mm), "in": yards, "both": f"{metres(mm)} ({yards})"}[self.units]

    def about(self, mm: float) -> str:
        """Of something that need not be exact: "15 cm", "6 in"."""
        metric, inches = f"{whole(mm / 10)} cm", f"{whole(mm / INCH_MM)} in"
        return {"cm": metric, "in": inches, "both": f"{metric} ({inches})"}[self.units]

    def beside(self, text: str) -> str:
        """A text in which things are sold by the millimetre, with inches behind each where there are inches."""
        if self.units == "cm":
            return text
        return _MILLIMETRES.sub(lambda match: f"{match[0]} ({fixed(float(match[1]) / INCH_MM, 2)} in)", text)

    def in_units(self, text: str) -> str:
        """A text with its lengths in centimetres said in these units."""
        return _CENTIMETRES.sub(lambda match: self.length(10 * float(match[1])), text)

    def to_a_unit(self, per_cm: float) -> str:
        """So many to a stretch of rope: "6.1 to the centimetre", "15.4 to the inch"."""
        metric, inches = f"{fixed(per_cm, 1)} to the centimetre", f"{fixed(per_cm * 2.54, 1)} to the inch"
        return {"cm": metric, "in": inches, "both": f"{metric}, {inches}"}[self.units]
