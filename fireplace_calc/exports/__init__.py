"""Files for other programs: a spreadsheet that goes on adding up, and drawings at true size."""

from fireplace_calc.exports.dxf import write_dxf
from fireplace_calc.exports.spreadsheet import write_spreadsheet

__all__ = ["write_dxf", "write_spreadsheet"]
