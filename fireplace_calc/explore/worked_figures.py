"""Formula, numbers, result: the figures a mason might be asked about, so that anybody can follow
with a pencil.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import show
from fireplace_calc.base.tables.draft import coefficient, coefficients
from fireplace_calc.base.tables.liners import rectangular_liners, round_liners
from fireplace_calc.base.units import (
    FEET_INCHES,
    FOOT,
    INCH,
    MILLIMETRES,
    POUND,
    PSF,
    SQIN,
    SYSTEMS,
    G,
    InputError,
)
from fireplace_calc.draft.physics.air import air_density
from fireplace_calc.draft.sizing import STANDARD, theoretical_draft
from fireplace_calc.rules.comparing import DOES_NOT_APPLY
from fireplace_calc.structure.figures import source as structure_source

DRAWN = "measured on the drawing"
TOLD = "measured on site"


@dataclass(frozen=True, slots=True)
class WorkedFigure:
    """One figure: its name, the formula, the formula with the numbers in it, what comes out, and
    what it rests on.
    """

    name: str
    formula: str
    numbers: str
    result: str
    source: str


@dataclass(frozen=True, slots=True)
class _In:
    """Plain decimals in the reader's units, so that the numbers multiply."""

    metric: bool

    def _said(self, value: float, digits: int, unit: str) -> str:
        text = f"{value:.{digits}f}"
        return f"{text.rstrip('0').rstrip('.') if '.' in text else text} {unit}"

    def length(self, value: float) -> str:
        return self._said(value, 3, "m") if self.metric else self._said(value / INCH, 2, "in")

    def far(self, value: float) -> str:
        return self._said(value, 3, "m") if self.metric else self._said(value / FOOT, 2, "ft")

    def area(self, value: float) -> str:
        return self._said(value, 4, "m²") if self.metric else self._said(value / SQIN, 1, "in²")

    def press(self, value: float) -> str:
        return (
            self._said(value, 0, "N/m²") if self.metric else self._said(value / PSF, 1, "lbf/ft²")
        )

    def force(self, value: float) -> str:
        return (
            self._said(value, 0, "N") if self.metric else self._said(value / (POUND * G), 0, "lbf")
        )


def _clause(result: Assessment, *titles: str) -> str:
    """Where a drawn figure comes from, and the clauses that bind it here, found by their titles."""
    said = [
        f
        for f in result.findings
        if f.verdict != DOES_NOT_APPLY and any(title in f.title.lower() for title in titles)
    ]
    return "; ".join([DRAWN, *dict.fromkeys(f"{f.clause}, {result.pack}" for f in said)])


def _opening(result: Assessment, to: _In) -> WorkedFigure:
    f, told = result.geometry.frame, result.design.measured.opening_area
    if told is not None:
        return WorkedFigure("Opening area", "as measured", to.area(told), to.area(told), TOLD)
    width, height, rise = 2 * f.half_width, f.opening_top - f.hearth, f.opening_top - f.spring
    if rise <= 0:
        return WorkedFigure(
            "Opening area",
            "width × height",
            f"{to.length(width)} × {to.length(height)}",
            to.area(f.opening_area),
            DRAWN,
        )
    segment = f.opening_area - width * (height - rise)
    return WorkedFigure(
        "Opening area",
        "width × height to the spring line + segment over it",
        f"{to.length(width)} × {to.length(height - rise)} + {to.area(segment)}",
        to.area(f.opening_area),
        DRAWN,
    )


def _ratio(result: Assessment, to: _In) -> WorkedFigure | None:
    net, bore, flue = result.facts.flue_net_area, result.geometry.frame.bore, result.design.flue
    if net is None:
        return None
    liners = round_liners() if bore.round else rectangular_liners()
    whence = (
        liners[bore.label].source.text
        if net == bore.table_area and bore.label in liners
        else TOLD
        if net == result.design.measured.flue_area
        else "own sum of the inside"
    )
    asked = [
        f
        for f in result.findings
        if f.key.startswith("FLU-1") and f.unit == "in2" and f.verdict != DOES_NOT_APPLY
    ]
    rule = "".join(
        f"; {f.clause}, {result.pack}"
        for f in asked
        if flue.route == "ratio" and f.required is not None
    )
    opening = result.facts.opening_area
    return WorkedFigure(
        "Flue ratio",
        "opening area ÷ net area of the flue",
        f"{to.area(opening)} ÷ {to.area(net)}",
        f"{opening / net:.2f} to 1",
        whence + rule,
    )


def _face(result: Assessment, to: _In) -> Iterator[WorkedFigure]:
    path, found = result.draft.path, result.draft.sizing_velocity
    gas = STANDARD + coefficient("sizing rise")
    cold, hot = air_density(STANDARD), air_density(gas)
    draft, resistance = (
        float(theoretical_draft(path.height, gas, STANDARD)),
        float(path.handbook_resistance),
    )
    book = coefficients()["face velocity"].source
    yield WorkedFigure(
        "Draft, sizing mode",
        "9.81 m/s² × height over the opening × (density outdoors − density of the gas)",
        f"{G:.2f} m/s² × {path.height:.3f} m × ({cold:.3f} kg/m³ − {hot:.3f} kg/m³)",
        f"{draft:.1f} Pa",
        f"{coefficients()['sizing rise'].source.text},"
        f" {coefficients()['sizing rise'].source.confidence}",
    )
    yield WorkedFigure(
        "Resistance, sizing mode",
        "velocity head + mouth and throat + chamber, bends and top + friction × length ÷ diameter",
        f"{coefficient('velocity head'):.2f} + {path.inlet:.3f} + {path.other:.3f} +"
        f" {coefficient('friction factor'):.4f} × {path.length:.3f} m ÷ {path.diameter:.4f} m",
        f"{resistance:.2f} velocity heads",
        f"{coefficients()['friction factor'].source.text},"
        f" {coefficients()['friction factor'].source.confidence}",
    )
    yield WorkedFigure(
        "Face velocity, sizing mode",
        "flue area ÷ opening area × √(2 × draft × density of the gas ÷ resistance) ÷ density of the"
        " room",
        f"{to.area(path.flue_area)} ÷ {to.area(path.opening_area)} × √(2 × {draft:.2f} Pa ×"
        f" {hot:.3f} kg/m³ ÷ {resistance:.2f}) ÷ {cold:.3f} kg/m³",
        (
            f"{found:.3f} m/s"
            if to.metric
            else f"{found:.3f} m/s, which is {show(found, 'air speed')}"
        ),
        f"{book.text}, {book.confidence}; wanted"
        f" {show(coefficient('face velocity'), 'air speed', MILLIMETRES)}, which is"
        f" {show(coefficient('face velocity'), 'air speed')}",
    )


def _throat(result: Assessment, to: _In) -> WorkedFigure:
    f, told = result.geometry.frame, result.design.measured.throat_area
    if told is not None:
        return WorkedFigure("Throat area", "as measured", to.area(told), to.area(told), TOLD)
    front, back = 2 * f.half_at(f.throat_front), 2 * f.half_at(f.throat_back)
    return WorkedFigure(
        "Throat area",
        "depth × (width at the front + width at the back) ÷ 2",
        f"{to.length(f.throat_back - f.throat_front)} × ({to.length(front)} +"
        f" {to.length(back)}) ÷ 2",
        to.area(f.throat_area),
        _clause(result, "throat area", "passage from throat"),
    )


def _height(result: Assessment, to: _In) -> Iterator[WorkedFigure]:
    f, roof = result.geometry.frame, result.design.roof
    where = (
        "ridge" if roof.position == "through the ridge" else "ridge − pitch × distance to the ridge"
    )
    level = to.far(roof.ridge_level)
    if roof.position != "through the ridge":
        level = f"({level} − {roof.pitch:.4f} × {to.far(roof.ridge_distance)})"
    yield WorkedFigure(
        "Chimney over the roof",
        f"top of the crown − ({where})",
        f"{to.far(f.crown_top)} − {level}",
        to.far(f.crown_top - f.uphill_contact),
        _clause(result, "over the roof where"),
    )
    slim, known = 2 * min(f.stack_half, f.stack_depth), structure_source("UK slenderness")
    yield WorkedFigure(
        "Slenderness",
        "(top of the liner − highest contact with the roof) ÷ least side of the chimney",
        f"({to.length(f.liner_top)} − {to.length(f.uphill_contact)}) ÷ {to.length(slim)}",
        f"{(f.liner_top - f.uphill_contact) / slim:.2f}",
        f"{known.text}, {known.confidence}",
    )


def _hearth(result: Assessment, to: _In) -> Iterator[WorkedFigure]:
    hearth, width, depth = (
        result.design.hearth,
        result.design.opening.width,
        result.design.firebox.depth,
    )
    yield WorkedFigure(
        "Hearth across",
        "opening width + 2 × hearth beside",
        f"{to.length(width)} + 2 × {to.length(hearth.side)}",
        to.length(width + 2 * hearth.side),
        _clause(result, "hearth beside", "hearth at the sides"),
    )
    yield WorkedFigure(
        "Hearth front to back",
        "firebox depth + hearth in front",
        f"{to.length(depth)} + {to.length(hearth.front)}",
        to.length(depth + hearth.front),
        _clause(result, "hearth in front"),
    )


def _lintel(result: Assessment, to: _In) -> WorkedFigure | None:
    lintel = result.structure.lintel
    if lintel is None:
        return None
    wall = to.press(lintel.wall)
    rests = (
        "45 degree triangle over the lintel, common practice; clear opening and one bearing as span"
    )
    if lintel.low_cover:
        return WorkedFigure(
            "Load on the lintel",
            "weight of the wall × (span × height over it − height²)",
            f"{wall} × ({to.far(lintel.span)} × {to.far(lintel.cover)} − {to.far(lintel.cover)} ×"
            f" {to.far(lintel.cover)})",
            to.force(lintel.carried),
            f"{rests}; the breast ends below the triangle's top: for an engineer",
        )
    return WorkedFigure(
        "Load on the lintel",
        "weight of the wall × span² ÷ 4",
        f"{wall} × {to.far(lintel.span)} × {to.far(lintel.span)} ÷ 4",
        to.force(lintel.carried),
        rests,
    )


def work_figures(result: Assessment, units: str = FEET_INCHES) -> tuple[WorkedFigure, ...]:
    """The figures a mason might be asked about, each with its formula and the numbers in it.

    Parameters
    ----------
    result : Assessment
    units : str
        ``feet-inches`` or ``millimetres``; lengths stand as plain decimals so that they multiply.

    Returns
    -------
    tuple of Worked
        A figure that this design does not have (a lintel under an arch, a flue nobody has measured)
        is left out.

    Raises
    ------
    InputError
        When there is no such system of units.

    Examples
    --------
    >>> from fireplace_calc.assessment import assess
    >>> from fireplace_calc.design.records import Design
    >>> first = work_figures(assess(Design()))[0]
    >>> first.name, first.numbers, first.result
    ('Opening area', '36 in × 30 in', '1080 in²')
    """
    if units not in SYSTEMS:
        raise InputError(
            f"Units are {units!r}, but there are only {' and '.join(SYSTEMS)}.",
            "Units",
            ", ".join(SYSTEMS),
            units,
        )
    to = _In(units == MILLIMETRES)
    made = (
        _opening(result, to),
        _ratio(result, to),
        *_face(result, to),
        _throat(result, to),
        *_height(result, to),
        *_hearth(result, to),
        _lintel(result, to),
    )
    return tuple(one for one in made if one is not None)
