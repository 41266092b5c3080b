"""The guides of a booklet: numbered steps that fit the piece, each with the drawing that shows it."""
