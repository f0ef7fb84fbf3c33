"""One list of courses, from the footing to the top of the flue."""

from fireplace_calc.brickwork.courses.course import Course, CourseList
from fireplace_calc.brickwork.courses.listed import FACING, course_list
from fireplace_calc.brickwork.courses.odd import odd_courses

__all__ = ["FACING", "Course", "CourseList", "course_list", "odd_courses"]
