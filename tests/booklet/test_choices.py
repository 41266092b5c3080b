"""What may be chosen before printing, and the sentence for everything else."""

from __future__ import annotations

import pickle

import pytest

from engine.booklet.choices import Choices
from engine.booklet.papers import FORMATS, PAPERS, paper
from engine.counting.questions import Question
from engine.errors import ChoiceError


def test_nothing_chosen_is_a_standard_booklet_of_one_pass_on_a4() -> None:
    choices = Choices()
    assert (choices.paper, choices.format, choices.terms, choices.plan) == ("A4", "standard", "us", "balanced")
    assert choices.question == Question()


def test_every_paper_has_its_measures() -> None:
    assert [paper(name).name for name in PAPERS] == list(PAPERS)


@pytest.mark.parametrize(
    ("field", "given"),
    [
        ("paper", "A9"),
        ("format", "deluxe"),
        ("terms", "au"),
        ("units", "furlongs"),
        ("date", "yesterday"),
        ("date", "2026-13-01"),
    ],
)
def test_a_word_that_is_not_known_is_refused_at_its_field(field: str, given: str) -> None:
    with pytest.raises(ChoiceError) as refused:
        Choices(**{field: given})
    assert refused.value.field == {"format": "edition"}.get(field, field)
    assert given in refused.value.message


def test_large_print_needs_large_paper() -> None:
    with pytest.raises(ChoiceError) as refused:
        Choices(paper="A5", format="large-print")
    assert refused.value.message == "Paper: “A5” is not known here; expected one of A4, Letter."


@pytest.mark.parametrize(
    ("choices", "hand", "name"),
    [
        (Choices(), "right", "Standard, A4"),
        (Choices(paper="A5"), "left", "Standard, A5, left-handed"),
        (Choices(paper="Letter", format="large-print"), "right", "Large print, Letter"),
        (Choices(ink_saving=True), "right", "Standard, A4, ink-saving"),
        (Choices(picture="picture kept"), "left", "Standard, A4, left-handed, picture kept"),
        (Choices(terms="uk", units="in"), "right", "Standard, A4, UK terms, inches"),
    ],
)
def test_a_booklet_has_a_name_of_its_own_among_those_of_a_pattern(choices: Choices, hand: str, name: str) -> None:
    assert choices.named(hand) == name


def test_choices_travel_to_another_process() -> None:
    choices = Choices(Question(450, "clasp"), 4.0, PAPERS[1], FORMATS[0], "uk", date="2026-02-28", revision=3)
    assert pickle.loads(pickle.dumps(choices)) == choices
