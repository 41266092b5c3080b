"""Patterns into the library and out again, and the library as a whole kept and put back."""

import sqlite3
from contextlib import closing
from dataclasses import replace

import pytest

from tests.examples import harbour
from webapp.demo import examples
from webapp.exchange import pattern_file
from webapp.server.running import Running
from webapp.storage import finding, patterns, revisions
from webapp.storage.library import open_library


@pytest.fixture
def demo_files(tmp_path):
    """The demo patterns as files."""
    files = []
    for number, pattern in enumerate(examples()):
        path = tmp_path / f"{number}.pattern.json"
        path.write_text(pattern_file.write_file(pattern), encoding="utf-8")
        files.append(path)
    return files


@pytest.fixture
def folder(tmp_path):
    made = tmp_path / "out"
    made.mkdir()
    return made


def kept(data) -> list:
    """Every pattern of the library as it stands, with its revision."""
    with closing(open_library(data)) as database:
        stored = [patterns.load(database, number) for number in finding.numbers(database)]
    return [(one.pattern, one.revision) for one in stored]


def titled(title: str) -> list:
    return [(replace(harbour(), title=title), 1)]


def test_patterns_taken_in_come_out_as_the_same_files(run, data, demo_files, folder):
    taken = run("import", *demo_files, "--data", data)
    assert taken == (0, "".join(f"{n} {pattern.title}\n" for n, pattern in enumerate(examples(), 1)), "")
    given = run("export", "-o", folder, "--data", data)
    names = [f"{n:04}-{pattern_file.file_name(pattern.title)}" for n, pattern in enumerate(examples(), 1)]
    assert given == (0, "".join(f"{folder / name}\n" for name in names), "")
    assert [(folder / name).read_bytes() for name in names] == [file.read_bytes() for file in demo_files]


def test_only_the_patterns_asked_for_are_written(run, data, demo_files, folder):
    run("import", *demo_files, "--data", data)
    assert run("export", "2", "-o", folder, "--data", data).status == 0
    assert [path.name[:5] for path in folder.iterdir()] == ["0002-"]
    assert run("export", "2", "9", "-o", folder, "--data", data) == (
        2,
        "",
        "Ropewright: There is no pattern at this address.\n",
    )
    assert run("export", "two", "-o", folder, "--data", data) == (
        2,
        "",
        "Ropewright: “two” is not the number of a pattern.\n",
    )


def test_what_is_written_is_the_pattern_as_it_stands(run, data, harbour_file, folder):
    run("import", harbour_file, "--data", data)
    drawn = replace(harbour(), title="Half drawn")
    with closing(open_library(data)) as database:
        revisions.write_working(database, 1, drawn, 0)
    run("export", "-o", folder, "--data", data)
    assert pattern_file.read((folder / "0001-half-drawn.pattern.json").read_bytes()) == drawn


def test_a_whole_library_goes_out_as_a_zip_and_comes_in_again(run, data, demo_files, tmp_path):
    run("import", *demo_files, "--data", data)
    packed = tmp_path / "library.zip"
    assert run("export", "-o", packed, "--data", data) == (0, f"{packed}\n", "")
    fresh = tmp_path / "fresh"
    titles = [pattern.title for pattern in examples()]
    assert run("import", packed, "--data", fresh) == (
        0,
        "".join(f"{n} {title}\n" for n, title in enumerate(titles, 1)),
        "",
    )
    assert kept(fresh) == kept(data)
    assert run("import", packed, "--data", fresh) == (0, "".join(f"left, same: {title}\n" for title in titles), "")
    run("export", "2", "-o", packed, "--data", data)
    assert run("import", packed, "--data", tmp_path / "other").out == f"1 {titles[1]}\n"


def test_a_zip_that_cannot_be_used_is_refused_in_one_line(run, data, demo_files, tmp_path):
    (tmp_path / "x.zip").write_bytes(b"knots")
    assert run("import", tmp_path / "x.zip", "--data", data) == (
        2,
        "",
        f"Ropewright: {tmp_path / 'x.zip'}: The zip cannot be read: File is not a zip file. Nothing was imported.\n",
    )
    assert run("import", tmp_path / "none.zip", "--data", data) == (
        2,
        "",
        f"Ropewright: There is no file {tmp_path / 'none.zip'}.\n",
    )
    assert run("import", tmp_path / "x.zip", demo_files[0], "--data", data) == (
        2,
        "",
        "Ropewright: A zip is imported alone; name one file.\n",
    )
    run("import", *demo_files, "--data", data)
    assert run("export", "9", "-o", tmp_path / "y.zip", "--data", data).status == 2
    assert list(tmp_path.glob("*y.zip*")) == []


def test_the_bin_stays_at_home(run, data, demo_files, folder):
    run("import", *demo_files, "--data", data)
    with closing(open_library(data)) as database:
        patterns.put_into_bin(database, 1)
    assert run("export", "-o", folder, "--data", data).out.count("\n") == len(examples()) - 1


def test_a_backup_put_back_is_the_library_of_that_day(run, data, file_of, document, tmp_path):
    copy = tmp_path / "copy.sqlite"
    run("import", file_of({**document, "title": "Before"}), "--data", data)
    assert run("backup", "-o", copy, "--data", data) == (
        0,
        f"{copy}: a checked copy of {data / 'library.sqlite'}\n",
        "",
    )
    run("import", file_of({**document, "title": "After"}), "--data", data)
    restored = run("restore", copy, "--data", data)
    aside = next((data / "copies").glob("before-restore-*.sqlite"))
    assert restored == (0, f"The library in {data} is now that of {copy}.\nThe one before is kept as {aside}.\n", "")
    assert kept(data) == titled("Before")
    run("restore", aside, "--data", data)
    assert [pattern for pattern, _ in kept(data)] == [pattern for pattern, _ in titled("Before") + titled("After")]


def test_a_backup_without_a_name_is_kept_among_the_others(run, data, harbour_file):
    run("import", harbour_file, "--data", data)
    made = run("backup", "--data", data)
    (copy,) = (data / "backups").iterdir()
    assert made == (0, f"{copy}: a checked copy of {data / 'library.sqlite'}\n", "")


def test_what_is_inside_a_backup_is_shown_and_nothing_is_changed(run, data, file_of, document, tmp_path):
    run("import", file_of({**document, "title": "Before"}), "--data", data)
    run("backup", "-o", tmp_path / "copy.sqlite", "--data", data)
    run("import", file_of({**document, "title": "After"}), "--data", data)
    status, out, error = run("restore", tmp_path / "copy.sqlite", "--look", "--data", data)
    first, *rest = out.splitlines()
    assert (status, error) == (0, "")
    assert first.startswith(f"{tmp_path / 'copy.sqlite'}: patterns 1, in the bin 0, newest change ")
    assert rest == ["comes back 0; is changed 0; goes 1; stays 1", "goes        After", "stays       Before"]
    assert kept(data) == titled("Before") + titled("After")


def test_a_backup_makes_a_library_where_there_was_none(run, data, harbour_file, tmp_path):
    run("import", harbour_file, "--data", data)
    run("backup", "-o", tmp_path / "copy.sqlite", "--data", data)
    fresh = tmp_path / "fresh"
    assert run("restore", tmp_path / "copy.sqlite", "--data", fresh) == (
        0,
        f"The library in {fresh} is now that of {tmp_path / 'copy.sqlite'}.\n",
        "",
    )
    assert kept(fresh) == kept(data)


def test_a_backup_is_made_while_somebody_writes(run, data, harbour_file, tmp_path):
    run("import", harbour_file, "--data", data)
    with closing(open_library(data)) as database, database.writing():
        assert run("backup", "-o", tmp_path / "copy.sqlite", "--data", data).status == 0
    with closing(sqlite3.connect(tmp_path / "copy.sqlite")) as copy:
        assert copy.execute("PRAGMA integrity_check").fetchone() == ("ok",)


@pytest.mark.parametrize("damage", [lambda data: data[:5000], lambda data: b"knots" + data, lambda data: b""])
def test_a_backup_that_is_no_library_changes_nothing(run, data, harbour_file, tmp_path, damage):
    run("import", harbour_file, "--data", data)
    run("backup", "-o", tmp_path / "copy.sqlite", "--data", data)
    broken = tmp_path / "broken.sqlite"
    broken.write_bytes(damage((tmp_path / "copy.sqlite").read_bytes()))
    refused = run("restore", broken, "--data", data)
    assert (refused.status, refused.out, refused.error.count("\n")) == (2, "", 1)
    assert kept(data) == titled("Small harbour")


def test_a_library_in_use_is_not_replaced(run, data, harbour_file, tmp_path):
    run("import", harbour_file, "--data", data)
    run("backup", "-o", tmp_path / "copy.sqlite", "--data", data)
    with Running(data):
        assert run("restore", tmp_path / "copy.sqlite", "--data", data) == (
            2,
            "",
            "Ropewright: Ropewright is running on this library; stop it first.\n",
        )


def test_what_is_no_library_is_not_written_over(run, data, harbour_file):
    data.mkdir()
    (data / "library.sqlite").write_bytes(b"these are my notes, not a library" * 200)
    refused = run("import", harbour_file, "--data", data)
    assert (refused.status, refused.out) == (2, "")
    assert refused.error == f"Ropewright: The library in {data} cannot be opened: file is not a database.\n"
    assert (data / "library.sqlite").read_bytes() == b"these are my notes, not a library" * 200
