"""Chapters that are counted out before they are set: opening, needs, how to read, sizes."""
