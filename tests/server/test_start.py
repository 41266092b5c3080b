"""The server as a process: where it listens, how it stops, and that one data folder has one server."""

import re
import signal
import socket
import subprocess
from contextlib import closing
from functools import partial

import httpx
import pytest

from tests.server.servers import COMMAND, PATIENCE, free_port, serving
from webapp.demo import examples
from webapp.paths import ROOT
from webapp.settings import PORT
from webapp.storage import backup_folder, finding
from webapp.storage.library import open_library

get, post = partial(httpx.get, timeout=PATIENCE), partial(httpx.post, timeout=PATIENCE)


@pytest.fixture
def data(tmp_path):
    return tmp_path / "data"


def titles(address: str) -> list[str]:
    return [pattern["title"] for pattern in get(f"{address}api/patterns").raise_for_status().json()["patterns"]]


def connects(host: str, port: int) -> bool:
    with socket.socket() as caller:
        caller.settimeout(5)
        return caller.connect_ex((host, port)) == 0


def test_a_first_start_makes_the_library_with_its_examples_and_a_second_finds_the_one_that_runs(data):
    port = free_port()
    with (
        serving(data, "--port", str(port)) as server,
        httpx.Client(base_url=server.address, timeout=PATIENCE) as browser,
    ):
        assert browser.get("/").status_code == 200
        assert titles(server.address) == [pattern.title for pattern in reversed(examples())]
        again = subprocess.run(
            [*COMMAND, "serve", "--no-browser", "--data", str(data)],
            cwd=ROOT,
            capture_output=True,
            encoding="utf-8",
            timeout=PATIENCE,
            check=False,
        )
        assert (again.returncode, again.stdout, again.stderr) == (
            0,
            f"Ropewright runs on this library already, at {server.address}\n",
            "",
        )
        assert browser.get("/").status_code == 200
        status, said, error = server.stop(signal.SIGINT)  # Although the browser keeps its connection.
    assert (status, error) == (0, "")
    assert said == (
        f"Ropewright is at http://127.0.0.1:{port}/ (Ctrl-C stops it)\nYour library is in {data}\n"
        "\nStopped. Everything is saved.\n"
    )
    assert (data / "ropewright.log").read_text(encoding="utf-8") == ""


def test_without_a_port_it_is_the_usual_one_or_the_next_that_is_free_on_this_computer_alone(data):
    with serving(data, "--port", str(PORT)) as first, serving(data.parent / "second", "--port", str(PORT)) as second:
        assert PORT <= first.port < second.port < PORT + 50
        assert get(second.address).status_code == 200
        others = {
            "127.0.0.2",
            *(found[4][0] for found in socket.getaddrinfo(socket.gethostname(), None, socket.AF_INET)),
        }
        assert connects("127.0.0.1", first.port)
        assert [host for host in others - {"127.0.0.1"} if connects(host, first.port)] == []


def test_a_private_start_lets_in_the_browser_it_opens_and_whoever_starts_it_again(data):
    with serving(data, "--private", "--port", str(free_port())) as server:
        assert get(server.address.partition("?")[0]).status_code == 403
        again = subprocess.run(
            [*COMMAND, "serve", "--no-browser", "--data", str(data)],
            cwd=ROOT,
            capture_output=True,
            encoding="utf-8",
            timeout=PATIENCE,
            check=False,
        )
        for address in (server.address, again.stdout.split()[-1]):
            with httpx.Client(follow_redirects=True) as browser:
                assert browser.get(address).status_code == 200
                assert "?enter=" not in str(browser.get(address.partition("?")[0]).url)


def test_where_only_backups_are_left_it_says_how_to_go_on(data):
    with closing(open_library(data)) as library:
        backup_folder.make(library)
    (data / "library.sqlite").unlink()
    started = subprocess.run(
        [*COMMAND, "--no-browser", "--data", str(data), "--port", str(free_port())],
        cwd=ROOT,
        capture_output=True,
        stdin=subprocess.DEVNULL,
        encoding="utf-8",
        timeout=PATIENCE,
        check=False,
    )
    assert (started.returncode, started.stdout) == (2, "")
    assert re.fullmatch(
        r"Ropewright: There is no library in .*, or it is empty, but there are backups; the newest is (.*)\. Put it back "
        r"with “restore \1 --data .*”, or begin an empty library with “serve --new”\.\n",
        started.stderr,
    )
    with serving(data, "--new", "--port", str(free_port())) as server:
        assert get(f"{server.address}api/patterns").json()["total"] == len(examples())


def test_a_server_that_was_ended_leaves_a_folder_that_starts_again(data, document):
    for before, how in enumerate((signal.SIGTERM, signal.SIGKILL)):
        with serving(data) as server:
            assert titles(server.address).count("Small harbour") == before
            post(f"{server.address}api/patterns", json=document).raise_for_status()
            server.stop(how)
    with closing(open_library(data)) as library:
        assert finding.find(library, "Small harbour").total == 2


def test_a_library_that_does_not_open_is_said_in_one_line(data):
    data.mkdir()
    (data / "library.sqlite").write_bytes(b"no library at all" * 500)
    started = subprocess.run(
        [*COMMAND, "--no-browser", "--data", str(data), "--port", str(free_port())],
        cwd=ROOT,
        capture_output=True,
        encoding="utf-8",
        timeout=PATIENCE,
        check=False,
    )
    assert (started.returncode, started.stdout) == (2, "")
    assert started.stderr == f"Ropewright: The library in {data} cannot be opened: file is not a database.\n"
