"""A fireplace of one's own, from a dozen answers."""
