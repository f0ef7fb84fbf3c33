"""A design's set in its geometry: set up, its frame, its parts."""
