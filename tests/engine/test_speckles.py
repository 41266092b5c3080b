"""Single beads are taken over by what stands round them."""

from hypothesis import given
from hypothesis import strategies as st

from engine.pattern.lattice import neighbours
from engine.pattern.photographs.speckles import without_speckles
from tests.pictures import assert_same_chart, chart

charts = st.lists(st.integers(0, 3), min_size=1, max_size=200).map(bytes)


def test_a_single_bead_goes_and_two_that_touch_stay():
    drawn = chart(
        """
         A A A A A A
        A A A B B A A
         A A A A A A
        A C A A A A A
        """,
        6,
    )
    assert_same_chart(
        6,
        without_speckles(6, drawn),
        """
     A A A A A A
    A A A B B A A
     A A A A A A
    A A A A A A A
""",
    )


@given(st.integers(3, 12), charts)
def test_once_more_changes_nothing(around, beads):
    calm = without_speckles(around, beads)
    assert without_speckles(around, calm) == calm
    assert len(calm) == len(beads) and set(calm) <= set(beads)


@given(st.integers(3, 12), charts)
def test_afterwards_every_bead_touches_one_of_its_colour_and_those_that_did_are_as_they_were(around, beads):
    def alone(of, k):
        near = [of[other] for other in neighbours(around, k, len(of))]
        return bool(near) and of[k] not in near

    calm = without_speckles(around, beads)
    assert [k for k in range(len(calm)) if alone(calm, k)] == []
    assert [k for k in range(len(beads)) if calm[k] != beads[k] and not alone(beads, k)] == []
