"""Where a sheet lies in a picture: in perspective, held against Pillow, and bent by further points."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from engine.errors import EngineError
from engine.pattern.old_charts.paper import CORNERS, Paper, perspective, projected, squared

SHARES = st.floats(0, 1)
SQUINT = ((0.12, 0.2), (0.9, 0.05), (0.8, 0.95), (0.1, 0.7))


def test_corners_lie_where_they_were_marked():
    assert np.allclose(Paper(SQUINT).places(np.array(CORNERS)), SQUINT)


def test_perspective_is_that_of_pillow():
    """Reference: Pillow's Image.transform with PERSPECTIVE, which takes each pixel of the new picture from the old."""
    old = np.random.default_rng(2).integers(0, 256, (90, 120), dtype=np.uint8)
    to_old = perspective([(0, 0), (60, 0), (60, 80), (0, 80)], [(10, 12), (110, 4), (100, 86), (15, 70)])
    seen = np.asarray(
        Image.fromarray(old).transform(
            (60, 80), Image.Transform.PERSPECTIVE, to_old.ravel()[:8], Image.Resampling.NEAREST
        )
    )
    y, x = np.mgrid[0:80, 0:60] + 0.5
    places = projected(to_old, np.stack([x.ravel(), y.ravel()], axis=1))
    column, row = np.floor(places).astype(int).T
    ours = old[row, column].reshape(80, 60)
    off = np.abs(places - np.round(places)).min(axis=1).reshape(80, 60) < 1e-6  # on the edge of two pixels
    assert ((ours == seen) | off).all()


@given(SHARES, SHARES, SHARES, SHARES)
def test_straight_lines_stay_straight_in_perspective(x, y, u, v):
    ends = np.array([(x, y), (u, v)])
    line = Paper(SQUINT).places(np.array([ends[0], ends.mean(axis=0), ends[1]]))
    (ax, ay), (bx, by), (cx, cy) = line.tolist()
    assert abs((bx - ax) * (cy - ay) - (by - ay) * (cx - ax)) < 1e-9


def test_bent_paper_goes_through_every_point_that_was_pulled_and_its_corners():
    pulled = [((0.5, 0.0), (0.5, 0.2)), ((0.5, 0.5), (0.45, 0.5)), ((0.0, 0.5), (0.08, 0.44))]
    paper = Paper(SQUINT, pulled)
    assert np.allclose(paper.places(np.array([sheet for sheet, _ in pulled])), [place for _, place in pulled])
    assert np.allclose(paper.places(np.array(CORNERS)), SQUINT)


def test_a_pull_to_where_a_point_lies_anyhow_bends_nothing():
    middle = np.array([(0.5, 0.5)])
    here = tuple(Paper(SQUINT).places(middle)[0].tolist())
    some = np.random.default_rng(1).random((20, 2))
    assert np.allclose(Paper(SQUINT, [((0.5, 0.5), here)]).places(some), Paper(SQUINT).places(some))


@pytest.mark.parametrize(
    "corners",
    [
        ((0.1, 0.1), (0.1, 0.1), (0.9, 0.9), (0.1, 0.9)),
        ((0.1, 0.1), (0.9, 0.9), (0.9, 0.1), (0.1, 0.9)),
        ((0.1, 0.1), (0.5, 0.1), (0.9, 0.1), (0.1, 0.9)),
    ],
)
def test_corners_that_go_round_nothing_are_refused(corners):
    with pytest.raises(EngineError, match="The four corners do not go round a chart; put each on its own corner"):
        Paper(corners)


def test_two_opposite_corners_and_a_row_give_a_box_whichever_way_the_row_goes() -> None:
    """A box 30 by 10 that is turned by a right angle's share: its other corners, from the upper left as a clock goes."""
    assert squared((0, 0), (30, 10), (5, 0)) == ((30, 0), (0, 10))
    assert squared((0, 0), (30, 10), (0, 5)) == ((30, 0), (0, 10))
    (x2, y2), (x4, y4) = squared((0, 0), (20, 50), (4, 2))
    assert np.allclose((x2, y2, x4, y4), (36, 18, -16, 32))
    with pytest.raises(EngineError, match="lie on one another"):
        squared((0, 0), (30, 10), (0, 0))
