"""The International Residential Code's chapter on masonry fireplaces and chimneys, as a book of
rules.
"""

from fireplace_calc.rules.book import Book

IRC = Book("US IRC")
LATEST = ("2021", "2024")
FROM_2018 = ("2018", "2021", "2024")
ONLY_2021 = ("2021",)
BEFORE_2024 = ("2015", "2018", "2021")
ONLY_2024 = ("2024",)
