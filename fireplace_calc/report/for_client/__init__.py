"""A design, and several side by side, in the words of whoever pays for it."""
