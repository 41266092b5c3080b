"""Where things are: our own folders, and the platform's folder for a person's data."""

from __future__ import annotations

from pathlib import Path

from platformdirs import user_data_path

ROOT = Path(__file__).resolve().parent.parent
TEMPLATES = ROOT / "templates"
MIGRATIONS = ROOT / "migrations"
STATIC = ROOT / "webapp" / "static"
DEMO = ROOT / "webapp" / "demo"
DEMO_PICTURES = DEMO / "pictures"


def default_data_folder() -> Path:
    """The platform's folder for the data of this program."""
    return user_data_path("ropewright", appauthor=False)
