"""What acts on the chimney: its own weight, wind, earthquake."""
