"""Many designs round one: how the face velocity runs when one thing is moved, and a map of what limits where."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields

import numpy as np

from fireplace_calc.assess import DEFAULT_PACK
from fireplace_calc.change import change
from fireplace_calc.design import Design
from fireplace_calc.draft import Path, around, face_velocity, fire, odds, path
from fireplace_calc.draft.outlook import CASES, Outlook
from fireplace_calc.facts import Facts, facts
from fireplace_calc.frame import Frame, frame
from fireplace_calc.inputs import inputs_of
from fireplace_calc.rules import PACKS, Pack
from fireplace_calc.rules.core import FALLS_SHORT
from fireplace_calc.tables import coefficient
from fireplace_calc.units import INCH, InputError

FREE, RATIO, CODE, VELOCITY, STABILITY, IMPOSSIBLE = range(6)
LIMITS = ("nothing here stops it", "flue too small for the opening (code)", "another clause of the code",
          "face velocity under 0.8 ft/s (sizing mode)", "chimney taller than 4.5 times its width (UK figure)",
          "cannot be drawn so")
"""What a field of the map can be stopped by, in the order it is looked for."""
RATIO_RULES = ("FLU-10", "FLU-11", "FLU-12", "FLU-13", "FLU-14")


@dataclass(frozen=True, slots=True)
class Sketch:
    """A design and its frame, without its parts: all that checks and draft read, at a tenth of the price."""

    design: Design
    frame: Frame


@dataclass(frozen=True, slots=True)
class Step:
    """One place on the way of the smoke: level above the floor [m], pressure against the open air at that level [Pa]."""

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


@dataclass(frozen=True, slots=True)
class LimitMap:
    """What stops a design where: ``limit[i, k]`` is an index into ``LIMITS`` at ``extensions[i]`` [m] and ``sections[k]``."""

    extensions: np.ndarray
    sections: np.ndarray
    limit: np.ndarray
    here: tuple[float, int]
    everywhere: tuple[str, ...]
    """Keys of clauses that fall short wherever the sliders stand: they colour nothing."""


def pressure_steps(found: Outlook, made, case: str = "mild") -> tuple[Step, ...]:
    """Pressure along the way of the smoke, from the room to the open air.

    Parameters
    ----------
    found : Outlook
    made : Geometry
        The design's own.
    case : str
        One of the evenings of ``CASES``, operating mode.

    Returns
    -------
    tuple of Step
        Room first; the last, the open air, is zero by definition, and the one before it by computation.
    """
    k, f = CASES.index(case), made.frame
    losses = {name: float(loss[k]) for name, loss in found.flows.losses.items()}
    lift = float(found.flows.draft[k]) / found.path.height
    pull, wind = float(found.flows.pull[k]), float(found.flows.wind[k])
    start = f.liner_top - found.path.height
    steps, pressure = [Step("room", f.hearth, -pull)], -pull - losses["mouth"]
    steps.append(Step("opening", start, pressure))
    pressure += lift * (f.throat - start) - losses["throat"]
    steps.append(Step("throat", f.throat, pressure))
    pressure += lift * (f.flue_start - f.throat) - losses["smoke chamber"] - losses["velocity head"]
    steps.append(Step("flue start", f.flue_start, pressure))
    if losses["offset"]:
        share = (f.offset_top - f.flue_start) / (f.liner_top - f.flue_start)
        pressure += lift * (f.offset_top - f.flue_start) - share * losses["friction"] - losses["offset"]
        steps.append(Step("offset", f.offset_top, pressure))
        pressure += lift * (f.liner_top - f.offset_top) - (1 - share) * losses["friction"]
    else:
        pressure += lift * (f.liner_top - f.flue_start) - losses["friction"]
    steps.append(Step("flue top", f.liner_top, pressure))
    pressure += wind - losses["rain cap"] - losses["spark screen"]
    return (*steps, Step("open air", f.liner_top, pressure))


def _moved(design: Design, changes: dict) -> Design | None:
    """A changed design, or nothing when it cannot be drawn so."""
    try:
        return change(design, changes)
    except InputError:
        return None


def many(designs: Sequence[Design]) -> Path:
    """The ways of the smoke through many designs, each field an array with one entry a design in a column."""
    ways = [path(Sketch(d, frame(d))) for d in designs]
    return Path(*(np.array([float(getattr(way, name.name)) for way in ways])[:, None] for name in fields(Path)))


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
    tried = [(v, _moved(design, {key: int(v) if spec.kind == "count" else f"{float(v)!r} m"})) for v in values]
    values, moved = zip(*((v, d) for v, d in tried if d is not None), strict=True)
    ways = many(moved)
    spread = odds(ways, fire(design), around(design), design.site.mild, tested=design.house.leakage is not None,
                  cap_told=design.chimney.rain_cap is not None, draws=draws)
    sized = face_velocity(ways.opening_area, ways.flue_area, ways.diameter, ways.height, ways.length, ways.inlet, ways.other)
    return Curve(spec.label, spec.kind, np.asarray(values, float), sized[:, 0], *spread.face, float(getattr(getattr(design, group), name)),
                 coefficient("face velocity"))


def limit_map(design: Design, pack: str = DEFAULT_PACK, extensions=None, sections=None) -> LimitMap:
    """Which raise goes with which chimney, and what stops the others.

    Parameters
    ----------
    design : Design
    pack : str
        Code to hold every field of the map against.
    extensions : array, optional
        Firebox extensions; the whole workable range in steps of two inches when left out. [m]
    sections : array, optional
        Counts of flue sections; all workable ones when left out.

    Returns
    -------
    LimitMap
    """
    extensions = np.arange(13) * 2 * INCH if extensions is None else np.asarray(extensions, float)
    sections = np.arange(4, 41) if sections is None else np.asarray(sections, int)
    book = PACKS[pack]
    grid = [[_moved(design, {"opening.extension": f"{float(e)!r} m", "flue.sections": int(n)}) for n in sections] for e in extensions]
    drawn = [(i, k, Sketch(d, frame(d))) for i, row in enumerate(grid) for k, d in enumerate(row) if d is not None]
    told = [facts(sketch) for *_, sketch in drawn]
    corners = [{f.key for f in book.check(told[n]) if f.verdict == FALLS_SHORT}
               for n in {0, len(sections) - 1, len(drawn) // 2, len(drawn) - len(sections), len(drawn) - 1} if 0 <= n < len(drawn)]
    everywhere = set.intersection(*corners)
    moving = set.union(*corners) - everywhere
    limit = np.full((len(extensions), len(sections)), IMPOSSIBLE)
    for (i, k, sketch), work in zip(drawn, told, strict=True):
        limit[i, k] = _stopped(sketch, work, book, moving)
    return LimitMap(extensions, sections, limit, (design.opening.extension, design.flue.sections), tuple(sorted(everywhere)))


def _stopped(sketch: Sketch, work: Facts, book: Pack, moving: set[str]) -> int:
    """The first thing that stops one field of the map."""
    broken = {f.key for f in book.check(work, moving) if f.verdict == FALLS_SHORT} if moving else set()
    if broken:
        return RATIO if broken & set(RATIO_RULES) else CODE
    w = path(sketch)
    speed = face_velocity(w.opening_area, w.flue_area, w.diameter, w.height, w.length, w.inlet, w.other)
    if float(speed) < coefficient("face velocity"):
        return VELOCITY
    return STABILITY if _slenderness(sketch, work) > coefficient("stack slenderness") else FREE


def _slenderness(sketch: Sketch, work: Facts) -> float:
    """Height over the highest roof contact against the least width there. [-]"""
    least = 2 * min(sketch.frame.stack_half, sketch.frame.stack_depth)
    return work.chimney_top_above_highest_roof_contact / least
