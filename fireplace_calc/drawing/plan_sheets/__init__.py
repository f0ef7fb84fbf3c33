"""Plans at every level but the hearth, and the whole height against the roof, on sheets."""
