"""Twenty whole designs against seven books: what is provided, what is asked, what is to spare and what is said of it, reckoned twice."""

import pytest
from naive.clauses import BOOKS
from naive.in_part import IN_PART
from naive.whole import NAMES, assessed, differs, naive


def number(value) -> bool:
    """No word, no yes and no nothing."""
    return isinstance(value, (int, float)) and not isinstance(value, bool)


BOTH = BOOKS | IN_PART


@pytest.mark.parametrize("book", BOTH)
@pytest.mark.parametrize("name", NAMES)
def test_every_clause_that_ends_in_numbers(name, book):
    mine, theirs = {}, {}
    for asked in BOTH[book](naive(name).clauses):
        mine |= {
            (asked.key, what): value
            for what, value in zip(("provided", "required", "margin"), asked.numbers, strict=True)
        }
        mine[asked.key, "verdict"] = asked.said
    for found in assessed(name, book).findings:
        if number(found.provided) and number(found.required):
            margin = found.margin
            if margin is None:  # a count has no margin of its own
                margin = mine.get((found.key, "margin"))
            theirs |= {
                (found.key, what): value
                for what, value in (
                    ("provided", found.provided),
                    ("required", found.required),
                    ("margin", margin),
                    ("verdict", found.verdict),
                )
            }
    assert differs(mine, theirs, rel=1e-8, least=1.1e-9) == {}
