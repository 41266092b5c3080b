"""Who may come in where several people use a computer: whoever has the secret of this start."""

from __future__ import annotations

import os
from collections import OrderedDict
from hmac import compare_digest
from http.cookies import CookieError, SimpleCookie
from pathlib import Path
from secrets import token_urlsafe
from urllib.parse import parse_qsl, urlencode

from starlette.datastructures import Headers
from starlette.responses import JSONResponse, RedirectResponse, Response
from starlette.types import Scope

FILE = "private.key"
HEADER = "x-ropewright-key"
ENTER = "enter"
ENTRY = "/private/entry"
MOST_ENTRIES = 20
FOREIGN = (
    "This Ropewright runs for one person. Open it from the terminal or the window in which it was started; a script "
    f"sends the key of the file {FILE} in the data folder."
)


class Door:
    """The secret for scripts stands in a file that only its owner can read; an address lets a browser in once."""

    def __init__(self, data: Path) -> None:
        self._path = data / FILE
        self._secret, self._session = token_urlsafe(32), token_urlsafe(32)
        self._entries: OrderedDict[str, None] = OrderedDict()
        self._path.unlink(missing_ok=True)
        with open(os.open(self._path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "w", encoding="ascii") as file:
            file.write(self._secret + "\n")

    def new_entry(self) -> str:
        """A key that an address carries once."""
        key = token_urlsafe(32)
        self._entries[key] = None
        while len(self._entries) > MOST_ENTRIES:
            self._entries.popitem(last=False)
        return key

    def knows(self, scope: Scope) -> bool:
        """Whether the request comes from the one person, by cookie or by header."""
        headers = Headers(scope=scope)
        return (
            scope["path"].startswith("/static/")
            or _same(headers.get(HEADER, ""), self._secret)
            or _same(_cookie(headers.get("cookie", ""), _name(scope)), self._session)
        )

    def entered(self, scope: Scope) -> Response | None:
        """The answer that lets a browser in: a cookie, and the address without its key."""
        asked = parse_qsl(scope["query_string"].decode("latin-1"), keep_blank_values=True)
        keys = [value for name, value in asked if name == ENTER]
        if scope["method"] != "GET" or not keys or keys[0] not in self._entries:
            return None
        del self._entries[keys[0]]
        query = urlencode([pair for pair in asked if pair[0] != ENTER])
        answer = RedirectResponse(f"{scope['path']}?{query}" if query else scope["path"], 303)
        answer.set_cookie(_name(scope), self._session, path="/", httponly=True, samesite="strict")
        return answer

    def entry_for_script(self, scope: Scope) -> Response | None:
        """A second start asks the server that runs for an address."""
        if (scope["method"], scope["path"]) == ("POST", ENTRY):
            return JSONResponse({ENTER: self.new_entry()})
        return None

    def close(self) -> None:
        """The secret of this start opens nothing any more."""
        self._path.unlink(missing_ok=True)


def _name(scope: Scope) -> str:
    """Cookies do not tell ports apart, and two servers may run."""
    return f"ropewright-{(scope.get('server') or ('', 0))[1]}"


def _cookie(text: str, name: str) -> str:
    try:
        cookie = SimpleCookie(text).get(name)
    except CookieError:
        return ""
    return cookie.value if cookie else ""


def _same(given: str, secret: str) -> bool:
    return compare_digest(given.encode(), secret.encode())
