"""Line drawings: each has ink inside its box, mirrors for the left hand, and says in words what it shows."""

from __future__ import annotations

import re
from math import hypot
from xml.etree import ElementTree

import pytest

from engine.counting.rope import helix
from engine.drawing.handwork import album
from engine.drawing.handwork.album import ALBUM, painted, parts, strokes, svg, words
from engine.drawing.handwork.beads import HELIX, Rope
from engine.drawing.handwork.curves import along, bezier, smooth, trimmed
from engine.drawing.handwork.marks import SIGNS
from engine.drawing.handwork.parts import HEIGHT, WIDTH, Clip, Frame, Parts, Sign, Stroke

SAME = {"reading-list"}


def unclipped(drawn: Parts):
    """Strokes that no box cuts off."""
    for part in drawn:
        match part:
            case Stroke():
                yield part
            case Sign():
                yield part.stroke
            case Frame(_, _, inner):
                yield from unclipped(inner)


def boxes(drawn: Parts):
    for part in drawn:
        match part:
            case Clip(box, inner):
                yield box, inner
            case Frame(_, _, inner):
                yield from boxes(inner)


def corners(stroke: Stroke) -> list[tuple[float, float]]:
    numbers = [float(number) for step in stroke.outline for number in step[1:]]
    return list(zip(numbers[::2], numbers[1::2], strict=True))


def bounds(found) -> tuple[float, float, float, float]:
    points = [point for stroke in found for point in corners(stroke)]
    if not points:
        return WIDTH / 2, HEIGHT / 2, WIDTH / 2, HEIGHT / 2
    return (min(x for x, _ in points), min(y for _, y in points), max(x for x, _ in points), max(y for _, y in points))


def as_a_mirror_shows(drawn: Parts, edges: float = WIDTH):
    """Corner by corner what the other hand must see: each frame in its own place, signs moved but not turned."""
    for part in drawn:
        match part:
            case Stroke():
                yield [(edges - x, y) for x, y in corners(part)]
            case Sign(_, (x, _)):
                yield [(a + edges - 2 * x, b) for a, b in corners(part.stroke)]
            case Clip(_, inner):
                yield from as_a_mirror_shows(inner, edges)
            case Frame(left, right, inner):
                yield from as_a_mirror_shows(inner, left + right)


def test_there_is_a_drawing_for_every_turn_of_the_work() -> None:
    assert set(ALBUM) == {
        "threading", "strung-order", "reading-list", "beaded-chain", "starting-ring", "wide-chain", "wide-ring",
        "bead-slip-stitch", "bead-single-crochet", "through-both-loops", "how-beads-lie", "working-way", "counting",
        "marker", "new-thread", "hiding-tail", "ring-join", "closing-end", "core", "trying-ends", "gluing", "eye-pin",
        "cutting-wire", "wrapped-loop", "jump-ring", "toggle", "break-bead", "missing-bead"}


@pytest.mark.parametrize("hand", ["right", "left"])
@pytest.mark.parametrize("name", ALBUM)
def test_all_ink_lies_inside_the_box(name: str, hand: str) -> None:
    left, top, right, foot = bounds(unclipped(parts(name, hand)))
    assert left >= 0 and right <= WIDTH and top >= 0 and foot <= HEIGHT
    for (x, y, width, height), inner in boxes(parts(name, hand)):
        assert x >= 0 and x + width <= WIDTH + 0.01 and y >= 0 and y + height <= HEIGHT + 0.01
        inside = bounds(strokes(inner))
        assert inside[0] < x + width and inside[2] > x and inside[1] < y + height and inside[3] > y


@pytest.mark.parametrize("name", ALBUM)
def test_a_drawing_fills_its_box_well(name: str) -> None:
    left, top, right, foot = bounds(unclipped(parts(name)))
    for (x, y, width, height), _ in boxes(parts(name)):
        left, top, right, foot = min(left, x), min(top, y), max(right, x + width), max(foot, y + height)
    assert right - left > 30 and foot - top > 26


@pytest.mark.parametrize("name", ALBUM)
def test_the_left_hand_sees_the_mirror_image(name: str) -> None:
    left = [corners(stroke) for stroke in strokes(parts(name, "left"))]
    wanted = [corners(stroke) for stroke in strokes(parts(name))] if name in SAME else list(as_a_mirror_shows(parts(name)))
    assert len(left) == len(wanted)
    for one, other in zip(left, wanted, strict=True):
        assert [part for point in one for part in point] == pytest.approx([part for point in other for part in point])


def test_digits_and_ticks_read_alike_for_both_hands() -> None:
    def signs(drawn: Parts) -> list[Sign]:
        return [sign for part in drawn for sign in (
            [part] if isinstance(part, Sign) else signs(part.parts) if isinstance(part, (Frame, Clip)) else [])]

    for name in ALBUM:
        right, left = signs(parts(name)), signs(parts(name, "left"))
        assert [sign.outline for sign in right] == [sign.outline for sign in left]


def test_frames_are_mirrored_in_their_own_places() -> None:
    def frames(hand: str) -> list[tuple[float, float]]:
        return [(part.left, part.right) for part in parts("bead-slip-stitch", hand) if isinstance(part, Frame)]

    assert frames("left") == frames("right")


@pytest.mark.parametrize("name", ALBUM)
def test_words_say_what_is_seen_and_change_sides_with_the_hand(name: str) -> None:
    drawing = ALBUM[name]
    assert len(drawing.words) > 80 and drawing.words.endswith(".") and drawing.title[0].isupper()
    swap = {"left": "right", "right": "left"}
    turned = re.sub(r"\b(left|right)\b", lambda side: swap[side[0]], drawing.words)
    assert words(name, "left") == (drawing.words if name in SAME else turned)


@pytest.mark.parametrize("name", ALBUM)
def test_a_drawing_says_nothing_in_the_terms_of_one_country(name: str) -> None:
    told = f"{ALBUM[name].title} {ALBUM[name].words}"
    assert re.findall(r"single crochet|double crochet|\b[sd]c\b|yarn over", told) == []


@pytest.mark.parametrize("hand", ["right", "left"])
@pytest.mark.parametrize("name", ALBUM)
def test_the_svg_is_a_picture_with_title_and_description(name: str, hand: str) -> None:
    root = ElementTree.fromstring(svg(name, hand))
    told = {child.tag.split("}")[1]: child.text for child in root[:2]}
    assert told == {"title": ALBUM[name].title, "desc": words(name, hand)}
    assert (root.get("viewBox"), root.get("role")) == ("0 0 60 45", "img")
    assert not re.search(r"style=|<text|nan|inf", svg(name, hand))
    identities = [node.get("id") for node in root.iter() if node.get("id")]
    assert len(identities) == len(set(identities))


@pytest.mark.parametrize("name", ALBUM)
def test_the_operators_paint_every_stroke_and_leave_the_state_as_it_was(name: str) -> None:
    text = painted(name)
    assert text.split().count("q") == text.split().count("Q")
    assert len(re.findall(r" [BSf]$", text, re.MULTILINE)) == len(list(strokes(parts(name))))
    assert text == painted.__wrapped__(name)


def test_a_state_that_a_box_has_changed_is_said_again_behind_it() -> None:
    drawn = (Stroke((("M", 1, 1), ("L", 2, 2)), width=0.5), Clip((0, 0, 9, 9), (Stroke((("M", 1, 1), ("L", 2, 2)), width=0.9),)),
             Stroke((("M", 1, 1), ("L", 2, 2)), width=0.5))
    lines = list(album._painted(drawn, {"cap": "1 J", "dash": "[] 0 d"}))
    assert [line for line in lines if line.endswith("S")] == [
        ".13 .14 .16 RG .5 w 1 1 m 2 2 l S", ".9 w 1 1 m 2 2 l S", "1 1 m 2 2 l S"]


@pytest.mark.parametrize("around", HELIX)
def test_the_rope_of_a_drawing_is_the_rope_of_touching_spheres(around: int) -> None:
    assert HELIX[around] == tuple(round(value, 6) for value in helix(around))
    of = Rope((0, 0), 0, around, 3.0)
    (x, y), near, _ = of.spot(5)
    (a, b), far, _ = of.spot(5 + around)
    assert abs(hypot(a - x, b - y, 3 * HELIX[around][0] * (far - near)) - 3.0) < 1e-4


def test_a_smooth_line_goes_through_its_points() -> None:
    points = [(0, 0), (4, 2), (5, 9), (1, 12)]
    assert [piece[0] for piece in bezier(points)] + [bezier(points)[-1][3]] == points
    assert smooth(points)[0] == ("M", 0, 0) and smooth(points)[-1][-2:] == (1, 12)
    assert along(points, 0.0)[0] == (0, 0) and along(points, 1.0)[0] == pytest.approx((1, 12), abs=0.05)


def test_a_crossing_is_broken_a_little_short_of_its_ends() -> None:
    (start, *_, end), = trimmed(bezier([(0, 0), (10, 0)]))
    assert 0 < start[0] < 2 and 8 < end[0] < 10


def test_every_sign_is_drawn_within_its_grid() -> None:
    for path in SIGNS.values():
        numbers = [float(number) for number in re.findall(r"[\d.]+", path)]
        assert max(numbers) <= 6 and set(path) <= set("MLCZ0123456789. ")
