"""The maker's own numbers are kept and used."""

from dataclasses import replace

import pytest

from engine.counting.closures import usual_allowances
from engine.counting.finished import named
from engine.counting.kinds import KINDS, Kind
from engine.counting.questions import NamedSize, Question
from engine.counting.rope import Swatch
from engine.counting.workshop import Workshop
from webapp.records import MakerSettings
from webapp.storage import patterns, workshop
from webapp.storage.errors import NotFound


def test_a_new_library_counts_with_the_built_in_numbers(database):
    assert workshop.workshop(database) == Workshop(dict(KINDS))
    assert workshop.settings(database) == MakerSettings()


def test_settings_are_kept_as_they_were_given(database):
    given = replace(
        MakerSettings(),
        maker="Lantern Street Beads",
        units="both",
        allowances={**usual_allowances(), "clasp": 22.5},
        spare=12.5,
    )
    workshop.save_settings(database, given)
    assert workshop.settings(database) == given
    assert workshop.workshop(database).allowances["clasp"] == 22.5


def test_swatches_are_kept_newest_first_and_removed(database):
    first = Swatch("11/0 round", 12, "single", 480, 66.0, "2026-03-01", "firm")
    second = replace(first, date="2026-04-01", beads=500)
    workshop.add_swatch(database, first)
    workshop.add_swatch(database, second)
    assert [kept.swatch for kept in workshop.swatches(database)] == [second, first]
    assert workshop.workshop(database).swatches == (second, first)
    workshop.remove_swatch(database, 2)
    assert [kept.swatch for kept in workshop.swatches(database)] == [first]
    with pytest.raises(NotFound, match="There is no such swatch"):
        workshop.remove_swatch(database, 2)


def test_a_kind_of_ones_own_stands_beside_the_built_in_ones(database):
    own = Kind("9/0 drop", 2.6, 2.0, 0.9, 60, 2.4)
    workshop.add_kind(database, own)
    assert workshop.kinds(database) == {**KINDS, "9/0 drop": own}
    assert workshop.own_kinds(database) == (own,)
    workshop.add_kind(database, replace(own, per_gram=61))
    assert workshop.kinds(database)["9/0 drop"].per_gram == 61
    workshop.remove_kind(database, "9/0 drop")
    assert workshop.kinds(database) == dict(KINDS)
    with pytest.raises(NotFound, match="There is no such bead kind"):
        workshop.remove_kind(database, "9/0 drop")


def test_sizes_of_ones_own_are_kept_and_picked_for_a_pattern(database, pattern):
    number = patterns.create(database, pattern).id
    assert workshop.workshop(database, number).sizes == named()
    own = (
        NamedSize("Own", "Anklet", Question(wrist_mm=230.0, ease_mm=0.0)),
        NamedSize("Own", "Stall", Question(420.0, "glued")),
    )
    for size in own:
        workshop.add_size(database, size)
    assert workshop.own_sizes(database) == own
    workshop.pick(database, number, ("stall", "opera", "stall"))
    assert workshop.picked(database, number) == ("stall", "opera")
    assert [size.name for size in workshop.workshop(database, number).sizes] == ["Stall", "Opera"]
    assert workshop.workshop(database).sizes == ()
    workshop.remove_size(database, "Stall")
    assert [size.name for size in workshop.workshop(database, number).sizes] == ["Opera"]
    with pytest.raises(NotFound, match="There is no such size"):
        workshop.remove_size(database, "Stall")


def test_the_longest_and_heaviest_string_are_the_workshops(database):
    workshop.save_settings(database, replace(MakerSettings(), longest_m=3.5, heaviest_g=40.0, greeting="Dear\nAda"))
    assert (workshop.workshop(database).longest_mm, workshop.workshop(database).heaviest_g) == (3500, 40)
    assert workshop.settings(database).greeting == "Dear\nAda"


def test_the_last_backup_is_remembered(database):
    assert workshop.last_backup(database) is None
    workshop.note_backup(database, database.now())
    noted = workshop.last_backup(database)
    assert noted is not None
    assert abs((database.now() - noted).total_seconds()) < 60
    assert workshop.settings(database) == MakerSettings()
