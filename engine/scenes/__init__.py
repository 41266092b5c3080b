"""Scenes for a shop: what stands in a picture, where the camera is, and what the picture shows in words."""
