"""What is shipped, with version and licence, as a table: python3 -m tests licences."""

from __future__ import annotations

import re
from importlib.metadata import PackageNotFoundError, distribution
from typing import NamedTuple

from webapp.paths import ROOT, STATIC

LOCKED = re.compile(r"^([A-Za-z0-9._-]+)==([^ ;\\]+)")
BESIDE = (
    ("htmx", STATIC / "vendor", "0BSD"),
    ("Atkinson Hyperlegible Next", STATIC / "fonts", "OFL-1.1"),
    ("Source Serif 4", STATIC / "fonts", "OFL-1.1"),
)
CLASSIFIER = "License :: OSI Approved :: "
LONGEST = 60


class Shipped(NamedTuple):
    """A package or a file of somebody else's."""

    name: str
    version: str
    licence: str


def shipped() -> list[Shipped]:
    """The packages that the program runs with, as they are locked, and what lies beside our own files."""
    lines = (ROOT / "webapp" / "lock.txt").read_text(encoding="utf-8").splitlines()
    locked = [found.groups() for line in lines if (found := LOCKED.match(line))]
    packages = [Shipped(name, version, licence_of(name)) for name, version in locked]
    return packages + [Shipped(name, "as published", licence) for name, _, licence in BESIDE]


def licence_of(name: str) -> str:
    """What a package says of its licence, in short; of one for another system nothing is known here."""
    try:
        metadata = distribution(name).metadata
    except PackageNotFoundError:
        return "not installed on this system"
    said = [text.removeprefix(CLASSIFIER) for text in metadata.get_all("Classifier", []) if text.startswith(CLASSIFIER)]
    words = metadata.get("License-Expression") or ", ".join(said) or (metadata.get("License") or "").splitlines()[0]
    return words[:LONGEST]


def main() -> int:
    """Prints the table; hashes were checked when the packages were set up (pip --require-hashes)."""
    for entry in shipped():
        print(f"{entry.name:28} {entry.version:14} {entry.licence}")
    return 0
