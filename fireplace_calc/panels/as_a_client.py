"""The client's page by its short name; what it needs is read when somebody asks for it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from fireplace_calc.design.records import Design

if TYPE_CHECKING:
    from fireplace_calc.panels.fireside.client_panel import ClientPanel


def client(design: Design, **how: Any) -> ClientPanel:
    """The page of who will sit before the fire, as of ``ClientPanel``; put it last in a cell."""
    from fireplace_calc.panels.fireside.client_panel import ClientPanel

    return ClientPanel(design, **how)
