"""Random designs that hold together, for property tests."""

from __future__ import annotations

from hypothesis import assume
from hypothesis import strategies as st

from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import change

RECTANGULAR = ("8.5x8.5", "8.5x13", "8.5x18", "12x12", "13x13", "13x18", "16x16", "18x18", "20x20")
ROUND = ("8", "10", "12", "15", "18")


def _inches(low: float, high: float):
    return st.integers(int(low * 8), int(high * 8)).map(lambda eighths: f"{eighths / 8} in")


@st.composite
def second_flues(draw) -> dict[str, str]:
    """A second flue beside the first: either side, above the smoke chamber or past the firebox."""
    shape = draw(st.sampled_from(["round", "rectangular"]))
    changes = {
        "serves": draw(st.sampled_from(["fireplace", "appliance"])),
        "side": draw(st.sampled_from(["left", "right"])),
        "shape": shape,
        "size": draw(st.sampled_from(ROUND if shape == "round" else RECTANGULAR)),
        "long_side": draw(st.sampled_from(("along the opening", "front to back"))),
        "wythe": draw(_inches(0, 12)),
        "start": draw(st.one_of(st.none(), _inches(-60, 160))),
        "top": draw(_inches(0, 12)),
    }
    return {f"second_flue.{name}": value for name, value in changes.items()}


@st.composite
def designs(draw) -> Design:
    """A design anybody could draw: both ways of building, both heads, every liner shape, offsets,
    raised hearths.
    """
    shape = draw(st.sampled_from(["round", "rectangular"]))
    breast, throat, rake = (
        draw(st.integers(3, 10)),
        draw(st.integers(3, 8)),
        draw(st.integers(0, 10)),
    )
    spare = draw(st.integers(0, 6))
    changes = {
        "method": draw(st.sampled_from(["laid", "modular"])),
        "opening.width": draw(_inches(20, 96)),
        "opening.standard_height": draw(_inches(20, 48)),
        "opening.extension": draw(_inches(0, 24)),
        "opening.head": draw(st.sampled_from(["straight", "segmental"])),
        "opening.rise": draw(_inches(1, 9)),
        "lintel.material": draw(st.sampled_from(["steel", "stone", "reinforced concrete", None])),
        "lintel.height": draw(_inches(1, 7)),
        "lintel.level_leg": draw(_inches(1, 6)),
        "lintel.angles": draw(st.integers(1, 3)),
        "lintel.bearing": draw(_inches(0, 8)),
        "firebox.breast": f"{breast} in",
        "firebox.rake": f"{rake} in",
        "firebox.depth": f"{max(breast + throat + rake + spare - 4, 12)} in",
        "firebox.vertical_back": draw(_inches(4, 20)),
        "firebox.back_width": draw(st.one_of(st.none(), _inches(8, 20))),
        "firebox.lining_thickness": draw(_inches(1, 5)),
        "firebox.wall": draw(_inches(8, 14)),
        "firebox.jamb": draw(_inches(8, 24)),
        "throat.depth": f"{throat} in",
        "throat.height": draw(_inches(7, 14)),
        "base.hearth_level": draw(_inches(0, 24)),
        "base.core": draw(st.sampled_from(["hollow", "grouted"])),
        "base.footing_depth": draw(_inches(30, 60)),
        "hearth.front": draw(_inches(0, 30)),
        "smoke_chamber.height": draw(_inches(20, 48)),
        "smoke_chamber.lining_thickness": draw(_inches(0.25, 3)),
        "flue.shape": shape,
        "flue.size": draw(st.sampled_from(ROUND if shape == "round" else RECTANGULAR)),
        "flue.long_side": draw(st.sampled_from(("along the opening", "front to back"))),
        "flue.sections": draw(st.integers(8, 40)),
        "flue.section_height": draw(_inches(12, 24)),
        "flue.offset": draw(_inches(0, 20)),
        "flue.offset_rise": draw(_inches(20, 40)),
        "chimney.gap": draw(_inches(0, 2)),
        "chimney.wall": draw(_inches(4, 9)),
        "chimney.wash": draw(_inches(0, 4)),
        "chimney.overhang": draw(_inches(0, 3)),
        "breast.form": draw(st.sampled_from(["shouldered", "shouldered", "straight", "flush"])),
        "roof.pitch": draw(st.integers(0, 24).map(lambda rise: f"{rise}:12")),
        "roof.ridge_distance": draw(_inches(0, 300)),
        "roof.ridge_runs": draw(st.sampled_from(["along the opening", "front to back"])),
    }
    if draw(st.booleans()):
        changes |= draw(second_flues())
    try:
        return change(Design(), changes)
    except InputError:
        assume(False)
