"""Line drawings: each has ink inside its box, mirrors for the left hand, and says in words what it shows."""

from __future__ import annotations

import re
from math import hypot

import pytest

from engine.counting.rope import helix
from engine.drawing.handwork import album
from engine.drawing.handwork.album import ALBUM, painted, parts, strokes, words
from engine.drawing.handwork.beads import HELIX, DrawnRope
from engine.drawing.handwork.curves import along, bezier, smooth, trimmed
from engine.drawing.handwork.hooked import laid_over, loop_round
from engine.drawing.handwork.marks import RING_MM, SIGN_MM, SIGNS
from engine.drawing.handwork.parts import BOLD, FINE, HEIGHT, THIN, WHITE, WIDTH, Clip, Frame, Stroke, clipped
from engine.drawing.handwork.threads import OLD, thread
from engine.drawing.handwork.tools import Hook
from tests.inked import (
    as_a_mirror_shows,
    bounds,
    boxes,
    corners,
    nearest,
    numbers,
    reach,
    ringed,
    shown,
    signs,
    unclipped,
)

OF_A_NUMBER = ("beaded-chain", "starting-ring", "wide-chain", "wide-ring", "counting", "closing-end")
STRIPS = {"bead-slip-stitch", "bead-single-crochet"}
SAME = {"reading-list"}
SAID_IN_THE_STEP = {"reading-list", "cutting-wire"}  # the entries of a list, and a measure


def test_there_is_a_drawing_for_every_turn_of_the_work() -> None:
    assert set(ALBUM) == {
        "threading",
        "strung-order",
        "reading-list",
        *(f"{name}-{around}" for name in OF_A_NUMBER for around in range(3, 10)),
        "bead-slip-stitch",
        "bead-single-crochet",
        "upright-and-flat",
        "how-beads-lie",
        "working-way",
        "marker",
        "new-thread",
        "hiding-tail",
        "ends-meet",
        "ring-join",
        "core",
        "cone",
        "button",
        "loop",
        "sliding-tie",
        "trying-ends",
        "gluing",
        "eye-pin",
        "cutting-wire",
        "cutting-wire-inch",
        "wrapped-loop",
        "jump-ring",
        "toggle",
        "break-bead",
        "missing-bead",
    }


@pytest.mark.parametrize("hand", ["right", "left"])
@pytest.mark.parametrize("name", ALBUM)
def test_all_ink_lies_inside_the_box_and_keeps_clear_of_its_border(name: str, hand: str) -> None:
    left, top, right, foot = reach(unclipped(parts(name, hand)))
    page = ALBUM[name]
    assert left >= 0.4 and right <= page.width - 0.4 and top >= 0.4 and foot <= page.height - 0.4
    for (x, y, width, height), _ in boxes(parts(name, hand)):
        assert x >= 0 and x + width <= page.width + 0.01 and y >= 0 and y + height <= page.height + 0.01


def test_only_the_strips_of_the_stitches_are_as_wide_as_the_text() -> None:
    assert {name for name in ALBUM if ALBUM[name].strip} == STRIPS
    assert {(ALBUM[name].width, ALBUM[name].height) for name in set(ALBUM) - STRIPS} == {(WIDTH, HEIGHT)}


@pytest.mark.parametrize("hand", ["right", "left"])
@pytest.mark.parametrize("name", ALBUM)
def test_nothing_of_a_frame_reaches_into_the_next(name: str, hand: str) -> None:
    for frame in (part for part in parts(name, hand) if isinstance(part, Frame) and part.left < part.right):
        left, top, right, foot = reach(unclipped(frame.parts))
        assert left >= frame.left + 0.3 and right <= frame.right - 0.3
        assert top >= frame.top + 0.3 and foot <= frame.foot - 0.3
        for (x, y, width, height), _ in boxes(frame.parts):
            assert x >= frame.left + 0.3 and x + width <= frame.right - 0.3 + 1e-9
            assert y >= frame.top + 0.3 and y + height <= frame.foot + 1e-9


@pytest.mark.parametrize("name", ALBUM)
def test_no_ink_is_spent_where_a_box_hides_it(name: str) -> None:
    for box, inner in boxes(parts(name)):
        right, foot = box[0] + box[2], box[1] + box[3]
        for each in (reach([stroke]) for stroke in strokes(inner)):
            assert each[0] < right and each[2] > box[0] and each[1] < foot and each[3] > box[1]


def test_a_box_keeps_what_is_seen_in_it_and_leaves_out_the_rest() -> None:
    inside, across, beyond, edge = (Stroke((("M", x, 5), ("L", x + 2, 5)), width=0.4) for x in (4, 9, 12, 10.1))
    sign = album.parts("cutting-wire")[0].parts[-1]
    made = clipped((0, 0, 10, 10), (inside, across, beyond, edge, Clip((8, 0, 9, 9), (across, beyond)), sign))
    assert made == Clip((0, 0, 10, 10), (inside, across, edge, Clip((8, 0, 9, 9), (across,)), sign))


@pytest.mark.parametrize("hand", ["right", "left"])
@pytest.mark.parametrize("name", ALBUM)
def test_a_number_in_a_ring_covers_nothing_and_nothing_covers_it(name: str, hand: str) -> None:
    ink = list(shown(parts(name, hand)))
    for i in ringed(ink):
        assert nearest(ink[i][0].at, (*ink[: i - 1], *ink[i + 1 :])) > RING_MM + 0.1


def test_numbers_stand_in_rings_where_they_stand_beside_their_things() -> None:
    assert {name for name in ALBUM if ringed(list(shown(parts(name))))} == {
        "strung-order",
        "upright-and-flat",
        "new-thread",
        *(f"{name}-{around}" for name in ("beaded-chain", "wide-chain") for around in range(3, 10)),
    }


@pytest.mark.parametrize("name", ALBUM)
def test_signs_are_of_one_size_and_lines_of_three_weights(name: str) -> None:
    for sign in signs(parts(name)):
        if sign.says and sign.says != "mm":
            _, top, _, foot = bounds([sign.stroke])
            small = sign.says in ("a", "c")  # letters that do not rise
            assert foot - top == pytest.approx(3.7 / 6 * SIGN_MM if small else SIGN_MM)
    weights = {stroke.width for stroke in strokes(parts(name)) if stroke.fill and stroke.line not in ("", WHITE)}
    assert weights <= {THIN, FINE, BOLD}


@pytest.mark.parametrize("name", ALBUM)
def test_panels_are_lettered_and_numbers_run_from_one_without_a_gap(name: str) -> None:
    panels = [sign.says for sign in signs(parts(name)) if sign.line == WHITE]
    assert panels == list("abcd"[: len(panels)])
    assert all(f"{panel}: " in ALBUM[name].words for panel in panels)
    if name not in SAID_IN_THE_STEP:
        found = set(numbers(parts(name)))
        assert found == {str(i + 1) for i in range(len(found))}


def test_every_number_is_explained_by_the_note_of_its_drawing() -> None:
    assert {name for name in ALBUM if numbers(parts(name))} == {
        name for name in ALBUM if ALBUM[name].note
    } - STRIPS | SAID_IN_THE_STEP
    assert {ALBUM[name].note for name in STRIPS} == {"Seen from inside, beads behind the work."}
    for name in set(ALBUM) - SAID_IN_THE_STEP - STRIPS:
        last = max(map(int, numbers(parts(name))), default=None)
        assert last is None or re.search(rf"\b{last}\b", ALBUM[name].note)


@pytest.mark.parametrize("around", range(3, 10))
def test_a_drawing_of_a_number_of_beads_shows_that_number_and_the_next(around: int) -> None:
    for name, last in (("starting-ring", around + 1), ("wide-ring", around), ("counting", around + 1)):
        assert set(numbers(parts(f"{name}-{around}"))) <= {str(i + 1) for i in range(last)}
        assert str(last) in numbers(parts(f"{name}-{around}"))
    assert str(around + 1) in numbers(parts(f"wide-chain-{around}"))


@pytest.mark.parametrize("name", ALBUM)
def test_a_drawing_fills_its_box_well(name: str) -> None:
    left, top, right, foot = bounds(unclipped(parts(name)))
    for (x, y, width, height), _ in boxes(parts(name)):
        left, top, right, foot = min(left, x), min(top, y), max(right, x + width), max(foot, y + height)
    assert right - left > 30 and foot - top > 26


@pytest.mark.parametrize("name", ALBUM)
def test_the_left_hand_sees_the_mirror_image(name: str) -> None:
    left = [corners(stroke) for stroke in strokes(parts(name, "left"))]
    wanted = (
        [corners(stroke) for stroke in strokes(parts(name))]
        if name in SAME
        else list(as_a_mirror_shows(parts(name), ALBUM[name].width))
    )
    assert len(left) == len(wanted)
    for one, other in zip(left, wanted, strict=True):
        assert [part for point in one for part in point] == pytest.approx([part for point in other for part in point])


def test_digits_and_ticks_read_alike_for_both_hands() -> None:
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


@pytest.mark.parametrize("name", ALBUM)
def test_the_operators_paint_every_stroke_and_leave_the_state_as_it_was(name: str) -> None:
    text = painted(name)
    assert text.split().count("q") == text.split().count("Q")
    assert len(re.findall(r" [BSf]$", text, re.MULTILINE)) == len(list(strokes(parts(name))))
    assert text == painted.__wrapped__(name)


def test_a_state_that_a_box_has_changed_is_said_again_behind_it() -> None:
    drawn = (
        Stroke((("M", 1, 1), ("L", 2, 2)), width=0.5),
        Clip((0, 0, 9, 9), (Stroke((("M", 1, 1), ("L", 2, 2)), width=0.9),)),
        Stroke((("M", 1, 1), ("L", 2, 2)), width=0.5),
    )
    lines = list(album._painted(drawn, {"cap": "1 J", "dash": "[] 0 d"}))
    assert [line for line in lines if line.endswith("S")] == [
        ".13 .14 .16 RG .5 w 1 1 m 2 2 l S",
        ".9 w 1 1 m 2 2 l S",
        "1 1 m 2 2 l S",
    ]


@pytest.mark.parametrize("around", HELIX)
def test_the_rope_of_a_drawing_is_the_rope_of_touching_spheres(around: int) -> None:
    assert HELIX[around] == tuple(round(value, 6) for value in helix(around))
    of = DrawnRope((0, 0), 0, around, 3.0)
    (x, y), near, _ = of.spot(5)
    (a, b), far, _ = of.spot(5 + around)
    assert abs(hypot(a - x, b - y, 3 * HELIX[around][0] * (far - near)) - 3.0) < 1e-4


def test_a_smooth_line_goes_through_its_points() -> None:
    points = [(0, 0), (4, 2), (5, 9), (1, 12)]
    assert [piece[0] for piece in bezier(points)] + [bezier(points)[-1][3]] == points
    assert smooth(points)[0] == ("M", 0, 0) and smooth(points)[-1][-2:] == (1, 12)
    assert along(points, 0.0)[0] == (0, 0) and along(points, 1.0)[0] == pytest.approx((1, 12), abs=0.05)


def test_a_crossing_is_broken_a_little_short_of_its_ends() -> None:
    ((start, *_, end),) = trimmed(bezier([(0, 0), (10, 0)]))
    assert 0 < start[0] < 2 and 8 < end[0] < 10


def test_a_loop_round_a_hook_lies_in_part_behind_it_and_in_part_before_it() -> None:
    hook = Hook((10.0, 10.0), 0, 2.0)
    loop = loop_round(hook, 4.0, (18.0, 22.0), 1.0)
    foot, *_, end = loop.route
    assert min(y for _, y in loop.route) < 9.0 and foot[0] > 18.0 > end[0]
    back, front = (reach(part)[:3:2] for part in (loop.behind, loop.before))
    assert back[1] > front[1] > back[0] > front[0]


def test_a_loop_goes_round_the_hook_from_whichever_side_its_foot_stands() -> None:
    below, above = (loop_round(Hook((10.0, 10.0), 0, 2.0), 4.0, (18.0, y), 1.0).route for y in (22.0, -2.0))
    assert [y for _, y in above] == pytest.approx([20.0 - y for _, y in below])


def test_thread_laid_over_a_hook_turns_over_its_back() -> None:
    laid = laid_over(Hook((10.0, 10.0), 0, 2.0), 2.0, [(20.0, 20.0)], [(8.0, 20.0)], 1.0, OLD)
    assert reach(laid.behind)[2] > 20.0 and reach(laid.before)[0] < 8.0
    assert min(y for _, y in laid.route) < 9.0


def test_lengths_painted_one_after_the_other_leave_no_seam() -> None:
    first, second = (thread([(0, 0), (10, 0), (20, 0)], *ends, width=1.0) for ends in ((0, 1), (1, 2)))
    edge, body = first
    assert reach([edge])[2] < reach([body])[2] and reach(second)[0] < 10 < reach(first)[2]


def test_every_sign_is_drawn_within_its_grid() -> None:
    for path in SIGNS.values():
        numbers = [float(number) for number in re.findall(r"[\d.]+", path)]
        assert max(numbers) <= 6 and set(path) <= set("MLCZ0123456789. ")
