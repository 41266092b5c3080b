"""Scenes for a listing: each is staged for every rope, in the scale of the engine, and says in words what it shows."""

from dataclasses import replace

import numpy as np
import pytest

from engine.cabinet.colourways import Colourway
from engine.counting.questions import Question
from engine.counting.rope import Swatch
from engine.counting.workshop import Workshop
from engine.drawing.laying import ROW
from engine.drawing.shapes import Line, Text
from engine.errors import ChoiceError, SizeError
from engine.pattern.palette import Entry, Palette
from engine.pattern.part import Part
from engine.pattern.pattern import Pattern
from engine.scenes.all import SCENES, scene_named
from engine.scenes.lying import MOST_IN_A_ROW
from engine.scenes.scene import TO_SCALE, Subject, in_one_line, mm_a_bead
from engine.scenes.settings import GROUNDS, SHAPES, setting
from engine.scenes.turning import FRAMES, turned_frame, turning_seen
from engine.scenes.worn import NECKLACES, SIZES

PALETTE = Palette((Entry("A", "Teal", "#2f7f76", "matte"), Entry("B", "Chalk", "#f2ede0", "pearl")))
WAVES = Pattern("Waves", 8, PALETTE, bytes([0, 0, 1, 1, 0]))
DUSK = Colourway("Dusk", Palette((Entry("A", "Plum", "#5b2a4c"), Entry("B", "Ivory", "#f2e8d5"))))
SUBJECT = Subject(WAVES, colourways=(DUSK,))
SMALL = setting(width=160)


def told(drawing) -> str:
    return " ".join(shape.text for shape in drawing.shapes if isinstance(shape, Text))


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("around", [3, 60])
def test_every_scene_has_its_rope_in_the_picture_however_thin_or_thick_and_whatever_the_proportion(shape, around):
    subject = replace(SUBJECT, pattern=replace(WAVES, around=around))
    small = setting(shape, width=160)
    for scene in SCENES.values():
        staged = scene.stage(subject, small)
        seen = staged.camera.project(staged.rope.centre)
        inside = (seen.x > 0) & (seen.x < small.width) & (seen.y > 0) & (seen.y < small.height)
        assert (scene.key, bool(inside.any())) == (scene.key, True)
        assert np.isfinite(staged.rope.centre).all()
        assert staged.rope.colours.max() < len(staged.entries)


@pytest.mark.parametrize("key", SCENES)
def test_every_scene_says_what_it_shows_with_the_names_of_the_beads(key):
    seen = SCENES[key].seen(SUBJECT)
    assert seen.endswith(".") and "8 around" in seen
    assert ("Dusk" if key == "colourways" else "in Teal and Chalk") in seen


def test_colours_that_no_bead_has_are_not_named():
    spare = Palette((*PALETTE, Entry("C", "Spare", "#990000")))
    assert Subject(replace(WAVES, palette=spare)).colours == "Teal and Chalk"


def test_a_long_list_of_colours_says_how_many_more_there_are():
    assert in_one_line(list("ABCDEFGH")) == "A, B, C, D, E and 3 more"
    assert in_one_line(["A"]) == "A"


@pytest.mark.parametrize("key", [key for key in SCENES if key.startswith("worn") or key == "ruler"])
def test_what_is_drawn_to_scale_says_in_the_picture_that_it_is_no_photograph(key):
    staged = SCENES[key].stage(SUBJECT, SMALL)
    assert TO_SCALE in told(staged.over)
    assert TO_SCALE[1:] in SCENES[key].seen(SUBJECT)


def test_a_rope_beside_the_ruler_is_as_long_on_it_as_its_passes_are():
    swatch = Swatch("11/0 round", 8, "slip", 480, 60.0)
    subject = Subject(WAVES, Workshop(swatches=(swatch,)))
    staged = scene_named("ruler").stage(subject, setting(width=1000))
    ticks = [shape.start[0] for shape in staged.under.shapes if isinstance(shape, Line)]
    px = ticks[1] - ticks[0]  # a millimetre
    seen = staged.camera.project(staged.rope.centre)
    shown = subject.size(Question(length_mm=len(staged.rope.centre) * swatch.length_mm / swatch.beads))
    assert (seen.x.max() - seen.x.min()) / px == pytest.approx(shown.rope_mm, abs=0.3)
    assert seen.x.min() == pytest.approx(ticks[0], abs=0.2 * px)
    assert "The maker’s swatch" in told(staged.over)


def test_ends_are_as_large_as_the_rope_that_a_swatch_measured():
    """A rope of larger beads has a jump ring that is smaller beside them."""
    rings = [
        scene_named("cap").stage(Subject(WAVES, Workshop(swatches=(swatch,))), SMALL).fittings[-1].radius
        for swatch in (Swatch("11/0 round", 8, "slip", 480, 60.0), Swatch("11/0 round", 8, "slip", 480, 120.0))
    ]
    assert rings[0] == pytest.approx(2 * rings[1])


def test_a_longer_necklace_hangs_lower_and_the_collar_goes_round_the_neck():
    lowest = []
    for key in NECKLACES:
        staged = SCENES[f"worn-{key}"].stage(SUBJECT, SMALL)
        mm = mm_a_bead(SUBJECT.size(SIZES[key].question))
        lowest.append(float(staged.rope.centre[:, 1].min()) * mm)
    assert lowest == sorted(lowest, reverse=True)
    assert lowest[0] > 0 > lowest[2]


@pytest.mark.parametrize("key", NECKLACES[1:])
def test_what_hangs_in_front_is_the_length_that_is_not_behind_the_neck(key):
    size = SUBJECT.size(SIZES[key].question)
    staged = SCENES[f"worn-{key}"].stage(SUBJECT, SMALL)
    long = len(staged.rope.centre) * size.rope.bead_mm
    girth = size.finished_mm + (np.pi * size.thickness_mm if size.question.girth_mm else 0)
    assert 0.35 * girth < long < girth - 150
    steps = np.diff(staged.rope.thread, axis=0)
    walked = float(np.linalg.norm(steps, axis=1).sum()) * mm_a_bead(size)
    assert walked == pytest.approx(long, abs=2.5 * ROW)


def test_colourways_lie_one_under_another_up_to_six_and_without_any_that_is_said():
    many = tuple(replace(DUSK, name=f"Way {number}") for number in range(8))
    scene = scene_named("colourways")
    staged = scene.stage(Subject(WAVES, colourways=many), SMALL)
    assert len(staged.entries) == 2 * MOST_IN_A_ROW
    assert scene.seen(Subject(WAVES, colourways=many)).endswith("Way 3 and Way 4.")
    assert scene.lacks(Subject(WAVES)) == "This picture needs a colourway; the pattern has none yet."
    assert scene.lacks(SUBJECT) == ""


def test_a_rope_of_one_size_is_not_shown_in_another():
    head = Pattern("Snake", 8, PALETTE, in_parts=(Part("Head", bytes([0, 1] * 40), 1),))
    with pytest.raises(SizeError, match="one size"):
        scene_named("worn-opera").stage(Subject(head), SMALL)
    assert len(scene_named("ruler").stage(Subject(head), SMALL).rope.centre) == 80


def test_a_motif_hangs_in_the_middle_of_a_worn_necklace():
    rope, star = Part("Rope", bytes([0] * 9), None), Part("Star", bytes([1] * 40), 1)
    pattern = Pattern("Star", 8, PALETTE, in_parts=(rope, star, rope))
    staged = scene_named("worn-princess").stage(Subject(pattern), SMALL)
    where = np.flatnonzero(staged.rope.colours == 1)
    assert len(where) == 40 and abs(where.mean() - len(staged.rope.colours) / 2) < 9


@pytest.mark.parametrize(("choice", "field"), [({"shape": "oval"}, "shape"), ({"ground": "sand"}, "ground")])
def test_a_setting_that_there_is_not_is_refused_by_name(choice, field):
    with pytest.raises(ChoiceError) as refused:
        setting(**choice)
    assert refused.value.field == field
    with pytest.raises(ChoiceError, match="expected one of close-up, table"):
        scene_named("moon")


def test_the_turning_rope_ends_where_it_began_and_moves_between():
    ground = GROUNDS["paper"]
    first, half, again = (turned_frame(SUBJECT, ground, number, 80) for number in (0, FRAMES // 2, FRAMES))
    assert np.abs(first.astype(int) - again).mean() < 0.01 < np.abs(first.astype(int) - half).mean()
    assert turning_seen(SUBJECT).startswith("A bead crochet rope, 8 around, in Teal and Chalk, turning")
