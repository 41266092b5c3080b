"""What another colour of a bead has to be, so that it stands apart from all others of its palette to all eyes."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.pattern.colour import difference, look_alikes
from engine.pattern.colour_changes import in_words, nearest_change
from engine.pattern.palette import Entry, Palette

colours = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")


def palette(*of):
    return Palette(tuple(Entry(code, f"Bead {code}", colour) for code, colour in zip("ABCDEFGH", of, strict=False)))


def changed(beads, change):
    entries = list(beads)
    return palette(*(change.colour if place == change.entry else entry.colour for place, entry in enumerate(entries)))


@settings(max_examples=40)
@given(st.lists(colours, min_size=1, max_size=5), st.integers(-6, 6), st.data())
def test_a_changed_bead_looks_like_no_other_any_more(of, step, data):
    twin = data.draw(st.sampled_from(of))
    near = f"#{min(255, max(0, int(twin[1:3], 16) + step)):02x}{twin[3:]}"
    beads = palette(*of, near)
    pairs = look_alikes(beads)
    change = nearest_change(beads, pairs[0])
    assert change is not None
    after = look_alikes(changed(beads, change))
    assert not any(change.entry in (pair.first, pair.second) for pair in after)


@pytest.mark.parametrize(
    ("of", "entry", "words"),
    [
        (("#1d3350", "#203755", "#f2e8d5"), 0, "darker"),
        (("#ffffff", "#fdfdfd"), 1, "darker"),
        (("#000000", "#050505"), 1, "lighter"),
        (("#26970c", "#516dd3"), 0, "greyer"),
    ],
)
def test_the_smaller_change_of_the_two_is_named(of, entry, words):
    beads = palette(*of)
    change = nearest_change(beads, look_alikes(beads)[0])
    assert (change.entry, change.words) == (entry, words)
    assert difference(of[entry], change.colour) < 15


def test_a_change_is_said_by_lightness_and_chroma():
    assert in_words("#808080", "#404040") == "darker"
    assert in_words("#804040", "#ff4040") == "lighter and stronger"
    assert in_words("#804040", "#805050") == "lighter and greyer"
    assert in_words("#804040", "#814041") == "of another shade"


def test_where_no_colour_is_left_none_is_named():
    greys = [f"#{value:02x}{value:02x}{value:02x}" for value in range(0, 256, 4)]
    beads = Palette(
        tuple(
            Entry(a + b, f"Grey {a}{b}", greys[8 * i + j])
            for i, a in enumerate("ABCDEFGH")
            for j, b in enumerate("ABCDEFGH")
        )
    )
    assert nearest_change(beads, look_alikes(beads)[0]) is None
