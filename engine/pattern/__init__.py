"""What is drawn: chart, palette, notation, lattice and repeats."""
