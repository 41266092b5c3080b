"""Patterns are found by words, by what they are and carry, and by colour."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from engine.pattern.colour import lab
from engine.pattern.palette import Entry, Palette
from webapp.records import Shelves, Wanted
from webapp.storage import finding, patterns, revisions
from webapp.storage.tables import EditionRow, PatternRow


@pytest.fixture
def steady(database):
    """A clock that moves a minute with every look."""
    clock = iter(datetime(2026, 3, 1, tzinfo=UTC) + timedelta(minutes=n) for n in range(1000))
    database.now = lambda: next(clock)
    return database


def titles(found):
    return [summary.title for summary in found.patterns]


def sought(database, **wanted):
    return sorted(titles(finding.find(database, Wanted(**wanted))))


def test_the_summary_says_what_a_list_shows(steady, pattern):
    patterns.create(steady, pattern, example=True)
    (summary,) = finding.find(steady).patterns
    assert summary == type(summary)(
        1,
        "Small harbour",
        12,
        50,
        50,
        ("11/0 round",),
        ("#1d3350", "#e9ebe2", "#dfa63a"),
        ("bracelet", "trial"),
        datetime(2026, 3, 1, tzinfo=UTC),
        1,
        True,
        patterns.picture_version(pattern),
        False,
        made=datetime(2026, 3, 1, tzinfo=UTC),
    )


def test_search_finds_every_word_in_title_notes_tags_and_bead_names(database, pattern):
    patterns.create(database, pattern)
    patterns.create(database, replace(pattern, title="Meadow 100%", notes="", tags=("flowers",)))
    assert titles(finding.find(database, "HARBOUR lamp")) == ["Small harbour"]
    assert titles(finding.find(database, "lamps")) == ["Small harbour"]
    assert titles(finding.find(database, "flowers 12 around")) == ["Meadow 100%"]
    assert titles(finding.find(database, "100%")) == titles(finding.find(database, "mead")) == ["Meadow 100%"]
    assert titles(finding.find(database, "adow")) == []
    assert titles(finding.find(database, "harbour meadow")) == []
    assert titles(finding.find(database, Wanted(tag="trial"))) == ["Small harbour"]
    assert finding.find(database).tags == (("bracelet", 1), ("flowers", 1), ("trial", 1))


def test_patterns_are_sorted_and_turned_in_pages(steady, pattern):
    for title, around in (("Beta", 20), ("alpha", 12), ("Gamma", 6)):
        patterns.create(steady, replace(pattern, title=title, around=around))
    assert titles(finding.find(steady)) == ["Gamma", "alpha", "Beta"]
    assert titles(finding.find(steady, sort="title")) == ["alpha", "Beta", "Gamma"]
    assert titles(finding.find(steady, sort="around")) == ["Gamma", "alpha", "Beta"]
    assert titles(finding.find(steady, sort="nonsense")) == ["Gamma", "alpha", "Beta"]
    second = finding.find(steady, sort="title", page=2, per_page=2)
    assert (titles(second), second.page, second.pages, second.total) == (["Gamma"], 2, 2, 3)
    assert finding.find(steady, page=99, per_page=2).page == 2


@pytest.mark.parametrize(
    "search",
    [
        "creme",
        "CRÈME",
        "brul",
        "crème brûlée",
        "“brûlée”",
        '"creme"',
        "creme*",
        "(creme",
        "- creme",
        "creme\0",
        "\0 creme \0",
    ],
)
def test_accents_capitals_and_signs_do_not_count(database, pattern, search):
    patterns.create(database, replace(pattern, title="Crème brûlée"))
    assert sought(database, search=search) == ["Crème brûlée"]


@pytest.mark.parametrize("search", ["NOT creme", "creme OR harbour", "title:creme", "creme NEAR x"])
def test_words_of_a_query_language_are_words_like_any_other(database, pattern, search):
    patterns.create(database, replace(pattern, title="Crème", notes=""))
    assert sought(database, search=search) == []


def test_the_index_follows_what_is_saved_and_what_is_gone(database, pattern):
    number = patterns.create(database, pattern).id
    revisions.save(database, number, replace(pattern, title="Meadow", notes="", tags=()), made_from=1)
    assert (sought(database, search="harbour"), sought(database, search="meadow")) == ([], ["Meadow"])
    patterns.put_into_bin(database, number)
    patterns.empty_bin(database)
    with database.reading() as session:
        assert (
            session.connection().exec_driver_sql("SELECT count(*) FROM found WHERE found MATCH 'meadow'").scalar() == 0
        )
        session.connection().exec_driver_sql("INSERT INTO found(found, rank) VALUES ('integrity-check', 1)")


def test_a_list_is_narrowed_by_what_a_pattern_is(database, pattern):
    patterns.create(database, pattern)
    wide = Palette((Entry("A", "Ruby", "#a01020", kind="8/0 round"),))
    patterns.create(database, replace(pattern, title="Wide", around=20, palette=wide, chart=bytes(300)))
    assert sought(database, around=20) == sought(database, kind="8/0 round") == ["Wide"]
    assert sought(database, kind="0 round") == []
    assert sought(database, beads=(51, 0)) == sought(database, colours=(1, 2)) == ["Wide"]
    assert sought(database, beads=(0, 50)) == sought(database, colours=(3, 3)) == ["Small harbour"]
    assert sought(database, beads=(50, 300)) == ["Small harbour", "Wide"]
    assert finding.shelves(database) == Shelves((), ("11/0 round", "8/0 round"), (12, 20))


def test_a_colour_finds_what_comes_near_it(database, pattern):
    patterns.create(database, pattern)
    ruby = Palette((Entry("A", "Ruby", "#a01020"),))
    number = patterns.create(database, replace(pattern, title="Red", palette=ruby, chart=bytes(9))).id
    assert sought(database, near="#a51525") == ["Red"]
    assert sought(database, near="#1d3350") == ["Small harbour"]
    assert sought(database, near="#00ff00") == []
    blue = Palette((Entry("A", "Deep", "#1d3350"),))
    revisions.save(database, number, replace(pattern, title="Blue", palette=blue, chart=bytes(9)), made_from=1)
    assert (sought(database, near="#a51525"), sought(database, near="#1d3350")) == ([], ["Blue", "Small harbour"])


def test_published_patterns_are_told_from_unpublished_ones(database, pattern):
    patterns.create(database, pattern)
    number = patterns.create(database, replace(pattern, title="Sold")).id
    edition = EditionRow(pattern=number, number=1, revision=1, published=database.now(), note="", words="")
    with database.writing() as session:
        session.add(edition)
    assert (sought(database, published="yes"), sought(database, published="no")) == (["Sold"], ["Small harbour"])
    assert [one.published for one in finding.find(database, sort="title").patterns] == [False, True]


def test_series_and_difficulty_stand_on_the_shelf(database, pattern):
    first = patterns.create(database, pattern).id
    patterns.create(database, replace(pattern, title="Other"))
    patterns.shelve(database, first, "Coast", 3)
    assert (
        sought(database, series="Coast")
        == sought(database, difficulty=3)
        == sought(database, search="coa")
        == ["Small harbour"]
    )
    assert finding.shelves(database).series == ("Coast",)
    assert titles(finding.find(database, sort="difficulty")) == ["Small harbour", "Other"]
    found = finding.find(database, Wanted(series="Coast")).patterns[0]
    assert (found.series, found.difficulty) == ("Coast", 3)


def test_every_number_that_is_wanted_is_given(database, pattern):
    for title in ("One", "Two", "Three"):
        patterns.create(database, replace(pattern, title=title))
    patterns.put_into_bin(database, 2)
    assert finding.numbers(database) == [1, 3]
    assert finding.numbers(database, Wanted("three")) == [3]


def test_colours_are_kept_in_the_library_as_the_engine_has_them(database, pattern):
    patterns.create(database, pattern)
    with database.reading() as session:
        kept = session.connection().exec_driver_sql("SELECT light, a, b FROM colour ORDER BY place").all()
        assert session.get_one(PatternRow, 1).colours.split() == [entry.colour for entry in pattern.palette]
    assert [tuple(row) for row in kept] == [
        pytest.approx(of) for of in lab([entry.colour for entry in pattern.palette])
    ]
