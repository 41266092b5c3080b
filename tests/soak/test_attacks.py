"""A short share of `python3 -m tests soak`; kills have their own tests in tests/server."""

import logging
from random import Random

import pytest

from tests.soak.attacks import break_a_photograph, break_a_zip, fail_on_disk, turn_the_clock
from tests.soak.run import ATTACKS, main


@pytest.mark.parametrize("attack", [fail_on_disk, turn_the_clock, break_a_zip, break_a_photograph])
def test_a_round_of_each_attack_finds_nothing(tmp_path, attack):
    outcome = attack(tmp_path, Random(14))
    assert outcome.wrong == ()
    assert outcome.tried > 10


@pytest.fixture
def logging_as_before():
    """An attack switches logging off for good; the tests after it want it."""
    before = logging.root.manager.disable
    yield
    logging.disable(before)


@pytest.mark.usefixtures("logging_as_before")
def test_one_table_says_what_was_tried(capsys):
    assert main(["0", "photographs", "clocks"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert [line[:20].strip() for line in lines] == ["attack", "clocks", "photographs"]
    assert main(["0", "nothing"]) == 2
    usage = capsys.readouterr().out
    assert all(name in usage for name in ATTACKS)
