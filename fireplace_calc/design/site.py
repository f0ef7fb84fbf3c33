"""Where the fireplace stands, place, climate and ground; and whose job it is."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.record import Record
from fireplace_calc.design.declarations import choice, length, quantity, text, yes_no

SOILS = (
    "crystalline bedrock",
    "sedimentary or foliated rock",
    "sandy gravel or gravel",
    "sand",
    "clay",
)
SEISMIC = ("A", "B", "C", "D0", "D1", "D2", "E")


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Site(Record):
    """Where it stands."""

    place: str = text("Place", "", "Name for the title block; invented places are marked as such.")
    latitude: float | None = quantity(
        "angle",
        "Latitude",
        None,
        "-90 deg",
        "90 deg",
        "North is positive; where the sun stands in the room's picture. Unknown takes 45 degrees.",
    )
    altitude: float = length(
        "Altitude", "0 m", "-400 m", "4500 m", "Thins the air and with it the draft."
    )
    winter: float = quantity(
        "temperature",
        "Winter outdoor temperature",
        "-10 degC",
        "-60 degC",
        "30 degC",
        "Design temperature for the coldest fires.",
    )
    mild: float = quantity(
        "temperature",
        "Mild outdoor temperature",
        "8 degC",
        "-20 degC",
        "35 degC",
        "A mild day is when draft fails first.",
    )
    grade: float = length(
        "Floor above grade", "12 in", "-120 in", "240 in", "Finished floor above finished grade."
    )
    frost_depth: float | None = length(
        "Frost depth",
        None,
        "0 in",
        "120 in",
        "From the local climate table; unknown until asked.",
        "frost_depth",
    )
    soil: str | None = choice("Soil", None, SOILS, "What the footing bears on.", "material_class")
    seismic: str | None = choice(
        "Seismic design category",
        None,
        SEISMIC,
        "From the building department.",
        "seismic_design_category",
    )
    forest_land: bool | None = yes_no(
        "On land zoned for forest", None, "Asked by Oregon alone.", "forest_land"
    )
    wind: float | None = quantity(
        "speed", "Wind speed", None, "10 m/s", "100 m/s", "Basic wind speed of the site."
    )


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class JobNames(Record):
    """Names on every sheet. Nothing that is built follows from them."""

    client: str = text("Client", "", "For whom it is built; on every sheet.")
    drawn: str = text("Drawn by", "", "Who made the drawings; on every sheet.")
    checked: str = text("Checked by", "", "Who went over them since; on every sheet.")
