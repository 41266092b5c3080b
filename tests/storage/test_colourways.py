"""Colourways as they are kept: named, removed and taken back, and along with new codes."""

from dataclasses import replace

import pytest

from engine.cabinet.colourways import MOST_COLOURWAYS, Colourway
from engine.errors import EngineError
from engine.pattern.palette import Palette
from webapp.storage import colourways, patterns
from webapp.storage.errors import NotFound, StorageError


@pytest.fixture
def number(database, pattern):
    return patterns.create(database, pattern).id


def named(pattern, name, colour="#4a4466"):
    return Colourway(name, Palette(tuple(replace(entry, colour=colour) for entry in pattern.palette)))


def test_colourways_stand_in_the_order_in_which_they_were_made(database, pattern, number):
    for name in ("Dusk", "Dawn"):
        colourways.add(database, number, named(pattern, name))
    assert [kept.colourway for kept in colourways.of(database, number)] == [
        named(pattern, "Dusk"),
        named(pattern, "Dawn"),
    ]


def test_a_name_stands_once(database, pattern, number):
    first = colourways.add(database, number, named(pattern, "Dusk"))
    with pytest.raises(EngineError, match="There is a colourway “dusk” already"):
        colourways.add(database, number, named(pattern, "dusk"))
    colourways.save(database, number, first, named(pattern, "dusk", "#101010"))
    assert colourways.load(database, number, first).colourway == named(pattern, "dusk", "#101010")


def test_a_removed_colourway_can_be_taken_back_until_the_next_is_removed(database, pattern, number):
    first, second = (colourways.add(database, number, named(pattern, name)) for name in ("Dusk", "Dawn"))
    colourways.remove(database, number, first)
    assert [kept.id for kept in colourways.of(database, number)] == [second]
    colourways.take_back(database, number, first)
    assert [kept.id for kept in colourways.of(database, number)] == [first, second]
    colourways.remove(database, number, first)
    colourways.remove(database, number, second)
    with pytest.raises(NotFound):
        colourways.take_back(database, number, first)


def test_a_colourway_is_not_taken_back_beside_one_of_its_name(database, pattern, number):
    first = colourways.add(database, number, named(pattern, "Dusk"))
    colourways.remove(database, number, first)
    colourways.add(database, number, named(pattern, "Dusk"))
    with pytest.raises(EngineError, match="There is a colourway “Dusk” already"):
        colourways.take_back(database, number, first)


def test_a_pattern_has_only_so_many(database, pattern, number):
    for place in range(MOST_COLOURWAYS):
        colourways.add(database, number, named(pattern, f"Way {place}"))
    with pytest.raises(StorageError, match="A pattern has at most 40 colourways; nothing was added"):
        colourways.add(database, number, named(pattern, "One more"))


def test_a_colourway_belongs_to_its_pattern_alone(database, pattern, number):
    mine = colourways.add(database, number, named(pattern, "Dusk"))
    other = patterns.create(database, pattern).id
    with pytest.raises(NotFound, match="There is no such colourway of this pattern"):
        colourways.load(database, other, mine)


def test_new_codes_are_a_revision_and_colourways_go_along(database, pattern, number):
    way = colourways.add(database, number, named(pattern, "Dusk"))
    before = patterns.load(database, number)
    turned = Palette(
        tuple(
            replace(entry, code=code)
            for entry, code in zip(pattern.palette, reversed(pattern.palette.codes), strict=True)
        )
    )
    colourways.recode(database, number, turned, before.sequence)
    after = patterns.load(database, number)
    assert (after.pattern.palette, after.pattern.chart) == (turned, pattern.chart)
    assert (after.revision, after.working) == (before.revision + 1, False)
    assert colourways.load(database, number, way).colourway.palette.codes == turned.codes


def test_new_codes_for_an_older_state_are_refused(database, pattern, number):
    with pytest.raises(StorageError, match="The pattern has been changed since"):
        colourways.recode(database, number, pattern.palette, 7)
