"""Where every brick goes: firebrick bonds laid out brick by brick with their cuts, and block
coursed to a wanted level.
"""

from fireplace_calc.brickwork.coursing import Coursing, EvenCourses, block_coursing, even_courses
from fireplace_calc.brickwork.cut_stock import bricks_for, cut_list, cut_shape
from fireplace_calc.brickwork.fitted.cut_pieces import Piece
from fireplace_calc.brickwork.layout import Layout, lay
from fireplace_calc.brickwork.ring import BlockCourse, block_ring
from fireplace_calc.brickwork.work import Brickwork, lay_brickwork

__all__ = [
    "BlockCourse",
    "Brickwork",
    "Coursing",
    "EvenCourses",
    "Layout",
    "Piece",
    "block_coursing",
    "block_ring",
    "lay_brickwork",
    "bricks_for",
    "cut_list",
    "even_courses",
    "lay",
    "cut_shape",
]
