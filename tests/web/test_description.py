"""The API's own description against its answers: whatever it invites is answered as it says, and never with a 5xx."""

from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
import schemathesis
from hypothesis import HealthCheck, given, settings
from schemathesis.checks import not_a_server_error
from schemathesis.specs.openapi.checks import (
    content_type_conformance,
    response_schema_conformance,
    status_code_conformance,
)

from tests.conftest import client_of
from tests.examples import harbour
from tests.printing_here import PrintsHere
from webapp.exchange import pattern_file
from webapp.printing import jobs
from webapp.server.app import create_app
from webapp.settings import Settings

CHECKS = (not_a_server_error, status_code_conformance, content_type_conformance, response_schema_conformance)


def described():
    with TemporaryDirectory() as folder:
        app = create_app(Settings(Path(folder), browser=False))
        app.state.services.database.close()
        return schemathesis.openapi.from_dict(app.openapi())


CALLS = {found.ok().label: found.ok() for found in described().get_all_operations()}


@pytest.fixture(scope="module")
def client(tmp_path_factory, portal):
    app = create_app(Settings(tmp_path_factory.mktemp("described"), browser=False))
    with pytest.MonkeyPatch.context() as patches, client_of(app, portal) as client:
        patches.setattr(jobs, "WorkerProcess", PrintsHere)
        yield client


def answered_with(operation: dict) -> list[dict]:
    """What the description says of a call's answers when all goes well."""
    return [answer for status, answer in operation["responses"].items() if status.startswith("2") and status != "204"]


@pytest.mark.parametrize("label", CALLS)
def test_every_answer_of_the_api_is_described_field_by_field(label):
    for answer in answered_with(CALLS[label].definition.raw):
        ((media_type, content),) = answer["content"].items()
        schema = content["schema"]
        if label == "GET /api/pattern-file.schema.json":
            assert media_type == "application/schema+json"
        elif media_type == "application/json":
            assert "$ref" in schema, f"{label} answers with JSON of no model"
        else:
            assert schema == {"type": "string", "format": "binary"}


def fields_of(answer: object, schema: dict, models: dict, place: str = "") -> list[str]:
    """The places of an answer's fields that its description does not name."""
    if "$ref" in schema:
        schema = models[schema["$ref"].rpartition("/")[2]]
    if "anyOf" in schema:
        schema = next(part for part in schema["anyOf"] if part.get("type") != "null")
        return fields_of(answer, schema, models, place)
    if isinstance(answer, list) and "items" in schema:
        return [where for part in answer for where in fields_of(part, schema["items"], models, f"{place}[]")]
    if not isinstance(answer, dict):
        return []
    known = schema.get("properties", {})
    return [f"{place}.{name}" for name in answer if name not in known] + [
        where
        for name in answer
        if name in known
        for where in fields_of(answer[name], known[name], models, f"{place}.{name}")
    ]


ASKED = {
    "/api/patterns": "",
    "/api/beads": "search=sea",
    "/api/patterns/{id}/colourways": "",
    "/api/beads/{bead}": "",
    "/api/look-alikes": "colour=%231d3350&colour=%23203755",
    "/api/patterns/{id}": "",
    "/api/patterns/{id}/stringing": "length=45+cm",
    "/api/patterns/{id}/materials": "length=45+cm",
    "/api/answers": "pattern={id}&length=45+cm&closure=ring",
}


@pytest.mark.parametrize("address", ASKED)
def test_no_field_of_an_answer_is_missing_in_its_description(client, address):
    description = client.get("/api/openapi.json").raise_for_status().json()
    number = client.post("/api/patterns", json=pattern_file.to_document(harbour())).json()["id"]
    if client.get("/api/beads").json()["total"] == 0:
        client.post("/api/beads", json={"name": "Sea", "colour": "#2f7f76"}).raise_for_status()
    way = {"name": "Dusk", "palette": pattern_file.palette_document(harbour().palette)}
    client.post(f"/api/patterns/{number}/colourways", json=way).raise_for_status()
    key = client.get("/api/beads").json()["beads"][0]["bead"]
    place = address.format(id=number, bead=key)
    answer = client.get(place + "?" + ASKED[address].format(id=number)).raise_for_status().json()
    (described,) = answered_with(description["paths"][address]["get"])
    models = description["components"]["schemas"]
    assert fields_of(answer, described["content"]["application/json"]["schema"], models) == []


@pytest.mark.parametrize("label", CALLS)
def test_a_call_is_answered_as_it_is_described(client, label):
    examples = 3 if label.endswith((".pdf", ".png")) else 15

    @settings(max_examples=examples, suppress_health_check=list(HealthCheck))
    @given(case=CALLS[label].as_strategy())
    def answered(case):
        number = client.post("/api/patterns", json=pattern_file.to_document(harbour())).json()["id"]
        if "id" in case.path_parameters and case.path_parameters["id"] % 2:
            case.path_parameters["id"] = number
        sent = case.as_transport_kwargs(base_url=str(client.base_url))
        del sent["cookies"]
        if isinstance(sent.get("data"), bytes):
            sent["content"] = sent.pop("data")
        case.validate_response(client.request(**sent), checks=CHECKS)

    answered()
