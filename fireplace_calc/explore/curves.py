"""How the face velocity runs when one thing is moved, and the pressure on the way of the smoke."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, fields

import numpy as np

from fireplace_calc.base.arrays import Array
from fireplace_calc.base.inputs import inputs_of
from fireplace_calc.base.tables.draft import coefficient
from fireplace_calc.design.records import Design
from fireplace_calc.draft import (
    FlowPath,
    face_velocity,
    fire,
    roof_wind,
    smoke_odds,
    surroundings,
    trace_flow_path,
    wind_range,
)
from fireplace_calc.draft.cases import CASES
from fireplace_calc.draft.operating import DOORS
from fireplace_calc.draft.result import DraftResult
from fireplace_calc.explore.sketches import sketch, try_change
from fireplace_calc.geometry.frame import Framed


@dataclass(frozen=True, slots=True)
class PressureStep:
    """One place on the way of the smoke.

    Attributes
    ----------
    name : str
    level : float
        Above the room floor. [m]
    pressure : float
        Against the open air at that level. [Pa]
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
    values : array, shape (n,)
        Where the input was put. [m] or a count
    sizing : array, shape (n,)
        Face velocity, sizing mode. [m/s]
    low, middle, high : array, shape (n,)
        5, 50 and 95 of 100 evenings, operating mode. [m/s]
    here : float
        The design's own. [m] or a count
    target : float
        The published face velocity. [m/s]
    """

    label: str
    kind: str
    values: Array
    sizing: Array
    low: Array
    middle: Array
    high: Array
    here: float
    target: float


def pressure_steps(
    found: DraftResult, made: Framed, case: str = "mild"
) -> tuple[PressureStep, ...]:
    """Pressure along the way of the smoke, from the room to the open air.

    Parameters
    ----------
    found : DraftResult
    made : Framed
        The design's own.
    case : str
        One of the evenings of ``CASES``, operating mode.

    Returns
    -------
    tuple of PressureStep
        Room first; the last, the open air, is zero by definition, and the one before it by
        computation.
    """
    k, f = CASES.index(case), made.frame
    losses = {name: float(loss[k]) for name, loss in found.flows.losses.items()}
    height = float(found.path.height)
    lift = float(found.flows.draft[k]) / height
    pull, wind = float(found.flows.pull[k]), float(found.flows.wind[k])
    start = f.liner_top - height
    steps, pressure = [PressureStep("room", start, -pull)], -pull - losses["mouth"] - losses[DOORS]
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


def flow_paths(designs: Sequence[Design]) -> FlowPath:
    """The way of the smoke through many designs.

    Parameters
    ----------
    designs : sequence of Design

    Returns
    -------
    FlowPath
        Each field an array of shape (number of designs, 1).
    """
    paths = [trace_flow_path(sketch(d)) for d in designs]
    return FlowPath(
        *(
            np.array([float(getattr(path, name.name)) for path in paths])[:, None]
            for name in fields(FlowPath)
        )
    )


def winds(designs: Sequence[Design]) -> tuple[Array, Array]:
    """What wind adds to the draft at worst and at best at the top of many designs.

    Parameters
    ----------
    designs : sequence of Design

    Returns
    -------
    tuple of array
        Each of shape (number of designs, 1), over the wind's velocity pressure. [-]
    """
    ranges = np.array([wind_range(roof_wind(sketch(d))) for d in designs])
    return ranges[:, :1], ranges[:, 1:]


def face_curve(design: Design, key: str, values: Iterable[float], draws: int = 400) -> Curve:
    """How the face velocity runs when one input is moved and everything else stays.

    Parameters
    ----------
    design : Design
    key : str
        Dotted name of the input, such as ``flue.sections`` or ``opening.extension``.
    values : iterable of float
        Where to put it; what cannot be drawn is left out. [m] or a count
    draws : int
        Evenings to each point of the band; every point meets the same ones. [-]

    Returns
    -------
    Curve
    """
    group, name = key.split(".")
    spec = inputs_of(getattr(design, group))[name]
    changed = [
        (v, try_change(design, {key: int(v) if spec.kind == "count" else f"{float(v)!r} m"}))
        for v in values
    ]
    places, drawable = zip(*((v, d) for v, d in changed if d is not None), strict=True)
    paths = flow_paths(drawable)
    spread = smoke_odds(
        paths,
        fire(design),
        surroundings(design),
        design.site.mild,
        winds(drawable),
        tested=design.house.leakage is not None,
        cap_known=design.chimney.rain_cap is not None,
        draws=draws,
    )
    sized = face_velocity(
        paths.opening_area,
        paths.flue_area,
        paths.diameter,
        paths.height,
        paths.length,
        paths.inlet,
        paths.other,
    )
    return Curve(
        spec.label,
        spec.kind,
        np.asarray(places, float),
        np.asarray(sized)[:, 0],
        spread.face[0],
        spread.face[1],
        spread.face[2],
        float(getattr(getattr(design, group), name)),
        coefficient("face velocity"),
    )
