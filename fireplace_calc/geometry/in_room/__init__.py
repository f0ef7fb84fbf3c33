"""How the masonry stands in its room."""
