"""A design's set, set up: which pieces it takes, and which joints bring its levels. [m]"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import FEET_INCHES, MILLIMETRES, InputError
from fireplace_calc.design.pieces import TakenSet
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.assembled.assembly import Assembly, assemble
from fireplace_calc.geometry.assembled.readings import ReadOff, lined, read_off
from fireplace_calc.pieces.choice import (
    Choice,
    ChosenLift,
    choose,
    extensions_of,
    flues_of,
    heads_of,
)
from fireplace_calc.pieces.joints.joint_plan import JointPlan, plan_joints
from fireplace_calc.pieces.joints.rise import Rise, rise_of
from fireplace_calc.pieces.joints.wanted_levels import WantedLevel
from fireplace_calc.pieces.records import PieceSet


@dataclass(frozen=True)
class SetUp:
    """A set as one design takes it.

    Attributes
    ----------
    choice : Choice
    plan : JointPlan
        Of its lifts; levels count from the underside of the first bed.
    assembly : Assembly
    read : ReadOff
    half, half_back, depth : float
        Of the firebox, lining in; the depth from the front of the pieces. [m]
    set_back : float
        Of the front of the pieces from the opening plane. [m]
    floor : float
        Thickness of the paving on the base plates. [m]
    """

    choice: Choice
    plan: JointPlan
    assembly: Assembly
    read: ReadOff
    half: float
    half_back: float
    depth: float
    set_back: float
    floor: float

    @property
    def breast(self) -> float:
        """Back of what stands over the opening, from the opening plane. [m]"""
        return self.set_back + min(self.read.lintel_depth, self.read.throat_front)


@lru_cache(maxsize=256)
def _rise(lift: ChosenLift) -> Rise:
    return rise_of(lift.name, lift.pieces)


@lru_cache(maxsize=256)
def _planned(
    made: PieceSet, choice: Choice, wanted: tuple[WantedLevel, ...]
) -> tuple[JointPlan, Assembly, ReadOff]:
    lifts = choose(made, choice)
    units = MILLIMETRES if made.metric else FEET_INCHES
    plan = plan_joints([_rise(lift) for lift in lifts], wanted, units=units, start_name="the base")
    assembly = assemble(lifts, plan.rounded_rises)
    return plan, assembly, read_off(assembly)


def _floor(made: PieceSet) -> float:
    """Thickness of the paving on the base plates. [m]"""
    return made.lining.floor if made.lining else 0.0


def _wanted(asked: TakenSet, made: PieceSet, choice: Choice) -> tuple[WantedLevel, ...]:
    """Levels that are asked of the joints: the lintel's seat first, then the top."""
    if asked.opening_wanted is None and asked.top_wanted is None:
        return ()
    lifts = choose(made, choice)
    hearth = _rise(lifts[0]).wanted + _floor(made)
    levels = [WantedLevel(lifts[0].name, _rise(lifts[0]).wanted, rank=1)]
    if asked.opening_wanted is not None:
        every = ((n, p) for n, lift in enumerate(lifts) for p in lift.pieces)
        head, lintel = next((n, p) for n, p in every if p.role == "lintel")
        rise = next((c.rise for c in lintel.cuts if hasattr(c, "rise")), 0.0)
        # The lintel's own bed is planned with its lift: its top is wanted a lintel's height up.
        seat = hearth + asked.opening_wanted - rise
        levels.append(WantedLevel(lifts[head].name, seat + lintel.height, rank=1))
    if asked.top_wanted is not None:
        levels.append(WantedLevel(lifts[-1].name, hearth + asked.top_wanted, rank=2))
    return tuple(levels)


def take(design: Design) -> Choice:
    """The set's own choice that comes nearest to what a design asks: width, raise, head, flue.

    Parameters
    ----------
    design : Design
        With a set.
    """
    asked = design.opening
    return _taken(_set_of(design), asked.head, asked.width, asked.extension, design.flue.sections)


@lru_cache(maxsize=256)
def _taken(made: PieceSet, asked: str, wide: float, raised: float, sections: int) -> Choice:
    heads = heads_of(made)
    head = asked if asked in heads or not heads else heads[0]
    least, most = flues_of(made)
    widths = range(len(made.widths))
    width = min(widths, key=lambda w: abs(width_of(made, w, head) - wide))
    raises = raises_of(made, width, head)
    extensions = min(range(len(raises)), key=lambda n: abs(raises[n] - raised))
    return Choice(width, extensions, head, min(max(sections, least), most))


def set_of(design: Design, otherwise: str) -> PieceSet:
    """The set a design is built from.

    Parameters
    ----------
    design : Design
    otherwise : str
        What cannot be without one, for the message.

    Returns
    -------
    PieceSet

    Raises
    ------
    InputError
        When there is none.
    """
    if design.piece_set is None:
        raise InputError(
            f"The design is built without a set of pieces, so {otherwise}.",
            "Set of pieces",
            "the name of a set",
            design.pieces.set,
        )
    return design.piece_set


def _set_of(design: Design) -> PieceSet:
    if design.piece_set is None:
        raise InputError(
            f"Set of pieces is {design.pieces.set!r}, but its file has not been read; take it with"
            " change() or load().",
            "Set of pieces",
            "the name of a set",
            design.pieces.set,
        )
    return design.piece_set


@lru_cache(maxsize=256)
def _reading(made: PieceSet, choice: Choice) -> ReadOff:
    return _planned(made, choice, ())[2]


@lru_cache(maxsize=256)
def width_of(made: PieceSet, width: int, head: str) -> float:
    """Clear opening that one width of a set gives, lining in.

    Parameters
    ----------
    made : PieceSet
    width : int
        Number of the width. [-]
    head : str

    Returns
    -------
    float
        [m]
    """
    return 2 * lined(_reading(made, Choice(width, 0, head)), made.lining)[0]


@lru_cache(maxsize=256)
def raises_of(made: PieceSet, width: int, head: str) -> tuple[float, ...]:
    """How far each number of extension courses raises the opening, their joints brought along.

    Parameters
    ----------
    made : PieceSet
    width : int
        Number of the width. [-]
    head : str

    Returns
    -------
    tuple of float
        From no course on. [m]
    """
    tops = [
        _reading(made, Choice(width, n, head)).opening_top for n in range(extensions_of(made) + 1)
    ]
    return tuple(t - tops[0] for t in tops)


@lru_cache(maxsize=256)
def set_up(design: Design) -> SetUp:
    """Set up the pieces of a design.

    Parameters
    ----------
    design : Design
        With a set; what the set decides need not be in it yet.

    Returns
    -------
    SetUp

    Raises
    ------
    InputError
        When the set cannot be built at all: a role is missing, a lift's pieces are of too different
        heights.
    """
    return set_up_of(_set_of(design), design.pieces, take(design))


@lru_cache(maxsize=256)
def set_up_of(made: PieceSet, around: TakenSet, choice: Choice) -> SetUp:
    """The same by what it hangs on alone: most inputs of a design move no piece.

    Parameters
    ----------
    made : PieceSet
    around : TakenSet
    choice : Choice
    """
    plan, assembly, read = _planned(made, choice, _wanted(around, made, choice))
    half, half_back, depth = lined(read, made.lining)
    gap = around.gap if around.facing > ROUNDING else 0.0
    set_back = around.facing + gap
    return SetUp(choice, plan, assembly, read, half, half_back, depth, set_back, _floor(made))
