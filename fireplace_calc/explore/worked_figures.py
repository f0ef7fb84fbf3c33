"""Formula, numbers, result: the figures a mason might be asked about, so that anybody can follow
with a pencil.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.plain_decimals import PlainDecimals
from fireplace_calc.base.printing import show
from fireplace_calc.base.tables.draft import coefficient, coefficients
from fireplace_calc.base.tables.liners import rectangular_liners, round_liners
from fireplace_calc.base.units import FEET_INCHES, FOOT, MILLIMETRES, PSF, SYSTEMS, G, InputError
from fireplace_calc.draft.physics.air import air_density
from fireplace_calc.draft.sizing import STANDARD, theoretical_draft
from fireplace_calc.rules.comparing import DOES_NOT_APPLY
from fireplace_calc.structure.figures import source as structure_source

DRAWN = "measured on the drawing"
MEASURED = "measured on site"


@dataclass(frozen=True, slots=True)
class WorkedFigure:
    """One figure.

    Attributes
    ----------
    name, formula : str
    numbers : str
        The formula with the numbers in it.
    result : str
        What comes out, with its unit.
    source : str
        What it is based on.
    """

    name: str
    formula: str
    numbers: str
    result: str
    source: str


def _clause(result: Assessment, *titles: str) -> str:
    """Where a drawn figure comes from, and the clauses that bind it here, found by their titles."""
    binding = [
        f
        for f in result.findings
        if f.verdict != DOES_NOT_APPLY and any(title in f.title.lower() for title in titles)
    ]
    return "; ".join([DRAWN, *dict.fromkeys(f"{f.clause}, {result.pack}" for f in binding)])


def _opening(result: Assessment, to: PlainDecimals) -> WorkedFigure:
    f, measured = result.geometry.frame, result.design.measured.opening_area
    if measured is not None and measured == result.facts.opening_area:
        return WorkedFigure(
            "Opening area", "as measured", to.area(measured), to.area(measured), MEASURED
        )
    width, height, rise = 2 * f.half_width, f.opening_top - f.hearth, f.opening_top - f.spring
    if rise <= 0 or f.hood > 0:
        return WorkedFigure(
            "Opening area",
            "width × height under the hood" if f.hood > 0 else "width × height",
            f"{to.length(width)} × {to.length(height - f.hood)}",
            to.area(f.clear_area),
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


def _ratio(result: Assessment, to: PlainDecimals) -> WorkedFigure | None:
    net, bore, flue = result.facts.flue_net_area, result.geometry.frame.bore, result.design.flue
    if net is None:
        return None
    liners = round_liners() if bore.round else rectangular_liners()
    whence = (
        liners[bore.label].source.text
        if net == bore.table_area and bore.label in liners
        else MEASURED
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


def _face(result: Assessment, to: PlainDecimals) -> Iterator[WorkedFigure]:
    path, found = result.draft.path, result.draft.sizing_velocity
    gas = STANDARD + coefficient("sizing rise")
    cold, hot = air_density(STANDARD), air_density(gas)
    draft = float(theoretical_draft(path.height, gas, STANDARD))
    book, rise, rubbed = (
        coefficients()[name].source for name in ("face velocity", "sizing rise", "friction factor")
    )
    thin, thick = to.density(float(hot)), to.density(float(cold))
    tall, run, wide = (to.long_length(float(x)) for x in (path.height, path.length, path.diameter))
    gravity = f"{G:.2f} m/s² × " if to.metric else ""
    pull, pressed, speed = f"{draft:.1f} Pa", f"{draft:.2f} Pa", f"{found:.3f} m/s"
    if not to.metric:
        pull = f"{draft / PSF:.3f} lbf/ft², which is {pull}"
        pressed = f"{G / FOOT:.2f} ft/s² × {draft / PSF:.4f} lbf/ft²"
        speed = f"{found / FOOT:.3f} ft/s, which is {show(found, 'air speed', MILLIMETRES)}"
    yield WorkedFigure(
        "Draft, sizing mode",
        f"{gravity}height over the opening × (density outdoors − density of the gas)",
        f"{gravity}{tall} × ({thick} − {thin})",
        pull,
        f"{rise.text}, {rise.confidence}",
    )
    yield WorkedFigure(
        "Resistance, sizing mode",
        "velocity head + mouth and throat + chamber, bends and top + friction × length ÷ diameter",
        f"{coefficient('velocity head'):.2f} + {path.inlet:.3f} + {path.other:.3f} +"
        f" {coefficient('friction factor'):.4f} × {run} ÷ {wide}",
        f"{path.handbook_resistance:.2f} velocity heads",
        f"{rubbed.text}, {rubbed.confidence}",
    )
    least = coefficient("face velocity")
    wanted = [show(least, "air speed", u) for u in (FEET_INCHES, MILLIMETRES)]
    yield WorkedFigure(
        "Face velocity, sizing mode",
        f"flue area ÷ opening area × √(2 × {'' if to.metric else 'gravity × '}draft × density of"
        " the gas ÷ resistance) ÷ density of the room",
        f"{to.area(float(path.flue_area))} ÷ {to.area(float(path.opening_area))} × √(2 ×"
        f" {pressed} × {thin} ÷ {path.handbook_resistance:.2f}) ÷ {thick}",
        speed,
        f"{book.text}, {book.confidence}; wanted"
        f" {', which is '.join(reversed(wanted) if to.metric else wanted)}",
    )


def _throat(result: Assessment, to: PlainDecimals) -> WorkedFigure:
    f, measured = result.geometry.frame, result.design.measured.throat_area
    if measured is not None and measured == result.facts.throat_area:
        return WorkedFigure(
            "Throat area", "as measured", to.area(measured), to.area(measured), MEASURED
        )
    front, back = 2 * f.half_at(f.throat_front), 2 * f.half_at(f.throat_back)
    return WorkedFigure(
        "Throat area",
        "depth × (width at the front + width at the back) ÷ 2",
        f"{to.length(f.throat_back - f.throat_front)} × ({to.length(front)} +"
        f" {to.length(back)}) ÷ 2",
        to.area(f.throat_area),
        _clause(result, "throat area", "passage from throat"),
    )


def _height(result: Assessment, to: PlainDecimals) -> Iterator[WorkedFigure]:
    f, roof = result.geometry.frame, result.design.roof
    where = (
        "ridge" if roof.position == "through the ridge" else "ridge − pitch × distance to the ridge"
    )
    level = to.level(roof.ridge_level)
    if roof.position != "through the ridge":
        pitch = f"{roof.pitch:.4f}" if to.metric else f"{12 * roof.pitch:.4g}/12"
        level = f"({level} − {pitch} × {to.level(roof.ridge_distance)})"
    yield WorkedFigure(
        "Chimney over the roof",
        f"top of the crown − ({where})",
        f"{to.level(f.crown_top)} − {level}",
        to.level(f.crown_top - f.uphill_contact),
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


def _hearth(result: Assessment, to: PlainDecimals) -> Iterator[WorkedFigure]:
    d = result.design
    hearth, width, depth = d.hearth, d.opening.width, d.firebox.depth
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


def _lintel(result: Assessment, to: PlainDecimals) -> WorkedFigure | None:
    lintel = result.structure.lintel
    if lintel is None:
        return None
    wall, span = to.pressure(lintel.wall), to.long_length(lintel.span)
    cover = to.long_length(lintel.cover)
    rests = "45 degree triangle, common practice; clear opening and one bearing as span"
    if lintel.bears:
        loads = result.design.loads
        floor, beam = (to.force(x or 0.0) for x in (loads.floor_over_head, loads.beam_over_head))
        return WorkedFigure(
            "Load on the lintel",
            "weight of the wall × span × height over it + floor + beam",
            f"{wall} × {span} × {cover} + {floor} + {beam}",
            to.force(lintel.carried),
            "no arching where a floor or a beam bears over the opening; what is not told is nought",
        )
    if lintel.low_cover:
        return WorkedFigure(
            "Load on the lintel",
            "weight of the wall × (span × height over it − height²)",
            f"{wall} × ({span} × {cover} − {cover} × {cover})",
            to.force(lintel.carried),
            f"{rests}; the breast ends below the triangle's top: for an engineer",
        )
    return WorkedFigure(
        "Load on the lintel",
        "weight of the wall × span² ÷ 4",
        f"{wall} × {span} × {span} ÷ 4",
        to.force(lintel.carried),
        rests,
    )


def work_figures(result: Assessment, units: str = FEET_INCHES) -> tuple[WorkedFigure, ...]:
    """The figures a mason might be asked about, each with its formula and the numbers in it.

    Parameters
    ----------
    result : Assessment
    units : str
        ``feet-inches`` or ``millimetres``; lengths stand as a tape has them, all else as decimals.

    Returns
    -------
    tuple of WorkedFigure
        A figure that this design does not have (a lintel under an arch, a flue of unknown area)
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
    ('Opening area', '36" × 30"', '1080 in²')
    """
    if units not in SYSTEMS:
        raise InputError(
            f"Units are {units!r}, but there are only {' and '.join(SYSTEMS)}.",
            "Units",
            ", ".join(SYSTEMS),
            units,
        )
    to = PlainDecimals(units == MILLIMETRES)
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
