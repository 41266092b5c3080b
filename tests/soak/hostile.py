"""Hostile requests: every route, every parameter and every field of every form, with values that nobody foresaw."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser
from random import Random
from typing import Any
from urllib.parse import quote

import httpx
from fastapi.routing import APIRoute
from starlette.routing import Route

from webapp.routes.all import ROUTERS
from webapp.server.guard import HEADERS

VALUES: tuple[str | bytes, ...] = (
    "",
    "0",
    "-1",
    "1",
    str(2**31),
    str(2**63 - 1),
    str(2**63),
    str(-(2**63) - 1),
    "9" * 400,
    "9" * 5000,
    "1e308",
    "-1e400",
    "5e-324",
    "nan",
    "inf",
    "1.5.2",
    "12 cm",
    "0,0000001 mm",
    "99999999 m",
    "ring",
    "whole",
    "joins 1, 2, 999999999999",
    "A 20, B 2 x 10 g",
    "é" * 300,
    "x" * 30_000,
    "\0",
    "a\0b.zip",
    b"%ff%fe",
    b"%ed%a0%80",
    "<script>alert(1)</script>",
    "'\"; DROP TABLE pattern; --",
    "{{ 7*7 }}",
    "../../../etc/passwd",
    "~nosuchuser/x",
    "/" + "y" * 300,
    "[]",
    "{}",
    "null",
    "true",
    "2026-99-99",
    "٣٤",
    "\u202e\u0000\uffff",
    "🧶",
)
PLACE = re.compile(r"\{(\w+)(?::\w+)?\}")
USUAL = {
    "id": "1",
    "revision": "1",
    "edition": "1",
    "copy": "1",
    "photograph": "1",
    "swatch": "1",
    "job": "x",
    "bead": "bead",
    "way": "1",
    "code": "A",
    "made": "1",
    "earning": "1",
}


class Fields(HTMLParser):
    """The forms of a page: action, method, and the names and values of their fields."""

    def __init__(self) -> None:
        super().__init__()
        self.forms: list[tuple[str, str, dict[str, str]]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        if tag == "form":
            self.forms.append((given.get("method", "get").upper(), given.get("action", ""), {}))
        elif self.forms and given.get("name"):
            self.forms[-1][2][given["name"]] = given.get("value", "")
        if tag in ("button", "a") and given.get("formaction"):
            method, _, fields = self.forms[-1]
            self.forms.append((method, given["formaction"], fields))


@dataclass
class Asked:
    """What was asked, and what was answered that should not have been."""

    requests: int = 0
    routes: set[str] = field(default_factory=set)
    wrong: list[str] = field(default_factory=list)


def hostile_requests(client: httpx.Client, chance: Random) -> Iterator[tuple[str, httpx.Request]]:
    """Requests without end, each with the route that it is for."""
    forms = {form[1].partition("?")[0]: form for page in pages(client) for form in forms_of(client, page)}
    while True:
        routes = [route for router in ROUTERS for route in router.routes if isinstance(route, APIRoute)]
        for route in chance.sample(routes, len(routes)):
            for method in sorted(route.methods):
                address = PLACE.sub(lambda place: _filled(place[1], chance), route.path)
                names = [of.alias for of in route.dependant.query_params] + list(_own(route, chance))
                query = "&".join(f"{quote(name)}={_encoded(_value(chance))}" for name in _some(names, chance))
                yield (
                    f"{method} {route.path}",
                    client.build_request(
                        method, f"{address}?{query}", **_body(method, forms.get(address) or _near(forms, route), chance)
                    ),
                )


def ask(client: httpx.Client, chance: Random, most: int) -> Asked:
    """So many hostile requests; what is answered with a 500, without the policy or not in our words is wrong."""
    asked = Asked()
    for route, request in hostile_requests(client, chance):
        if asked.requests == most:
            return asked
        answer = client.send(request)
        asked.requests += 1
        asked.routes.add(route)
        trouble = _trouble(request, answer)
        if trouble:
            asked.wrong.append(f"{trouble}: {request.method} {str(request.url)[:300]} {request.content[:300]!r}")
    return asked


def pages(client: httpx.Client) -> list[str]:
    """Pages that have forms."""
    return [
        "/",
        "/bin",
        "/settings",
        "/backups",
        "/answers",
        "/beads",
        "/beads/new",
        "/beads/shopping",
        "/beads/makeable",
        "/earnings",
        "/beads/import",
        "/beads/bead/edit",
        "/patterns/new",
        "/patterns/import",
        *(
            f"/patterns/1{rest}"
            for rest in (
                "",
                "/edit",
                "/booklet",
                "/words",
                "/editions",
                "/history",
                "/stringing",
                "/materials",
                "/colourways",
                "/colourways/1",
                "/colourways/0/beads/A",
                "/codes",
                "/cost",
                "/chart",
            )
        ),
    ]


def forms_of(client: httpx.Client, page: str) -> list[tuple[str, str, dict[str, str]]]:
    reader = Fields()
    reader.feed(client.get(page).text)
    return reader.forms


def _trouble(request: httpx.Request, answer: httpx.Response) -> str:
    if answer.status_code >= 500 and answer.status_code not in (503, 507):
        return str(answer.status_code)
    if any(answer.headers.get(name) != value for name, value in HEADERS.items()):
        return "without the policy"
    if "Traceback" in answer.text:
        return "a traceback"
    if answer.status_code >= 400 and request.url.path.startswith("/api"):
        error = answer.json().get("error", {})
        if not error.get("message") or set(error) != {"code", "message", "field"}:
            return "no sentence"
    return ""


def _own(route: Route, chance: Random) -> Iterator[str]:
    """Names that a route reads from its whole query."""
    yield from chance.sample(("search", "page", "sort", "length", "closure", "kind", "threads", "pattern", "chosen"), 2)


def _filled(name: str, chance: Random) -> str:
    if chance.random() < 0.7:
        return USUAL.get(name, "x")
    return _encoded(_value(chance)[:2000]) or "x"


def _value(chance: Random) -> str | bytes:
    return chance.choice(VALUES)


def _encoded(value: str | bytes) -> str:
    return value.decode("ascii") if isinstance(value, bytes) else quote(value.encode("utf-8", "surrogatepass"), safe="")


def _some(names: list[str], chance: Random) -> list[str]:
    return chance.sample(names, min(len(names), chance.randint(0, 3)))


def _near(forms: dict[str, tuple[str, str, dict[str, str]]], route: APIRoute) -> tuple[str, str, dict[str, str]] | None:
    """The form of that route for another pattern, edition or photograph."""
    shape = re.compile(PLACE.sub("[^/]+", route.path))
    return next((form for action, form in forms.items() if shape.fullmatch(action)), None)


def _body(method: str, form: tuple[str, str, dict[str, str]] | None, chance: Random) -> dict[str, Any]:
    if method == "GET":
        return {}
    if chance.random() < 0.3:
        return {"content": json.dumps(_twisted(DOCUMENT, chance)).encode()}
    if chance.random() < 0.1:
        return {"content": chance.randbytes(chance.randint(0, 400))}
    fields = dict(form[2]) if form else {"x": "y"}
    for name in _some(list(fields), chance):
        value = _value(chance)
        fields[name] = value.decode("latin-1") if isinstance(value, bytes) else value
    return {"data": fields}


DOCUMENT = {
    "format": "ropewright-pattern",
    "version": 1,
    "title": "Asked",
    "around": 6,
    "hand": "right",
    "palette": [{"code": "A", "name": "Foam", "colour": "#e9ebe2", "finish": "matte", "kind": "11/0 round"}],
    "beads": "60A",
    "made_from": 1,
    "sequence": 0,
}
ODD = (None, True, -1, 0, 2**70, 1e308, "", "x" * 5000, [], {}, [[]] * 50, {"x": [None]}, "\ud800", "#12", "9" * 100)


def _twisted(document: Any, chance: Random) -> Any:
    """The document with something in it that does not belong there."""
    twisted = json.loads(json.dumps(document))
    target = chance.choice((twisted, twisted["palette"][0]))
    target[chance.choice((*target, "more"))] = chance.choice(ODD)
    return twisted
