"""How the face velocity runs when one thing is moved, and the pressure on the way of the smoke."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields

import numpy as np

from fireplace_calc.base.inputs import inputs_of
from fireplace_calc.base.tables.draft import coefficient
from fireplace_calc.design.records import Design
from fireplace_calc.draft import (
    FlowPath,
    face_velocity,
    fire,
    smoke_odds,
    surroundings,
    trace_flow_path,
)
from fireplace_calc.draft.cases import CASES
from fireplace_calc.draft.result import DraftResult
from fireplace_calc.explore.sketches import moved, sketch


@dataclass(frozen=True, slots=True)
class PressureStep:
    """One place on the way of the smoke: level above the floor [m], pressure against the open air
    at that level [Pa].
    """

    name: str
    level: float
    pressure: float


@dataclass(frozen=True, slots=True)
class Curve:
    """Face velocity against one moved input.

    Attributes
    ----------
    label, kind : str
        Of the moved input and of its values (``length`` in m, or ``count``).
    values : array
        Where the input was put.
    sizing : array
        Face velocity, sizing mode. [m/s]
    low, middle, high : array
        5, 50 and 95 of 100 evenings, operating mode. [m/s]
    here : float
        Where the design stands.
    wanted : float
        The published face velocity. [m/s]
    """

    label: str
    kind: str
    values: np.ndarray
    sizing: np.ndarray
    low: np.ndarray
    middle: np.ndarray
    high: np.ndarray
    here: float
    wanted: float


def pressure_steps(found: DraftResult, made, case: str = "mild") -> tuple[PressureStep, ...]:
    """Pressure along the way of the smoke, from the room to the open air.

    Parameters
    ----------
    found : DraftResult
    made : Geometry
        The design's own.
    case : str
        One of the evenings of ``CASES``, operating mode.

    Returns
    -------
    tuple of Step
        Room first; the last, the open air, is zero by definition, and the one before it by
        computation.
    """
    k, f = CASES.index(case), made.frame
    losses = {name: float(loss[k]) for name, loss in found.flows.losses.items()}
    lift = float(found.flows.draft[k]) / found.path.height
    pull, wind = float(found.flows.pull[k]), float(found.flows.wind[k])
    start = f.liner_top - found.path.height
    steps, pressure = [PressureStep("room", f.hearth, -pull)], -pull - losses["mouth"]
    steps.append(PressureStep("opening", start, pressure))
    pressure += lift * (f.throat - start) - losses["throat"]
    steps.append(PressureStep("throat", f.throat, pressure))
    pressure += lift * (f.flue_start - f.throat) - losses["smoke chamber"] - losses["velocity head"]
    steps.append(PressureStep("flue start", f.flue_start, pressure))
    if losses["offset"]:
        share = (f.offset_top - f.flue_start) / (f.liner_top - f.flue_start)
        pressure += (
            lift * (f.offset_top - f.flue_start) - share * losses["friction"] - losses["offset"]
        )
        steps.append(PressureStep("offset", f.offset_top, pressure))
        pressure += lift * (f.liner_top - f.offset_top) - (1 - share) * losses["friction"]
    else:
        pressure += lift * (f.liner_top - f.flue_start) - losses["friction"]
    steps.append(PressureStep("flue top", f.liner_top, pressure))
    pressure += wind - losses["rain cap"] - losses["spark screen"]
    return (*steps, PressureStep("open air", f.liner_top, pressure))


def many(designs: Sequence[Design]) -> FlowPath:
    """The ways of the smoke through many designs, each field an array with one entry a design in a
    column.
    """
    ways = [trace_flow_path(sketch(d)) for d in designs]
    return FlowPath(
        *(
            np.array([float(getattr(path, name.name)) for path in ways])[:, None]
            for name in fields(FlowPath)
        )
    )


def face_curve(design: Design, key: str, values, draws: int = 400) -> Curve:
    """How the face velocity runs when one input is moved and everything else stays.

    Parameters
    ----------
    design : Design
    key : str
        Dotted name of the input, such as ``flue.sections`` or ``opening.extension``.
    values : array
        Where to put it; what cannot be drawn is left out. [m] or a count
    draws : int
        Evenings to each point of the band; every point meets the same ones.

    Returns
    -------
    Curve
    """
    group, name = key.split(".")
    spec = inputs_of(getattr(design, group))[name]
    tried = [
        (v, moved(design, {key: int(v) if spec.kind == "count" else f"{float(v)!r} m"}))
        for v in values
    ]
    values, drawable = zip(*((v, d) for v, d in tried if d is not None), strict=True)
    ways = many(drawable)
    spread = smoke_odds(
        ways,
        fire(design),
        surroundings(design),
        design.site.mild,
        tested=design.house.leakage is not None,
        cap_known=design.chimney.rain_cap is not None,
        draws=draws,
    )
    sized = face_velocity(
        ways.opening_area,
        ways.flue_area,
        ways.diameter,
        ways.height,
        ways.length,
        ways.inlet,
        ways.other,
    )
    return Curve(
        spec.label,
        spec.kind,
        np.asarray(values, float),
        sized[:, 0],
        *spread.face,
        float(getattr(getattr(design, group), name)),
        coefficient("face velocity"),
    )
