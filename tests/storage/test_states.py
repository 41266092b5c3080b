"""Patterns, revisions, the bin, editions and backups against a simple model, in any order that Hypothesis thinks of."""

from __future__ import annotations

import shutil
import tempfile
from copy import deepcopy
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, precondition, rule, run_state_machine_as_test

from tests.examples import harbour
from webapp.records import FreshBooklet
from webapp.storage import backup_folder, editions, finding, history, library_file, patterns, restore, revisions
from webapp.storage.errors import Stale
from webapp.storage.library import open_library

TITLES = st.sampled_from(["Alpha", "Beta", "Gamma", "Delta"])
PDF = (FreshBooklet("Standard, A4", "{}", 4, b"%PDF-1.7 kept"),)


@dataclass
class Expected:
    """A pattern as the model has it: titles of its revisions, of its working copy, and of its editions."""

    revisions: list[str]
    working: str = ""
    binned: bool = False
    editions: list[str] = field(default_factory=list)

    @property
    def stands(self) -> str:
        return self.working or self.revisions[-1]


class Library(RuleBasedStateMachine):
    """Every rule does the same to the library and to the model."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = Path(tempfile.mkdtemp())
        self.now = datetime(2026, 3, 2, 9, tzinfo=UTC)
        self.database = open_library(self.folder)
        self.database.now = lambda: self.now
        self.model: dict[int, Expected] = {}
        self.kept: dict[Path, dict[int, Expected]] = {}
        self.known: dict[int, tuple[int, int]] = {}
        self.numbers: set[int] = set()

    def teardown(self) -> None:
        self.database.close()
        shutil.rmtree(self.folder)

    def one(self, data: st.DataObject) -> int:
        return data.draw(st.sampled_from(sorted(self.model)))

    @rule(title=TITLES)
    def make(self, title: str) -> None:
        number = patterns.create(self.database, titled(title)).id
        assert number not in self.numbers, "a number was given twice"
        self.numbers.add(number)
        self.model[number] = Expected([title])

    @precondition(lambda self: self.model)
    @rule(data=st.data(), title=TITLES)
    def save(self, data: st.DataObject, title: str) -> None:
        number = self.one(data)
        revisions.save(self.database, number, titled(title), patterns.load(self.database, number).revision)
        expected = self.model[number]
        expected.revisions += [*filter(None, [expected.working]), title]
        expected.working = ""

    @precondition(lambda self: self.model)
    @rule(data=st.data(), title=TITLES)
    def work(self, data: st.DataObject, title: str) -> None:
        number = self.one(data)
        revisions.write_working(self.database, number, titled(title), patterns.load(self.database, number).sequence)
        self.model[number].working = title

    @precondition(lambda self: self.model)
    @rule(data=st.data())
    def look(self, data: st.DataObject) -> None:
        """A page is opened, and knows the numbers of this moment."""
        number = self.one(data)
        stored = patterns.load(self.database, number)
        self.known[number] = (stored.revision, stored.sequence)

    @precondition(lambda self: self.known)
    @rule(data=st.data())
    def save_from_an_old_page(self, data: st.DataObject) -> None:
        """What was written since, or restored, is never written over."""
        number = data.draw(st.sampled_from(sorted(self.known)))
        revision, sequence = self.known[number]
        if number not in self.model or patterns.load(self.database, number).sequence == sequence:
            return
        with pytest.raises(Stale):
            revisions.write_working(self.database, number, titled("Lost"), sequence)
        if patterns.load(self.database, number).revision != revision:
            with pytest.raises(Stale):
                revisions.save(self.database, number, titled("Lost"), revision)

    @precondition(lambda self: self.model)
    @rule(data=st.data())
    def leave(self, data: st.DataObject) -> None:
        number = self.one(data)
        revisions.keep_working(self.database, number)
        expected = self.model[number]
        expected.revisions += filter(None, [expected.working])
        expected.working = ""

    @precondition(lambda self: self.model)
    @rule(data=st.data())
    def bring_back_the_first(self, data: st.DataObject) -> None:
        number = self.one(data)
        expected = self.model[number]
        first = history.numbers_of(self.database, number)[-1][0]
        history.bring_back(self.database, number, first)
        if expected.working or expected.revisions[0] != expected.stands:
            expected.revisions += [*filter(None, [expected.working]), expected.revisions[0]]
            expected.working = ""

    @precondition(lambda self: self.model)
    @rule(data=st.data(), binned=st.booleans())
    def bin(self, data: st.DataObject, binned: bool) -> None:
        number = self.one(data)
        (patterns.put_into_bin if binned else patterns.take_back)(self.database, number)
        self.model[number].binned = binned

    @rule()
    def empty_the_bin(self) -> None:
        patterns.empty_bin(self.database)
        self.model = {of: kept for of, kept in self.model.items() if not kept.binned or kept.editions}

    @precondition(lambda self: self.model)
    @rule(data=st.data())
    def publish(self, data: st.DataObject) -> None:
        number = self.one(data)
        stored = patterns.load(self.database, number)
        editions.publish(self.database, number, stored.revision, PDF)
        self.model[number].editions.append(self.model[number].revisions[-1])

    @rule()
    def back_up(self) -> None:
        self.now += timedelta(minutes=1)
        self.kept[backup_folder.make(self.database)] = deepcopy(self.model)

    @precondition(lambda self: self.kept)
    @rule(data=st.data())
    def restore(self, data: st.DataObject) -> None:
        path = data.draw(st.sampled_from(sorted(self.kept)))
        self.now += timedelta(seconds=1)
        restore.put_back(self.database, path)
        self.model = deepcopy(self.kept[path])
        for number, expected in self.model.items():
            listed = history.numbers_of(self.database, number)
            if len(listed) > len(expected.revisions):
                expected.revisions.append(expected.revisions[-1])

    @rule()
    def thin(self) -> None:
        assert revisions.thin(self.database) == 0, "all of it is of today"

    @invariant()
    def the_library_is_the_model(self) -> None:
        listed = {
            found.id: found.title
            for binned in (False, True)
            for found in finding.find(self.database, binned=binned, per_page=500).patterns
        }
        assert listed == {number: expected.stands for number, expected in self.model.items()}
        for number, expected in self.model.items():
            stored = patterns.load(self.database, number)
            assert (stored.pattern.title, stored.working, stored.binned) == (
                expected.stands,
                bool(expected.working),
                expected.binned,
            )
            states = history.revisions_of(self.database, number, per_page=500).revisions
            assert [state.pattern.title for state in reversed(states)] == expected.revisions
            published = editions.editions(self.database, number)
            assert [edition.number for edition in reversed(published)] == [
                number + 1 for number in range(len(expected.editions))
            ]
            for edition, title in zip(reversed(published), expected.editions, strict=True):
                kept = revisions.revision(self.database, number, edition.revision).pattern.title
                assert (kept, editions.pdf(self.database, number, edition.number, PDF[0].name)) == (title, PDF[0].pdf)

    @invariant()
    def the_file_is_sound(self) -> None:
        library_file.check(self.database.path, in_use=True)


def titled(title: str):
    return replace(harbour(), title=title)


def test_whatever_is_done_in_whatever_order_the_library_is_as_the_model_says() -> None:
    run_state_machine_as_test(Library, settings=settings(max_examples=8, stateful_step_count=25, deadline=None))
