"""A set of pieces in a design: its file found, what it decides, what must hold."""
