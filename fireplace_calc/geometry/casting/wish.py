"""What somebody who casts his own pieces may choose: weight, joints, thicknesses, tape. [m, kg]"""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.printing import show
from fireplace_calc.base.tables import densities
from fireplace_calc.base.units import FEET_INCHES, INCH, MILLIMETRES, InputError
from fireplace_calc.pieces.joints.tape import ticks
from fireplace_calc.pieces.records import JointRange

LEAST_COURSE = 3 * INCH
"""No piece is cast lower than this; our own habit. [m]"""
ALLOWED = {
    "wall": (3 * INCH, 12 * INCH),
    "back": (2 * INCH, 12 * INCH),
    "plate": (2 * INCH, 12 * INCH),
    "shelf": (LEAST_COURSE, 12 * INCH),
    "tallest": (6 * INCH, 48 * INCH),
}
"""Least and most of a thickness: a lintel wants 3 in of bearing on the walls. [m]"""
WEIGHTS = (5.0, 500.0)
"""Least and most that a heaviest piece may be asked to weigh. [kg]"""


@dataclass(frozen=True, slots=True)
class CastingWish:
    """How a fireplace is to be cut.

    Attributes
    ----------
    most : float
        No piece weighs more. [kg]
    units : str
        ``feet-inches`` or ``millimetres``: forms are built to 1/16 in, or to 1 mm.
    bed, perpend : JointRange
        Joints under and beside a piece. [m]
    wall, back : float
        Thickness of the firebox walls, square to the face, and of the back. [m]
    plate, shelf : float
        Thickness of the base plates, and of throat and smoke shelf. [m]
    tallest : float
        No piece but those of the flue is cast higher. [m]
    """

    most: float = 60.0
    units: str = FEET_INCHES
    bed: JointRange = JointRange(INCH / 4, 3 * INCH / 8, INCH / 2)
    perpend: JointRange = JointRange(INCH / 8, INCH / 4, 7 * INCH / 16)
    wall: float = 3.5 * INCH
    back: float = 3 * INCH
    plate: float = 3 * INCH
    shelf: float = 4 * INCH
    tallest: float = 16 * INCH

    def __post_init__(self) -> None:
        """Refuse what nobody could cast.

        Raises
        ------
        InputError
            Names the figure, what is allowed and what came.
        """
        ticks(self.units)
        low, high = WEIGHTS
        if not low <= self.most <= high:
            raise InputError(
                f"Heaviest piece is {self.most:g} kg, but {low:g} to {high:g} kg is wanted.",
                "Heaviest piece",
                f"{low:g} to {high:g} kg",
                self.most,
            )
        for name, (least, most) in ALLOWED.items():
            self._within(name, getattr(self, name), least, most)
        for name in ("bed", "perpend"):
            joint = getattr(self, name)
            if not joint.least <= joint.wanted <= joint.most:
                raise InputError(
                    f"Joints, {name}: least, wanted and most are not in rising order.",
                    name,
                    "least, wanted and most in rising order",
                    joint,
                )
            for what, value in (("widest", joint.most), ("wanted", joint.wanted)):
                self._within(f"{what} {name}", value, self.tick, 1 * INCH)

    def _within(self, name: str, value: float, low: float, high: float) -> None:
        if not low <= value <= high:
            span = f"{show(low, 'length', self.units)} to {show(high, 'length', self.units)}"
            came = show(value, "length", self.units)
            raise InputError(
                f"Casting, {name}: it is {came}, but {span} is wanted.", name, span, value
            )

    @property
    def metric(self) -> bool:
        """Whether forms are built by the millimeter."""
        return self.units == MILLIMETRES

    @property
    def tick(self) -> float:
        """From mark to mark of the tape that forms are built with. [m]"""
        return ticks(self.units)[0]

    @property
    def density(self) -> float:
        """Of the castable, as the table of densities has it. [kg/m3]"""
        return densities()["refractory"][0]

    def marks(self, value: float) -> int:
        """A length in marks of the tape, to the nearest. [-]"""
        return round(value / self.tick)

    def weight(self, marks: float) -> float:
        """Weight of a volume that is counted in cubes of a mark. [kg]"""
        return marks * self.tick**3 * self.density

    def text(self, marks: float) -> str:
        """A length in marks, as it is shown to a reader. [-]"""
        return show(marks * self.tick, "length", self.units)
