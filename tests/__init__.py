"""The tests, in rooms named after those of the source."""
