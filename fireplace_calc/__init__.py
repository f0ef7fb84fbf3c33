"""Design of an open masonry fireplace and its chimney."""
