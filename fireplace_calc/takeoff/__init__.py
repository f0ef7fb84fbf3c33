"""What to order: the parts of a geometry as brick, block, sections, mortar and poured work, with
waste and weights.

``take_off(geometry)`` is the list; ``share_out(geometry)`` is the bookkeeping behind it, part by
part.
"""

from fireplace_calc.takeoff.cost import Bill, Price, PricedLine, bill, prices
from fireplace_calc.takeoff.goods import Goods, all_goods, goods_for
from fireplace_calc.takeoff.rows import Row, take_off, total_weight, weight_of
from fireplace_calc.takeoff.rules_of_thumb import Opinion, second_opinion
from fireplace_calc.takeoff.share import Share
from fireplace_calc.takeoff.shares import share_out

__all__ = [
    "Bill",
    "Goods",
    "PricedLine",
    "Opinion",
    "Price",
    "Row",
    "Share",
    "bill",
    "all_goods",
    "goods_for",
    "prices",
    "second_opinion",
    "share_out",
    "take_off",
    "total_weight",
    "weight_of",
]
