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
from webapp.exchange import pattern_file
from webapp.server.app import create_app
from webapp.settings import Settings

CHECKS = (not_a_server_error, status_code_conformance, content_type_conformance, response_schema_conformance)


def described():
    with TemporaryDirectory() as folder:
        app = create_app(Settings(Path(folder), browser=False))
        app.state.desk.database.close()
        return schemathesis.openapi.from_dict(app.openapi())


CALLS = {found.ok().label: found.ok() for found in described().get_all_operations()}


@pytest.fixture(scope="module")
def client(tmp_path_factory, portal):
    app = create_app(Settings(tmp_path_factory.mktemp("described"), browser=False))
    with client_of(app, portal) as client:
        yield client


@pytest.mark.parametrize("label", CALLS)
def test_a_call_is_answered_as_it_is_described(client, label):
    examples = 3 if label.endswith((".pdf", ".png")) else 25

    @settings(max_examples=examples, suppress_health_check=list(HealthCheck))
    @given(case=CALLS[label].as_strategy())
    def answered(case):
        number = client.post("/api/patterns", json=pattern_file.to_document(harbour())).json()["id"]
        if "id" in case.path_parameters and case.path_parameters["id"] % 2:
            case.path_parameters["id"] = number
        sent = case.as_transport_kwargs(base_url=str(client.base_url))
        del sent["cookies"]
        case.validate_response(client.request(**sent), checks=CHECKS)

    answered()
