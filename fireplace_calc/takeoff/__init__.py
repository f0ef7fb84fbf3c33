"""What to order: the parts of a geometry as brick, block, sections, mortar and poured work, with waste and weights.

``takeoff(geometry)`` is the list; ``shares(geometry)`` is the bookkeeping behind it, part by part.
"""

from fireplace_calc.takeoff.cost import Bill, Line, Price, bill, prices
from fireplace_calc.takeoff.goods import Goods, goods
from fireplace_calc.takeoff.rows import Row, takeoff, total_weight
from fireplace_calc.takeoff.shares import Share, shares
from fireplace_calc.takeoff.rules_of_thumb import Opinion, second_opinion

__all__ = ["Bill", "Goods", "Line", "Opinion", "Price", "Row", "Share", "bill", "goods", "prices", "second_opinion", "shares", "takeoff",
           "total_weight"]
