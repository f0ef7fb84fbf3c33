"""The heat in words and rows, in the reader's units. Nothing is computed here."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from fireplace_calc.assessment import Assessment
from fireplace_calc.base.printing import show
from fireplace_calc.base.tables.draft import coefficient
from fireplace_calc.base.tables.heat import wall_fires
from fireplace_calc.base.units import FEET_INCHES, INCH
from fireplace_calc.draft.cases import CASES, fire
from fireplace_calc.heat.answer import EVENING, MORE, evening_alone, other_lining
from fireplace_calc.heat.conduction.grading import FINE
from fireplace_calc.heat.cuts.behind import STANDS, WallRun
from fireplace_calc.heat.cuts.below_hearth import UnderHearth, hearth_layers
from fireplace_calc.heat.findings import evening_judged
from fireplace_calc.heat.for_the_room import RoomHeat, room_heat
from fireplace_calc.heat.from_opening import LEAST_FLUX
from fireplace_calc.heat.telling import told
from fireplace_calc.report.heat.first_warmings import warmings_of
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, FALLS_SHORT
from fireplace_calc.rules.core import JUDGEMENT, Finding

FIRES = ("Fire", "Burns", "When it goes out", "Hottest", "Hours after fire out")
FLUES = ("Fire in the flue", "Burns", "When it goes out", "Hottest", "Hours after fire out")
WORTHS = ("What", "The hottest wood becomes")
FIRSTS = ("Fire", "Of a full load", "Lining's face", "Lining grows", "Why no more, and what to do")
TRIM = ("Mantel or trim", "Kind fire", "Middle fire", "Hard fire")
ROOM = (
    "Evening",
    "The wood gives",
    "The room gets",
    "Warming the air that goes up",
    "Left to the house",
)
PUBLISHED = (
    "Published efficiencies of open fireplaces run from 10 to 30 percent: extension bulletins of"
    " Oklahoma and Oregon, 10 to 15; one measured by EN 13229 in Portugal, 30."
)
SAFE_SIDE = "Figures are rounded up, after adding what the working may read low."


def cooler(kelvin: float, units: str) -> str:
    """By how much warmer or cooler, as roughly.

    Examples
    --------
    >>> cooler(-22.0, "millimetres"), cooler(31.0, "feet-inches")
    ('20 K cooler', '60 °F hotter')
    """
    american = units == FEET_INCHES
    many = 10 * round(abs(kelvin) * 0.18) if american else 5 * round(abs(kelvin) / 5)
    if not many:
        return "about the same"
    unit = "°F" if american else "K"
    return f"{many} {unit} {'cooler' if kelvin < 0 else 'hotter'}"


def reach_sentence(runs: tuple[WallRun, ...], units: str) -> str:
    """From what to what the wood comes, and when."""
    low = runs[0]
    kind, middle, hard = (told(run.safe_highest, units=units) for run in runs)
    what = "the studs" if low.framed else "the back of the masonry, which stands free,"
    after = max(run.hours_after for run in runs)
    days = round((low.out - low.burns) / 24) + 1
    long = f"{low.burns:.0f} h" + (f" a day for {days} days" if days > 1 else "")
    return (
        f"After {long} of fire: {what} reach"
        f" {kind} with a kind fire, {middle} with a middle one, {hard} with a hard one."
        f" Hottest up to {after:.0f} h after the fire is out. {SAFE_SIDE}"
    )


def evening_found(result: Assessment, units: str) -> tuple[Finding, ...]:
    """What a long evening does to the wood behind the firebox, as a row for papers in the reader's
    degrees; none where nothing is framed there. Whoever shows it says over it that the code's
    clearance stands.
    """
    found = evening_judged(result.geometry, units)
    runs = result.geometry.once(evening_alone).evening
    if found.verdict == DOES_NOT_APPLY:
        return ()
    if runs is None:
        return (found._replace(note=found.note.replace(STANDS, "").strip()),)
    later = max(run.hours_after for run in runs)
    return (
        found._replace(
            title=f"Wood behind, {EVENING:.0f} h of a kind, middle, hard fire",
            note=f"Hottest up to {later:.0f} h after it is out." * (found.verdict == FALLS_SHORT),
            why="",
        ),
    )


def fire_rows(runs: Sequence[WallRun | UnderHearth], units: str) -> tuple[tuple[str, ...], ...]:
    """One row a fire, in the order of ``FIRES``."""
    return tuple(
        (
            run.fire.named,
            f"{run.burns if isinstance(run, WallRun) else run.out:.0f} h",
            told(run.safe(run.at_fire_out), units=units),
            told(run.safe_highest, units=units),
            f"{run.hours_after:.0f}",
        )
        for run in runs
    )


def flue_rows(result: Assessment, units: str) -> tuple[tuple[str, ...], ...]:
    """One row a fire in the flue, in the order of ``FLUES``."""
    return tuple(
        (
            run.fire.label,
            f"{run.fire.hours * 60:.0f} min" if run.fire.hours < 1 else f"{run.fire.hours:.0f} h",
            told(run.safe(run.at_fire_out), units=units),
            told(run.safe_highest, units=units),
            f"{run.hours_after:.0f}",
        )
        for run in result.heat.flue or ()
    )


def worth_rows(result: Assessment, units: str) -> tuple[tuple[str, ...], ...]:
    """What changes it by how much, in the order of ``WORTHS``."""
    words = {
        "masonry": f"{show(MORE, 'length', units)} more masonry behind the firebox",
        "open": "gap open to the room's air",
        "closed": "gap closed, no air through it",
        "lining": f"firebox lined with {other_lining(result.geometry)} instead",
    }
    return tuple((words[one.what], cooler(one.kelvin, units)) for one in result.heat.worth)


def under_sentence(result: Assessment, units: str) -> str:
    """What the table of wood under the hearth is about."""
    thick = sum(layer.thick for layer in hearth_layers(result.geometry))
    return (
        f"Under the middle of the fire there are {show(thick, 'length', units)} of hearth and slab."
        " No wood may lie against them: take the form boards out, and run no floor under the slab."
        " Ashes are left out, and air under the slab would cool it."
    )


def first_rows(result: Assessment, units: str) -> tuple[tuple[str, ...], ...]:
    """The first fires with their reasons, in the order of ``FIRSTS``."""
    return tuple(
        (
            f"{one.number}",
            f"{one.share:.0%}",
            told(one.face, units=units),
            grows(one.growth, units),
            f"{one.reason}; {one.note}",
        )
        for one in warmings_of(result.geometry)
    )


def grows(length: float, units: str) -> str:
    """A movement, to 1/32 in or to 0.1 mm.

    Examples
    --------
    >>> grows(0.0016, "feet-inches"), grows(0.0016, "millimetres"), grows(1e-4, "feet-inches")
    ('1/16 in', '1.6 mm', 'under 1/32 in')
    """
    if units != FEET_INCHES:
        return f"{1000 * length:.1f} mm"
    parts = round(length / INCH * 32)
    return f"{Fraction(parts, 32)} in" if parts else "under 1/32 in"


def trim_rows(result: Assessment) -> tuple[tuple[str, ...], ...]:
    """Radiation on each step of trim, in the order of ``TRIM``."""
    return tuple(
        (step.name, *(f"{falls / 1e3:.1f} kW/m²" for falls in step.falls))
        for step in result.heat.trim
    )


def keep_off_sentence(result: Assessment, units: str) -> str:
    """How far wood and furniture keep off by radiation alone."""
    off = result.heat.keep_off
    far = "more than twenty feet" if off is None else show(off, "length", units)
    return (
        f"Before the opening a hard fire's radiation has fallen to {LEAST_FLUX / 1e3:.1f} kW/m²,"
        f" the least that lit wood in one study, at {far}. Sparks fly farther: keep furniture and"
        " wood well beyond, with a screen before the fire."
    )


def in_the_room(result: Assessment, evening: int = 0) -> RoomHeat:
    """What the fire gives, less what it draws out, on one of the evenings of ``CASES``: first the
    winter's, then a mild one. Air from an inlet counts as air of the room.
    """
    design = result.design
    return room_heat(
        float(fire(design).power),
        coefficient("combustion efficiency") * coefficient("share kept by the room"),
        float(result.draft.flows.mass[evening]),
        design.house.indoor,
        (design.site.winter, design.site.mild)[evening],
    )


def room_rows(result: Assessment, units: str) -> tuple[tuple[str, ...], ...]:
    """A winter's and a mild evening, in the order of ``ROOM``."""
    rows = []
    site = result.design.site
    for n, outdoors in enumerate((site.winter, site.mild)):
        heat, name = in_the_room(result, n), CASES[n]
        outside = show(outdoors, "temperature", units)
        rows.append(
            (
                f"{name}, {outside} outdoors",
                f"{heat.burnt / 1e3:.1f} kW",
                f"{heat.given / 1e3:.1f} kW, {heat.gross_share:.0%}",
                f"{heat.drawn_out / 1e3:.1f} kW",
                f"{heat.net / 1e3:.1f} kW, {heat.net_share:.0%}",
            )
        )
    return tuple(rows)


def room_sentence(result: Assessment, units: str) -> str:
    """What the client will feel, in honest figures."""
    heat = in_the_room(result)
    outside = show(result.design.site.winter, "temperature", units)
    net = heat.net
    word = f"is the warmer for {net / 1e3:.1f} kW" if net > 0 else f"loses {-net / 1e3:.1f} kW"
    return (
        f"On a winter evening at {outside} the house {word}, after all the air that the fire draws"
        " out has been warmed; who sits before the fire feels the radiation all the same."
        f" {PUBLISHED}"
    )


def sources(units: str) -> tuple[str, ...]:
    """Where the three fires come from, a sentence each, what they are, and how figures are told."""
    fires = [f"{f.named[:1].upper()}{f.named[1:]}; {f.source.text}." for f in wall_fires().values()]
    kelvin, share = FINE.low
    degrees = f"{kelvin * 1.8:.0f} °F" if units == FEET_INCHES else f"{kelvin:.1f} °C"
    safe = (
        f"The wood's figures have {degrees} and {share:.1%} of their rise added: so low the working"
        " may read against one far finer. Then they are rounded up. Map and curves are as worked."
    )
    return (f"All of this is {JUDGEMENT}. {STANDS}", safe, *fires)
