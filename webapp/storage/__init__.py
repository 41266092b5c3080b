"""The library: one SQLite file, known to this package alone."""
