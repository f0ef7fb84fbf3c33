"""A class on paper: a quiz for every student, the answer grid, the key, and slips with tickets."""
