"""The craft: lattice, list, bill, drawings and booklet of a bead crochet rope; no files, no clock, no web."""
