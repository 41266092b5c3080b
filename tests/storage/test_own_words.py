"""The maker's own words stand with their pattern."""

import pytest

from engine.booklet.own import OwnWords
from webapp.storage import own_words, patterns
from webapp.storage.errors import NotFound

WORDS = OwnWords((("introduction", "By the sea."), ("tips", "Wax it.")))


def test_words_are_kept_and_others_take_their_place(database, pattern):
    number = patterns.create(database, pattern).id
    assert own_words.load(database, number) == OwnWords()
    own_words.save(database, number, WORDS)
    assert own_words.load(database, number) == WORDS
    own_words.save(database, number, OwnWords((("care", "Keep it dry."),)))
    assert own_words.load(database, number).texts == (("care", "Keep it dry."),)


def test_words_of_a_pattern_that_there_is_not_are_refused(database):
    with pytest.raises(NotFound):
        own_words.save(database, 7, WORDS)
