"""Files for other programs: a spreadsheet that goes on adding up, and drawings at true size."""

from pathlib import Path

from fireplace_calc.exports.dxf import write_dxf
from fireplace_calc.exports.spreadsheet import write_spreadsheet

__all__ = ["read_back", "write_dxf", "write_spreadsheet"]


def read_back(path: Path) -> bytes:
    """A file that was just written, to hand on."""
    return path.read_bytes()
