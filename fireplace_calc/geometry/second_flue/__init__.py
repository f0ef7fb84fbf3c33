"""A second flue beside the first: where it stands, and what it is cut from."""
