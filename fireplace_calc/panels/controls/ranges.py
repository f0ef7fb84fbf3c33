"""What may be put into a field: the input's own range, or what the set of pieces offers."""

from __future__ import annotations

from dataclasses import replace

from fireplace_calc.base.inputs import Input
from fireplace_calc.base.tolerances import ROUNDING
from fireplace_calc.design.records import Design
from fireplace_calc.editing.between import seat_most
from fireplace_calc.editing.changes import all_inputs
from fireplace_calc.editing.sets.deciding import SNAPPED, decided
from fireplace_calc.editing.sets.set_sizes import offers
from fireplace_calc.panels.controls.reader_units import allowed, typed

SEATS = {"seat.left": -1, "seat.right": 1}
"""Seats beside the hearth, and the side of each."""
FEW = 3
"""So many sizes of a set are named one by one; of more only the ends. [-]"""


def read_off(design: Design, key: str) -> str:
    """Why an input takes no answer: the set has decided it; empty where it has not."""
    if key in SNAPPED or key not in decided(design):
        return ""
    return f"Read off the pieces of the set {design.pieces.set}."


def bounds_in(design: Design, key: str) -> tuple[float, float]:
    """Least and greatest value that an input can take in a design: the set's where it offers some,
    for a seat as far as the wall goes, else the input's own. [SI]
    """
    low, high = all_inputs()[key].bounds
    given = [value for value in offers(design).get(key, ()) if not isinstance(value, str)]
    if given:
        return max(low, given[0]), min(high, given[-1])
    most = seat_most(design, SEATS[key]) if key in SEATS else None
    return low, high if most is None else min(high, most)


def allowed_in(design: Design, key: str, units: str) -> str:
    """What a field takes, short enough to stand beside its name.

    Parameters
    ----------
    design : Design
    key : str
        Dotted key of the input.
    units : str
        The reader's.

    Returns
    -------
    str
        Empty where the set decides it, and for words.

    Examples
    --------
    >>> allowed_in(Design(), "flue.sections", "feet-inches")
    '4 to 40'
    """
    spec = all_inputs()[key]
    if read_off(design, key) or spec.kind in ("choice", "yes-no", "text"):
        return ""
    given = [value for value in offers(design).get(key, ()) if not isinstance(value, str)]
    if given:
        return _offered(spec, given, units, key)
    if spec.kind == "count" and not spec.optional:
        return f"{spec.low} to {spec.high}"
    if key in SEATS:
        spec = replace(spec, high=bounds_in(design, key)[1])
    return allowed(spec, units, key)


def words_in(design: Design, key: str) -> tuple[str, ...]:
    """Words that a choice offers: the set's where it has some, else the input's own."""
    own = all_inputs()[key].choices or ("yes", "no")
    given = [word for word in offers(design).get(key, ()) if isinstance(word, str)]
    return tuple(word for word in own if word in given) or own


def _offered(spec: Input, given: list[float], units: str, key: str) -> str:
    near = ROUNDING * max(map(abs, given))
    apart = [b for a, b in zip([given[0] - 1, *given], given, strict=False) if b - a > near]
    texts = [typed(spec, value, units, key) for value in apart]
    if len(texts) == 1:
        return f"{texts[0]} only"
    if len(texts) > FEW or spec.kind == "count":
        return f"{texts[0]} to {texts[-1]}"
    return f"{', '.join(texts[:-1])} or {texts[-1]}"
