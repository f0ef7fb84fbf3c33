"""The list itself: shares of one kind of goods added up, with waste, in whole bought units."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from math import ceil

from fireplace_calc.base.tables import densities
from fireplace_calc.base.tables.mortars import mix, mortar_recipes
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.base.units import CUFT, PCF
from fireplace_calc.design.records import Design
from fireplace_calc.geometry.parts import Geometry
from fireplace_calc.takeoff.goods import SET_PIECE, all_goods, goods_for
from fireplace_calc.takeoff.share import Share
from fireplace_calc.takeoff.shares import share_out


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the takeoff.

    Attributes
    ----------
    item, material : str
        What to order, and of what.
    net, order : float
        Quantity in the work, and quantity to buy with waste, in ``unit``. [-]
    unit : str
        As it is bought.
    weight_kg : float
        Of the net quantity as it stands in the work. [kg]
    volume : float
        That it fills. [m3]
    piece_kg : float or None
        One piece, on the average, where it is set by hand or by hoist. [kg]
    note : str
        How it was counted, and how well the weight is known.
    """

    item: str
    material: str
    net: float
    order: float
    unit: str
    weight_kg: float
    volume: float
    piece_kg: float | None
    note: str


@lru_cache(maxsize=64)
def _density_note(material: str) -> str:
    value, source = densities()[material]
    return f"{material} {value:.0f} kg/m3 ({value / PCF:.0f} lb/ft3, {source.confidence})"


def to_order(net: float, waste: float, step: float) -> float:
    """What to buy: the net quantity and its waste, up to the next whole step that is sold.

    Parameters
    ----------
    net : float
        In the work, in the unit it is bought in. [-]
    waste : float
        Share of it. [-]
    step : float
        Fraction or number of units that is sold. [-]

    Returns
    -------
    float
        In the same unit. [-]

    Examples
    --------
    >>> to_order(690, 0.10, 10), to_order(0.9, 0.0, 0.25)
    (760, 1.0)
    """
    return ceil(net * (1 + waste) / step - ROUNDING) * step


def _row(item: str, shares: list[Share], waste: dict[str, float]) -> Row:
    sold = goods_for(item)
    volume = weight = count = 0.0
    materials: dict[str, None] = {}
    notes: dict[str, None] = {sold.note: None}  # without doubles, in the order of the parts
    for share in shares:
        volume += share.volume
        weight += share.weight
        count += share.count
        materials[share.material] = notes[share.note] = None
    if sold.holds is not None:
        net = volume / sold.holds
    else:
        net = count if sold.unit == "ft2" else ceil(count - ROUNDING)
    order = max(to_order(net, waste.get(sold.waste, 0.0), sold.step), net + sold.spare)
    said = [note for note in notes if note]
    if weight > 0:
        said += map(_density_note, materials)
    counted = sold.holds is None and sold.unit != "ft2" and weight > 0
    piece = weight / net if counted else None
    return Row(
        item,
        " and ".join(materials),
        net,
        order,
        sold.unit,
        weight,
        volume,
        piece,
        "; ".join(said),
    )


def take_off(geometry: Geometry) -> tuple[Row, ...]:
    """The list to order from.

    Parameters
    ----------
    geometry : Geometry
        With its design, whose ``waste`` says how much to buy over the net quantity.

    Returns
    -------
    tuple of Row
        In the order the goods are needed on site; volumes add up to those of the parts.
    """
    return geometry.once(_every_row)


def _every_row(geometry: Geometry) -> tuple[Row, ...]:
    by_item: dict[str, list[Share]] = {}
    for share in share_out(geometry):
        by_item.setdefault(share.item, []).append(share)
    design = geometry.design.waste
    waste = {
        name: getattr(design, name)
        for name in ("brick", "firebrick", "block", "section", "mortar", "concrete")
    }
    of_set = [item for item in by_item if item.startswith(SET_PIECE)]
    listed = [item for item in all_goods() if item in by_item]
    found = [_row(item, by_item[item], waste) for item in (*of_set, *listed)]
    recipe, colored = geometry.design.work.mortar_mix, _colored(geometry.design)
    return tuple(
        replace(row, note=f"{row.note}; {_on_site(row, recipe, waste['mortar'])}{colored}")
        if row.item == "Mortar"
        else row
        for row in found
    )


def _colored(design: Design) -> str:
    """What the face is laid in, where that is not plain gray."""
    surround = design.surround
    if surround.mortar == "gray" or surround.face not in ("brick", "stone"):
        return ""
    made = "white cement and light sand" if surround.mortar == "white" else "a pigment"
    return f"; face laid in {surround.mortar} mortar, with {made} that the list does not count"


def _on_site(row: Row, recipe: str, waste: float) -> str:
    """What to buy for mortar that is mixed on site, waste counted in."""
    made = mix(row.volume * (1 + waste), recipe)
    parts = mortar_recipes().get(recipe)
    name = recipe if parts is None else f"{recipe}, {parts.proportions}"
    return (
        f"or mixed on site {name}: {ceil(made.cement - ROUNDING)} sacks of cement (94 lb),"
        f" {ceil(made.lime - ROUNDING)} bags of lime (50 lb),"
        f" {ceil(made.sand / CUFT - ROUNDING)} ft3 of sand"
    )


def total_weight(rows: tuple[Row, ...]) -> float:
    """Weight of the whole as it stands on its footing, footing counted in.

    Parameters
    ----------
    rows : tuple of Row
        Of its takeoff.

    Returns
    -------
    float
        [kg]
    """
    return sum(row.weight_kg for row in rows)
