"""Measure what stands: a fireplace that somebody else built, with tape, lamp and mirror."""
