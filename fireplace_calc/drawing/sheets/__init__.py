"""A sheet in millimeters on paper, and what paints it."""
