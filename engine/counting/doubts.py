"""Gentle questions about what a customer may have meant: inches taken for centimetres, a wrist for a length."""

from __future__ import annotations

from math import pi

from engine.counting.questions import INSIDE, NECK, Question
from engine.counting.ring_fit import LARGEST_HAND_MM, SMALLEST_HEAD_MM
from engine.counting.sizes import Size
from engine.units import INCH_MM, length, plain, whole

LONGEST_WRIST_MM, SHORTEST_WRIST_MM = 240.0, 110.0
SHORTEST_PIECE_MM, LONGEST_PIECE_MM = 90.0, 2000.0
SMALLEST_GIRTH_MM = 150.0  # a hand does not go through less
LARGEST_DIAMETER_MM = 90.0  # the largest bangle size usually sold is 76 mm across
HAND_TO_WRIST = 1.2  # girth of a hand, thumb tucked in, to that of its wrist (common practice, no source)
SMALLEST_NECK_MM, LARGEST_NECK_MM = 250.0, 550.0
SMALL_GIRTH_MM = 165.0  # less than the smallest bangle usually sold; a usual wrist


def doubts(size: Size, units: str = "cm") -> tuple[str, ...]:
    """Questions to ask back, each a sentence; none where everything is likely."""
    question = size.question
    asked = (
        _about_length(question, units),
        _about_wrist(question, units),
        _about_neck(question, units),
        _about_ring(size, units),
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
    meant = "" if _in_inches(mm) else f"; if inches were meant, it is {inches}"
    if mm < SHORTEST_PIECE_MM:
        return f"{length(mm, units)} is short. {f'Were inches meant: {inches}?' if meant else 'Is the length right?'}"
    if mm < LONGEST_WRIST_MM and question.closure != "open":
        return (
            f"Is {length(mm, units)} the finished length? If it is the wrist, ask for the wrist: ease and "
            f"thickness come on top{meant}."
        )
    if mm > LONGEST_PIECE_MM:
        return f"{length(mm, units)} is longer than ropes are usually worn. Was another unit meant?"
    return ""


def _in_inches(mm: float) -> bool:
    """Whether a length was surely said in inches: whole eighths of an inch, and no whole half millimetres."""
    eighths, halves = 8 * mm / INCH_MM, 2 * mm
    return abs(eighths - whole(eighths)) < 1e-6 and abs(halves - whole(halves)) > 1e-6


def _about_wrist(question: Question, units: str) -> str:
    mm = question.wrist_mm
    if mm is None or SHORTEST_WRIST_MM <= mm <= LONGEST_WRIST_MM:
        return ""
    if mm < SHORTEST_WRIST_MM:
        return f"A wrist of {length(mm, units)} is small. Were inches meant: {length(mm / 10 * INCH_MM)}?"
    return f"A wrist of {length(mm, units)} is wide. Is it the neck, or the length of a necklace? Then ask for that."


def _about_neck(question: Question, units: str) -> str:
    mm = question.girth_mm
    if mm is None or question.girth_of != NECK or SMALLEST_NECK_MM <= mm <= LARGEST_NECK_MM:
        return ""
    if mm < SMALLEST_NECK_MM:
        return f"A neck of {length(mm, units)} is small. Were inches meant: {length(mm / 10 * INCH_MM)}?"
    return f"A neck of {length(mm, units)} is wide. Is it the length of the piece? Then ask for the length."


def _about_ring(size: Size, units: str) -> str:
    """A ring has to go over a hand or a head."""
    question, inside = size.question, size.finished_mm
    if not size.closure.worked_shut or not question.asks_for_length:
        return ""
    if question.girth_of == INSIDE and size.length_mm > pi * LARGEST_DIAMETER_MM:
        diameter = length(size.length_mm / pi, units)
        return f"An inner diameter of {diameter} is more than bangles have. Is {diameter} the girth, of a hand say?"
    girth = f"A ring of {length(inside, units)} inner girth"
    if question.wrist_mm is not None:
        return (
            ""
            if inside >= HAND_TO_WRIST * question.wrist_mm
            else (
                f"{girth} is worked for a wrist of {length(question.wrist_mm, units)}, but the hand has to pass and is "
                "wider. Ask for the girth of the hand at its widest, thumb tucked in."
            )
        )
    if LARGEST_HAND_MM < inside < SMALLEST_HEAD_MM:
        return f"{girth} is wide for a hand and goes over no head, which measures 52 cm and more. Is the length right?"
    asked = size.length_mm if question.over_hand else inside
    if asked >= SMALL_GIRTH_MM:
        return ""
    if question.over_hand or asked >= SMALLEST_GIRTH_MM:
        return (
            f"{girth} goes over a small hand only. Was the wrist measured? "
            "A bangle needs the girth of the hand at its widest, thumb tucked in."
        )
    return (
        f"{girth} does not go over a hand. Was its inner diameter meant? "
        f"Then the girth is {length(size.length_mm * pi, units)}."
    )


def _about_rope(size: Size) -> str:
    if size.rope.measured or 2 * size.thickness_mm < size.rope_mm:
        return ""
    return "The rope would be hardly longer than it is thick. Is the length right?"
