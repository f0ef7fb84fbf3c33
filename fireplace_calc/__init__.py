"""Design of an open masonry fireplace and its chimney: drawings, code checks and takeoff from one record."""

from fireplace_calc.assess import Assessment, assess
from fireplace_calc.change import change
from fireplace_calc.design import Design
from fireplace_calc.designfile import load, save
from fireplace_calc.rules import PACKS
from fireplace_calc.units import InputError

__all__ = ["PACKS", "Assessment", "Design", "InputError", "assess", "change", "load", "save"]
