"""A new drawing file: units, the style of its dimensions, how materials are hatched, our name."""

from __future__ import annotations

import re
from io import StringIO
from math import cos, radians, sin
from typing import Any

from fireplace_calc.base.resources import MAKER, made_by
from fireplace_calc.base.units import FEET_INCHES, INCH, MM
from fireplace_calc.drawing.sheets.style import HATCHES, Hatch
from fireplace_calc.exports.cad.true_view import LETTERS

STYLE = {FEET_INCHES: "feet-inches", "millimetres": "millimeters"}
"""Name of the style of dimensions."""
BROKEN = {"center-lines": "center", "hidden": "hidden"}
"""Line types of the layers whose lines are broken."""
DASHES = {"center": (0.16, -0.03, 0.02, -0.03), "hidden": (0.04, -0.02)}
"""Their dashes and gaps. [m]"""
APART = 20.0
"""Denominator of the scale at which hatches stand as far apart as on paper. [-]"""


def new_document(units: str) -> tuple[Any, float]:
    """An empty file, and how many of its units make a meter.

    Parameters
    ----------
    units : str
        ``feet-inches`` draws one to an inch, ``millimetres`` one to a millimetre; the file says
        which.

    Returns
    -------
    ezdxf.document.Drawing, float
        [1/m]
    """
    import ezdxf
    from ezdxf.filemanagement import new

    inches = units == FEET_INCHES
    document = new("R2010")
    scale = 1 / (INCH if inches else MM)
    document.units = ezdxf.units.IN if inches else ezdxf.units.MM
    document.header["$MEASUREMENT"] = 0 if inches else 1
    document.header["$LUNITS"] = 4 if inches else 2
    document.header["$LTSCALE"] = 1.0
    lengths = {
        "dimtxt": LETTERS,
        "dimasz": 0.03,
        "dimexe": 0.02,
        "dimexo": 0.02,
        "dimtsz": 0.02,
        "dimgap": 0.012,
        "dimfxl": 0.06,
    }
    document.dimstyles.new(
        STYLE[units],
        dxfattribs={name: length * scale for name, length in lengths.items()}
        | {
            "dimfxlon": 1,  # short extension lines: none runs through what it measures
            "dimlunit": 4 if inches else 2,
            "dimfrac": 2,
            "dimzin": 3 if inches else 8,  # 6", and 1'-0": as the papers have it
            "dimdec": 4 if inches else 0,
            "dimtad": 1,
            "dimdsep": ord("."),
        },
    )
    document.header["$DIMSTYLE"] = STYLE[units]
    return document, scale


def line_type(document: Any, scale: float, name: str) -> str:
    """A line type of that name, made when first needed."""
    if name not in document.linetypes:
        whole = [sum(map(abs, DASHES[name])), *DASHES[name]]
        document.linetypes.add(name, [length * scale for length in whole])
    return name


def signed_text(document: Any) -> str:
    """The file's text, with our name in every place where the library writes its own."""
    from ezdxf.version import __version__ as library

    document.header["$LASTSAVEDBY"] = made_by()
    document.header.custom_vars.append("Program", made_by())
    written = StringIO()
    document.write(written)
    stamp = rf"^{re.escape(library)} @ .*$"
    signed = re.sub(stamp, made_by(), written.getvalue(), flags=re.MULTILINE)
    return signed.replace("EZDXF", MAKER.upper())


def pattern(material: str, scale: float) -> list[list[Any]] | None:
    """Lines of a material's hatch as a drawing file has them: angle, base, offset, dashes.

    Parameters
    ----------
    material : str
    scale : float
        Units of the file to a meter. [1/m]

    Returns
    -------
    list or None
        None for what is not hatched.
    """
    hatch: Hatch | None = HATCHES.get(material)
    if hatch is None:
        return None
    gap = hatch.gap * APART / 1000 * scale
    lines: list[list[Any]] = []
    for shift in (0.0, hatch.pair) if hatch.pair else (0.0,):
        for angle in hatch.angles:
            turn = radians(angle)
            across = (-sin(turn), cos(turn))
            base = tuple(shift * APART / 1000 * scale * c for c in across)
            lines.append([angle, base, tuple(gap * c for c in across), []])
    if hatch.dots:
        lines.append([0.0, (0.0, 0.0), (gap * 0.618, gap * 0.7), [0.0, -gap]])
    return lines
