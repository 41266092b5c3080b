"""Charts that were drawn on paper, read from a picture of them: where each bead stands, and of which colour it is."""
