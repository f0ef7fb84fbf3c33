"""Approved Document J of England with its neighbors (A for slenderness, NHBC for details). Some
figures are from memory alone.
"""

from fireplace_calc.rules.book import Book

ADJ = Book("UK ADJ", ("2010 as amended",))
