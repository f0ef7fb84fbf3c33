"""One list of courses, from the footing to the top of the flue."""

from fireplace_calc.brickwork.courses.course import Course, CourseList
from fireplace_calc.brickwork.courses.listed import FACING, course_list

__all__ = ["FACING", "Course", "CourseList", "course_list"]
