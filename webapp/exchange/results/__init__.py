"""Answers of the API as JSON, and their description."""
