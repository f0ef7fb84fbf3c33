"""How a drawing looks: line weights, hatches, tones and themes, in one place. Sizes are in mm on
paper.
"""

from __future__ import annotations

from dataclasses import dataclass

WEIGHT = {
    "cut": 0.50,
    "seen": 0.25,
    "fine": 0.13,
    "hidden": 0.18,
    "dimension": 0.13,
    "ground": 0.70,
    "flag": 0.40,
    "guide": 0.25,
    "center": 0.18,
    "plane": 0.35,
    "frame": 0.70,
    "have": 1.4,
    "need": 1.4,
    "mark": 1.4,
    "tick": 1.4,
    "ghost": 0.7,
    "carried": 0.5,
}
"""Line weights. Cut lies in the cut plane, seen lies behind it, hidden lies behind that; a lesson's
bars are read across a room. [mm]
"""

DASHES = {
    "hidden": (1.6, 1.0),
    "guide": (3.2, 1.1),
    "center": (7.0, 1.0, 0.8, 1.0),
    "plane": (5.0, 1.0, 0.8, 1.0),
    "ghost": (2.6, 1.6),
    "carried": (3.6, 2.0),
}
"""On and off lengths of broken lines. [mm]"""

TEXT, SMALL, TITLE = 2.7, 2.5, 3.4
"""Letter heights; nothing is smaller than 2.5 mm on paper. [mm]"""


@dataclass(frozen=True, slots=True)
class Hatch:
    """How a cut material is marked: lines at angles, or dots. ``gap`` in mm."""

    angles: tuple[float, ...] = ()
    gap: float = 2.0
    dots: bool = False
    pair: float = 0.0


HATCHES = {
    "brick": Hatch((45.0,), 1.6),
    "firebrick": Hatch((45.0,), 1.8, pair=0.5),
    "refractory": Hatch((45.0, 135.0), 1.9),
    "block": Hatch((135.0,), 2.8),
    "grouted block": Hatch((135.0,), 2.8, dots=True),
    "grout": Hatch((), 2.0, dots=True),
    "concrete": Hatch((), 1.5, dots=True),
    "stone": Hatch((60.0,), 2.0, pair=0.6),
    "clay liner": Hatch((90.0,), 0.9),
    "parging": Hatch((135.0,), 0.8),
    "mortar": Hatch((), 1.2, dots=True),
    "steel": Hatch((135.0,), 0.5),
    "metal": Hatch((135.0,), 0.5),
    "timber": Hatch((0.0,), 1.5),
    "wood": Hatch((0.0,), 1.5),
    "tile": Hatch((90.0,), 1.2),
    "earth": Hatch((45.0,), 2.6, pair=0.7),
    "roof": Hatch((90.0,), 1.6),
}
"""Materials are told apart by hatch; the tones below only help."""


@dataclass(frozen=True, slots=True)
class Theme:
    """Colours of one way of looking: on a light screen, a dark one, or paper."""

    paper: str
    ink: str
    soft: str
    dimension: str
    person: str
    good: str
    bad: str
    tones: dict[str, str]
    guide: str = "#000000"


_PRINTED_HEAT = {
    "heat 1": "#f2f2f2",
    "heat 2": "#e0e0e0",
    "heat 3": "#cccccc",
    "heat 4": "#b5b5b5",
    "heat 5": "#9c9c9c",
    "heat 6": "#828282",
}
"""A map of heat has no hatching to tell its bands by: in black on white they are grays."""

_LIGHT_TONES = {
    "brick": "#e8cdbd",
    "firebrick": "#f4e3b2",
    "refractory": "#e6dcc6",
    "block": "#dde1e4",
    "grouted block": "#d3d8dc",
    "grout": "#e4e4e0",
    "concrete": "#e2e4e6",
    "stone": "#d9d5cc",
    "clay liner": "#d9a88c",
    "parging": "#d8d2c8",
    "mortar": "#e3ded5",
    "steel": "#6b7580",
    "timber": "#d8bd94",
    "tile": "#cfdad6",
    "earth": "#efe8dc",
    "roof": "#dcd9e0",
    "air": "#ffffff",
    "hollow": "#f4f1ea",
    "face": "#fbf7f2",
    "soot": "#d9d4cd",
    "wall": "#f3f3f1",
    "metal": "#8a929a",
    "wood": "#d8bd94",
    "masonry": "#e8cdbd",
    "piece top": "#f3ede0",
    "piece front": "#e4dac6",
    "piece side": "#cfc3ab",
    "set top": "#f6c89c",
    "set front": "#ea9f62",
    "set side": "#d38342",
    "room wall": "#f4f1ea",
    "room side": "#eae6dd",
    "room ceiling": "#fbfaf7",
    "room floor": "#e9dfcf",
    "box side": "#b3a698",
    "box floor": "#c6b9a7",
    "box back": "#988b7f",
    "box rake": "#7d7168",
    "box dark": "#574e48",
    "heat 0": "#fffdf5",
    "heat 1": "#fdf0cd",
    "heat 2": "#fbdd9c",
    "heat 3": "#f7c168",
    "heat 4": "#ef9a45",
    "heat 5": "#dd6b2f",
    "heat 6": "#b8431f",
}
_DARK_TONES = {
    "brick": "#6a4a3c",
    "firebrick": "#6e6038",
    "refractory": "#5f5845",
    "block": "#4a5157",
    "grouted block": "#525a60",
    "grout": "#4d4e4c",
    "concrete": "#474c50",
    "stone": "#57534b",
    "clay liner": "#82533a",
    "parging": "#57524a",
    "mortar": "#504c46",
    "steel": "#a3adb8",
    "timber": "#6d5637",
    "tile": "#475650",
    "earth": "#3a352c",
    "roof": "#45424c",
    "air": "#1d1f21",
    "hollow": "#2a2723",
    "face": "#2b2724",
    "soot": "#37332e",
    "wall": "#292b2d",
    "metal": "#8a929a",
    "wood": "#6d5637",
    "masonry": "#6a4a3c",
    "piece top": "#6b6454",
    "piece front": "#575144",
    "piece side": "#454036",
    "set top": "#b0713a",
    "set front": "#98592a",
    "set side": "#7e451c",
    "room wall": "#34332f",
    "room side": "#2d2c29",
    "room ceiling": "#393834",
    "room floor": "#423a2f",
    "box side": "#2c2722",
    "box floor": "#3a342d",
    "box back": "#221e1a",
    "box rake": "#191613",
    "box dark": "#0d0b0a",
    "heat 0": "#232220",
    "heat 1": "#38301f",
    "heat 2": "#55421f",
    "heat 3": "#785420",
    "heat 4": "#a0611f",
    "heat 5": "#c4682a",
    "heat 6": "#e37b45",
}
THEMES = {
    "light": Theme(
        "#ffffff",
        "#1c2328",
        "#6a737b",
        "#3d4a54",
        "#c3cbd1",
        "#0f5f8c",
        "#a63603",
        _LIGHT_TONES,
        "#6a2c91",
    ),
    "dark": Theme(
        "#1d1f21",
        "#e9e6e0",
        "#9aa3ab",
        "#c4ccd3",
        "#4c555c",
        "#7cc1ea",
        "#f5a26b",
        _DARK_TONES,
        "#d3a6f0",
    ),
    "print": Theme(
        "#ffffff",
        "#000000",
        "#000000",
        "#000000",
        "#ffffff",
        "#000000",
        "#000000",
        dict.fromkeys(_LIGHT_TONES, "#ffffff") | {"steel": "#000000"} | _PRINTED_HEAT,
    ),
}
