"""Heat from the fire down through hearth and slab to wood that lies against its underside: one line
of layers under the middle of the fire.

No wood may lie there. This shows what becomes of form boards that were left, or of a floor that
somebody ran under the slab. Ashes keep some of the heat off; they are left out.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.tables.heat import WallFire
from fireplace_calc.base.units import INCH
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.heat.conduction.exchange import DOWN, between
from fireplace_calc.heat.conduction.mesh import HELD, Film, Gap, NotWorked, Solid
from fireplace_calc.heat.conduction.raster import inside
from fireplace_calc.heat.cuts.behind import EMBERS, EMBERS_FILM, LONGEST
from fireplace_calc.heat.cuts.from_geometry import solid
from fireplace_calc.heat.cuts.layers import HeatLayer, at_edge, layer_mesh
from fireplace_calc.heat.cuts.spells import Spells
from fireplace_calc.heat.cuts.wall_plan import FIRE, MASONRY_SENDS, ROOM
from fireplace_calc.heat.cuts.warming import Warming

BOARD = 0.75 * INCH
"""Thickness of a form board that was left. [m]"""
CELL = 0.5 * INCH
"""[m]"""


@dataclass(frozen=True, slots=True)
class UnderHearth(Warming):
    """A fire on the hearth and the hours after it.

    Attributes
    ----------
    fire : WallFire
    out : float
        When it goes out. [h]
    times : array (n,)
        [h]
    wood : array (n,)
        Upper face of the board. [C]
    """

    fire: WallFire
    out: float
    times: Array
    wood: Array


def hearth_layers(geometry: Geometry) -> list[HeatLayer]:
    """What lies between the fire and the underside of the slab, from above.

    Raises
    ------
    NotWorked
        When nothing is known of a material.
    """
    f = geometry.frame
    deep = f.back_at(f.hearth) / 2
    cut = [(part, part.section()) for part in geometry.parts if part.material != "air"]
    levels = {f.hearth, f.slab_bottom}
    levels |= {z for _, rings in cut for ring in rings for _, z in ring}
    stops = sorted(
        (z for z in levels if f.slab_bottom - 1e-9 <= z <= f.hearth + 1e-9), reverse=True
    )
    layers: list[HeatLayer] = []
    for top, foot in zip(stops, stops[1:], strict=False):
        if top - foot < 1e-6:
            continue
        at = np.array([deep]), np.array([(top + foot) / 2])
        here = [p for p, rings in cut if any(inside(ring, *at)[0] for ring in rings)]
        stuff: Solid | Gap = Gap(0, between(MASONRY_SENDS, MASONRY_SENDS), way=DOWN)
        if here:
            stuff = solid(here[-1].material)
        name = here[-1].name if here else "hollow"
        if layers and layers[-1].name == name:
            thick = layers[-1].thick + top - foot
            layers[-1] = HeatLayer(name, thick, stuff)
        else:
            layers.append(HeatLayer(name, top - foot, stuff))
    if not layers or isinstance(layers[0].stuff, Gap) or isinstance(layers[-1].stuff, Gap):
        raise NotWorked("Under the middle of the fire nothing solid carries the hearth.")
    return layers


def under_hearth(
    layers: list[HeatLayer], fire: WallFire, hours: float, room: float = 21.0
) -> UnderHearth:
    """Burn a fire on the hearth, let it go out, and wait until the board is past its hottest.

    Parameters
    ----------
    layers : list of HeatLayer
    fire : WallFire
        Its face counts for the hearth too.
    hours : float
        How long it burns. [h]
    room : float
        Above and below. [C]
    """
    down = [*layers, HeatLayer("board", BOARD, solid("wood"))]
    film = HELD if fire.film is None else fire.film
    mesh = layer_mesh(down, Film(FIRE, film), ROOM, CELL)
    touched = sum(layer.thick for layer in layers)
    spells = Spells(mesh, room)
    spells.go({FIRE: fire.face, ROOM: room}, {FIRE: film}, hours)
    cold = {FIRE: EMBERS, ROOM: room}
    while spells.now < hours + LONGEST:
        spells.go(cold, {FIRE: EMBERS_FILM}, 4.0, sudden=spells.now == hours)
        wood = at_edge(mesh, spells.points, touched)
        if wood.argmax() < len(wood) - 1:
            break
    return UnderHearth(fire, hours, spells.times, wood)
