"""The app as a whole: wiring, guard and errors."""
