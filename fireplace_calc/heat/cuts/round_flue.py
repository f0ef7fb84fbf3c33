"""Heat from the flue through its wall to the framing at floors and roof: one line of layers.

Good for a place beside a straight flue, far from its corners; a square flue counts as a round one
of the same girth.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import pi

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.tables.heat import FlueFire, flue_fires
from fireplace_calc.base.units import INCH
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.heat.conduction.exchange import between
from fireplace_calc.heat.conduction.mesh import Film, Gap, NotWorked
from fireplace_calc.heat.cuts.from_geometry import solid
from fireplace_calc.heat.cuts.layers import HeatLayer, at_edge, layer_mesh
from fireplace_calc.heat.cuts.spells import HOUR, Spells
from fireplace_calc.heat.cuts.wall_plan import MASONRY_SENDS, WOOD_SENDS
from fireplace_calc.heat.cuts.warming import Warming

GAS, HOUSE = "gas", "room"
TIMBER = 3.5 * INCH
"""How deep framing goes on behind its face. [m]"""
CELL = 0.25 * INCH
"""[m]"""
BEFORE = 4.0
"""Hours of a usual fire before a soot fire breaks out. [h]"""
WATCHED = 12.0
"""Hours that are looked at after a fire. [h]"""
OUT_GAS, OUT_FILM = 30.0, 5.0
"""What goes up a flue whose fire is out: our judgement. [C], [W/(m2 K)]"""


@dataclass(frozen=True, slots=True)
class BesideFlue(Warming):
    """A fire in the flue and the hours after it.

    Attributes
    ----------
    fire : FlueFire
    times : array (n,)
        [h]
    wood : array (n,)
        Face of the framing. [C]
    liner : array (n,)
        Between inner and outer face of the liner. [K]
    middle : array (n,)
        Mean of the two. [C]
    out : float
        When the fire goes out. [h]
    """

    fire: FlueFire
    times: Array
    wood: Array
    liner: Array
    middle: Array
    out: float


def flue_layers(geometry: Geometry) -> list[HeatLayer]:
    """Liner, gap, casing, chimney wall, the air left round it, and wood.

    Parameters
    ----------
    geometry : Geometry

    Raises
    ------
    NotWorked
        When the air round the chimney is not known, or nothing is known of a material.
    """
    f, design = geometry.frame, geometry.design
    air = design.clearance.chimney
    if air is None:
        raise NotWorked("How much air is left round the chimney is not known.")
    masonry = Gap(0, between(MASONRY_SENDS, MASONRY_SENDS))
    named = geometry.parts_by_name
    thick = f.unit_half - f.bore.width / 2
    if "flue liner" not in named:  # the sections of a set are liner and casing in one
        layers = [HeatLayer("liner", thick, solid(named["flue casing"].material))]
    else:
        layers = [HeatLayer("liner", f.bore.wall, solid(named["flue liner"].material))]
        if thick - f.bore.wall > 1e-6:
            casing = solid(named["flue casing"].material)
            layers.append(HeatLayer("casing", thick - f.bore.wall, casing))
    if f.cavity_half - f.unit_half > 1e-6:
        layers.append(HeatLayer("gap", f.cavity_half - f.unit_half, masonry))
    wall = solid(named["chimney walls"].material)
    layers.append(HeatLayer("chimney wall", design.chimney.wall, wall))
    if air > 0:
        layers.append(HeatLayer("air", air, Gap(0, between(MASONRY_SENDS, WOOD_SENDS))))
    return [*layers, HeatLayer("wood", TIMBER, solid("wood"))]


def girth_radius(geometry: Geometry) -> float:
    """Radius of a round flue of the same girth inside. [m]"""
    bore = geometry.frame.bore
    return bore.width / 2 if bore.round else (bore.width + bore.depth) / pi


def beside_flue(
    layers: Sequence[HeatLayer], radius: float, fire: FlueFire, room: float = 21.0
) -> BesideFlue:
    """Run a fire and the hours after it.

    Parameters
    ----------
    layers : sequence of HeatLayer
    radius : float
        Inside the liner. [m]
    fire : FlueFire
        A soot fire breaks out after hours of a usual one.
    room : float
        [C]
    """
    mesh = layer_mesh(layers, Film(GAS, fire.film), HOUSE, CELL, radius, ring=True)
    usual = flue_fires()["usual"]
    phases = [(fire.gas, fire.hours, fire.film)]
    if fire.key == "soot":
        phases.insert(0, (usual.gas, BEFORE, usual.film))
    phases.append((OUT_GAS, WATCHED, OUT_FILM))
    spells = Spells(mesh, room)
    for gas, hours, film in phases:
        step = min(1200.0, hours * HOUR / 12)
        spells.go({GAS: gas, HOUSE: room}, {GAS: film}, hours, step)
    edges = radius + np.cumsum([layer.thick for layer in layers])
    inner, outer, wood = (
        at_edge(mesh, spells.points, place) for place in (radius, edges[0], edges[-2])
    )
    return BesideFlue(
        fire,
        spells.times,
        wood,
        inner - outer,
        (inner + outer) / 2,
        spells.now - WATCHED,
    )


def all_flue_fires(geometry: Geometry) -> Iterator[BesideFlue]:
    """Every fire of the table in this geometry's flue."""
    layers, radius = flue_layers(geometry), girth_radius(geometry)
    room = geometry.design.house.indoor - 273.15
    for fire in flue_fires().values():
        yield beside_flue(layers, radius, fire, room)
