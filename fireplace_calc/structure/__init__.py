"""Does it stand? Wind and earthquake on the chimney, what carries the opening, and what the footing
presses on the ground.

Engineering judgement, not a stamped design: ``assess_structure(geometry)`` gives numbers, findings,
and when to send for an engineer.
"""

from fireplace_calc.structure.assemble import assess_structure
from fireplace_calc.structure.record import Structure

__all__ = ["Structure", "assess_structure"]
