"""Starts the server on a data folder and opens the browser; a second start opens the one that runs."""

from __future__ import annotations

import json
import logging
import os
import socket
import sys
import threading
import time
import urllib.request
import webbrowser
from argparse import ArgumentParser, Namespace
from contextlib import suppress
from datetime import UTC, datetime
from logging.handlers import RotatingFileHandler
from pathlib import Path

import uvicorn
from fastapi import FastAPI

from webapp.commands import Refused, files
from webapp.commands.library import add_data
from webapp.demo import examples
from webapp.server.app import create_app
from webapp.server.connections import PatientProtocol
from webapp.server.door import ENTER, ENTRY, FILE, HEADER
from webapp.server.keeping import Keeping
from webapp.server.running import Running
from webapp.settings import PORT, Settings
from webapp.storage.errors import NoLibrary
from webapp.storage.library import newest_backup
from webapp.storage.restore import restore

TRIED_PORTS = 50
LOG = "ropewright.log"


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("--port", metavar="PORT", help=f"port on this computer (default {PORT}, or the next one free)")
    parser.add_argument(
        "--new", action="store_true", help="begin an empty library where there are backups but no library"
    )
    parser.add_argument(
        "--private",
        action="store_true",
        help="for a shared computer: answer only the browser that this opens, and scripts that send the key",
    )
    parser.add_argument("--no-browser", action="store_true", help="do not open the browser")
    add_data(parser)


def run(chosen: Namespace) -> int:
    os.umask(0o077)  # what a server writes has the names of buyers in it
    settings = Settings(
        data=files.data_folder(chosen),
        port=_port(chosen.port),
        browser=not chosen.no_browser,
        anew=chosen.new,
        private=chosen.private,
    )
    with Running(settings.data) as running:
        if running.alone:
            return _serve(settings, running)
        address = _wait_for_address(running)
    address = _entered(settings.data, address)
    print(f"Ropewright runs on this library already, at {address}", flush=True)
    if settings.browser:
        webbrowser.open(address)
    return 0


def _serve(settings: Settings, running: Running) -> int:
    log_to(settings.data / LOG)
    listening = free_socket(settings.port)
    address = f"http://127.0.0.1:{listening.getsockname()[1]}/"
    app = _app(settings)
    server = uvicorn.Server(
        uvicorn.Config(
            app,
            http=PatientProtocol,
            log_config=None,
            access_log=False,
            timeout_graceful_shutdown=3,
            server_header=False,
        )
    )
    running.announce(address)
    if app.state.door:
        address = f"{address}?{ENTER}={app.state.door.new_entry()}"
    print(f"Ropewright is at {address} (Ctrl-C stops it)", flush=True)
    print(f"Your library is in {settings.data}", flush=True)
    if settings.browser:
        threading.Thread(target=_open_when_started, args=(server, address), daemon=True).start()
    try:
        with suppress(KeyboardInterrupt), Keeping(app.state.services.database):
            server.run(sockets=[listening])
    finally:
        listening.close()
    if server.should_exit:
        print("\nStopped. Everything is saved.", flush=True)
    return 0


def _app(settings: Settings) -> FastAPI:
    """The app; where the library is lost and there are backups, a person at the terminal is asked first."""
    try:
        return create_app(settings, examples())
    except NoLibrary as error:
        newest = newest_backup(settings.data)
        if newest is None or not sys.stdin.isatty():
            raise
        print(error.message, flush=True)
        if input("Put the newest backup back now? [y/N] ").strip().lower() not in ("y", "yes"):
            raise
        restore(settings.data, newest, datetime.now(UTC))
        return create_app(settings)


def free_socket(port: int) -> socket.socket:
    """A socket on that port of this computer, or on the next that is free."""
    for tried in range(port, min(port + TRIED_PORTS, 65536)):
        # said outright to be TCP, or answers would be held back until the browser has acknowledged their first part
        listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM, socket.IPPROTO_TCP)
        if hasattr(socket, "SO_EXCLUSIVEADDRUSE"):
            listening.setsockopt(socket.SOL_SOCKET, socket.SO_EXCLUSIVEADDRUSE, 1)
        else:
            listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            listening.bind(("127.0.0.1", tried))
            listening.listen(128)
            return listening
        except OSError:
            listening.close()
    raise Refused(f"No port from {port} on is free on this computer; name another with --port.")


def log_to(path: Path) -> None:
    """Sends what goes wrong to a file beside the library, with its traceback, and nothing to the person."""
    handler = RotatingFileHandler(path, maxBytes=1_000_000, backupCount=1, encoding="utf-8")
    handler.setFormatter(logging.Formatter("%(asctime)s %(levelname)s %(name)s: %(message)s"))
    logging.basicConfig(level=logging.WARNING, handlers=[handler])


def _open_when_started(server: uvicorn.Server, address: str) -> None:
    while not server.started:
        time.sleep(0.05)
    webbrowser.open(address)


def _wait_for_address(running: Running) -> str:
    """Where the other server answers; one that has just begun says so within a moment."""
    for _ in range(100):
        if address := running.address:
            return address
        time.sleep(0.05)
    raise Refused("Ropewright is starting or being restored on this library; try again in a moment.")


def _entered(data: Path, address: str) -> str:
    """The address with a key that lets this person in, where the server that runs is private."""
    with suppress(OSError, ValueError, KeyError):
        headers = {HEADER: (data / FILE).read_text(encoding="ascii").strip()}
        asked = urllib.request.Request(address.rstrip("/") + ENTRY, b"", headers, method="POST")
        with urllib.request.urlopen(asked, timeout=5) as answer:
            return f"{address}?{ENTER}={json.load(answer)[ENTER]}"
    return address


def _port(text: str | None) -> int:
    if text is None:
        return PORT
    if not (text.isascii() and text.isdigit() and len(text) < 6 and 1 <= int(text) <= 65535):
        raise Refused(f"“{text[:40]}” is not a port; expected 1 to 65535.")
    return int(text)
