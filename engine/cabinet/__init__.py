"""What one has: beads, colourways made of them, what they cost, and what can be made of them."""
