"""Rings as triangulated tori against the smallest one there is, and against a real closed pattern.

Sources: Wikipedia, "Császár polyhedron": 7 vertices, 21 edges, 14 triangles, the complete graph K7 on a torus;
S. Goldstine, http://faculty.smcm.edu/sgoldstine/torus/bracelet.html: a seven-colour bracelet of 672 = 7 × 96 beads.
"""

from itertools import combinations

from engine.pattern.lattice import neighbours
from engine.pattern.repeats import closes


def test_two_around_and_seven_beads_is_the_complete_graph_k7():
    near = {k: neighbours(2, k, 7) for k in range(7)}
    assert near == {k: tuple(other for other in range(7) if other != k) for k in range(7)}


def test_the_smallest_ring_has_the_counts_of_the_csaszar_polyhedron():
    edges = {frozenset((k, other)) for k in range(7) for other in neighbours(2, k, 7)}
    faces = {frozenset((k % 7, (k + step) % 7, (k + 3) % 7)) for k in range(7) for step in (1, 2)}
    assert (7, len(edges), len(faces), 7 - len(edges) + len(faces)) == (7, 21, 14, 0)
    assert {frozenset(side) for face in faces for side in combinations(face, 2)} == edges


def test_a_ring_of_672_beads_closes_on_repeats_of_96():
    assert closes(6, 96, 672)
    assert not closes(6, 96, 700)
