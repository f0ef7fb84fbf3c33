"""Every view, declared once: the panel's list, the live picture and the paper set read it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from importlib import import_module
from typing import Any

from fireplace_calc.drawing.roof.roof_view import roof
from fireplace_calc.drawing.views.front_elevation import front
from fireplace_calc.drawing.views.hearth_plan import plan
from fireplace_calc.drawing.views.section_view import section
from fireplace_calc.geometry.parts import Geometry


def _later(module: str, name: str) -> Callable[..., Any]:
    """A function of a module that is loaded when it is first called: a first picture does not wait
    for views that nobody has asked for.
    """

    def called(*given: Any, **named: Any) -> Any:
        return getattr(import_module(f"fireplace_calc.drawing.{module}"), name)(*given, **named)

    return called


def _every_design(geometry: Geometry) -> bool:
    return True


@dataclass(frozen=True)
class NamedView:
    """One view.

    Attributes
    ----------
    key : str
        Its name in calls: ``panel(view=...)``, ``single(view, ...)``.
    label : str
        Its name in the panel's list.
    draw : callable
        ``draw(sheet, cell, geometry, units, scales=..., name_scale=...)``.
    suits : callable
        Whether a geometry has what the view shows.
    otherwise : str
        What to say where it has not; the front elevation is shown instead.
    broad : float
        How much wider apart hatch lines stand where the view fills the sheet. [-]
    """

    key: str
    label: str
    draw: Callable[..., Any]
    suits: Callable[[Geometry], bool] = _every_design
    otherwise: str = ""
    broad: float = 1.0


CATALOGUE = {
    view.key: view
    for view in (
        NamedView("front", "Front elevation", front),
        NamedView("section", "Section", section),
        NamedView("plan", "Plan", plan, broad=1.6),
        NamedView("roof", "Against the roof", roof),
        NamedView("room", "In its room", _later("room.room_view", "room")),
        NamedView(
            "detail",
            "Throat and chamber",
            _later("views.throat_detail", "detail"),
            broad=1.6,
        ),
        NamedView(
            "arch",
            "Arch and its thrust",
            _later("views.arch_view", "arch"),
            _later("views.arch_view", "has_arch"),
            "The opening of this design has a straight head; the front elevation is shown.",
        ),
        NamedView(
            "chimney",
            "Chimney plan",
            _later("views.chimney_plan", "chimney"),
            _later("views.chimney_plan", "has_second_flue"),
            "This chimney has one flue, as the section shows; the front elevation is shown.",
            broad=1.6,
        ),
        NamedView(
            "bricks",
            "Brick layout",
            _later("views.brick_layout", "bricks"),
            _later("views.brick_layout", "can_lay"),
            "There is nothing to lay brick by brick in this design; the front elevation is shown.",
        ),
        NamedView(
            "staging",
            "Staging",
            _later("pieces.staging_picture", "staging"),
            _later("pieces.staging_picture", "has_set"),
            "This design is built without a set of pieces; the front elevation is shown.",
        ),
    )
}
"""By key, in the order of the panel's list."""
