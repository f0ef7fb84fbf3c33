"""Lessons on the masonry, from the hearth to the top of the chimney; one drawing each."""
