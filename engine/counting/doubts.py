"""Gentle questions about what a customer may have meant: inches taken for centimetres, a wrist for a length."""

from __future__ import annotations

from math import pi

from engine.counting.questions import Question
from engine.counting.sizes import Size
from engine.units import INCH_MM, length, plain

LONGEST_WRIST_MM, SHORTEST_WRIST_MM = 240.0, 110.0
SHORTEST_PIECE_MM, LONGEST_PIECE_MM = 90.0, 2000.0
SMALLEST_GIRTH_MM = 150.0  # a hand does not go through less
SMALL_GIRTH_MM = 165.0  # less than the smallest bangle usually sold; a usual wrist


def doubts(size: Size, units: str = "cm") -> tuple[str, ...]:
    """Questions to ask back, each a sentence; none where everything is likely."""
    question = size.question
    asked = (
        _about_length(question, units),
        _about_wrist(question, units),
        _about_ring(question, units),
        _about_rope(size),
    )
    return tuple(sentence for sentence in asked if sentence)


def about_bead_size(text: str) -> str:
    """A question where a bead is called by its millimetres: "5 mm" is not size 5."""
    spoken = text.strip().lower().replace("size", "").strip()
    if spoken.endswith("mm"):
        return (
            f"Beads of {spoken} are not “size {spoken.removesuffix('mm').strip()}”: the size of seed beads grows "
            "smaller as its number grows (11/0 is about 2 mm, 6/0 about 4 mm). Which kind is meant?"
        )
    return ""


def _about_length(question: Question, units: str) -> str:
    mm = question.length_mm
    if mm is None or question.ending.worked_shut:
        return ""
    inches = f"{plain(mm / 10, 1)} in ({length(mm / 10 * INCH_MM)})"
    if mm < SHORTEST_PIECE_MM:
        return f"{length(mm, units)} is short. Were inches meant: {inches}?"
    if mm < LONGEST_WRIST_MM and question.closure != "open":
        return (
            f"Is {length(mm, units)} the finished length? If it is the wrist, ask for the wrist: ease and "
            f"thickness come on top; if inches were meant, it is {inches}."
        )
    if mm > LONGEST_PIECE_MM:
        return f"{length(mm, units)} is longer than ropes are usually worn. Was another unit meant?"
    return ""


def _about_wrist(question: Question, units: str) -> str:
    mm = question.wrist_mm
    if mm is None or SHORTEST_WRIST_MM <= mm <= LONGEST_WRIST_MM:
        return ""
    if mm < SHORTEST_WRIST_MM:
        return f"A wrist of {length(mm, units)} is small. Were inches meant: {length(mm / 10 * INCH_MM)}?"
    return f"A wrist of {length(mm, units)} is wide. Is it the length of a necklace? Then ask for the length."


def _about_ring(question: Question, units: str) -> str:
    mm = question.length_mm
    if mm is None or not question.ending.worked_shut or mm >= SMALL_GIRTH_MM:
        return ""
    if mm >= SMALLEST_GIRTH_MM:
        return (
            f"A ring of {length(mm, units)} inner girth goes over a small hand only. Was the wrist measured? "
            "A bangle needs the girth of the hand at its widest, thumb tucked in."
        )
    return (
        f"A ring of {length(mm, units)} inner girth does not go over a hand. Was its inner diameter meant? "
        f"Then the girth is {length(mm * pi, units)}."
    )


def _about_rope(size: Size) -> str:
    if size.rope.measured or 2 * size.thickness_mm < size.rope_mm:
        return ""
    return "The rope would be hardly longer than it is thick. Is the length right?"
