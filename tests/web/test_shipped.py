"""Pictures that come with the app: the first pages of a new library find all of theirs."""

from __future__ import annotations

from tests.conftest import client_of
from tests.shipped import PAGES, drawn_for
from webapp.demo import examples
from webapp.paths import DEMO_PICTURES
from webapp.server.app import create_app


def test_no_picture_of_the_first_pages_has_to_be_drawn(settings, portal, prints_here):
    """Where this fails, the studio, an example or a page has changed: python3 -m tests pictures draws them again."""
    with client_of(create_app(settings, examples()), portal) as client:
        assert drawn_for(PAGES, client) == len(list(DEMO_PICTURES.iterdir()))
    assert not settings.cache.exists()


def test_they_weigh_little():
    assert sum(file.stat().st_size for file in DEMO_PICTURES.iterdir()) < 1_200_000
