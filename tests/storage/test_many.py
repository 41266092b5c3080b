"""Search, bin and history of a library of hundreds of generated patterns give exactly what is there.

The bench asks the same of ten thousand.
"""

from dataclasses import replace

import pytest

from tests.bench.charts import many, titles_with
from tests.bench.library import fill
from webapp.records import Wanted
from webapp.storage import bulk, finding, history, patterns, revisions
from webapp.storage.library import open_library

TOTAL = 480


@pytest.fixture(scope="module")
def library(tmp_path_factory):
    folder = tmp_path_factory.mktemp("large")
    fill(folder, TOTAL)
    database = open_library(folder)
    yield database
    database.close()


@pytest.fixture(scope="module")
def made():
    return many(TOTAL)


def titles(found):
    return [one.title for one in found.patterns]


@pytest.mark.parametrize(
    ("search", "words"),
    [("harbour ferry", ("harbour", "ferry")), ("quar 71", ("quar", "71")), ("LANTERN", ("lantern",))],
)
def test_a_search_finds_every_pattern_whose_words_begin_so_and_no_other(library, made, search, words):
    wanted = titles_with(made, words)
    assert wanted
    found = finding.find(library, search, per_page=TOTAL)
    assert found.total == len(wanted) and set(titles(found)) == wanted


def test_filters_together_find_what_a_look_at_every_pattern_finds(library, made):
    found = finding.find(library, Wanted("meadow", tag="series 7", around=12), per_page=TOTAL)
    wanted = {
        pattern.title
        for pattern in made
        if "meadow" in f"{pattern.title} {pattern.notes}".casefold()
        and "series 7" in pattern.tags
        and pattern.around == 12
    }
    assert set(titles(found)) == wanted


def test_pages_hold_every_pattern_once(library):
    first = finding.find(library, sort="title", per_page=24)
    seen = [
        title
        for page in range(1, first.pages + 1)
        for title in titles(finding.find(library, sort="title", page=page, per_page=24))
    ]
    assert first.total == TOTAL == len(seen) == len(set(seen))
    assert seen == sorted(seen, key=str.lower)


def test_a_hundred_go_into_the_bin_and_come_back(library):
    chosen = tuple(range(1, 101))
    assert len(bulk.set_binned(library, chosen, True)) == 100
    assert finding.find(library).total == TOTAL - 100 and finding.find(library, binned=True).total == 100
    assert len(bulk.set_binned(library, chosen, False)) == 100
    assert finding.find(library).total == TOTAL and finding.counts(library)[1] == 0


def test_the_history_of_one_among_them_is_its_own(library):
    kept = patterns.load(library, 240)
    for number in range(1, 31):
        revisions.save(library, 240, replace(kept.pattern, notes=f"State {number}."), number)
    listed = history.revisions_of(library, 240)
    assert listed.total == 31 and listed.revisions[0].pattern.notes == "State 30."
    assert history.revisions_of(library, 241).total == 1
