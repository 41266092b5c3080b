"""Everything that is shipped says its version and its licence."""

import re

from tests.licences import BESIDE, shipped
from webapp.paths import ROOT


def test_everything_that_is_shipped_has_a_version_and_a_licence():
    entries = shipped()
    locked = re.findall(r"^([\w.-]+)==", (ROOT / "webapp" / "lock.txt").read_text(encoding="utf-8"), re.MULTILINE)
    assert [entry.name for entry in entries[: len(locked)]] == locked
    assert [entry for entry in entries if not (entry.version and entry.licence)] == []
    assert all(place.is_dir() for _, place, _ in BESIDE)


def test_every_package_of_the_lock_is_held_by_hashes():
    lock = (ROOT / "webapp" / "lock.txt").read_text(encoding="utf-8")
    entries = re.split(r"^(?=[A-Za-z0-9])", lock, flags=re.MULTILINE)
    assert [entry.splitlines()[0] for entry in entries if "==" in entry and "--hash=sha256:" not in entry] == []
