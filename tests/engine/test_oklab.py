"""OKLab, held against the authority for colours."""

import numpy as np
import pytest
from coloraide import Color
from hypothesis import given
from hypothesis import strategies as st

from engine.pattern.colour import linear_rgb
from engine.pattern.photographs.oklab import linear_of_oklab, oklab_of

colours = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")


@given(colours)
def test_it_agrees_with_the_authority(colour):
    assert oklab_of(linear_rgb([colour]))[0] == pytest.approx(Color(colour).convert("oklab")[:3], abs=1e-5)


@given(st.lists(colours, min_size=1, max_size=5))
def test_there_and_back_is_the_same_colour(of):
    assert np.allclose(linear_of_oklab(oklab_of(linear_rgb(of))), linear_rgb(of), atol=1e-7)
