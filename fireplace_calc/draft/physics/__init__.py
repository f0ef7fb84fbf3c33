"""The formulas: air, wood, losses, walls, house, weather. Floats or numpy arrays alike."""
