"""Live panels for the notebooks: controls, picture, checks and order list. They hold no arithmetic
of the trade.
"""

from fireplace_calc.panels.as_a_client import client
from fireplace_calc.panels.folds.contents import CREW, DESIGNER, MASON
from fireplace_calc.panels.live_panel import Panel, panel

__all__ = ["CREW", "DESIGNER", "MASON", "Panel", "client", "panel"]
