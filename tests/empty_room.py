"""A room with nothing in it: stills of it are drawn in no time."""

from dataclasses import replace

from fireplace_calc.scene.setting.shell import shell_things
from fireplace_calc.scene.still import light_dots, option_pictures
from fireplace_calc.scene.whole_scene import gather_scene


def without_furniture(result):
    """The scene, and of its room walls, floor and ceiling alone."""
    return replace(gather_scene(result), setting=tuple(shell_things(result.geometry)))


def empty_the_room(monkeypatch):
    """From here on stills show nothing that stands in the room, with shadows of few dots."""
    monkeypatch.setattr(light_dots, "SHADOW", 60)
    monkeypatch.setattr(option_pictures, "gather_scene", without_furniture)
