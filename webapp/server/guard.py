"""Only this computer's own pages may talk to the app, with bodies of bounded size; every answer carries the policy."""

from __future__ import annotations

from collections.abc import Callable
from urllib.parse import urlsplit

from starlette.datastructures import Headers, MutableHeaders
from starlette.exceptions import HTTPException
from starlette.types import ASGIApp, Message, Receive, Scope, Send

LARGEST_BODY = 25_000_000
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


class Guard:
    """Wraps the app and refuses before it sees anything; `refusal` makes the answer from path, status and sentence."""

    def __init__(self, app: ASGIApp, refusal: Callable[[str, int, str], ASGIApp]) -> None:
        self.app = app
        self.refusal = refusal

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        headers, guarded = Headers(scope=scope), _with_headers(send)
        if not (_own_host(headers) and _own_origin(headers, scope["method"])):
            await self.refusal(scope["path"], 403, FOREIGN)(scope, receive, guarded)
        elif _declared(headers) > LARGEST_BODY:
            await self.refusal(scope["path"], 413, LARGE)(scope, receive, guarded)
        else:
            await self.app(scope, _bounded(receive), guarded)


def _own_host(headers: Headers) -> bool:
    hosts = headers.getlist("host")
    return len(hosts) == 1 and _host_name(hosts[0]) in OWN_NAMES


def _host_name(host: str) -> str | None:
    try:
        return urlsplit(f"//{host}").hostname
    except ValueError:
        return None


def _own_origin(headers: Headers, method: str) -> bool:
    """Our own origin, or none: a script on this computer sends none, and a browser none with a plain visit."""
    if any(origin != f"http://{headers['host']}" for origin in headers.getlist("origin")):
        return False
    return method in SAFE or headers.get("sec-fetch-site", "none") in ("none", "same-origin")


def _declared(headers: Headers) -> int:
    length = headers.get("content-length", "0")
    return int(length) if length.isdecimal() and len(length) < 20 else 0


def _bounded(receive: Receive) -> Receive:
    read = 0

    async def bounded() -> Message:
        nonlocal read
        message = await receive()
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
