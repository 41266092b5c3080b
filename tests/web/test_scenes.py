"""Pictures for a listing: as files of every kind, on their page, over the API, and the rope that turns."""

from dataclasses import replace
from io import BytesIO

import av
import numpy as np
import pytest
from PIL import Image

from engine.cabinet.colourways import Colourway
from engine.scenes.all import SCENES
from engine.scenes.scene import Subject
from engine.scenes.settings import GROUNDS, setting
from engine.scenes.turning import FRAME_MS
from tests.conftest import flat
from tests.examples import harbour
from webapp.pages.addresses import address
from webapp.pictures.images import MEDIA_TYPES
from webapp.pictures.scenes import scene_bytes, scene_name
from webapp.pictures.turning import moving
from webapp.routes import scenes as routes
from webapp.storage import colourways, patterns

SUBJECT = Subject(harbour())


@pytest.fixture
def number(app):
    return patterns.create(app.state.services.database, harbour()).id


def picture(data: bytes) -> np.ndarray:
    return np.asarray(Image.open(BytesIO(data)))


@pytest.mark.parametrize("ground", ["clear", "shadow"])
@pytest.mark.parametrize("key", ["table", "clasp", "worn-princess"])
def test_a_cut_out_is_clear_at_its_corner_and_has_a_shadow_only_where_one_is_wanted(key, ground):
    alpha = picture(scene_bytes(SUBJECT, SCENES[key], setting("square", ground, 140)))[:, :, 3]
    faint = ((alpha > 0) & (alpha < 90)).mean()
    assert alpha[0, 0] == 0 and alpha.max() == 255
    assert (faint > 0.1) == (ground == "shadow" and key != "worn-princess")


def test_a_worn_rope_lies_on_a_figure_and_the_figure_on_the_ground():
    seen = picture(scene_bytes(SUBJECT, SCENES["worn-matinee"], setting("4:3", "white", 160)))
    body = tuple(int(GROUNDS["white"].body[place : place + 2], 16) for place in (1, 3, 5))
    assert tuple(seen[2, 2]) == (255, 255, 255)
    assert (np.abs(seen.astype(int) - body).max(axis=2) < 3).mean() > 0.2


def test_the_same_scene_is_the_same_file_and_its_name_follows_everything_that_shows():
    small = setting(width=90)
    assert scene_bytes(SUBJECT, SCENES["cap"], small) == scene_bytes(SUBJECT, SCENES["cap"], small)
    way = Colourway("Dusk", harbour().palette)
    names = {
        scene_name(subject, key, chosen, form)
        for subject in (SUBJECT, Subject(harbour(), colourways=(way,)), Subject(harbour(), units="in"))
        for key in ("cap", "cone")
        for chosen in (small, setting(width=91), setting(width=90, ground="slate"))
        for form in ("png", "webp")
    }
    assert len(names) == 36


@pytest.mark.parametrize("form", MEDIA_TYPES)
def test_the_api_gives_a_scene_in_every_form(client, number, form):
    answer = client.get(f"/api/patterns/{number}/scene?scene=cap&form={form}&width=96&shape=wide")
    assert (answer.status_code, answer.headers["content-type"]) == (200, MEDIA_TYPES[form])
    assert Image.open(BytesIO(answer.content)).size == (96, 54)


@pytest.mark.parametrize(
    ("asked", "field", "sentence"),
    [
        ("scene=moon", "scene", "“moon” is not known here; expected one of close-up,"),
        ("shape=oval", "shape", "expected one of 4:3, square, wide, tall."),
        ("ground=sand", "ground", "expected one of paper, white,"),
        ("form=tiff", "form", "expected one of png, webp, jpeg."),
        ("form=jpeg&ground=clear", "form", "Format of a picture on a clear background"),
        ("scene=colourways", "scene", "This picture needs a colourway; the pattern has none yet."),
    ],
)
def test_what_there_is_not_is_refused_in_a_sentence(client, number, asked, field, sentence):
    answer = client.get(f"/api/patterns/{number}/scene?width=96&{asked}")
    assert answer.status_code == 422
    assert answer.json()["error"]["field"] == field and sentence in answer.json()["error"]["message"]


def test_the_page_shows_the_scene_with_its_alternative_text_and_offers_it_as_a_file(client, number):
    shown = flat(client.get(address("pictures", id=number, scene="cone", ground="slate", form="jpeg")).text)
    seen = SCENES["cone"].seen(SUBJECT)
    assert f'alt="{seen}"' in shown and f"{seen}</textarea>" in shown
    assert '<option value="cone" selected>End with a cone</option>' in shown
    file = address("scene_picture", id=number, download="yes", scene="cone", shape="4:3", ground="slate", form="jpeg")
    assert file.replace("&", "&amp;") in shown


def test_a_picture_is_saved_under_a_harmless_name(client, app, monkeypatch):
    monkeypatch.setattr(routes, "setting", lambda shape, ground, width: setting(shape, ground, 96))
    number = patterns.create(app.state.services.database, replace(harbour(), title='../"Sea\\ <b>')).id
    kept = client.get(address("scene_picture", id=number, scene="cap", form="webp", download="yes"))
    name = kept.headers["content-disposition"].split("filename=")[1].strip('"')
    assert name.endswith("-cap.webp") and not set('/\\"<>') & set(name)


def test_a_scene_of_colourways_is_offered_once_there_is_one(client, app, number):
    assert "This picture needs a colourway" in client.get(address("pictures", id=number, scene="colourways")).text
    colourways.add(app.state.services.database, number, Colourway("Dusk", harbour().palette))
    assert "its own colours and Dusk" in client.get(address("pictures", id=number, scene="colourways")).text


@pytest.fixture
def few_frames(monkeypatch):
    """Three small frames: a quarter minute would be long."""
    drawn = routes.turned_frame
    monkeypatch.setattr(routes, "FRAMES", 3)
    monkeypatch.setattr(routes, "turned_frame", lambda subject, ground, number: drawn(subject, ground, number, 80))


@pytest.mark.parametrize("form", ["webp", "gif"])
def test_a_turning_rope_is_drawn_once_kept_and_goes_on_for_ever(client, app, number, few_frames, form):
    asked = {"ground": "paper", "form": form}
    page = address("pictures", id=number, scene="turning", **asked)
    assert "It is not drawn yet" in client.get(page).text
    assert client.get(address("turning", id=number, **asked)).status_code == 404
    assert client.post(address("turning", id=number, **asked)).status_code == 303
    for work in app.state.services.works._works.values():
        work.future.result()
    assert "turning slowly about its axis" in client.get(page).text
    kept = client.get(address("turning", id=number, **asked))
    assert kept.headers["content-type"] == f"image/{form}"
    moves = Image.open(BytesIO(kept.content))
    assert (moves.n_frames, moves.size, moves.info["loop"]) == (3, (80, 30), 0)
    moves.seek(1)
    moves.load()
    assert moves.info["duration"] == FRAME_MS


def test_a_turning_rope_as_a_film_takes_as_long_and_is_the_same_bytes_every_time(monkeypatch):
    frames = [np.full((31, 80, 3), shade, np.uint8) for shade in (40, 120, 200)]
    film = moving(frames, "mp4")
    assert film == moving(frames, "mp4")
    with av.open(BytesIO(film)) as opened:
        shown = [frame.to_ndarray(format="rgb24") for frame in opened.decode(video=0)]
        assert opened.streams.video[0].average_rate * FRAME_MS == 1000
    assert [image.shape for image in shown] == [(30, 80, 3)] * 3
    assert all(abs(image.mean() - frame.mean()) < 3 for image, frame in zip(shown, frames, strict=True))


def test_a_film_of_a_turning_rope_is_shown_as_one(client, app, number, few_frames):
    asked = {"ground": "paper", "form": "mp4"}
    client.post(address("turning", id=number, **asked))
    for work in app.state.services.works._works.values():
        work.future.result()
    assert (
        '<video class="shop-picture" src="' in client.get(address("pictures", id=number, scene="turning", **asked)).text
    )
    assert client.get(address("turning", id=number, **asked)).headers["content-type"] == "video/mp4"


def test_a_turning_rope_can_be_stopped_and_begun_again(client, app, number, few_frames):
    place = address("stop_turning", id=number, ground="paper", form="webp")
    assert client.post(place).status_code == 303
    client.post(address("turning", id=number, ground="paper", form="webp"))
    assert client.post(place).headers["location"].startswith(f"/patterns/{number}/pictures?scene=turning")
    assert app.state.services.works._works == {}


def test_a_gif_has_no_clear_ground_and_that_is_said(client, number):
    shown = client.get(address("pictures", id=number, scene="turning", ground="clear", form="gif")).text
    assert "GIF has no clear background; choose another background, or WebP." in shown
    refused = client.post(address("turning", id=number, ground="clear", form="gif"))
    assert refused.status_code == 422 and "expected one of webp" in refused.text


def test_a_gif_that_would_be_too_large_is_given_fewer_colours(monkeypatch):
    frames = [np.random.default_rng(number).integers(0, 255, (40, 60, 3), np.uint8) for number in range(3)]
    whole = moving(frames, "gif")
    monkeypatch.setattr("webapp.pictures.turning.LARGEST", len(whole) - 1)
    assert len(moving(frames, "gif")) < len(whole)
