"""An exercise on the heat in the back of a firebox: a chain of resistances, and the hours after."""

from __future__ import annotations

from functools import lru_cache
from random import Random

from fireplace_calc.base.tables.heat import conductors, flue_fires
from fireplace_calc.base.units import INCH
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.lessons.reply import Exercise, Given, step
from fireplace_calc.rules import Pack

ZERO = 273.15
MORE = 4 * INCH
HOURS = (0, 2, 4, 6, 8, 10, 12)
"""After fire out that the table tells. [h]"""
CASES = ((4, "usual"), (4, "hard"), (4, "soot"), (6, "hard"))
"""Chimney walls [in] and fires whose table has one highest figure, however it is rounded."""


def between_layers(resistances: list[float], hot: float, cold: float) -> list[float]:
    """Temperatures where layers in a row meet, when the wall no longer warms.

    Parameters
    ----------
    resistances : list of float
        From hot to cold. [m2 K/W]
    hot, cold : float
        At either end. [K]

    Notes
    -----
    Each layer takes its share of the fall: resistances in a row (ISO 6946).

    Examples
    --------
    >>> between_layers([0.1, 0.2, 0.1], 400.0, 300.0)
    [375.0, 325.0]
    """
    whole, passed, met = sum(resistances), 0.0, []
    for one in resistances[:-1]:
        passed += one
        met.append(hot - (hot - cold) * passed / whole)
    return met


@lru_cache(maxsize=len(CASES))
def _after(wall: int, key: str) -> tuple[Design, str, tuple[float, ...]]:
    """A design, the fire's name, and its wood beside the flue at ``HOURS`` after fire out. [K]"""
    import numpy as np  # here, so that the other exercises need not wait for numpy

    from fireplace_calc.heat.cuts.round_flue import beside_flue, flue_layers, girth_radius

    design = change(Design(), {"chimney.wall": f"{wall} in", "clearance.chimney": "2 in"})
    geometry, fire = build_geometry(design), flue_fires()[key]
    run = beside_flue(flue_layers(geometry), girth_radius(geometry), fire)
    told = np.interp(run.out + np.array(HOURS), run.times, run.wood)
    return design, fire.label, tuple(float(t) + ZERO for t in told)


def _resistance(thick: int, stuff: str) -> float:
    """Of so many inches, as it is printed. [m2 K/W]"""
    return round(thick * INCH / conductors()[stuff].conductivity, 3)


def wood(seed: int | str, pack: Pack, rng: Random) -> Exercise:
    """A chain of resistances behind a firebox; when the wood beside a flue is hottest."""
    lining, masonry = rng.choice((2, 4)), rng.choice((4, 6, 8))
    hot, cold = ZERO + rng.randrange(180, 401, 20), ZERO + rng.randrange(18, 23)
    layers = [
        _resistance(lining, "firebrick"),
        _resistance(masonry, "brick"),
        rng.choice((0.10, 0.12, 0.14)),
        rng.choice((0.60, 0.70, 0.80)),
    ]
    more = _resistance(4, "brick")
    thicker = [layers[0], layers[1] + more, *layers[2:]]
    fall, whole = hot - cold, sum(layers)
    design, fire, told = _after(*rng.choice(CASES))
    met, after = between_layers(layers, hot, cold), between_layers(thicker, hot, cold)
    highest = HOURS[told.index(max(told))]
    names = (
        f"Firebrick lining, {lining} in",
        f"Brick behind it, {masonry} in",
        "Closed air gap",
        "Studs, board and the room's air",
    )
    return Exercise(
        "wood",
        "heat",
        "Heat on its way to the wood",
        seed,
        pack.name,
        "A fire has been kept up until the wall behind it no longer warms. The same heat goes"
        " through layer after layer, and each takes its share of the fall from fire to room: its"
        " resistance over all of them together. A line through the middle of the back, for"
        " learning. The table is of wood beside a flue, figured from one fire. The code's"
        " clearance stands, whatever comes out.",
        (
            Given("Inner face of the lining", hot, "temperature"),
            Given("Room", cold, "temperature"),
            *(Given(n, f"{r:.3f} m²K/W", "word") for n, r in zip(names, layers, strict=True)),
            Given("Brick, 4 in more", f"{more:.3f} m²K/W", "word"),
            Given("Table: fire", fire, "word"),
            *(
                Given(f"Table: wood {h} h after fire out", t, "temperature")
                for h, t in zip(HOURS, told, strict=True)
            ),
        ),
        (
            step(
                "Temperature where lining and brick meet",
                met[0],
                "temperature",
                "The inner face less the lining's share of the fall.",
                [
                    (cold + fall * layers[0] / whole, "Counted up from the room: count down."),
                    (ZERO + fall * layers[0] / whole, "That is the fall: take it off the fire."),
                    (hot - fall / 4, "Layers do not share alike: each by its resistance."),
                    (
                        hot - fall * layers[0] / (layers[0] + layers[1]),
                        "Gap and studs count too: the heat has to pass them as well.",
                    ),
                ],
            ),
            step(
                "Temperature of the back of the brick",
                met[1],
                "temperature",
                "The inner face less the shares of lining and brick.",
                [
                    (met[0], "That is where lining and brick meet."),
                    (hot - fall * layers[1] / whole, "The lining's share comes off first."),
                    (met[2], "That is across the gap, at the studs."),
                ],
            ),
            step(
                "Temperature at the studs with 4 in more brick",
                after[2],
                "temperature",
                "Add the 4 in to its layer and to the sum; then take lining, brick and gap off.",
                [
                    (met[2], "That is without the 4 in."),
                    (
                        hot - fall * (sum(thicker[:3])) / whole,
                        "The sum grows too: add the 4 in to all of them together.",
                    ),
                    (after[1], "That is the back of the brick: the gap takes its share too."),
                ],
            ),
            step(
                "Hours after fire out when the table is highest",
                float(highest),
                "count",
                "The wall goes on giving its heat outward: look at the wood after the fire too.",
                [
                    (0.0, "That is when the fire goes out; the wood goes on warming."),
                    (float(HOURS[-1]), "That is the end of the table; look for the highest."),
                ],
            ),
        ),
        design,
    )
