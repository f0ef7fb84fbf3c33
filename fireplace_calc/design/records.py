"""The design record: everything somebody chooses, each input declared once.

Levels count from the finished floor of the room. Left and right are as seen from the room.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from fireplace_calc.base.record import Record
from fireplace_calc.design.abroad import Abroad
from fireplace_calc.design.chimney import Breast, Chimney, Stack
from fireplace_calc.design.declarations import choice, text
from fireplace_calc.design.fire import Air, Fire
from fireplace_calc.design.firebox import Base, Firebox
from fireplace_calc.design.loads import Anchorage, Ground, Loads
from fireplace_calc.design.mantel import Mantel
from fireplace_calc.design.measured import Measured
from fireplace_calc.design.opening import Hearth, Lintel, Opening, Seat
from fireplace_calc.design.pieces import TakenSet
from fireplace_calc.design.second_flue import SecondFlue
from fireplace_calc.design.site import JobNames, Site
from fireplace_calc.design.smoke_path import Flue, SmokeChamber, Throat
from fireplace_calc.design.surround import Brick, Surround
from fireplace_calc.design.surroundings import Clearance, House, Roof
from fireplace_calc.design.work import Waste, Work

if TYPE_CHECKING:
    from fireplace_calc.pieces.records import PieceSet


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Design(Record):
    """A fireplace and its chimney, as somebody chose it."""

    name: str = text("Name", "A plain fireplace", "Shown on every sheet.")
    note: str = text("Note", "", "Whatever the reader should know; invented data says so here.")
    method: str = choice(
        "Way of building",
        "laid",
        ("laid", "modular"),
        "Laid in brick round clay liners, or set by hand in refractory sections.",
    )
    pieces: TakenSet = TakenSet()
    site: Site = Site()
    house: House = House()
    opening: Opening = Opening()
    lintel: Lintel = Lintel()
    firebox: Firebox = Firebox()
    base: Base = Base()
    hearth: Hearth = Hearth()
    seat: Seat = Seat()
    throat: Throat = Throat()
    smoke_chamber: SmokeChamber = SmokeChamber()
    flue: Flue = Flue()
    chimney: Chimney = Chimney()
    breast: Breast = Breast()
    clearance: Clearance = Clearance()
    roof: Roof = Roof()
    surround: Surround = Surround()
    mantel: Mantel = Mantel()
    brick: Brick = Brick()
    fire: Fire = Fire()
    waste: Waste = Waste()
    ground: Ground = Ground()
    anchorage: Anchorage = Anchorage()
    stack: Stack = Stack()
    second_flue: SecondFlue = SecondFlue()
    air: Air = Air()
    abroad: Abroad = Abroad()
    measured: Measured = Measured()
    loads: Loads = Loads()
    work: Work = Work()
    job: JobNames = JobNames()
    piece_set: PieceSet | None = None
    """What ``pieces.set`` names, as its file tells it."""
    told: frozenset[str] = frozenset()
    """Inputs that somebody entered although they stand at their default, by dotted key. A default
    that is not among them is an assumption (``editing.assumptions``).
    """
    overruled: tuple[str, ...] = ()
    """What its file said otherwise than the pieces of its set, one sentence each."""
