"""What to order: the parts of a geometry as brick, block, sections, mortar and poured work, with
waste and weights.

``take_off(geometry)`` is the list; ``share_out(geometry)`` is the bookkeeping behind it, part by
part. ``takeoff.cost`` prices the list, ``takeoff.rules_of_thumb`` holds other opinions beside it.
"""

from fireplace_calc.takeoff.goods import Goods, all_goods, goods_for
from fireplace_calc.takeoff.rows import Row, take_off, total_weight
from fireplace_calc.takeoff.share import Share
from fireplace_calc.takeoff.shares import part_weights, share_out, weight_on_footing

__all__ = [
    "Goods",
    "Row",
    "Share",
    "all_goods",
    "goods_for",
    "part_weights",
    "share_out",
    "take_off",
    "total_weight",
    "weight_on_footing",
]
