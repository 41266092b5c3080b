"""Only this computer's own pages may talk to the app, with bounded bodies; every answer carries the policy."""

from __future__ import annotations

from asyncio import wait_for
from collections.abc import Callable
from urllib.parse import urlsplit

from starlette.datastructures import Headers, MutableHeaders
from starlette.exceptions import HTTPException
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from webapp.server.door import FOREIGN as NOT_THEIRS
from webapp.server.door import Door

LARGEST_BODY = 25_000_000
SILENCE_S = 10
OWN_NAMES = ("127.0.0.1", "localhost", "::1")
SAFE = ("GET", "HEAD", "OPTIONS")
POLICY = "default-src 'self'; object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"
HEADERS = {
    "content-security-policy": POLICY,
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",
    "x-frame-options": "DENY",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
}
FOREIGN = "This app answers only to its own pages on this computer."
LARGE = f"That is more than {LARGEST_BODY // 1_000_000} MB, which is the most that is read."


class TooLarge(HTTPException):
    """The body is larger than is read."""

    def __init__(self) -> None:
        super().__init__(413, LARGE)


class Stalled(HTTPException):
    """The body stopped coming."""

    def __init__(self) -> None:
        super().__init__(408, f"Nothing more of it came for {SILENCE_S} seconds; please send it again.")


class Guard:
    """Wraps the app and refuses before it sees anything; `refusal` makes the answer from path, status and sentence.

    With a door, only who has the secret of this start is let in.
    """

    def __init__(self, app: ASGIApp, refusal: Callable[[str, int, str], ASGIApp], door: Door | None = None) -> None:
        self.app = app
        self.refusal = refusal
        self.door = door

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        headers, guarded = Headers(scope=scope), _with_headers(send)
        if not (_own_host(headers) and _own_origin(headers) and _own_request(headers, scope["method"])):
            await self.refusal(scope["path"], 403, FOREIGN)(scope, receive, guarded)
        elif self.door and (answer := self._at_the_door(self.door, scope)):
            await answer(scope, receive, guarded)
        elif _declared(headers) > LARGEST_BODY:
            await self.refusal(scope["path"], 413, LARGE)(scope, receive, guarded)
        else:
            await self.app(scope, _bounded(receive), guarded)

    def _at_the_door(self, door: Door, scope: Scope) -> ASGIApp | None:
        if door.knows(scope):
            return door.entry_for_script(scope)
        return door.entered(scope) or self.refusal(scope["path"], 403, NOT_THEIRS)


def _own_host(headers: Headers) -> bool:
    hosts = headers.getlist("host")
    return len(hosts) == 1 and _host_name(hosts[0]) in OWN_NAMES


def _host_name(host: str) -> str | None:
    try:
        return urlsplit(f"//{host}").hostname
    except ValueError:
        return None


def _own_origin(headers: Headers) -> bool:
    """Our own origin, or none: a script on this computer sends none, and a browser none with a plain visit."""
    return all(origin == f"http://{headers['host']}" for origin in headers.getlist("origin"))


def _own_request(headers: Headers, method: str) -> bool:
    """What a browser says of a request (Fetch Metadata): from another site only a visit to a page is let in."""
    if headers.get("sec-fetch-site", "none") in ("none", "same-origin"):
        return True
    visited = headers.get("sec-fetch-mode") == "navigate" and headers.get("sec-fetch-dest", "document") == "document"
    return method in SAFE and visited


def _declared(headers: Headers) -> int:
    length = headers.get("content-length", "0")
    return int(length) if length.isdecimal() and len(length) < 20 else 0


def _bounded(receive: Receive) -> Receive:
    """At most so many bytes; while they come, at most so long a silence."""
    read, more = 0, True

    async def bounded() -> Message:
        nonlocal read, more
        try:
            message = await wait_for(receive(), SILENCE_S if more else None)
        except TimeoutError:
            raise Stalled from None
        more = more and bool(message.get("more_body"))
        read += len(message.get("body", b""))
        if read > LARGEST_BODY:
            raise TooLarge
        return message

    return bounded


def _with_headers(send: Send) -> Send:
    async def guarded(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            headers.update(HEADERS)
            headers.setdefault("cache-control", "no-cache")
        await send(message)

    return guarded
