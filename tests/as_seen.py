"""What stands in rooms of invented designs that are drawn from a seed, and small stills of the example, in a few figures each.

Whoever moves furniture or light on purpose looks at it and writes the figures anew: ``.venv/bin/python tests/as_seen.py``; the
change stands in ``tests/pins/as_seen.csv`` then.
"""

import sys
from functools import cache
from random import Random

import numpy as np
from as_built import FIGURES, figures
from held_figures import held, hold

from fireplace_calc import assess, change, load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.units import InputError
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.scene.eyes import standpoints
from fireplace_calc.scene.setting.furnished import room_measures, setting
from fireplace_calc.scene.still.option_pictures import in_room
from fireplace_calc.scene.still.still_picture import still

ROOMS = 40
"""Rooms that are furnished."""
SMALL = (60, 40)
"""Of a still. [-]"""


def _room(seed):
    """A room of any size round a fireplace, in a wall or across a corner, with a seat or without."""
    lot = Random(f"room {seed}")
    design = load(DESIGNS / f"{('plain', 'boathouse-laid', 'boathouse')[seed % 3]}.toml")
    told = {
        "house.room_length": f"{lot.uniform(9, 34):.1f} ft",
        "house.room_width": f"{lot.uniform(8, 26):.1f} ft",
        "house.ceiling": f"{lot.uniform(7, 14):.1f} ft",
        "breast.off_center": f"{lot.choice((0, 0, lot.uniform(-4, 4))):.2f} ft",
        "base.hearth_level": f"{lot.choice((0, 12, 18))} in",
        "hearth.front": f"{lot.uniform(16, 40):.0f} in",
        "seat.left": f"{lot.choice((0, lot.uniform(2, 6))):.1f} ft",
        "breast.place": lot.choice(("in a wall", "in a wall", "across a corner")),
        "opening.width": f"{lot.uniform(28, 72):.0f} in",
    }
    for key, text in told.items():
        try:
            design = change(design, {key: text})
        except InputError:
            continue
    return build_geometry(design)


def _things(things):
    yield len(things)
    for thing in things:
        yield thing.key, thing.name, thing.stuff, thing.kind, thing.points, thing.faces.shape


def furnished(seed):
    """Furniture, walls and windows of a room, from where it is looked at, and where its light is."""
    geometry = _room(seed)
    measures = room_measures(geometry)
    light = [measures.left, measures.right, measures.front, measures.back, measures.ceiling]
    for window in measures.windows:
        light += [window.front, window.back, window.sill, window.head]
    return {
        "things": figures(_things(setting(geometry))),
        "light": figures([light, measures.lamp, measures.fire]),
        "eyes": figures([(e.name, e.stands, e.looks, e.angle) for e in standpoints(geometry)]),
    }


@cache
def _example():
    result = assess(load(DESIGNS / "boathouse-laid.toml"))
    return in_room(result), standpoints(result.geometry)


def pictured(name):
    """Mean color of each ninth of a still, in turns: red, green, blue."""
    room, eyes = _example()
    eye = next(eye for eye in eyes if eye.name == name)
    dots = still(room.things, room.measures, eye, *SMALL, room.layouts, finer=1).dots
    rows = (
        band.mean(axis=(0, 1))
        for strip in np.array_split(dots, 3)
        for band in np.array_split(strip, 3, axis=1)
    )
    return {f"ninth {n}": np.array([*color, color.sum()]) for n, color in enumerate(rows, 1)}


STILLS = ("Standing", "Corner")
CASES = (*STILLS, *(f"room {seed}" for seed in range(ROOMS)))


def figures_of(case):
    """By what of a room, or by the ninth of a picture."""
    return pictured(case) if case in STILLS else furnished(int(case.removeprefix("room ")))


def kept():
    """By case and what of it, the figures of the file."""
    return held("as_seen")


def main():
    found = (((name, what), row) for name in CASES for what, row in figures_of(name).items())
    hold("as_seen", ("case", "of", *FIGURES), found)


if __name__ == "__main__":
    sys.exit(main())
