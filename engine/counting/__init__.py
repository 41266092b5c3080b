"""What is needed: kinds, rope, sizes, stringing list, materials and findings."""
