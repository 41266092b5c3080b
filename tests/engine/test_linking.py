"""Which bead of the cabinet an entry points at, differs from, or could point at."""

from dataclasses import replace

from engine.cabinet.bead import Bead
from engine.cabinet.linking import as_in_cabinet, differing, linked
from engine.pattern.palette import Entry, Palette

SEA = Bead("Sea glass", "#2f7f76", finish="matte", maker_code="LS-4", key="sea")
LAMP = Bead("Lamp", "#d9932b", key="lamp")
CABINET = {"sea": SEA, "lamp": LAMP}
BEADS = (SEA, LAMP)


def test_an_entry_differs_from_its_bead_in_what_it_says_of_its_own():
    assert differing(replace(SEA.entry("A"), name="Bay", colour="#30807a"), SEA) == ("name", "colour")
    assert differing(SEA.entry("A", "dot"), SEA) == ()


def test_entries_say_again_what_their_beads_do():
    palette = Palette((replace(SEA.entry("A", "dot"), name="Bay"), Entry("B", "Alone", "#000000", bead="gone")))
    assert as_in_cabinet(palette, CABINET) == Palette((SEA.entry("A", "dot"), palette[1]))


def test_an_entry_of_the_same_colour_and_kind_points_at_the_bead_and_keeps_its_words():
    palette = Palette((Entry("A", "Mine", "#30807a"), Entry("B", "Far", "#101010")))
    assert linked(palette, BEADS, CABINET) == Palette((replace(palette[0], bead="sea"), palette[1]))


def test_another_kind_is_another_bead_and_none_is_taken_twice():
    palette = Palette(
        (
            Entry("A", "Large", "#2f7f76", kind="8/0 round"),
            Entry("B", "One", "#2f7f76"),
            Entry("C", "Two", "#2f7f76"),
        )
    )
    assert [entry.bead for entry in linked(palette, BEADS, CABINET)] == ["", "sea", ""]
    pointing = Palette((replace(palette[1], bead="sea"), palette[2]))
    assert linked(pointing, BEADS, CABINET) == pointing


def test_of_several_as_near_finish_and_then_name_decide():
    twins = (replace(SEA, finish="opaque", key="shiny"), replace(SEA, name="Bay", key="bay"), SEA)
    entry = Entry("A", "Sea glass", "#2f7f76", "matte")
    assert linked(Palette((entry,)), twins, CABINET)[0].bead == "sea"


def test_a_key_of_another_library_is_replaced():
    palette = Palette((Entry("A", "Sea", "#2f7f76", bead="elsewhere"),))
    assert linked(palette, BEADS, CABINET)[0].bead == "sea"
