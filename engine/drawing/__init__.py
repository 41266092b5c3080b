"""What is seen: symbols, charts as shapes, SVG, and the shaded pictures of the studio."""
