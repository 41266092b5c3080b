"""Every scene by its key, in the order in which they are offered."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from engine.errors import ChoiceError
from engine.scenes.ends import ENDS
from engine.scenes.lying import LYING
from engine.scenes.measured import RULER
from engine.scenes.scene import Scene
from engine.scenes.worn import WORN

SCENES: Mapping[str, Scene] = MappingProxyType({scene.key: scene for scene in (*LYING, *ENDS, RULER, *WORN)})


def scene_named(key: str) -> Scene:
    """Raises ChoiceError for a scene that there is not."""
    if key not in SCENES:
        raise ChoiceError("Scene", key, SCENES, "scene")
    return SCENES[key]
