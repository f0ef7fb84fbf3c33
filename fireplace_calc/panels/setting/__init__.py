"""A set under the hands: what was measured on it, entered and kept."""
