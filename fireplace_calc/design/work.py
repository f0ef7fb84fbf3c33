"""The work itself: weather, people, pace and waste."""

from __future__ import annotations

from dataclasses import dataclass

from fireplace_calc.base.record import Record
from fireplace_calc.design.declarations import choice, count, length, quantity


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Work(Record):
    """The day's work: weather, people and pace. The paces are our habit; put your own."""

    air: float = quantity(
        "temperature",
        "Air temperature at work",
        "15 degC",
        "-40 degC",
        "50 degC",
        "When the mortar is used.",
    )
    mean: float | None = quantity(
        "temperature",
        "Mean temperature of the day",
        None,
        "-40 degC",
        "50 degC",
        "Half of highest and lowest; decides how the work is protected. Unknown takes the one at"
        " work.",
    )
    wind: float = quantity(
        "speed",
        "Wind at work",
        "2 m/s",
        "0 m/s",
        "40 m/s",
        "Dries mortar in heat, chills it in frost.",
    )
    mortar_mix: str = choice(
        "Mortar mix",
        "1:1:6",
        ("1:1:6", "type M", "type S", "type N", "type O"),
        "Cement, lime and sand mixed on site; refractory mortar is bought.",
    )
    people: int = count("People", 2, 1, 12, "One lays, the others serve.")
    day: int = count("Hours a day", 8, 1, 14, "At the wall.")
    brick_pace: int = count("Brick an hour", 50, 5, 400, "Laid by one mason.")
    firebrick_pace: int = count("Firebrick an hour", 25, 2, 200, "Cuts counted in.")
    voussoir_pace: int = count(
        "Voussoirs an hour", 15, 2, 200, "Brick of an arch, flat or not, set over its centering."
    )
    block_pace: int = count("Block an hour", 15, 2, 100, "Laid by one mason.")
    piece_pace: int = count(
        "Sections an hour",
        4,
        1,
        60,
        "Refractory sections, liners and flue sections, bedded and levelled.",
    )
    pour_pace: float = quantity(
        "flow", "Concrete an hour", "1 m3/h", "0.05 m3/h", "40 m3/h", "Mixed and placed."
    )
    form_pace: float = quantity(
        "area",
        "Forms an hour",
        "10 ft2",
        "1 ft2",
        "200 ft2",
        "Built, set and struck by one person, by the face that concrete touches.",
    )
    lift_height: float = length(
        "Staging lift", "5 ft", "3 ft", "8 ft", "From one working floor to the next."
    )
    stack_height: float = length(
        "Pick-up height", "30 in", "0 in", "60 in", "Of the hands, where a piece is taken from."
    )
    carry: float = length(
        "Piece held off the body",
        "10 in",
        "0 in",
        "25 in",
        "Ankles to hands, where the piece's size does not say more.",
    )
    walkway: float = length(
        "Walkway kept free", "3 ft", "2 ft", "8 ft", "From the pallet to the fireplace, for two."
    )
    staged_off: float = length(
        "Piles stand off the work",
        "4 ft",
        "2 ft",
        "12 ft",
        "From the front of the pieces to the nearest pile: room to kneel and for a board.",
    )
    pallet_away: float = length(
        "Pallet from the fireplace",
        "12 ft",
        "3 ft",
        "100 ft",
        "How near it can be put down, from the front of the pieces.",
    )
    pallet_aside: float = length(
        "Pallet right of the middle",
        "0 in",
        "-50 ft",
        "50 ft",
        "Seen from the room; less than nought puts it to the left.",
    )
    lifts: float = quantity("ratio", "Lifts a minute", "0.2", "0.05", "15", "By one person.")
    cure: int = count(
        "Days of curing", 28, 1, 90, "Before the first fire; site practice, not code."
    )
    cold_days: int = count("Days below 40 F", 0, 0, 120, "While it cures; they do not count.")


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Waste(Record):
    """Extra to order, over the net quantity."""

    brick: float = quantity("ratio", "Brick waste", "10 %", "0 %", "50 %", "Breakage and cuts.")
    firebrick: float = quantity(
        "ratio", "Firebrick waste", "10 %", "0 %", "50 %", "Breakage and cuts."
    )
    block: float = quantity("ratio", "Block waste", "5 %", "0 %", "50 %", "Breakage and cuts.")
    section: float = quantity(
        "ratio", "Section and liner waste", "0 %", "0 %", "50 %", "Spare pieces."
    )
    mortar: float = quantity(
        "ratio", "Mortar waste", "20 %", "0 %", "100 %", "Droppings and stiff batches."
    )
    concrete: float = quantity(
        "ratio", "Concrete waste", "10 %", "0 %", "50 %", "Uneven ground and spillage."
    )
